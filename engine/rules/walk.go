package rules

import (
	"slices"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

// Walk goes through the events of a rally in time order. Events of the same
// moment form a group. The rules judge each group with what was before it.
//
// A moment is twice the number of the group; the odd moment after it is what
// happens between two told groups, such as a ball that crosses the net with
// nobody touching it.
type Walk struct {
	*engine.Read
	Rally *play.Rally

	seq    [][]play.Event
	g      int
	found  []finding
	clears []engine.Cite
	plain  []engine.Cite // of a clean contact: the reason of a play-on that has no other
	block  map[string]bool
	ended  play.Team // the side on whose floor a legal rally ended
	dead   bool
}

type finding struct {
	rule   *Rule
	ruling engine.Ruling
}

// Judge rules on a rally. It is an engine.Judge.
func Judge(r *engine.Read, s engine.Subject) engine.Ruling {
	p, ok := s.(*play.Rally)
	if !ok {
		panic("rules: a subject that is not a rally")
	}
	w := &Walk{Read: r, Rally: p}
	if len(p.Events) == 0 {
		return engine.Ruling{Outcome: engine.PlayOn}
	}
	if w.Is(play.Ball, "", play.Dead) {
		w.clear(deadBall.ID, deadBall.Cite, p.Events[0])
		return w.result()
	}
	w.order()
	for w.g = range w.seq {
		if w.pending() < 2*w.g {
			break
		}
		for i := range all {
			for _, e := range w.seq[w.g] {
				if all[i].Judge != nil {
					all[i].Judge(w, &all[i], e)
				}
			}
		}
		if w.pending() <= 2*w.g || w.dead {
			break
		}
	}
	return w.result()
}

// Decide decides a rally under one code in one season.
func Decide(s engine.Subject, b *code.Book) (engine.Decision, error) {
	return engine.Decide(Judge, s, b)
}

// order puts the told events into groups of one moment. Each pair of events
// that follow one another in the telling has an order; what nobody of the crew
// saw did not happen for the crew.
func (w *Walk) order() {
	at := 0
	for i, e := range w.Rally.Events {
		if i == 0 {
			w.seq = [][]play.Event{{e}}
			continue
		}
		switch w.Get(play.Order, w.Rally.Pair(i-1)) {
		case play.Same:
			w.seq[at] = append(w.seq[at], e)
		case play.After:
			w.seq = append(w.seq[:at], append([][]play.Event{{e}}, w.seq[at:]...)...)
		default:
			at++
			w.seq = append(w.seq[:at], append([][]play.Event{{e}}, w.seq[at:]...)...)
		}
	}
	out := w.seq[:0]
	for _, group := range w.seq {
		kept := group[:0:0]
		for _, e := range group {
			if w.seen(e) {
				kept = append(kept, e)
			} else {
				w.clear(unseen.ID, unseen.Cite, e)
			}
		}
		if len(kept) > 0 {
			out = append(out, kept)
		}
	}
	w.seq = out
}

func (w *Walk) seen(e play.Event) bool {
	switch e.Kind {
	case play.Contact, play.NetTouch, play.Line, play.Strike:
		return w.Is(play.Seen, e.ID, play.Yes)
	}
	return true
}

func (w *Walk) pending() int {
	m := 1 << 30
	for _, f := range w.found {
		m = min(m, f.ruling.Moment)
	}
	return m
}

// now is the moment of the group being judged.
func (w *Walk) now() int { return 2 * w.g }

// fault records a fault of a team at a moment, unless the code's parameter
// says that it is none.
func (w *Walk) fault(r *Rule, e play.Event, against play.Team, moment int, p code.Param) {
	if lawful[w.Param(p)] {
		w.clear(r.ID, p, e)
		return
	}
	w.found = append(w.found, finding{r, engine.Ruling{Outcome: engine.Fault, Fault: r.ID, Against: against, Event: e.ID,
		Moment: moment, Cites: []engine.Cite{{Rule: r.ID, Param: p, Event: e.ID}}}})
}

// lawful are the values of a parameter that say that what a rule found is no
// fault in this code, or under an association's adoption.
var lawful = map[string]bool{"legal": true, "play-on": true, "in-play": true, "playable": true, "fresh-count": true}

// replay records that the rally is to be replayed.
func (w *Walk) replay(r *Rule, e play.Event, p code.Param) {
	w.Param(p)
	w.found = append(w.found, finding{r, engine.Ruling{Outcome: engine.Replay, Replay: r.ID, Event: e.ID,
		Moment: w.now(), Cites: []engine.Cite{{Rule: r.ID, Param: p, Event: e.ID}}}})
}

// reServed records that the serve is to be repeated by the same server.
func (w *Walk) reServed(e play.Event, p code.Param) {
	w.found = append(w.found, finding{&reServe, engine.Ruling{Outcome: engine.ReServe, Event: e.ID,
		Moment: w.now(), Cites: []engine.Cite{{Rule: reServe.ID, Param: p, Event: e.ID}}}})
}

// unsettled records that the text that is held does not say what follows.
func (w *Walk) unsettled(r *Rule, e play.Event, p code.Param) {
	w.Param(p)
	w.found = append(w.found, finding{r, engine.Ruling{Outcome: engine.Unsettled, Event: e.ID,
		Moment: w.now(), Cites: []engine.Cite{{Rule: r.ID, Param: p, Event: e.ID}}}})
}

// clear records that a rule was looked at and found kept: the reason of a
// play-on.
func (w *Walk) clear(rule string, p code.Param, e play.Event) {
	w.Param(p)
	c := engine.Cite{Rule: rule, Param: p, Event: e.ID}
	for _, d := range w.clears {
		if d == c {
			return
		}
	}
	w.clears = append(w.clears, c)
}

// result is the ruling of what was found: the earliest moment; of one team the
// rule of the lowest rank leads and the rest go along; of both teams a double
// fault.
func (w *Walk) result() engine.Ruling {
	if len(w.found) == 0 {
		cites := w.clears
		if len(cites) == 0 {
			cites = w.plain
		}
		for i, j := 0, len(cites)-1; i < j; i, j = i+1, j-1 {
			cites[i], cites[j] = cites[j], cites[i]
		}
		out := engine.Ruling{Outcome: engine.PlayOn, Cites: cites, Lost: w.ended}
		if w.ended != play.NoTeam && w.Rally.Asked == play.AskedPoint {
			out.Outcome, out.Fault, out.Against = engine.Fault, ballDown.ID, w.ended
			out.Cites = append([]engine.Cite{{Rule: ballDown.ID, Param: ballDown.Cite}}, out.Cites...)
		}
		return out
	}
	m := w.pending()
	var at []finding
	for _, f := range w.found {
		if f.ruling.Moment == m && !w.lifted(f, m) {
			at = append(at, f)
		}
	}
	for _, f := range at {
		if f.ruling.Outcome == engine.Unsettled {
			return f.ruling
		}
	}
	lead := at[0]
	for _, f := range at[1:] {
		if f.rule.Rank < lead.rule.Rank {
			lead = f
		}
	}
	if w.ended == lead.ruling.Against.Other() && lead.ruling.Outcome == engine.Fault && w.group(play.Event{ID: lead.ruling.Event}) == w.g {
		// The winner of the rally broke a rule in the moment in which the ball
		// came down: no text that is held says which prevails.
		w.Param(doubleFault.Cite)
		return engine.Ruling{Outcome: engine.Unsettled, Event: lead.ruling.Event, Moment: m,
			Cites: []engine.Cite{{Rule: doubleFault.ID, Param: doubleFault.Cite, Event: lead.ruling.Event}, lead.ruling.Cites[0]}}
	}
	out := lead.ruling
	for _, f := range at {
		if f.ruling.Outcome != out.Outcome {
			return engine.Ruling{Conflict: []string{lead.rule.ID, f.rule.ID}}
		}
		if out.Outcome == engine.Fault && f.ruling.Against != out.Against {
			w.Param(doubleFault.Cite)
			return engine.Ruling{Outcome: engine.Replay, Replay: doubleFault.ID, Event: out.Event, Moment: m,
				Cites: []engine.Cite{{Rule: doubleFault.ID, Param: doubleFault.Cite, Event: out.Event}, lead.ruling.Cites[0], f.ruling.Cites[0]}}
		}
	}
	slices.SortStableFunc(at, func(a, b finding) int { return a.rule.Rank - b.rule.Rank })
	for _, f := range at { // by rank, each further fault once
		if out.Outcome == engine.Fault && f.ruling.Fault != out.Fault && !contains(out.Also, f.ruling.Fault) {
			out.Also = append(out.Also, f.ruling.Fault)
			out.Cites = append(out.Cites, f.ruling.Cites...)
		}
	}
	return out
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

// lifted reports whether a finding against the other team at the same moment
// takes this one away.
func (w *Walk) lifted(f finding, m int) bool {
	for _, g := range w.found {
		if g.ruling.Moment == m && f.ruling.Outcome == engine.ReServe && g.ruling.Outcome != engine.ReServe {
			return true // a whistle, a fault or a replay in the moment of the toss
		}
		if g.ruling.Moment == m && f.rule.Yields && !g.rule.Yields && g.ruling.Outcome != engine.ReServe {
			return true
		}
		if g.ruling.Moment == m && g.ruling.Against != f.ruling.Against && (g.rule.LiftsAll || contains(g.rule.Lifts, f.rule.ID) || contains(g.rule.Lifts, string(f.ruling.Cites[0].Param))) {
			return true
		}
	}
	return false
}
