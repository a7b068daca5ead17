package notation

import (
	"regexp"
	"strings"
	"sync"

	"example.org/netpost/engine/court"
	"example.org/netpost/engine/play"
)

// whenUsed is an expression that is made ready when the first text wants it:
// few texts do, and the start of the program does not wait for it.
func whenUsed(expr string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(expr) })
}

// The clauses of a history of a set as typed. A side is A or B, us or them, or
// a word that the line-up gave it.
var (
	sixForm     = `((?:#?\w{1,4}[ -]+){5}#?\w{1,4})`
	sideForm    = `([\w]+?)(?:'s)?`
	lineupForms = []func() *regexp.Regexp{
		whenUsed(`(?i)^(?:the )?` + sideForm + ` (?:line-?up|line up|starting six|starting lineup|order|starts)(?: is| are|:)? ` + sixForm + `$`),
		whenUsed(`(?i)^(?:the )?(?:line-?up|line up|starting six|starting lineup|order) (?:for|of) ` + sideForm + `(?: is|:)? ` + sixForm + `$`),
	}
	firstForm   = whenUsed(`(?i)^` + sideForm + ` (?:serves?|served|starts? serving) first(?: and (.+))?$`)
	ralliesForm = whenUsed(`(?i)^(?:the )?(?:rallies|points) (?:are |were )?(?:won by|go to|went to|to)((?: \w+)+)$`)
	wonForm     = whenUsed(`(?i)^(?:then )?` + sideForm + ` (?:wins?|won|scores?|scored|gets?|got)(?: (?:the )?(?:next )?(\w+)?(?: ?(?:rally|rallies|point|points|in a row))*)?$`)
	won2Form    = whenUsed(`(?i)^(?:then )?(?:won|scored|win|wins) (?:the )?(?:next )?(\w+)(?: (?:rally|rallies|point|points|in a row))*$`)
	sideoutForm = whenUsed(`(?i)^(?:then )?` + sideForm + ` (?:sides? out|sided out|gets? (?:a |the )?side-?out)$`)
	subForm     = whenUsed(`(?i)^` + sideForm + ` (?:subs?|substitutes?) #?(\w{1,4}) (?:in )?for #?(\w{1,4})$`)
	subTwoForm  = whenUsed(`(?i)^#?(\w{1,4}) (?:subs? in|subbed in|comes in|goes in|came in|went in|in) for #?(\w{1,4})(?: of (\w+))?$`)
	liberoForm  = whenUsed(`(?i)^` + sideForm + ` libero #?(\w{1,4}) (?:comes in|goes in|in|replaces)(?: for)? #?(\w{1,4})$`)
	servedForm  = whenUsed(`(?i)^#?(\w{1,4}) (?:of (\w+) )?(?:serves|served) and ` + sideForm + ` (?:wins|won|loses|lost)(?: the rally| it)?$`)
	wantForms   = []struct {
		form func() *regexp.Regexp
		is   court.Wanted
	}{
		{whenUsed(`(?i)^(?:so )?(?:who|who's) (?:is front row|is in the front row|front row|is in front)(?: now)?$`), court.WantFront},
		{whenUsed(`(?i)^(?:so )?(?:who is where|who's where|where is everyone|where is everybody|what is the order)(?: now)?$`), court.WantWhere},
		{whenUsed(`(?i)^(?:so )?(?:who serves|who is serving|who's serving|who should serve|who is the server|who is up|who serves next|next server|who is next to serve|whose serve)(?: next| now)?$`), court.WantServer},
	}
)

// readHistory reads a set as typed: a line-up, who served first, who won the
// rallies, substitutions, and what is asked. Every clause must be one of these.
func readHistory(text string) (*court.Lineup, bool) {
	if !tellsLineup(text) {
		return nil, false
	}
	h := &court.History{}
	l := &court.Lineup{History: h}
	r := &historyRead{l: l, h: h, sides: map[string]play.Team{}}
	for clause := range strings.FieldsFuncSeq(text, func(r rune) bool { return strings.ContainsRune(",.;?!\n", r) }) {
		c := strings.TrimSpace(clause)
		if c == "" {
			continue
		}
		if !r.clause(c) {
			return nil, false
		}
	}
	if h.Start == [3][6]string{} || l.Check() != nil {
		return nil, false
	}
	for n, t := range r.sides {
		switch {
		case n == "a" || n == "b" || n == "us" || n == "them":
		default:
			l.Names[t] = []string{n}
		}
	}
	if _, ok := r.sides["us"]; ok {
		l.Names[play.A], l.Names[play.B] = []string{"us"}, []string{"them"}
	}
	return l, true
}

// tellsLineup reports whether a text has one of the words that every line-up is
// told with.
func tellsLineup(text string) bool {
	text = strings.ToLower(text)
	return strings.Contains(text, "line") || strings.Contains(text, "start") || strings.Contains(text, "order")
}

type historyRead struct {
	l     *court.Lineup
	h     *court.History
	sides map[string]play.Team
	last  play.Team
}

// side is the team that a word names; a new word goes to a free one.
func (r *historyRead) side(w string) play.Team {
	w = strings.ToLower(w)
	switch w {
	case "we", "our", "ours":
		w = "us"
	case "they", "their", "theirs":
		w = "them"
	}
	if t, ok := r.sides[w]; ok {
		r.last = t
		return t
	}
	t := play.NoTeam
	switch w {
	case "a", "us":
		t = play.A
	case "b", "them":
		t = play.B
	case "blue", "white", "red", "black", "green", "gold", "home":
		t = play.A
	case "visitors", "visitor", "away":
		t = play.B
	default:
		return play.NoTeam
	}
	for _, old := range r.sides {
		if old == t {
			t = t.Other()
			break
		}
	}
	if len(r.sides) > 1 {
		return play.NoTeam
	}
	r.sides[w] = t
	r.last = t
	return t
}

func (r *historyRead) clause(c string) bool {
	for _, w := range wantForms {
		if w.form().MatchString(c) {
			r.l.Asked = w.is
			return true
		}
	}
	for _, f := range lineupForms {
		if m := f().FindStringSubmatch(c); m != nil {
			t := r.side(m[1])
			ps := strings.FieldsFunc(m[2], func(r rune) bool { return r == ' ' || r == '-' || r == '#' })
			if t == play.NoTeam || len(ps) != 6 {
				return false
			}
			r.h.Start[t] = [6]string(ps)
			return true
		}
	}
	won := func(t play.Team, n string) bool {
		times, ok := 1, true
		switch strings.ToLower(n) {
		case "", "the", "a", "it", "rally", "point":
		default:
			times, ok = counted0(strings.ToLower(n))
		}
		if !ok || t == play.NoTeam || times > 60 {
			return false
		}
		for range times {
			r.h.Entries = append(r.h.Entries, court.Entry{What: court.Won, Team: t})
		}
		return true
	}
	add := func(e court.Entry) bool {
		r.h.Entries = append(r.h.Entries, e)
		return e.Team != play.NoTeam
	}
	if m := firstForm().FindStringSubmatch(c); m != nil {
		r.h.First = r.side(m[1])
		if m[2] != "" {
			w := won2Form().FindStringSubmatch(m[2])
			return w != nil && won(r.h.First, w[1])
		}
		return r.h.First != play.NoTeam
	}
	if m := ralliesForm().FindStringSubmatch(c); m != nil {
		for n := range strings.FieldsSeq(m[1]) {
			if !won(r.side(n), "") {
				return false
			}
		}
		return true
	}
	if m := servedForm().FindStringSubmatch(c); m != nil {
		lost := strings.Contains(strings.ToLower(c), " loses") || strings.Contains(strings.ToLower(c), " lost")
		t := r.side(m[3])
		if lost {
			t = t.Other()
		}
		return add(court.Entry{What: court.Won, Team: t, Player: m[1]})
	}
	if m := liberoForm().FindStringSubmatch(c); m != nil {
		return add(court.Entry{What: court.LiberoIn, Team: r.side(m[1]), Player: m[2], Out: m[3]})
	}
	if m := subForm().FindStringSubmatch(c); m != nil {
		return add(court.Entry{What: court.Substituted, Team: r.side(m[1]), Player: m[2], Out: m[3]})
	}
	if m := subTwoForm().FindStringSubmatch(c); m != nil {
		t := play.NoTeam
		if m[3] != "" {
			t = r.side(m[3])
		} else if len(r.sides) == 1 || r.h.Start[play.B] == ([6]string{}) || r.h.Start[play.A] == ([6]string{}) {
			t = play.A // the one side whose line-up is told
			if r.h.Start[play.A] == ([6]string{}) {
				t = play.B
			}
		}
		return add(court.Entry{What: court.Substituted, Team: t, Player: m[1], Out: m[2]})
	}
	if m := sideoutForm().FindStringSubmatch(c); m != nil {
		return won(r.side(m[1]), "")
	}
	if m := won2Form().FindStringSubmatch(c); m != nil { // "we serve first, won 4"
		return won(r.last, m[1])
	}
	if m := wonForm().FindStringSubmatch(c); m != nil {
		return won(r.side(m[1]), m[2])
	}
	return false
}
