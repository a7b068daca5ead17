package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// A unit is one word of an answer, in the form that the phrases have it.
type unit struct {
	form string
	side side // a word for a side
	used bool // taken by a phrase, or of no weight
}

// side says which side a word means: a team, the one that the question is
// about, the other one, or one that the play does not tell.
type side uint8

const (
	noSide side = iota
	sideA
	sideB
	ownSide
	otherSide
	lostSide // "our" where nobody is called us
)

// team is the side as a team, seen from the team that the question is about.
func (s side) team(asked play.Team) play.Team {
	switch s {
	case sideA:
		return play.A
	case sideB:
		return play.B
	case ownSide:
		return asked
	case otherSide:
		return asked.Other()
	}
	return play.NoTeam
}

// hear cuts an answer into clauses of units.
func hear(p *play.Rally, words string) [][]unit {
	var out [][]unit
	var now []unit
	ws := split(words)
	for i, w := range ws {
		parts, possessive := expand(w.raw)
		if w.mark != 0 || len(parts) == 1 && (parts[0] == "and" || parts[0] == "but") {
			if len(now) > 0 {
				out = append(out, now)
			}
			now = nil
			continue
		}
		if t := letterSide(p, ws, i, possessive); t != noSide {
			now = append(now, unit{form: parts[0], side: t})
			continue
		}
		for _, s := range parts {
			if article(s) == 0 && s != "team" {
				now = append(now, unit{form: s, side: sideOf(p, s)})
			}
		}
	}
	if len(now) > 0 {
		out = append(out, now)
	}
	for i := range out {
		out[i] = mergeOwn(out[i])
	}
	return out
}

// letterSide reads A, B, A's, "team a" as a side. A small a is the article.
func letterSide(p *play.Rally, ws []word, i int, possessive bool) side {
	raw := strings.TrimSuffix(strings.ToUpper(ws[i].raw[:1])+ws[i].raw[1:], "'s")
	raw = strings.TrimSuffix(raw, "’s")
	small := ws[i].raw[0] == 'a' && !possessive && (i == 0 || !strings.EqualFold(ws[i-1].raw, "team"))
	switch {
	case small:
		return noSide
	case raw == "A":
		return sideA
	case raw == "B":
		return sideB
	}
	return noSide
}

// sideOf reads a word as a side: a name that the play gives it, us and them
// where the play has either, or a word that goes by who acts.
func sideOf(p *play.Rally, s string) side {
	us := namedSide(p, "us")
	if us == noSide {
		us = flip(namedSide(p, "them"))
	}
	switch s {
	case "us", "we", "our", "ours", "my":
		return lost(us)
	case "them", "they", "their", "theirs":
		return lost(flip(us))
	case "own", "her", "his":
		return ownSide
	case "opponent", "opponents", "opposing", "other", "far":
		return otherSide
	}
	return namedSide(p, s)
}

func namedSide(p *play.Rally, s string) side {
	switch {
	case slices.Contains(p.Names[play.A], s):
		return sideA
	case slices.Contains(p.Names[play.B], s):
		return sideB
	}
	return noSide
}

func lost(s side) side {
	if s == noSide {
		return lostSide
	}
	return s
}

func flip(s side) side {
	switch s {
	case sideA:
		return sideB
	case sideB:
		return sideA
	}
	return noSide
}

// mergeOwn makes "our own" and "her own" one word for a side: the one that is
// known, else the side of the one who acts.
func mergeOwn(us []unit) []unit {
	out := us[:0:0]
	for _, u := range us {
		if n := len(out); n > 0 && u.side == ownSide && u.form == "own" && out[n-1].side != noSide {
			if out[n-1].side == lostSide {
				out[n-1].side = ownSide
			}
			continue
		}
		out = append(out, u)
	}
	return out
}

// find is the place of a phrase among units not yet used, and the side that
// stands for its "{side}"; -1 where it is not.
func find(us []unit, phrase []string) (at int, s side) {
next:
	for i := 0; i+len(phrase) <= len(us); i++ {
		s = noSide
		for j, w := range phrase {
			u := us[i+j]
			switch {
			case u.used:
				continue next
			case w == "{side}":
				if u.side == noSide {
					continue next
				}
				s = u.side
			case u.form != w:
				continue next
			}
		}
		return i, s
	}
	return -1, noSide
}

// take marks the units from i to j as used.
func take(us []unit, i, j int) {
	for ; i < j; i++ {
		us[i].used = true
	}
}
