package index

import (
	"slices"
	"strings"

	"example.org/netpost/engine"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// A sign is one term of the signature of a play and its ruling: what happened, which facts
// were told, and how it was ruled, with sides and ids left out, so that two plays told
// about different teams in different words meet. It is written class:value.
type sign string

// The classes of sign. Each has its weight in a search, in weights.
const (
	signFault   = "fault"   // fault:back-row-block
	signMay     = "may"     // may:back-row-block, where a fact decides that was not told
	signOutcome = "outcome" // outcome:replay, with the reason of a replay after a dash
	signMeasure = "measure" // measure:delay-warning
	signTurns   = "turns"   // turns:row, a fact that decides
	signFact    = "fact"    // fact:row=back, told of anything
	signWhose   = "whose"   // whose:row=back@setter, told of a player or event of that name
	signEvent   = "event"   // event:contact.block
	signWho     = "who"     // who:setter
	signThen    = "then"    // then:contact.set>contact.block/them, two events in a row and whether the side changed
	signAsked   = "asked"   // asked:point
	signRaised  = "raised"  // raised:double-contact, a fault that the words ask about or report as called
	signTopic   = "topic"   // topic:subs, the area of a question that is no play of the ball
)

// class is the part before the colon.
func (s sign) class() string { c, _, _ := strings.Cut(string(s), ":"); return c }

// value is the part after the colon.
func (s sign) value() string { _, v, _ := strings.Cut(string(s), ":"); return v }

// signature lists, sorted and once each, the signs of what was read and of what was decided
// about it. Either may be missing.
func signature(reading notation.Reading, decided ...engine.Decision) []sign {
	var out []sign
	add := func(class, value string) { out = append(out, sign(class+":"+value)) }
	for _, f := range slices.Concat(reading.Wanted, reading.Calls) {
		add(signRaised, f)
	}
	if reading.Topic != "" {
		add(signTopic, reading.Topic)
	}
	s := reading.Subject()
	if s == nil && len(decided) > 0 {
		s = decided[0].Subject
	}
	if r, ok := s.(*play.Rally); ok && r != nil {
		rallySigns(r, add)
	}
	if !absent(s) {
		for _, k := range s.Known() {
			v := s.Get(k)
			if f, ok := s.Fact(k.Fact); ok && f.Sided {
				continue // a side's letter is the teller's choice
			}
			add(signFact, string(k.Fact)+"="+string(v))
			if name := carrier(s, k.Of); name != "" {
				add(signWhose, string(k.Fact)+"="+string(v)+"@"+name)
			}
		}
	}
	for _, d := range decided {
		decisionSigns(d, add)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// absent reports whether there is no subject, a nil rally in the interface included.
func absent(s engine.Subject) bool {
	r, ok := s.(*play.Rally)
	return s == nil || ok && r == nil
}

func rallySigns(r *play.Rally, add func(class, value string)) {
	for i, e := range r.Events {
		add(signEvent, eventName(e))
		if i > 0 {
			prev := r.Events[i-1]
			side := "us"
			switch {
			case e.Team == play.NoTeam || prev.Team == play.NoTeam:
				side = "any"
			case e.Team != prev.Team:
				side = "them"
			}
			add(signThen, eventName(prev)+">"+eventName(e)+"/"+side)
		}
	}
	for _, p := range r.Players {
		if p.Role != play.NoRole {
			add(signWho, string(p.Role))
		}
	}
	if r.Asked != play.AskedAct {
		add(signAsked, string(r.Asked))
	}
}

// eventName is an event's kind, with the action of a contact that the words named.
func eventName(e play.Event) string {
	if e.Action == play.Touch {
		return string(e.Kind)
	}
	return string(e.Kind) + "." + string(e.Action)
}

// carrier names what a fact is about: a player's role, or an event's kind and action.
func carrier(s engine.Subject, of string) string {
	r, ok := s.(*play.Rally)
	if !ok || of == "" {
		return ""
	}
	if p, ok := r.Player(of); ok {
		return string(p.Role)
	}
	if e, ok := r.Event(of); ok {
		return eventName(e)
	}
	return "" // the order of two events: the signs of class then say it
}

func decisionSigns(d engine.Decision, add func(class, value string)) {
	for _, l := range d.Leaves {
		r := l.Ruling
		for _, f := range append([]string{r.Fault}, r.Also...) {
			switch {
			case f == "":
			case d.Settled():
				add(signFault, f)
				add(signMay, f) // so that an open play meets a settled one
			default:
				add(signMay, f)
			}
		}
		switch {
		case r.Fault != "":
		case r.Replay != "":
			add(signOutcome, string(r.Outcome)+"-"+r.Replay)
		case r.Outcome != "":
			add(signOutcome, string(r.Outcome))
		}
		for _, m := range r.Measure {
			add(signMeasure, m)
		}
	}
	for _, f := range turning(d) {
		add(signTurns, string(f))
	}
}

// turning lists, sorted, the facts that decide: those of the minimal reason of a settled
// ruling, or the questions of an open one.
func turning(d engine.Decision) []play.FactID {
	var out []play.FactID
	for _, g := range d.Because() {
		out = append(out, g.Key.Fact)
	}
	var ask func(t *engine.Tree)
	ask = func(t *engine.Tree) {
		if t == nil || t.Leaf() {
			return
		}
		out = append(out, t.Ask.Fact)
		for _, k := range t.Kids {
			ask(k)
		}
	}
	ask(d.Tree)
	slices.Sort(out)
	return slices.Compact(out)
}

// rulesOf lists the rule numbers, normalised, that a decision rests on, the leading one
// first.
func rulesOf(d engine.Decision) []string {
	var out []string
	if d.Book == nil {
		return nil
	}
	for _, l := range d.Leaves {
		for _, c := range l.Ruling.Cites {
			for _, n := range strings.Split(d.Book.Cell(c.Param).Rule, ";") {
				if r := NormalRule(n); r != "" && !slices.Contains(out, r) {
					out = append(out, r)
				}
			}
		}
	}
	return out
}
