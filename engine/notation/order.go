package notation

import (
	"slices"

	"example.org/netpost/engine/play"
)

// eventWords name an event of a pair by what happened, where its actor does
// not: "the net first".
var eventWords = []struct {
	word string
	kind play.Kind
}{
	{"landed", play.Land},
	{"landing", play.Land},
	{"line", play.Line},
	{"net", play.NetTouch},
	{"serve", play.Serve},
	{"whistle", play.Whistle},
}

// order reads an answer to which of two events came first: "they touched
// first", "the setter before the blocker", "same time". It takes the words
// that it used, and gives Unknown where they do not settle it.
func (a *filling) order(us []unit) play.Value {
	if v := a.same(us); v != play.Unknown {
		return v
	}
	at := slices.IndexFunc(us, func(u unit) bool { return isOrderWord(u.form) })
	if at < 0 || slices.ContainsFunc(us, func(u unit) bool { return u.form == "not" || u.form == "never" }) {
		return play.Unknown
	}
	word := us[at].form
	if word == "first" && a.ordinalAt(us, at) { // "the first blocker" is somebody
		for i := at + 1; i < len(us); i++ {
			if isOrderWord(us[i].form) && !a.ordinalAt(us, i) {
				at, word = i, us[i].form
				break
			}
		}
	}
	left, right := a.event(us[:at]), a.event(us[at+1:])
	us[at].used = true
	switch earlier(word, left, right) {
	case 1:
		return play.Before
	case 2:
		return play.After
	}
	return play.Unknown
}

// earlier is which of two events came first where an order word stands between
// the events on its left and right; 0 stands for an event not named, and for
// no answer.
func earlier(word string, left, right int) int {
	switch word {
	case "first", "earlier":
		left, right = max(left, right), left*right
		if right != 0 {
			return 0
		}
	case "after":
		left, right = right, left
	case "before":
	default: // second, last, later, afterwards
		left, right = right, left
		if left != 0 {
			return 0
		}
	}
	switch {
	case left != 0 && left != right:
		return left
	case left == 0 && right != 0:
		return 3 - right
	}
	return 0
}

func (a *filling) same(us []unit) play.Value {
	for _, s := range sayings() {
		if s.fact == play.Order && s.value == play.Same {
			if i, _ := find(us, s.units); i >= 0 {
				take(us, i, i+len(s.units))
				for j := range us {
					if us[j].form == "both" || us[j].side != noSide {
						us[j].used = true
					}
				}
				a.actors(us)
				return play.Same
			}
		}
	}
	return play.Unknown
}

func isOrderWord(s string) bool {
	switch s {
	case "first", "before", "after", "earlier", "later", "second", "last", "afterwards":
		return true
	}
	return false
}

// ordinalAt reports whether the word at i counts like players: "first
// blocker" where there are two.
func (a *filling) ordinalAt(us []unit, i int) bool {
	if i+1 >= len(us) || slices.Index(ordinals, us[i].form) <= 0 {
		return false
	}
	r := play.Role(us[i+1].form)
	return slices.ContainsFunc(a.p.Players, func(pl play.Player) bool {
		_, of := twin(a.p, pl)
		return of > 1 && (pl.Role == r || pl.Role == play.NoRole && r == "player")
	})
}

// event is which event of the pair some words mean, 1 or 2; 0 where they mean
// neither or could mean both. It takes the words.
func (a *filling) event(us []unit) int {
	e1, e2 := pair(a.p, a.asked)
	both := []play.Event{e1, e2}
	var can []int
	hint := func(fits func(play.Event) bool) {
		var now []int
		for i, e := range both {
			if fits(e) && (can == nil || slices.Contains(can, i+1)) {
				now = append(now, i+1)
			}
		}
		if now == nil {
			now = []int{}
		}
		can = now
	}
	for i := 0; i < len(us); i++ {
		u := us[i]
		if u.used {
			continue
		}
		if ids, n := a.actorAt(us, i); n > 0 {
			take(us, i, i+n)
			hint(func(e play.Event) bool { return slices.Contains(ids, e.Player) })
			continue
		}
		if t := u.side.team(play.NoTeam); t != play.NoTeam {
			us[i].used = true
			hint(func(e play.Event) bool { return e.Team == t && !e.Ball() })
			continue
		}
		for _, w := range eventWords {
			if w.word == u.form {
				us[i].used = true
				hint(func(e play.Event) bool { return e.Kind == w.kind })
			}
		}
		if u.form == "ball" && (e1.Ball() != e2.Ball()) {
			hint(func(e play.Event) bool { return e.Ball() })
		}
	}
	if len(can) == 1 {
		return can[0]
	}
	return 0
}
