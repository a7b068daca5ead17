package court

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

func sixOf(first int) (out [6]string) {
	for i := range out {
		out[i] = fmt.Sprint(first + i)
	}
	return out
}

// randomSet is a set of n rallies with legal substitutions in it.
func randomSet(r *rand.Rand, n int) *History {
	h := &History{First: play.A + play.Team(r.IntN(2)), Start: [3][6]string{play.A: sixOf(1), play.B: sixOf(11)}}
	next := [3]int{0, 30, 60}
	on := h.Start
	for range n {
		t := play.A + play.Team(r.IntN(2))
		if r.IntN(6) == 0 {
			i := r.IntN(6)
			in := fmt.Sprint(next[t])
			next[t]++
			h.Entries = append(h.Entries, Entry{What: Substituted, Team: t, Player: in, Out: on[t][i]})
			on[t][i] = in
		}
		h.Entries = append(h.Entries, Entry{What: Won, Team: play.A + play.Team(r.IntN(2))})
	}
	return h
}

// The order of service by its definition, counted from the start: a team has
// rotated once for each rally it won while the other served, and its server is
// that many places on in the line-up.
func TestReplayByDefinition(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 4))
	for range 500 {
		h := randomSet(r, 60)
		s, err := h.Replay()
		if err != nil {
			t.Fatal(err)
		}
		line, rotations, serving, score := h.Start, [3]int{}, h.First, [3]int{}
		for _, e := range h.Entries {
			if e.What == Substituted {
				line[e.Team][slices.Index(line[e.Team][:], e.Out)] = e.Player
				continue
			}
			score[e.Team]++
			if e.Team != serving {
				rotations[e.Team]++
				serving = e.Team
			}
		}
		if s.Score != score || s.Serving != serving {
			t.Fatalf("score %v serving %v, want %v %v", s.Score, s.Serving, score, serving)
		}
		for _, team := range []play.Team{play.A, play.B} {
			for p := range 6 {
				want := line[team][(p+rotations[team])%6]
				if s.Order[team][p] != want || s.Where(team, want) != Position(p+1) {
					t.Fatalf("%s in %d: %s, want %s", team, p+1, s.Order[team][p], want)
				}
			}
			front := s.Front(team)
			for _, q := range front {
				if !s.Where(team, q).Front() {
					t.Fatalf("%s is listed as front row and is in %d", q, s.Where(team, q))
				}
			}
		}
	}
}

// The first server of the team that receives first is its right front: it
// rotates before it serves.
func TestFirstReceiversRotate(t *testing.T) {
	h := &History{First: play.A, Start: [3][6]string{play.A: sixOf(1), play.B: sixOf(11)}, Entries: []Entry{{What: Won, Team: play.B}}}
	s, err := h.Replay()
	if err != nil || s.Server() != "12" {
		t.Errorf("%v, %v: want 12, who was right front", s, err)
	}
}

func TestReplayRefuses(t *testing.T) {
	start := [3][6]string{play.A: sixOf(1), play.B: sixOf(11)}
	twice := start
	twice[play.A][3] = "1"
	for _, c := range []struct {
		h    History
		want string
	}{
		{History{Start: start}, "who serves first"},
		{History{Start: twice, First: play.A}, "twice"},
		{History{Start: start, First: play.A, Entries: []Entry{{What: Won}}}, "entry 1: no side"},
		{History{Start: start, First: play.A, Entries: []Entry{{What: Substituted, Team: play.A, Player: "9", Out: "20"}}}, `"20" of A is not on the court`},
		{History{Start: start, First: play.A, Entries: []Entry{{What: Substituted, Team: play.A, Player: "2", Out: "1"}}}, "already on the court"},
		{History{Start: start, First: play.A, Entries: []Entry{{What: LiberoIn, Team: play.A, Player: "20", Out: "3"}}}, "front row"},
		{History{Start: start, First: play.A, Entries: []Entry{{What: 9, Team: play.A}}}, "unknown"},
	} {
		if _, err := c.h.Replay(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v, want %q", err, c.want)
		}
	}
}

// A wrong server found late, by code and by whether the opponents have served.
// School: an officials' forum answer, 2014; international: 7.7.2.
func TestLate(t *testing.T) {
	start := [3][6]string{play.A: sixOf(1), play.B: sixOf(11)}
	wrong := []Entry{
		{What: Won, Team: play.A, Player: "1"},
		{What: Won, Team: play.A, Player: "4"},
		{What: Substituted, Team: play.B, Player: "30", Out: "13"},
		{What: Won, Team: play.A, Player: "4"},
	}
	then := append(slices.Clone(wrong), Entry{What: Won, Team: play.B, Player: "4"}, Entry{What: Won, Team: play.B, Player: "12"})
	lost := append(slices.Clone(wrong), Entry{What: Won, Team: play.B, Player: "4"})
	for _, c := range []struct {
		name    string
		entries []Entry
		code    code.Code
		off     int
		rally   bool
		undone  int
	}{
		{"nobody wrong", []Entry{{What: Won, Team: play.A, Player: "1"}}, code.Scholastic, 0, false, 0},
		{"still serving", wrong, code.Scholastic, 2, true, 1},
		{"still serving", wrong, code.International, 2, true, 0},
		{"opponents to serve", lost, code.Scholastic, 2, true, 1},
		{"opponents have served", then, code.Scholastic, 0, false, 0},
		{"opponents have served", then, code.International, 2, false, 0},
	} {
		h := &History{Start: start, First: play.A, Entries: c.entries}
		s, err := h.Replay()
		if err != nil {
			t.Fatal(err)
		}
		l := h.Late(s, book(t, c.code, 0))
		if l.Off != c.off || l.Rally != c.rally || len(l.Undone) != c.undone {
			t.Errorf("%s, %s: %+v, want %d off, rally %v, %d undone", c.name, c.code, l, c.off, c.rally, c.undone)
		}
		if (l.Term < 0) != (c.name == "nobody wrong") {
			t.Errorf("%s: term %d", c.name, l.Term)
		}
	}
}

func BenchmarkSet(b *testing.B) {
	h := randomSet(rand.New(rand.NewPCG(2, 2)), 60)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := h.Replay(); err != nil {
			b.Fatal(err)
		}
	}
}
