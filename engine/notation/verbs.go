package notation

import "example.org/netpost/engine/play"

// A verb says what happens in an event: of one ("touches"), of many or us
// ("touch"), and in the past; then what is acted on, and that again in a
// clause where the play is known ("when she touched it").
type verb struct {
	kind           play.Kind
	action         play.Action
	one, many, was string
	object, it     string
}

// verbs has a row for every kind of event and for every action of a contact.
var verbs = []verb{
	{play.Contact, play.Touch, "touches", "touch", "touched", "the ball", "it"},
	{play.Contact, play.Pass, "passes", "pass", "passed", "the ball", "it"},
	{play.Contact, play.Dig, "digs", "dig", "dug", "the ball", "it"},
	{play.Contact, play.Set, "sets", "set", "set", "the ball", "it"},
	{play.Contact, play.Attack, "attacks", "attack", "attacked", "the ball", "it"},
	{play.Contact, play.Tip, "tips", "tip", "tipped", "the ball", "it"},
	{play.Contact, play.Block, "blocks", "block", "blocked", "the ball", "it"},
	{play.Contact, play.Save, "saves", "save", "saved", "the ball", "it"},
	{play.Contact, play.Press, "presses", "press", "pressed", "the ball", "it"},
	{play.Attempt, "", "goes up", "go up", "went up", "to block without touching the ball", "to block"},
	{play.NetTouch, "", "touches", "touch", "touched", "the net", "the net"},
	{play.Line, "", "goes", "go", "went", "over the centre line", "over the centre line"},
	{play.Reach, "", "reaches", "reach", "reached", "over the net without touching the ball", "over the net"},
	{play.Bump, "", "runs", "run", "ran", "into an opponent", "into an opponent"},
	{play.Support, "", "takes", "take", "took", "hold of something", "hold"},
	{play.Serve, "", "serves", "serve", "served", "", ""},
	{play.Land, "", "lands", "land", "landed", "", ""},
	{play.Strike, "", "hits", "hit", "hit", "something", "something"},
	{play.Cross, "", "goes", "go", "went", "to the plane of the net", "to the plane of the net"},
	{play.Whistle, "", "blows", "blow", "blew", "", ""},
	{play.Intrusion, "", "comes", "come", "came", "onto the court", "onto the court"},
	{play.Toss, "", "tosses", "toss", "tossed", "the ball without serving it", "it without serving"},
	{play.Lapse, "", "lets", "let", "let", "the count for the serve go by", "the count for the serve go by"},
	{play.Injury, "", "gets", "get", "got", "hurt in the rally", "hurt in the rally"},
	{play.Dispute, "", "disagrees", "disagree", "disagreed", "", ""},
}

func verbOf(e play.Event) verb {
	for _, v := range verbs {
		if v.kind == e.Kind && (v.action == e.Action || e.Kind != play.Contact) {
			return v
		}
	}
	return verb{one: "acts", many: "act", was: "acted"}
}

// objects are the facts whose clause takes the place of the verb's object,
// with the word before it.
var objects = []struct {
	fact   play.FactID
	before string
}{
	{play.How, ""},
	{play.Lands, ""},
	{play.Part, ""},
	{play.Struck, ""},
	{play.What, "hold of "},
}

// object is what the event's verb acts on: a told fact's words, or what the
// verb has of its own.
func object(p *play.Rally, e play.Event, own string) string {
	for _, o := range objects {
		if v := p.Get(play.Key{Fact: o.fact, Of: e.ID}); v != play.Unknown {
			f, _ := play.FactByID(o.fact)
			return o.before + in(p, f.Words(v), e.Team)
		}
	}
	return own
}

func isObject(id play.FactID) bool {
	for _, o := range objects {
		if o.fact == id {
			return true
		}
	}
	return false
}

// past is an event in a clause about one of its facts, k: "A's setter touched
// it", "the ball hit the ceiling". It leaves out what k itself says, and
// counts where the same player did the same before or after.
func past(p *play.Rally, e play.Event, k play.FactID) string {
	v := verbOf(e)
	o := v.it
	if !isObject(k) {
		o = object(p, e, o)
	}
	return join(Who(p, e.ID), v.was, o, times(p, e))
}

// times says which of several like acts of one player an event is.
func times(p *play.Rally, e play.Event) string {
	n, of := 0, 0
	for _, f := range p.Events {
		if f.Kind == e.Kind && f.Action == e.Action && f.Player == e.Player && (f.Team == e.Team || e.Ball()) {
			of++
		}
		if f.ID == e.ID {
			n = of
		}
	}
	if of < 2 {
		return ""
	}
	return "the " + ordinal(n) + " time"
}

// join puts a space between the words that are not empty.
func join(words ...string) string {
	s := ""
	for _, w := range words {
		if w == "" {
			continue
		}
		if s != "" {
			s += " "
		}
		s += w
	}
	return s
}
