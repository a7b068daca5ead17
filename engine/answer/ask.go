package answer

import (
	"fmt"
	"strings"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/notation"
)

// PeopleFirst is the caution that leads every answer about somebody's health.
const PeopleFirst = "Stop play and look after people first. Local policy and qualified medical people decide who returns."

// Ask answers a question in words. A question that cannot be read at all, or
// a given fact that its play cannot have, comes back as the answer's Error.
func Ask(text string, o Options) Answer {
	if p := check(text); p != nil {
		return Answer{Kind: None, Error: p}
	}
	r, err := notation.Read(text)
	if err != nil {
		return Answer{Kind: None, Error: &Problem{"question", err.Error(), ""}}
	}
	return Of(r, o)
}

// Of answers a reading.
func Of(r notation.Reading, o Options) Answer {
	a, _ := of(r, o)
	return a
}

// of answers a reading, with the inquiry that it comes from; nil where nothing
// was decided.
func of(r notation.Reading, o Options) (Answer, *inquiry) {
	a := Answer{Kind: None, More: r.More}
	for _, c := range r.Corrected {
		a.Corrected = append(a.Corrected, Correction{c.From, c.To})
	}
	for _, u := range r.Unread {
		a.Unread = append(a.Unread, u.Word)
	}
	for _, e := range r.Evidence {
		a.Evidence = append(a.Evidence, e+" is not evidence of a ball-handling fault")
	}
	if r.Caution {
		a.Cautions = []string{PeopleFirst}
	}
	chosen := o.chosen(r)
	season := o.season(r)
	if len(chosen) == 1 {
		a.Code = Maybe(chosen[0])
	}
	if r.Subject() == nil {
		a.Reason = Maybe(unruled(r.Topic))
		if r.Game != "" {
			a.Reason = Maybe(r.Game + " is not ruled on here: only indoor six-a-side, with what the association adopts for it; look in that game's own book")
		}
		if len(o.Given) > 0 {
			a.Error = &Problem{"given", "nothing was read that it could be about", "tell the play in the words"}
		}
		return a, nil
	}
	s, problem := tell(r.Subject(), o.Given)
	if problem != nil {
		a.Error = problem
		return a, nil
	}
	a.Read = notation.SentencesOf(s)
	q, err := decide(s, chosen, season, o)
	if err != nil {
		a.Reason = Maybe(err.Error())
		return a, nil
	}
	a.Cells = q.cells()
	if q.vacuous() {
		a.Reason = "nothing in what was read is a matter of any rule; tell what happened in the rally"
		return a, q
	}
	a.Kind = q.kind()
	q.calls = r.Calls
	q.fill(&a)
	if !r.Told() || a.Outcome == Depends && !r.Whole() {
		q.doubt(&a)
	}
	return a, q
}

// chosen is the code to rule under, or all of them: the asker's, else the
// configured one, else one that the words name.
func (o Options) chosen(r notation.Reading) []code.Code {
	for _, g := range o.Given {
		if g.Key.Fact == CodeFact {
			return []code.Code{code.Code(g.Value)}
		}
	}
	for _, c := range []code.Code{o.Code, o.Configured, r.Code} {
		if c != "" {
			return []code.Code{c}
		}
	}
	return code.All()
}

// season is the season to rule under: the asker's, else one that the words
// name; zero is the newest held.
func (o Options) season(r notation.Reading) code.Season {
	s := o.Season
	if s == 0 {
		s = r.Season
	}
	if r.Ago > 0 && r.Season == 0 {
		s = back(s, r.Ago, o.chosen(r))
	}
	return s
}

// back is the season so many seasons before the one asked under, else before
// the newest that all the codes hold.
func back(from code.Season, ago int, codes []code.Code) code.Season {
	if from == 0 {
		for _, c := range codes {
			if _, last, ok := code.Held(c); ok && (from == 0 || last < from) {
				from = last
			}
		}
	}
	return from - code.Season(ago)
}

// unsettled says that no text settles a play.
const unsettled = "the text that is held does not settle it; ask the rules interpreter"

// areasRead says what questions are read from words.
const areasRead = "plays of the ball, positions and order at the serve, requests, sanctions, libero replacements and facts of the book"

// topics names the areas that are recognised where a question was not read.
var topics = []struct{ id, words string }{
	{"alignment", "positions at the serve"},
	{"conduct", "conduct and sanctions"},
	{"delay", "delay"},
	{"facts", "a number out of the book"},
	{"libero-replacement", "libero replacements"},
	{"mechanics", "the crew's mechanics"},
	{"other", "something other than a play of the ball"},
	{"serve", "the serve"},
	{"subs", "substitutions"},
	{"timeouts", "time-outs"},
}

// unruled says why nothing was ruled on.
func unruled(topic string) string {
	if topic == "" {
		return "no play was read in this"
	}
	about := topic
	for _, t := range topics {
		if t.id == topic {
			about = t.words
		}
	}
	return fmt.Sprintf("this reads as a question about %s, and too little of it was understood; what is read from words is %s: "+
		"tell it in other words, look in the book or ask the rules interpreter", about, areasRead)
}

// inquiry is one subject decided under the codes: those asked for, and all that
// hold the season, to compare.
type inquiry struct {
	subject engine.Subject
	asked   []engine.Decision
	all     []engine.Decision
	calls   []string // faults that the words say were called
	show    bool     // all codes, also those that rule alike
}

// decide decides a subject under every code that holds the season. It fails where
// none of the chosen codes does, or where it leaves too much open.
func decide(s engine.Subject, chosen []code.Code, season code.Season, o Options) (*inquiry, error) {
	q := &inquiry{subject: s, show: o.AllCodes}
	var missing []string
	for _, c := range code.All() {
		asked := len(chosen) > 1 || chosen[0] == c
		b, err := open(c, season, o.Overlays)
		if err != nil {
			if asked {
				missing = append(missing, err.Error())
			}
			continue
		}
		d, err := q.under(b)
		if err != nil {
			if asked {
				return nil, err
			}
			continue
		}
		q.all = append(q.all, d)
		if asked {
			q.asked = append(q.asked, d)
		}
	}
	if len(q.asked) == 0 {
		return nil, fmt.Errorf("%s", strings.Join(missing, "; "))
	}
	return q, nil
}

// vacuous reports whether the play goes on only because no rule looked at it:
// a ruling that rests on nothing is none.
func (q *inquiry) vacuous() bool {
	for _, d := range q.asked {
		for _, l := range d.Leaves {
			if len(l.Ruling.Cites) > 0 {
				return false
			}
		}
	}
	return true
}

// kind is what sort of answer the decisions come to: a ruling where any leaf
// has an outcome, else a measure where any has one, else a fact.
func (q *inquiry) kind() Kind {
	k := Fact
	for _, d := range q.asked {
		for _, l := range d.Leaves {
			switch {
			case l.Ruling.Outcome != "":
				return Ruling
			case len(l.Ruling.Measure) > 0:
				k = Measure
			}
		}
	}
	return k
}

// under decides the subject under a book. Where a book decided before says the
// same of every parameter that was read, that decision holds for this one too.
func (q *inquiry) under(b *code.Book) (engine.Decision, error) {
	for _, d := range q.all {
		if !d.Whole && alikeIn(d.Params, d.Book, b) {
			d.Book = b
			return d, nil
		}
	}
	return judge.Decide(q.subject, b)
}

func alikeIn(params []code.Param, a, b *code.Book) bool {
	for _, p := range params {
		if a.Cell(p).Value != b.Cell(p).Value {
			return false
		}
	}
	return true
}

// fill lays the decisions into the answer.
func (q *inquiry) fill(a *Answer) {
	d := q.asked[0]
	if len(q.asked) == 1 {
		a.Code = Maybe(d.Book.Code())
	}
	a.Edition = Maybe(d.Book.Edition())
	for _, e := range q.asked[1:] {
		if e.Book.Edition() != d.Book.Edition() {
			a.Edition = ""
		}
	}
	a.Presumed = q.presumed()
	a.Rules = q.rules()
	a.Doubts = q.doubts()
	a.Codes = q.codes()
	if !alike(q.asked) {
		a.Outcome = Depends
		a.Tree = q.codeTree(a)
		return
	}
	if len(q.asked) > 1 {
		a.Code = AnyCode
	}
	if !d.Settled() {
		a.Outcome = Depends
		a.Tree = q.tree(a, d.Tree, nil)
		return
	}
	a.Verdict, a.Answer = q.verdict(d.Ruling), Maybe(d.Ruling.Answer)
	if d.Ruling.Outcome == engine.Unsettled {
		a.Reason = unsettled
		return
	}
	a.Because = q.because(d)
	a.Call = q.call(d.Ruling)
	a.Next = q.next(d.Ruling, q.calls)
	a.Changes = q.changes(d)
}
