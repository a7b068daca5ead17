package bot

import (
	"fmt"

	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// view is a way to look at an answer.
type view string

// The views.
const (
	mainView    view = "ruling" // the ruling and why
	codesView   view = "codes"  // under every code
	changesView view = "change" // what would change it
)

// show lays a question's answer out with its buttons. A view that has nothing
// to show is the ruling.
func (t *turn) show(d dialogue, v view) Message {
	doc, v := t.lay(d, v)
	if told := d.told(); len(told) > 0 {
		doc.Blocks = append(doc.Blocks, Fields{[]Field{{"Told since", lines(told)}}})
	}
	doc.Blocks = append(doc.Blocks, t.buttons(d, v)...)
	m := Message{Doc: doc, About: d.ID, More: Token{"more", []string{d.ID, string(v)}}.String(), Pictures: t.pictures(d)}
	if len(m.Pictures) > 0 {
		m.Drawn = Token{"draw", []string{d.ID}}.String()
	}
	return m
}

func (t *turn) lay(d dialogue, v view) (Doc, view) {
	head := Doc{Tone: tone(d.answer)}
	for _, c := range d.answer.Cautions {
		head.Blocks = append(head.Blocks, Heading{c, Care})
	}
	head.Blocks = append(head.Blocks, Heading{headline(d.answer), tone(d.answer)})
	add := func(label string, ls []Text) (Doc, view) {
		head.Blocks = append(head.Blocks, Fields{[]Field{{label, ls}}})
		return head, v
	}
	switch v {
	case codesView:
		if ls := t.everyCode(d); len(ls) > 0 {
			return add("Every code", ls)
		}
	case changesView:
		if ls := changeLines(d.answer.Changes); len(ls) > 0 {
			return add("Would change", ls)
		}
	}
	return d.plain(), mainView
}

// plain is the ruling without what has a view of its own, and without buttons.
func (d dialogue) plain() Doc {
	a := d.answer
	a.Codes, a.Changes = nil, nil
	doc := Ruling(a)
	var blocks []Block
	for _, b := range doc.Blocks {
		if _, ok := b.(Buttons); !ok {
			blocks = append(blocks, b)
		}
	}
	doc.Blocks = blocks
	return doc
}

// everyCode has a line for each code.
func (t *turn) everyCode(d dialogue) []Text {
	o := optionsOf(t.assoc, d.Question, d.given)
	o.AllCodes = true
	a := answer.Ask(d.Text, o)
	if t := d.answer.Tree; t != nil && t.Ask.Fact == answer.CodeFact {
		a.Tree = nil // the ruling's tree says the same; here each code has its line
	}
	if len(a.Codes) > 0 {
		a.Code = answer.Maybe(a.Codes[0].Code) // with a code of its own among them, all are listed
	}
	return codeLines(a)
}

// told are the facts told since the question was asked, in words.
func (d dialogue) told() []string {
	var out []string
	for _, g := range d.given {
		out = append(out, d.clause(g.Key, g.Value))
	}
	return out
}

func (d dialogue) clause(k play.Key, v play.Value) string {
	switch {
	case k.Fact == answer.CodeFact:
		return "the code is " + string(v)
	case d.subject == nil:
		return k.String() + ": " + string(v)
	}
	return notation.ClauseOf(d.subject, k, v)
}

// buttons are the values of the deciding fact, then the other ways on.
func (t *turn) buttons(d dialogue, v view) []Block {
	var out []Block
	if tree := d.answer.Tree; tree != nil {
		b := Buttons{Label: tree.Ask.Words}
		for _, val := range tree.Ask.Values {
			b.add(val.Words, "give", d.ID, factName(tree.Ask)+"="+val.ID)
		}
		out = append(out, b)
	}
	also := Buttons{Label: "Also"}
	if d.answer.Tree != nil {
		also.add("In my own words", "words", d.ID)
	}
	if n := len(d.given); n > 0 && t.mine(d) {
		last := d.given[n-1]
		also.add("Take back: "+d.clause(last.Key, last.Value), "undo", d.ID)
	}
	if v != mainView {
		also.add("The ruling", "view", d.ID, string(mainView))
	}
	if v != codesView && len(d.answer.Codes) > 0 && (d.answer.Tree == nil || d.answer.Tree.Ask.Fact != answer.CodeFact) {
		also.add(codesLabel(d.answer), "view", d.ID, string(codesView))
	}
	if v != changesView && len(d.answer.Changes) > 0 {
		also.add("What would change it", "view", d.ID, string(changesView))
	}
	if d.subject != nil {
		also.add(differentLabel, "saw", d.ID)
	}
	also.add("Ask a mentor", "mentor", d.ID)
	also.add(disagreeLabel, "differ", d.ID)
	if d.Private && !t.Direct && !t.public {
		also.add("Share with the channel", "share", d.ID)
	}
	if len(also.Items) > 0 {
		out = append(out, also)
	}
	return out
}

// disagreeLabel is the button for whoever sees it otherwise.
const disagreeLabel = "I disagree"

// codesLabel says whether it is worth to look.
func codesLabel(a answer.Answer) string {
	n := 0
	for _, c := range a.Codes {
		if c.Differs {
			n++
		}
	}
	switch n {
	case 0:
		return "Other codes: alike"
	case 1:
		return "Other codes: 1 differs"
	}
	return fmt.Sprintf("Other codes: %d differ", n)
}

func factName(q answer.Question) string {
	if q.Of == "" {
		return q.Fact
	}
	return q.Fact + "@" + q.Of
}

// longestLabel is what every platform shows of a button.
const longestLabel = 75

// add adds a button. One whose state would be too long is left out: its fact
// can be told in words.
func (b *Buttons) add(label, verb string, args ...string) {
	if s, err := (Token{verb, args}).State(); err == nil {
		b.Items = append(b.Items, Button{Clip(label, longestLabel), s})
	}
}
