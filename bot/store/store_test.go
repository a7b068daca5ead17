package store

import (
	"errors"
	"fmt"
	"regexp"
	"testing"
	"time"
)

func TestNewID(t *testing.T) {
	seen := map[string]bool{}
	for range 1000 {
		id := NewID()
		if !regexp.MustCompile(`^[a-z0-9]+$`).MatchString(id) || len(id) != IDLen || seen[id] {
			t.Fatalf("id %q", id)
		}
		seen[id] = true
	}
	if longest := "given/" + NewID() + "/take-off-behind-line@e12/on-or-over-the-line"; len(longest) > 100 {
		t.Errorf("a button's state of %d bytes", len(longest))
	}
}

func TestCallState(t *testing.T) {
	now := time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)
	bo := Person{"slack", "U02"}
	for _, test := range []struct {
		c    Call
		want CallState
		by   Person
	}{
		{Call{}, Open, Person{}},
		{Call{Claimer: bo, Lapses: now.Add(1)}, Claimed, bo},
		{Call{Claimer: bo, Lapses: now}, Open, Person{}},
		{Call{Claimer: bo, Lapses: now.Add(1), Answers: 1}, Answered, bo},
		{Call{Answers: 1, Closed: now}, Done, Person{}},
	} {
		if got, by := test.c.State(now), test.c.HeldBy(now); got != test.want || by != test.by {
			t.Errorf("%+v: %s, held by %v; want %s, held by %v", test.c, got, by, test.want, test.by)
		}
	}
}

func TestError(t *testing.T) {
	cause := errors.New("SQLITE_FULL")
	e := &Error{Code: Full, What: "the disk is full", Mend: "free some space", Cause: cause}
	wrapped := fmt.Errorf("answering: %w", e)
	if CodeOf(wrapped) != Full || !errors.Is(wrapped, cause) || e.Error() != "the disk is full; free some space" {
		t.Errorf("%v of code %q", wrapped, CodeOf(wrapped))
	}
	if CodeOf(cause) != "" || CodeOf(nil) != "" || Code("").Operational() || !Full.Operational() || Taken.Operational() {
		t.Error("codes of other errors")
	}
	if e := (&Error{Code: Taken, What: "taken"}); e.Error() != "taken" {
		t.Error(e)
	}
}
