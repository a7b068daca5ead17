package notation

import (
	"strings"

	"example.org/netpost/engine/play"
)

// sideWords are the names of a side that do not stand as they are: as the
// subject of a verb, and as the owner of a player or of half the court.
var sideWords = []struct {
	name, subject, owner string
	plural               bool
}{
	{"receiving", "the receiving team", "the receiving team's", false},
	{"serving", "the serving team", "the serving team's", false},
	{"them", "they", "their", true},
	{"us", "we", "our", true},
}

// called is the name that a side is printed by: the asker's, else its letter.
// "The attackers' blocker" would be true of a play and help nobody.
func called(p *play.Rally, t play.Team) string {
	n := p.Name(t)
	if n == "attackers" || n == "blockers" || n == "" {
		return t.String()
	}
	return n
}

// subject is a side as the subject of a verb, and whether it is a plural one.
func subject(p *play.Rally, t play.Team) (words string, plural bool) {
	n := called(p, t)
	if n == "" {
		return "somebody", false
	}
	for _, w := range sideWords {
		if w.name == n {
			return w.subject, w.plural
		}
	}
	return n, strings.HasSuffix(n, "s")
}

// owner is a side as the owner of a player or of its half of the court: "A's
// setter", "our side".
func owner(p *play.Rally, t play.Team) string {
	n := called(p, t)
	for _, w := range sideWords {
		if w.name == n {
			return w.owner
		}
	}
	switch {
	case n == "":
		return "somebody's"
	case strings.HasSuffix(n, "s"):
		return n + "'"
	}
	return n + "'s"
}

// in puts the sides' words into the clause of a fact of a thing of team t.
func in(p *play.Rally, words string, t play.Team) string {
	if !strings.Contains(words, "{") {
		return words
	}
	for _, s := range []struct {
		slot string
		team play.Team
	}{{"{A}", play.A}, {"{B}", play.B}} {
		if verb, ok := strings.CutPrefix(words, s.slot+" "); ok {
			who, plural := subject(p, s.team)
			if plural {
				verb = strings.Replace(strings.Replace(verb, "has ", "have ", 1), "is ", "are ", 1)
			}
			return who + " " + verb
		}
		words = strings.ReplaceAll(words, s.slot, owner(p, s.team))
	}
	if t == play.NoTeam {
		return strings.NewReplacer("{own}", "the player's", "{opp}", "the opponents'").Replace(words)
	}
	return strings.NewReplacer("{own}", owner(p, t), "{opp}", owner(p, t.Other())).Replace(words)
}

var ordinals = []string{"", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth"}

func ordinal(n int) string {
	if n > 0 && n < len(ordinals) {
		return ordinals[n]
	}
	return itoa(n) + "th"
}

func itoa(n int) string {
	if n < 0 {
		return "-" + itoa(-n)
	}
	if n < 10 {
		return string(rune('0' + n))
	}
	return itoa(n/10) + string(rune('0'+n%10))
}

// Who names a player, or the one who acts in an event, so that nobody else of
// the play goes by the same words: "A's setter", "our second blocker", "B's
// #8". An event of a team's unnamed player gives "one of A's players"; one of the ball
// alone "the ball".
func Who(p *play.Rally, id string) string {
	if pl, ok := p.Player(id); ok {
		return who(p, pl, "")
	}
	e, ok := p.Event(id)
	switch {
	case !ok:
		return "it"
	case e.Player != "":
		return Who(p, e.Player)
	case e.Ball():
		return "the ball"
	case e.Team != play.NoTeam:
		return "one of " + owner(p, e.Team) + " players"
	case e.Kind == play.Whistle:
		return "the whistle"
	case e.Kind == play.Intrusion:
		return "the thing from outside"
	case e.Kind == play.Dispute:
		return "the officials"
	}
	return "somebody"
}

// who names a player with a word of the row before the role.
func who(p *play.Rally, pl play.Player, row string) string {
	s := []string{owner(p, pl.Team)}
	if n, of := twin(p, pl); of > 1 {
		s = append(s, ordinal(n))
	}
	if row != "" {
		s = append(s, row)
	}
	if pl.Role == play.NoRole {
		s = append(s, "player")
	} else {
		s = append(s, string(pl.Role))
	}
	if pl.Label != "" {
		s = append(s, "#"+pl.Label)
	}
	return strings.Join(s, " ")
}

// twin counts the players that go by the same team, role and label, and says
// which of them pl is, in the order in which they first act.
func twin(p *play.Rally, pl play.Player) (n, of int) {
	seen := map[string]bool{}
	count := func(id string) {
		q, ok := p.Player(id)
		if !ok || seen[id] || q.Team != pl.Team || q.Role != pl.Role || q.Label != pl.Label {
			return
		}
		seen[id] = true
		of++
		if id == pl.ID {
			n = of
		}
	}
	for _, e := range p.Events {
		count(e.Player)
	}
	for _, q := range p.Players {
		count(q.ID)
	}
	return n, of
}
