package notation

import (
	"slices"
	"strings"
	"sync"

	"example.org/netpost/engine/play"
)

// verbForm is one form of a verb, with a blank on either side.
type verbForm struct {
	does string
	verb verb
}

// verbForms are the forms of the verbs, in the order of their table.
var verbForms = sync.OnceValue(func() []verbForm {
	var out []verbForm
	for _, v := range verbs {
		out = append(out, verbForm{" " + v.one + " ", v}, verbForm{" " + v.many + " ", v})
	}
	return out
})

// event takes the clause of an event with its order to the one before.
func (r *reprint) event(s string, order play.Value) bool {
	s += " "
	for _, f := range verbForms() {
		who, object, ok := strings.Cut(s, f.does)
		if !ok || !r.acts(f.verb, who, strings.TrimSpace(object)) {
			continue
		}
		if n := len(r.p.Events); order != play.Unknown {
			if n < 2 {
				return false
			}
			r.p = r.p.With(play.Key{Fact: play.Order, Of: r.p.Pair(n - 2)}, order)
		}
		return true
	}
	return false
}

// acts adds the event of one verb, if its subject and object fit.
func (r *reprint) acts(v verb, who, object string) bool {
	e := play.Event{ID: "e" + itoa(len(r.p.Events)+1), Kind: v.kind, Action: v.action}
	side := play.NoTeam
	if head, name, ok := cutLast(object, "on ", " side"); ok && e.Ball() {
		if side = r.owner(name); side == play.NoTeam {
			return false
		}
		object = head
	}
	if head, n, ok := cutLast(object, "on the ", " contact"); ok {
		if e.Number = slices.Index(ordinals, n); e.Number < 1 {
			return false
		}
		object = head
	}
	fact, value, ok := r.objectOf(v, object)
	if !ok || !r.does(&e, who) {
		return false
	}
	if side != play.NoTeam {
		e.Team = side
	}
	r.p = r.p.With(play.Key{}, play.Unknown) // a copy
	r.p.Events = append(slices.Clone(r.p.Events), e)
	if fact != "" {
		r.p = r.p.With(play.Key{Fact: fact, Of: e.ID}, value)
	}
	return true
}

// cutLast cuts "before X after" off the end of a text.
func cutLast(s, before, after string) (head, x string, ok bool) {
	t, ok := strings.CutSuffix(s, after)
	i := strings.LastIndex(t, before)
	if !ok || i < 0 {
		return s, "", false
	}
	return strings.TrimSpace(t[:i]), t[i+len(before):], true
}

// objectOf is the fact that an object tells, none for the verb's own object.
func (r *reprint) objectOf(v verb, object string) (play.FactID, play.Value, bool) {
	if object == v.object {
		return "", "", true
	}
	for _, o := range objects {
		f, _ := play.FactByID(o.fact)
		words, ok := strings.CutPrefix(object, o.before)
		if !ok || !slices.Contains(f.Kinds, v.kind) {
			continue
		}
		for _, c := range f.Values {
			if c.Words == words {
				return f.ID, c.Value, true
			}
		}
	}
	return "", "", false
}

// does finds who acts in an event.
func (r *reprint) does(e *play.Event, who string) bool {
	r.last = ""
	switch {
	case e.Ball():
		return who == "the ball"
	case e.Kind == play.Whistle && who == "the whistle", e.Kind == play.Intrusion && who == "something", e.Kind == play.Dispute && who == "the officials", who == "somebody":
		return true
	}
	if t := r.subject(who); t != play.NoTeam {
		e.Team = t
		return true
	}
	id, ok := r.player(who)
	if !ok {
		return false
	}
	pl, _ := r.p.Player(id)
	e.Player, e.Team, r.last = id, pl.Team, id
	return true
}

// player finds or adds the player of a name such as "A's first front-row
// setter #8".
func (r *reprint) player(s string) (string, bool) {
	var n naming
	row, ws := play.Unknown, strings.Fields(s)
	// The owner may be several words: "the serving team's".
	for len(ws) > 1 && !strings.HasSuffix(ws[0], "'s") && !strings.HasSuffix(ws[0], "'") && ws[0] != "our" && ws[0] != "their" {
		ws = append([]string{ws[0] + " " + ws[1]}, ws[2:]...)
	}
	if len(ws) < 2 {
		return "", false
	}
	if n.team = r.owner(ws[0]); n.team == play.NoTeam {
		return "", false
	}
	ws = ws[1:]
	if ws[0] == "same" {
		ws = ws[1:]
	} else if i := slices.Index(ordinals, ws[0]); i > 0 {
		n.nth, ws = i, ws[1:]
	}
	if len(ws) > 0 && (ws[0] == "front-row" || ws[0] == "back-row") {
		row, ws = play.Value(strings.TrimSuffix(ws[0], "-row")), ws[1:]
	}
	if len(ws) == 0 {
		return "", false
	}
	if n.role = play.Role(ws[0]); ws[0] == "player" {
		n.role = play.NoRole
	}
	if ws = ws[1:]; len(ws) > 0 {
		n.label, ws = strings.TrimPrefix(ws[0], "#"), ws[1:]
	}
	if len(ws) > 0 {
		return "", false
	}
	id, ok := r.who[n]
	if !ok {
		id = "p" + itoa(len(r.p.Players)+1)
		r.who[n] = id
		r.p = r.p.With(play.Key{}, play.Unknown) // a copy
		r.p.Players = append(slices.Clone(r.p.Players), play.Player{ID: id, Team: n.team, Role: n.role, Label: n.label})
	}
	if row != play.Unknown {
		r.p = r.p.With(play.Key{Fact: play.Row, Of: id}, row)
	}
	return id, true
}
