package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/play"
)

// mentions are the acts named, in the order of the text.
func (r *deadReader) mentions() []mention {
	var out []mention
	for i, g := range r.signs {
		name, arg, _ := strings.Cut(g.says, ":")
		m := mention{kind: deadball.Kind(arg), at: g.from, clause: g.clause}
		switch name {
		case "act":
			m.aspect = aspectAsked
		case "made":
			m.aspect = aspectMade
		case "thing":
			m.aspect = r.verb(i)
		case "same":
			if len(out) == 0 {
				continue
			}
			m.kind, m.aspect = out[len(out)-1].kind, r.verb(i)
		default:
			continue
		}
		m.again = r.near(i, "again") || name == "same"
		out = append(out, m)
	}
	return out
}

// verb is what is said of a thing: by the verb before it in its clause, by
// standing as the verb of a side or a person itself, or by a verb after it.
func (r *deadReader) verb(i int) int {
	g := r.signs[i]
	if g.from > 0 && g.to == g.from+1 {
		if t := r.toks[g.from-1]; t.form == "<side>" && !t.poss || r.signAt(g.from-1, "person:") && r.toks[g.from].form != r.toks[g.from].base {
			return aspectMade
		}
	}
	for j := i - 1; j >= 0 && r.signs[j].clause == g.clause; j-- {
		switch r.signs[j].says {
		case "request":
			if r.official(r.signs[j].from) {
				return aspectBare
			}
			return aspectAsked
		case "done":
			return aspectMade
		}
	}
	for j := i + 1; j < len(r.signs) && r.signs[j].clause == g.clause; j++ {
		switch r.signs[j].says {
		case "request":
			return aspectAsked
		case "done":
			return aspectMade
		}
	}
	return aspectBare
}

// official reports whether an official stands right before a token.
func (r *deadReader) official(i int) bool {
	return i > 0 && slices.Contains([]string{"r1", "r2", "ref", "referee", "official", "scorer", "umpire"}, r.toks[i-1].form)
}

// signAt reports whether a sign that begins so covers a token.
func (r *deadReader) signAt(at int, prefix string) bool {
	return slices.ContainsFunc(r.signs, func(g sign) bool {
		return g.from <= at && at < g.to && strings.HasPrefix(g.says, prefix)
	})
}

// near reports whether a sign stands close before another one in its clause.
func (r *deadReader) near(i int, says string) bool {
	for j := i - 1; j >= 0 && r.signs[j].clause == r.signs[i].clause && r.signs[i].from-r.signs[j].to < 4; j-- {
		if r.signs[j].says == says {
			return true
		}
	}
	return false
}

func (r *deadReader) says(s string) bool {
	return slices.ContainsFunc(r.signs, func(g sign) bool { return g.says == s })
}

// tells reports whether the words state the fact.
func (r *deadReader) tells(f play.FactID) bool {
	return slices.ContainsFunc(r.signs, func(g sign) bool { return strings.HasPrefix(g.says, string(f)+"=") })
}

// choose finds the act that the question is about: the one most plainly asked
// for, the last of several. Acts that have nothing to do with one another leave
// it open.
func (r *deadReader) choose(ms []mention) (mention, bool) {
	best := -1
	for i, m := range ms {
		if m.aspect > aspectBare && (best < 0 || m.aspect >= ms[best].aspect) {
			best = i
		}
	}
	if best < 0 {
		return r.unnamed(ms)
	}
	m := ms[best]
	if m.kind == deadball.Dispute && slices.ContainsFunc(r.signs, func(g sign) bool { return strings.HasPrefix(g.says, "card:") }) {
		m.kind = deadball.Misconduct // protests, by somebody who had a card
	}
	for _, o := range ms {
		context := o.kind == deadball.TimeOut || o.kind == deadball.Substitution
		switch {
		case o.kind == m.kind, o.at == m.at, o.aspect == aspectBare, o.aspect == aspectMade && context:
		case !slices.Contains(deadBeside, [2]deadball.Kind{m.kind, o.kind}):
			return mention{}, false
		}
	}
	return m, true
}

// unnamed is the act that follows from what is told, where none is named: a
// player is hurt, and who is left on the bench or that play was stopped is told;
// a substitute comes too late; a ball is driven before the serve is due.
func (r *deadReader) unnamed(ms []mention) (mention, bool) {
	for _, m := range ms { // a substitute is, or is not, in the zone in time
		if m.kind == deadball.Substitution && r.tells(deadball.InZone) {
			m.aspect = aspectMade
			return m, true
		}
	}
	for _, g := range r.signs { // a serve that is driven at somebody before its time
		if g.says == "blast" && r.says("temper") && r.says(string(deadball.Moment)+"="+string(deadball.BeforeServe)) {
			return mention{kind: deadball.Misconduct, aspect: aspectMade, at: g.from, clause: g.clause}, true
		}
	}
	for _, g := range r.signs {
		if g.says != "hurt" {
			continue
		}
		m := mention{aspect: aspectMade, at: g.from, clause: g.clause}
		switch {
		case r.tells(deadball.BenchLeft):
			m.kind = deadball.PlayerOut
		case r.says("halt"):
			m.kind = deadball.InjuryStop
		default:
			return mention{}, false
		}
		return m, true
	}
	return mention{}, false
}
