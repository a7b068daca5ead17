package court

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// ReadLineup reads sentences as a line-up prints them and nothing else: what it
// makes of them says itself in those very sentences.
func ReadLineup(sentences []string) (*Lineup, bool) {
	for _, first := range []play.Team{play.A, play.B} {
		r := &lineupPrint{l: &Lineup{}, r: reprint{a: &Alignment{}, first: first}}
		if r.read(sentences) && r.l.Check() == nil && slices.Equal(r.l.Sentences(), sentences) {
			return r.l, true
		}
	}
	return nil, false
}

// lineupPrint is a line-up on its way back from its sentences. The sides' names
// are kept as those of an alignment are.
type lineupPrint struct {
	l *Lineup
	r reprint
}

func (r *lineupPrint) read(sentences []string) bool {
	for _, s := range sentences {
		if !r.sentence(s) {
			return false
		}
	}
	r.l.Names = r.r.a.Names
	return len(sentences) > 0
}

func (r *lineupPrint) sentence(s string) bool {
	for _, w := range wants {
		if w.words == s {
			r.l.Asked = w.is
			return true
		}
	}
	for _, f := range lineupFacts {
		for _, c := range f.Values {
			switch s {
			case c.Words:
				r.l = r.l.With(f.ID, c.Value)
				return true
			case c.Words + orNot:
				r.l = r.l.Doubt(play.Key{Fact: f.ID}).(*Lineup)
				return true
			}
		}
	}
	for _, w := range troubles {
		for _, words := range []string{w.words, w.many} {
			rest, sided := strings.CutPrefix(words, "{A}")
			if !sided {
				if s == words {
					r.l.Trouble = w.is
					return true
				}
				continue
			}
			if who, ok := strings.CutSuffix(s, rest); ok {
				if t := r.r.subject(who); t != play.NoTeam {
					r.l.Trouble, r.l.By = w.is, t
					return true
				}
			}
		}
	}
	return r.story(s)
}

func (r *lineupPrint) story(s string) bool {
	if r.l.History == nil {
		r.l.History = &History{}
	}
	h := r.l.History
	add := func(e Entry) bool {
		h.Entries = append(h.Entries, e)
		return e.Team != play.NoTeam
	}
	if who, six, ok := strings.Cut(s, lineupIs); ok {
		t, ps := r.r.owner(who), strings.Fields(six)
		if t == play.NoTeam || len(ps) != 6 {
			return false
		}
		h.Start[t] = [6]string(ps)
		return true
	}
	for _, end := range []string{" serves first", " serve first"} {
		if who, ok := strings.CutSuffix(s, end); ok {
			h.First = r.r.subject(who)
			return h.First != play.NoTeam
		}
	}
	if rest, ok := strings.CutPrefix(s, wonBy+" "); ok {
		for n := range strings.FieldsSeq(rest) {
			if !add(Entry{What: Won, Team: r.r.side(n)}) {
				return false
			}
		}
		return true
	}
	if p, n, ok := strings.Cut(s, servesAnd); ok {
		return add(Entry{What: Won, Team: r.r.side(n), Player: strings.TrimPrefix(p, "#")})
	}
	if n, ok := strings.CutPrefix(s, pointTo); ok {
		return add(Entry{What: Awarded, Team: r.r.side(n)})
	}
	for _, f := range []struct {
		mid  string
		what Happening
	}{{comesForLibero, LiberoOut}, {comesFor, Substituted}} {
		before, out, ok := strings.Cut(s, f.mid)
		if !ok {
			continue
		}
		if who, in, ok := strings.Cut(before, liberoIs); ok && f.what == Substituted {
			return add(Entry{What: LiberoIn, Team: r.r.owner(who), Player: in, Out: out})
		}
		who, in, _ := strings.Cut(before, " #")
		return add(Entry{What: f.what, Team: r.r.owner(who), Player: in, Out: out})
	}
	return false
}
