package casebook

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"example.org/netpost/engine"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// proof is what the engine makes of a note's play: the zero value for a note
// without one, or one that is kept for the record only.
type proof struct {
	reading  notation.Reading
	err      error     // the words could not be read at all
	done     bool      // there is a play, and it was tried
	whole    bool      // it was read, and read whole
	verdicts []verdict // parallel to the note's codes, when whole
}

// verdict is the engine's decision of a note's play under one of its codes.
type verdict struct {
	decision engine.Decision
	err      error // the season is not held, or the play leaves too much open
	agrees   bool  // the engine rules as the note says
}

// current reports whether a note's ruling matters: it is in force, or will be.
func (n *Note) current() bool { return n.Status == Draft || n.Status == Published }

// prove reads a note's play and decides it under each of its codes in its season.
func (c *checker) prove(n *Note) proof {
	if n.Play == "" || !n.current() {
		return proof{}
	}
	p := proof{done: true}
	p.reading, p.err = notation.Read(n.Play)
	p.whole = p.err == nil && p.reading.Subject() != nil && p.reading.Whole()
	if !p.whole {
		return p
	}
	for _, cd := range n.Codes {
		p.verdicts = append(p.verdicts, c.decide(n, p.reading, codeSeason{cd, n.Season}))
	}
	return p
}

func (c *checker) decide(n *Note, r notation.Reading, cs codeSeason) verdict {
	b, err := c.open(cs)
	if err != nil {
		return verdict{err: err}
	}
	d, err := judge.Decide(r.Subject(), b)
	if err != nil {
		return verdict{err: err}
	}
	return verdict{decision: d, agrees: agrees(n.Ruling, r, d)}
}

// agrees reports whether a decision is what a note rules. A note may leave out
// the side at fault, and measures that go with an outcome; measures that are
// the whole ruling must be all of them.
func agrees(want Ruling, r notation.Reading, d engine.Decision) bool {
	if !d.Settled() {
		return want.Outcome == answer.Depends
	}
	got := d.Ruling
	if got.Outcome == engine.Unsettled {
		return true // the book leaves it open: the note settles it
	}
	if want.Outcome != string(got.Outcome) || want.Fault != got.Fault || want.Replay != got.Replay {
		return false
	}
	for _, m := range want.Measure {
		if !slices.Contains(got.Measure, m) {
			return false
		}
	}
	if want.Outcome == "" && len(want.Measure) != len(got.Measure) {
		return false
	}
	if !begins(got.Answer, want.Answer) {
		return false
	}
	return want.Against == "" || got.Against == play.NoTeam || side(want.Against, r, d.Book.Code()) == got.Against
}

// begins reports whether an answer begins with the words of a note's.
func begins(answer, with string) bool {
	answer, with = strings.ToLower(answer), strings.ToLower(with)
	rest, ok := strings.CutPrefix(answer, with)
	return ok && (with == "" || rest == "" || strings.IndexFunc(rest, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }) != 0)
}

// side is the team that goes by a name in a play, no team when none does.
func side(name string, r notation.Reading, c code.Code) play.Team {
	for _, t := range []play.Team{play.A, play.B} {
		if strings.EqualFold(name, t.String()) {
			return t
		}
		for _, n := range called(r.Subject(), t) {
			if strings.EqualFold(name, n) {
				return t
			}
		}
	}
	// What the play proves of the sides, such as blockers, the answer knows of
	// the one at fault.
	a := answer.Of(r, answer.Options{Code: c})
	for _, t := range []play.Team{play.A, play.B} {
		if slices.Contains(a.Against, name) && slices.Contains(a.Against, t.String()) {
			return t
		}
	}
	return play.NoTeam
}

// called are the names of a side in a subject, its own first.
func called(s play.Subject, t play.Team) []string {
	switch s := s.(type) {
	case *play.Rally:
		if t == play.NoTeam {
			return nil
		}
		return append(slices.Clone(s.Names[t]), t.String())
	case play.Spoken:
		return s.Called(t)
	}
	return nil
}

// engineFindings reports what the proof of note i shows.
func (c *checker) engineFindings(i int) []Finding {
	n, p := c.book.notes[i], &c.proofs[i]
	var out []Finding
	if p.done {
		out = append(out, n.readFindings(p)...)
	}
	if p.whole {
		out = append(out, c.rulingFindings(n, p)...)
	}
	if n.current() {
		for _, cd := range n.Codes {
			if _, err := c.open(codeSeason{cd, n.Season}); err != nil {
				out = append(out, n.finding(checkSeason, "season", err.Error(), "mend the season, or withdraw the note"))
			}
		}
	}
	return append(out, c.nextFindings(n, p)...)
}

func (n *Note) readFindings(p *proof) []Finding {
	one := func(what, mend string) []Finding { return []Finding{n.finding(checkPlay, "play", what, mend)} }
	r := p.reading
	switch {
	case p.err != nil:
		return one("the play can't be read: "+p.err.Error(), "tell it as a crew would ask it")
	case r.Subject() == nil:
		what := "nothing that can be ruled on was read in it"
		if r.Topic != "" {
			what += "; it reads as a question about " + r.Topic
		}
		return one(what, "tell a play, or take play and ruling out and say it in the text")
	case len(r.More) > 0:
		return one("it holds more than one play", "keep one, and write another note for the rest")
	}
	var out []Finding
	var unread []string
	for _, u := range r.Unread {
		if !u.Scenery {
			unread = append(unread, u.Word)
		}
	}
	if len(unread) > 0 {
		out = one("the play was not read whole: "+strings.Join(unread, ", "), "say it in words of the trade, or leave out what does not matter")
	}
	for _, w := range r.Corrected {
		f := n.finding(checkPlay, "play", quote(w.From)+" was read as "+quote(w.To), "write "+w.To)
		f.fix = n.respell("play", w.From, w.To)
		f.Fixable = !f.fix.none()
		out = append(out, f)
	}
	return out
}

// respell replaces a word of a field where it stands there just once.
func (n *Note) respell(field, from, to string) fix {
	start, end, ok := n.front.span(n.front.find(field))
	if !ok {
		return fix{}
	}
	written := n.Text[start:end]
	at := strings.Index(written, from)
	if at < 0 || strings.Contains(written[at+len(from):], from) {
		return fix{}
	}
	return fix{edits: []edit{{start + at, start + at + len(from), to}}}
}

// rulingFindings holds the note's ruling against the engine's.
func (c *checker) rulingFindings(n *Note, p *proof) []Finding {
	if f, bad := n.unknownRuling(); bad {
		return []Finding{f}
	}
	var out []Finding
	differs := false
	for i, v := range p.verdicts {
		switch {
		case v.err != nil:
			differs = true
			if _, err := c.open(codeSeason{n.Codes[i], n.Season}); err == nil {
				out = append(out, n.finding(checkRuling, "play", "the engine could not decide it: "+v.err.Error(), "tell more of the play"))
			}
		case !v.agrees:
			differs = true
			if n.Departs == "" {
				out = append(out, n.disagrees(p, v))
			}
		}
	}
	if n.Departs != "" && !differs {
		f := n.finding(checkDeparts, "departs", "the note does not depart: the engine rules as it says", "take departs out, or mend the ruling")
		out = append(out, f)
	}
	return out
}

// unknownRuling reports an id that is in no list.
func (n *Note) unknownRuling() (Finding, bool) {
	for _, id := range []struct{ field, value string }{{"ruling.fault", n.Ruling.Fault}, {"ruling.replay", n.Ruling.Replay}} {
		if id.value == "" {
			continue
		}
		if _, ok := judge.ByID(id.value); ok {
			continue
		}
		var ids []string
		for _, r := range judge.All() {
			ids = append(ids, r.ID)
		}
		mend := "use one of " + strings.Join(ids, ", ")
		fx := fix{}
		if near := nearest(id.value, ids); near != "" {
			mend = "write " + near
			fx = n.front.rewrite(n.front.find(id.field), near)
		}
		f := n.finding(checkRuling, id.field, quote(id.value)+" is not the id of anything the engine rules", mend)
		f.fix, f.Fixable = fx, !fx.none()
		return f, true
	}
	return Finding{}, false
}

func (n *Note) disagrees(p *proof, v verdict) Finding {
	d := v.decision
	under := fmt.Sprintf("under the %s rules of %s", d.Book.Code(), d.Book.Season())
	if !d.Settled() {
		q := notation.QuestionOf(p.reading.Subject(), d.Tree.Ask)
		return n.finding(checkRuling, "ruling", "the note rules "+n.Ruling.String()+", but "+under+" it turns on this: "+q, "tell it in the play, or rule depends")
	}
	return n.finding(checkRuling, "ruling", "the note rules "+n.Ruling.String()+", but "+under+" the engine rules "+said(p.reading.Subject(), d), "mend the play or the ruling, or give the reason in departs")
}

// said is a settled decision in words, with the side's name in the play and
// the rule it rests on. A play-on rests on no one rule: it keeps all.
func said(s play.Subject, d engine.Decision) string {
	r := d.Ruling
	against := ""
	if n := called(s, r.Against); len(n) > 0 {
		against = n[0]
	}
	words := Ruling{Outcome: string(r.Outcome), Fault: r.Fault, Replay: r.Replay, Against: against, Measure: r.Measure, Answer: r.Answer}.String()
	if r.Outcome != engine.PlayOn && len(r.Cites) > 0 {
		if number := d.Book.Cell(r.Cites[0].Param).Rule; number != "" {
			words += " (" + number + ")"
		}
	}
	return words
}

// String is the ruling in the engine's words.
func (r Ruling) String() string {
	s := r.Outcome
	if r.Fault != "" {
		s += " " + r.Fault
	}
	if r.Replay != "" {
		s += " " + r.Replay
	}
	if r.Against != "" {
		s += " against " + r.Against
	}
	if len(r.Measure) > 0 {
		s += " measure " + strings.Join(r.Measure, ",")
	}
	if r.Answer != "" {
		s += " “" + r.Answer + "”"
	}
	return strings.TrimSpace(s)
}
