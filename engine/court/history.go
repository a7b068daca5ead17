package court

import (
	"fmt"
	"slices"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

// Happening is one thing in the history of a set.
type Happening uint8

// The things that happen.
const (
	Won         Happening = iota // a rally ends: Team wins it. Player, if given, is who served
	Awarded                      // a point is given to Team without a rally
	Substituted                  // Player comes in for Out
	LiberoIn                     // the libero Player comes in for Out
	LiberoOut                    // Player comes in for the libero Out
)

// Entry is one line of the history of a set.
type Entry struct {
	What        Happening
	Team        play.Team
	Player, Out string
}

// History is a set as a scorer writes it down: the starting line-ups by
// position, who serves first, and what happened since. Start is by team; a
// line-up of which nothing is known is all empty.
type History struct {
	Start   [3][6]string
	First   play.Team
	Entries []Entry
}

// Term is a span of rallies in which one team serves.
type Term struct {
	Team     play.Team
	Expected string // who should serve, empty where the line-up is not known
	Served   string // the first one noted who served out of the order, empty where none was
	From, To int    // the entries of the term, To not among them
	Points   int    // points of the team while it served
	Wrong    int    // of them, those scored with the wrong player serving
	Since    int    // the first entry in which the wrong player served, -1 for none
}

// State is where a set stands.
type State struct {
	Score   [3]int
	Serving play.Team
	Order   [3][6]string // by team, index 0 is position 1
	Terms   []Term
}

// Server is who should serve next, empty where it is not known.
func (s *State) Server() string { return s.Order[s.Serving][0] }

// Front lists the front row of a team, left to right.
func (s *State) Front(t play.Team) [3]string {
	return [3]string{s.Order[t][LeftFront-1], s.Order[t][CentreFront-1], s.Order[t][RightFront-1]}
}

// Where is the position of a player of a team, NoPosition for one who is not
// on the court.
func (s *State) Where(t play.Team, player string) Position {
	if i := slices.Index(s.Order[t][:], player); i >= 0 && player != "" {
		return Position(i + 1)
	}
	return NoPosition
}

// Replay plays a history through. A team that wins a rally while the other
// serves, or is given a point then, rotates and serves. The error names the
// entry, from 1, and what is wrong with it.
func (h *History) Replay() (*State, error) {
	s := &State{Order: h.Start, Serving: h.First, Terms: make([]Term, 0, len(h.Entries)/2+1)}
	if h.First != play.A && h.First != play.B {
		return nil, fmt.Errorf("first serve: no side is given; say who serves first")
	}
	for _, t := range []play.Team{play.A, play.B} {
		if h.Start[t] == ([6]string{}) {
			continue
		}
		for i, p := range h.Start[t] {
			if p != "" && slices.Index(h.Start[t][:], p) != i {
				return nil, fmt.Errorf("line-up of %s: %s is in it twice; give six different players", t, p)
			}
		}
	}
	s.term(0)
	for i, e := range h.Entries {
		if err := s.take(i, e); err != nil {
			return nil, fmt.Errorf("entry %d: %w", i+1, err)
		}
	}
	s.Terms[len(s.Terms)-1].To = len(h.Entries)
	return s, nil
}

func (s *State) term(at int) {
	s.Terms = append(s.Terms, Term{Team: s.Serving, Expected: s.Server(), From: at, Since: -1})
}

func (s *State) take(i int, e Entry) error {
	if e.Team != play.A && e.Team != play.B {
		return fmt.Errorf("no side is given")
	}
	switch e.What {
	case Won, Awarded:
		now := &s.Terms[len(s.Terms)-1]
		now.Expected = s.Server() // a libero or substitute may have come in since
		wrong := e.What == Won && e.Player != "" && now.Expected != "" && e.Player != now.Expected
		if wrong && now.Since < 0 {
			now.Served, now.Since = e.Player, i
		}
		s.Score[e.Team]++
		if e.Team == s.Serving {
			now.Points++
			if now.Since >= 0 {
				now.Wrong++
			}
			return nil
		}
		now.To = i + 1
		s.Serving = e.Team
		s.Order[e.Team] = Rotated(s.Order[e.Team], 1)
		s.term(i + 1)
	case Substituted, LiberoIn, LiberoOut:
		at := s.Where(e.Team, e.Out)
		if at == NoPosition {
			return fmt.Errorf("%q of %s is not on the court", e.Out, e.Team)
		}
		if e.Player == "" || s.Where(e.Team, e.Player) != NoPosition {
			return fmt.Errorf("%q of %s cannot come in: no number, or already on the court", e.Player, e.Team)
		}
		if e.What == LiberoIn && at.Front() {
			return fmt.Errorf("the libero %s of %s cannot come in for %s, who is in the front row", e.Player, e.Team, e.Out)
		}
		s.Order[e.Team][at-1] = e.Player
	default:
		return fmt.Errorf("unknown happening %d", e.What)
	}
	return nil
}

// Late is what becomes of a wrong server found at the end of a history.
type Late struct {
	Term     int // which term of State.Terms it was in, -1 where nobody served out of the order
	Off      int // points of the team at fault that are cancelled
	Rally    bool
	Undone   []int // entries of the opponents in that span that are undone
	Unstated bool  // the code does not say what becomes of those entries
}

// Late finds the last wrong server of a history and what comes off under a
// code: the points, whether point and service go to the opponents, and the
// opponents' substitutions in the span.
func (h *History) Late(s *State, b *code.Book) Late {
	for n := len(s.Terms) - 1; n >= 0; n-- {
		t := s.Terms[n]
		if t.Since < 0 {
			continue
		}
		served := false // the opponents have served since
		for _, later := range s.Terms[n+1:] {
			for _, e := range h.Entries[later.From:later.To] {
				served = served || e.What == Won && later.Team != t.Team
			}
		}
		l := Late{Term: n, Rally: !served}
		if b.Cell("serve.wrong-server-points").Value == "since-the-fault" || !served {
			l.Off = t.Wrong
		}
		if l.Off == 0 {
			return l
		}
		for i := t.Since; i < t.To; i++ {
			if e := h.Entries[i]; e.Team != t.Team && e.What != Won && e.What != Awarded {
				l.Undone = append(l.Undone, i)
			}
		}
		if l.Undone != nil && b.Cell("serve.wrong-server-opponents").Value != "undone" {
			l.Undone, l.Unstated = nil, true
		}
		return l
	}
	return Late{Term: -1}
}
