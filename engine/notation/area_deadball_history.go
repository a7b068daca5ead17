package notation

import (
	"iter"
	"slices"
	"strings"
	"sync"

	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/play"
)

// history tells what people, earlier acts and earlier cards mean for the act.
func (r *deadReader) history(ms []mention) {
	for i, g := range r.signs {
		name, arg, _ := strings.Cut(g.says, ":")
		switch name {
		case "act", "made", "thing", "request", "done", "quiet", "temper", "again", "same", "set":
			r.use(g)
		case "person":
			r.use(g)
		case "card":
			r.card(i, play.Value(arg))
		case "hurt", "halt":
			r.use(g)
		case "whistled":
			r.whistled(g)
		case "blast":
			if r.m.kind == deadball.Misconduct {
				r.use(g)
				r.tell(deadball.Gravity, deadball.Rude)
			}
		}
	}
	r.person()
	r.sets()
	hurt := r.says("hurt")
	switch r.m.kind {
	case deadball.Substitution:
		earlier := r.m.again
		for _, o := range ms {
			if o.kind == r.m.kind && o.clause < r.m.clause && o.aspect == aspectMade && r.whose(o.at) == whoseSame {
				earlier = true
			}
		}
		if earlier {
			r.tell(deadball.Substituted, play.Yes)
		}
		if ready := r.tells(deadball.ReadyAgain); hurt {
			if ready || r.act.Get(play.Key{Fact: deadball.Forced}) == play.No {
				r.tell(deadball.Stoppage, deadball.Injury)
			} else {
				r.tell(deadball.Forced, play.Yes)
			}
			r.quiet(deadball.ReadyAgain)
		}
	case deadball.TimeOut:
		if hurt || r.tells(deadball.ReadyAgain) {
			r.tell(deadball.Stoppage, deadball.Injury)
			r.quiet(deadball.ReadyAgain)
		}
	}
}

// whistled takes a whistle for service: an act told after it came after it; a
// whistle told after the act says only when something was noticed.
func (r *deadReader) whistled(g sign) {
	switch {
	case r.has(deadball.Found):
		r.tell(deadball.Found, deadball.BeforeContact)
	case r.has(deadball.Moment) && g.from < r.m.at:
		r.tell(deadball.Moment, deadball.LateServe)
	case r.has(deadball.Moment):
		r.act = r.act.WithVoid(deadball.Moment)
	default:
		return
	}
	r.use(g)
}

// quiet marks the words of a fact that another fact already says.
func (r *deadReader) quiet(f play.FactID) {
	for _, g := range r.signs {
		if strings.HasPrefix(g.says, string(f)+"=") {
			r.use(g)
		}
	}
}

// card takes a card that was had before: of the one who acts, or of a teammate
// where the numbers differ.
func (r *deadReader) card(i int, v play.Value) {
	g := r.signs[i]
	if n := r.negation(i); n >= 0 {
		r.use(r.signs[n])
		v = deadball.None
	}
	if w := r.whose(g.to - 1); w == whoseUnknown {
		r.unuse(g)
		return
	} else if r.use(g); w == whoseOther || r.m.kind != deadball.Misconduct {
		return
	}
	mine, theirs := r.label(r.m.clause), r.label(g.clause)
	if mine != "" && theirs != "" && mine != theirs {
		r.tell(deadball.TeamWarned, play.Yes)
		return
	}
	r.tell(deadball.CardBefore, v)
}

// label is the shirt number named in a clause, or "".
func (r *deadReader) label(clause int) string {
	for i, t := range r.toks {
		if r.in[i] == clause && t.label != "" {
			return t.label
		}
	}
	return ""
}

// person takes who acts: the person named nearest before the act in its
// clause, else the first one named before it, else the first in its clause.
func (r *deadReader) person() {
	who := ""
	for _, g := range r.signs {
		p, ok := strings.CutPrefix(g.says, "person:")
		switch {
		case !ok:
		case g.clause == r.m.clause && (g.from <= r.m.at || who == ""), g.clause < r.m.clause && r.m.kind != deadball.Substitution && r.m.kind != deadball.TimeOut:
			who = p
		}
	}
	if who == "" {
		return
	}
	switch {
	case r.has(deadball.AskedBy):
		value := map[string]play.Value{"coach": deadball.Coach, "captain": deadball.Captain, "assistant": deadball.Assistant, "player": deadball.OtherPerson, "bench": deadball.OtherPerson}
		if r.m.kind == deadball.Substitution && who != "assistant" && who != "captain" && who != "coach" {
			return // the one who comes in, not the one who asks
		}
		r.tell(deadball.AskedBy, value[who])
	case r.has(deadball.Member):
		value := map[string]play.Value{"coach": deadball.Coach, "captain": deadball.PlayerOf, "assistant": deadball.Assistant, "player": deadball.PlayerOf, "bench": deadball.AnyBench}
		r.tell(deadball.Member, value[who])
	case r.has(deadball.Speaker):
		value := map[string]play.Value{"coach": deadball.Coach, "captain": deadball.Captain, "assistant": deadball.OtherPerson, "player": deadball.OtherPerson, "bench": deadball.OtherPerson}
		r.tell(deadball.Speaker, value[who])
	}
}

// sets takes two numbers of sets for an earlier sanction and the set of now.
func (r *deadReader) sets() {
	var numbers []string
	for _, g := range r.signs {
		if g.says == "set" {
			if n := r.toks[g.to-1].form; !slices.Contains(numbers, n) {
				numbers = append(numbers, n)
			}
		}
	}
	if len(numbers) != 2 {
		return
	}
	for _, f := range [][2]play.FactID{{deadball.DelayBefore, deadball.DelaySet}, {deadball.CardBefore, deadball.CardSet}} {
		if v := r.act.Get(play.Key{Fact: f[0]}); v != play.Unknown && v != play.No && v != deadball.None {
			r.tell(f[1], deadball.EarlierSet)
		}
	}
}

func (r *deadReader) use(g sign) {
	for i := g.from; i < g.to; i++ {
		r.used[i] = true
	}
}

func (r *deadReader) unuse(g sign) {
	for i := g.from; i < g.to; i++ {
		r.used[i] = false
	}
}

// rest marks the words that carry nothing, and those that are only listed.
func (r *deadReader) rest() {
	signed := make([]bool, len(r.toks))
	for _, g := range r.signs {
		for i := g.from; i < g.to; i++ {
			signed[i] = true
		}
	}
	for _, a := range r.s.atoms {
		for i := a.from; i < a.to; i++ {
			switch {
			case a.class == cCode, a.class == cElse:
				r.used[i] = true
			case a.class == cScenery && !signed[i] && !r.used[i] && !deadWords()[r.toks[i].form]:
				r.scene[i] = true
			}
		}
	}
	for i, t := range r.toks {
		if r.used[i] || signed[i] || t.mark != 0 {
			continue
		}
		switch {
		case deadEmpty()[t.form] || deadEmpty()[t.base], t.form == "<label>", t.form == "s" && i > 0 && numeric(r.toks[i-1].form):
			r.used[i] = true
		case numeric(t.form) && i+1 < len(r.toks) && r.toks[i+1].form == "s": // seconds
			r.used[i] = true
		case strings.Count(t.form, "-") == 1 && numeric(strings.Replace(t.form, "-", "", 1)): // a score
			r.scene[i] = true
		}
	}
}

// deadEmpty are the words that carry nothing in a dead ball.
var deadEmpty = sync.OnceValue(func() map[string]bool { return wordSet(fillers, skipped, deadFillers) })

// deadWords are the words of the phrases.
var deadWords = sync.OnceValue(func() map[string]bool {
	m := map[string]bool{}
	for w := range deadVocabulary() {
		m[w] = true
	}
	return m
})

// deadVocabulary goes over every word of the phrases.
func deadVocabulary() iter.Seq[string] {
	return func(yield func(string) bool) {
		for _, t := range deadTables {
			for _, p := range t {
				for ws := range strings.FieldsSeq(p.phrase) {
					for w := range strings.SplitSeq(strings.Trim(ws, "[]"), "/") {
						if !yield(w) {
							return
						}
					}
				}
			}
		}
	}
}

func wordSet(lists ...string) map[string]bool {
	m := map[string]bool{}
	for _, l := range lists {
		for w := range strings.FieldsSeq(l) {
			m[w] = true
		}
	}
	return m
}
