package bot

import (
	"slices"
	"strings"

	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/play"
)

// differentLabel is the button for whoever saw a play otherwise.
const differentLabel = "Saw it differently"

// ownView is somebody's own view of a play as only they see it: without its
// ruling, which is for when it is in.
func (t *turn) ownView(s sighting) Message {
	mine, _ := s.by(t.Who.Person)
	d := t.answered(s.Question, lay(s.given, mine.facts...))
	doc := Doc{Blocks: []Block{Heading{"How did you see it?", Plain}, Quote{Line(d.Text)}}}
	var saw []string
	for _, f := range mine.facts {
		saw = append(saw, d.clause(f.Key, f.Value))
	}
	state := "with you: nobody sees it until you hand it in"
	switch others := len(s.in()); {
	case mine.Handed.IsZero():
	case mine.Private && others < 2:
		state = "in, sealed: it is shown once another is in"
	default:
		state = "in, and shown where the play was asked"
	}
	name := "not shown"
	if mine.Name != "" {
		name = mine.Name + ", shown while everybody with a view agrees"
	}
	fields := Fields{[]Field{{"Read as", lines(d.answer.Read)}, {"You saw", lines(saw)}, {"Stands", []Text{Line(state)}}}}
	if !mine.Handed.IsZero() {
		fields.Items = append(fields.Items, Field{"Your name", []Text{Line(name)}})
	}
	doc.Blocks = append(doc.Blocks, fields)
	doc.Blocks = append(doc.Blocks, t.ownButtons(s, mine, d)...)
	doc.Blocks = filled(doc.Blocks)
	return Message{Doc: doc}
}

func (t *turn) ownButtons(s sighting, mine seen, d dialogue) []Block {
	var out []Block
	asked := play.Key{}
	if tree := d.answer.Tree; tree != nil && tree.Ask.Fact != answer.CodeFact {
		asked = play.Key{Fact: play.FactID(tree.Ask.Fact), Of: tree.Ask.Of}
		b := Buttons{Label: tree.Ask.Words}
		for _, v := range tree.Ask.Values {
			b.add(v.Words, "see", d.ID, factName(tree.Ask)+"="+v.ID)
		}
		out = append(out, b)
	}
	other := Buttons{Label: "It was otherwise"}
	for _, k := range d.seeable() {
		f, ok := d.subject.Fact(k.Fact)
		if !ok || k == asked {
			continue
		}
		now := d.subject.Get(k)
		if now == play.Unknown {
			now = d.subject.Presumption(k)
		}
		for _, c := range f.Values {
			label := upper(d.clause(k, c.Value))
			if c.Value == now || len(other.Items) == mostFacts || d.subject.Tell(k, c.Value).Check() != nil ||
				slices.ContainsFunc(other.Items, func(b Button) bool { return b.Label == Clip(label, longestLabel) }) {
				continue
			}
			other.add(label, "see", d.ID, k.String()+"="+string(c.Value))
		}
	}
	also := Buttons{Label: "Also"}
	also.add("In my own words", "sight", d.ID)
	if n := len(mine.facts); n > 0 {
		also.add("Take back: "+d.clause(mine.facts[n-1].Key, mine.facts[n-1].Value), "unsee", d.ID)
	}
	hand := Buttons{Label: "Hand it in"}
	if mine.Handed.IsZero() || mine.Private && len(s.in()) < 2 {
		hand.add("Show it now", "hand", d.ID, handOpen)
	}
	switch {
	case mine.Handed.IsZero() && !s.open: // nobody else can give one
	case mine.Handed.IsZero():
		hand.add("Sealed, until another is in", "hand", d.ID, handSealed)
	case mine.Name == "":
		also.add("Show my name", "name", d.ID)
	default:
		also.add("Take my name out", "unname", d.ID)
	}
	for _, b := range []Buttons{other, also, hand} {
		if len(b.Items) > 0 {
			out = append(out, b)
		}
	}
	return out
}

// seeable are the facts that somebody may have seen otherwise: first what was
// told, then what else would change the ruling.
func (d dialogue) seeable() []play.Key {
	out := d.arguable()
	for _, b := range d.answer.Changes {
		for _, g := range b.When {
			if k := (play.Key{Fact: play.FactID(g.Fact), Of: g.Of}); d.subject != nil && !slices.Contains(out, k) {
				out = append(out, k)
			}
		}
	}
	return out
}

// viewsMessage is a play with the views of it that are in.
func (t *turn) viewsMessage(s sighting) Message {
	return Message{Doc: t.viewsDoc(s), More: Token{"both", []string{s.ID}}.String()}
}

func (t *turn) viewsDoc(s sighting) Doc {
	in := s.in()
	told := seen{}
	switch {
	case len(in) == 0:
		return s.invite("How did each of you see it?")
	case len(in) == 1 && in[0].Private:
		return s.invite("An official saw this in their own way, and has given their facts")
	case len(in) == 1:
		return t.compared(s, told, in[0], [2]string{"As told", "The other view"})
	}
	labels := [2]string{"First view", "Second view"}
	if in[0].Name != "" && in[1].Name != "" {
		labels[0] += ", " + in[0].Name
		labels[1] += ", " + in[1].Name
	}
	return t.compared(s, in[0], in[1], labels)
}

// invite asks for views.
func (s sighting) invite(head string) Doc {
	b := Buttons{Label: "Your view"}
	b.add("Give my facts", "saw", s.ID)
	f := Fields{[]Field{{"Read as", lines(s.answer.Read)}, {"Told since", lines(s.told())}}}
	return Doc{Tone: Open, Blocks: filled([]Block{
		Heading{head, Open}, Quote{Line(s.Text)}, f,
		Para{Line("Give yours: what each saw stays with them until both are in. Then the ruling under each view is shown here, without names.")},
		b,
	})}
}

// compared shows two views side by side.
func (t *turn) compared(s sighting, first, second seen, labels [2]string) Doc {
	c := answer.Compare(s.Text, optionsOf(t.assoc, s.Question, s.given), first.facts, second.facts)
	head, mark := Heading{}, Open
	switch {
	case c.First.Error != nil || c.Second.Error != nil:
		head, mark = Heading{"A view fits the play no longer", Plain}, Plain
	case !c.Ruled:
		head, mark = Heading{"I can't say whether it matters", Plain}, Plain
	case !c.Alike:
		head = Heading{"It matters: the two views are ruled differently", Open}
	case len(c.Idle) == 0:
		mark = tone(c.First)
		head = Heading{"The two views come to one play: " + gistOf(c.First), mark}
	default:
		mark = tone(c.First)
		head = Heading{"It makes no difference: " + gistOf(c.First), mark}
	}
	d := Doc{Tone: mark}
	for _, caution := range c.First.Cautions {
		d.Blocks = append(d.Blocks, Heading{caution, Care})
	}
	d.Blocks = append(d.Blocks, head, Quote{Line(s.Text)})
	side := func(label string, v seen, a answer.Answer) Field {
		var ls []Text
		for _, f := range lay(s.given, v.facts...) {
			ls = append(ls, Line(s.clause(f.Key, f.Value)))
		}
		if ls == nil {
			ls = append(ls, Line("as the words say"))
		}
		return Field{label, append(ls, Text{{gistOf(a), Strong}})}
	}
	fields := Fields{[]Field{
		{"Splits them", asks(c.Split)},
		side(labels[0], first, c.First),
		side(labels[1], second, c.Second),
		{"No difference", idles(c.Idle)},
	}}
	if c.Ruled {
		fields.Items = append(fields.Items, Field{"Rule", ruleLines(bothRules(c))})
	}
	d.Blocks = append(d.Blocks, fields, Aside{Line("Neither view is taken for right: that is for the crew. A result is not overturned.")})
	b := Buttons{Label: "Also"}
	if len(s.in()) < 2 {
		b.add(differentLabel, "saw", s.ID)
	} else {
		b.add("Change my view", "saw", s.ID)
	}
	b.add("Ask a mentor", "mentor", s.ID)
	d.Blocks = filled(append(d.Blocks, b))
	return d
}

// gistOf is an answer in one line, without a capital.
func gistOf(a answer.Answer) string {
	switch {
	case a.Error != nil:
		return a.Error.What
	case a.Outcome == answer.Depends:
		return "it turns on this: " + a.Tree.Ask.Words
	case a.Kind == answer.None, len(a.Could) > 0, a.Outcome == "" && a.Reason != "":
		return lower(headline(a))
	}
	return result(answer.Branch{Verdict: a.Verdict, Answer: a.Answer})
}

func lower(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

func asks(ds []answer.Difference) []Text {
	var out []Text
	for _, d := range ds {
		out = append(out, Text{{d.Ask, Strong}})
	}
	if len(ds) > 1 {
		out = append(out, Line("Together: agreed on one alone, they could still differ."))
	}
	return out
}

// idles are the facts that two views differ in and that change nothing.
func idles(ds []answer.Difference) []Text {
	var out []Text
	for _, d := range ds {
		out = append(out, Line(d.Ask))
	}
	return out
}

// bothRules are the rules that either ruling rests on, each once.
func bothRules(c answer.Comparison) []answer.Rule {
	out := slices.Clone(c.First.Rules)
	for _, r := range c.Second.Rules {
		if !slices.Contains(out, r) {
			out = append(out, r)
		}
	}
	slices.SortStableFunc(out, func(a, b answer.Rule) int {
		return slices.IndexFunc(out, func(r answer.Rule) bool { return r.Title == a.Title }) -
			slices.IndexFunc(out, func(r answer.Rule) bool { return r.Title == b.Title })
	})
	return out
}
