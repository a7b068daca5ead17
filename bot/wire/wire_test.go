package wire

import (
	"context"
	"fmt"
	"slices"
	"sync"
	"testing"
	"time"
)

func TestSeen(t *testing.T) {
	s := NewSeen(10*time.Minute, 3)
	at := time.Unix(1_700_000_000, 0)
	if !s.First("a", at) || s.First("a", at.Add(9*time.Minute)) {
		t.Error("a is known at once and within the time")
	}
	if s.First("a", at.Add(11*time.Minute)) {
		t.Error("a was met two minutes ago")
	}
	if !s.First("a", at.Add(45*time.Minute)) {
		t.Error("a is never forgotten")
	}
	for i := range 20 {
		s.First(fmt.Sprint(i), at.Add(50*time.Minute))
	}
	if n := len(s.now) + len(s.old); n > 6 {
		t.Errorf("%d keys are kept", n)
	}
	if s.First("19", at.Add(51*time.Minute)) {
		t.Error("the last key is forgotten")
	}
	s.Forget("19")
	if !s.First("19", at.Add(51*time.Minute)) {
		t.Error("a key that was to be forgotten is known")
	}
}

// Whatever is in a lane goes in order, and no lane is left behind.
func TestLanes(t *testing.T) {
	l := NewLanes()
	var mu sync.Mutex
	var got []int
	var all sync.WaitGroup
	for i := range 100 {
		before, leave := l.Enter("a")
		all.Go(func() {
			<-before
			mu.Lock()
			got = append(got, i)
			mu.Unlock()
			leave()
		})
	}
	all.Wait()
	if !slices.IsSorted(got) || len(got) != 100 || len(l.last) != 0 {
		t.Errorf("%v; %d lanes are left", got, len(l.last))
	}
	before, leave := l.Enter("")
	<-before
	leave()
}

func TestGates(t *testing.T) {
	g := NewGates()
	hold, leave, err := g.Enter(t.Context(), "a", false)
	if err != nil {
		t.Fatal(err)
	}
	short, cancel := context.WithTimeout(t.Context(), 10*time.Millisecond)
	defer cancel()
	if _, _, err := g.Enter(short, "a", false); err == nil {
		t.Error("two are through at once")
	}
	if _, other, err := g.Enter(t.Context(), "b", false); err != nil {
		t.Error("another gate is shut")
	} else {
		other()
	}
	hold(50*time.Millisecond, false)
	leave()
	began := time.Now()
	_, leave, err = g.Enter(t.Context(), "a", false)
	if err != nil || time.Since(began) < 30*time.Millisecond {
		t.Errorf("it is open after %v, %v", time.Since(began), err)
	}
	leave()
	if len(g.all) != 0 {
		t.Errorf("%d gates are left", len(g.all))
	}
}

func TestWork(t *testing.T) {
	var w Work
	w.Open(t.Context(), func() {})
	for range MostWork {
		if !w.Begin() {
			t.Fatal("there is room")
		}
	}
	if w.Begin() {
		t.Error("there is room for more than the most")
	}
	idle := w.close()
	for range MostWork {
		select {
		case <-idle:
			t.Fatal("idle while something is in hand")
		default:
		}
		w.End()
	}
	<-idle
	<-w.close()
	if w.Begin() {
		t.Error("something begins after the end")
	}
}

func TestClip(t *testing.T) {
	for _, in := range []struct {
		s    string
		most int
		want string
	}{
		{"abc", 3, "abc"}, {"abcd", 3, "ab…"}, {"ab cd", 4, "ab…"}, {"😀😀", 4, "😀😀"}, {"😀😀", 3, "😀…"}, {"😀😀😀", 4, "😀…"}, {"a😀b", 3, "a…"}, {"", 3, ""}, {"abc", 1, "…"},
	} {
		if got := Clip(in.s, in.most); got != in.want || Size(got) > in.most {
			t.Errorf("%q at most %d: %q, want %q", in.s, in.most, got, in.want)
		}
	}
}
