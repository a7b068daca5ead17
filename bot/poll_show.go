package bot

import (
	"fmt"
	"slices"
	"strings"

	"example.org/netpost/bot/store"
	"example.org/netpost/engine/answer"
)

// closes says when a poll closes.
func closes(p store.Poll) string {
	if p.Closes.IsZero() {
		return "when a mentor closes it"
	}
	return "by itself " + moment(p.Closes)
}

// pollPreview shows a mentor a play that is to be put to the crew.
func (d dialogue) pollPreview(offered []choice) Doc {
	var l List
	for _, c := range offered {
		l.Items = append(l.Items, Line(c.words))
	}
	b := Buttons{Label: "Put it to the crew here"}
	for _, s := range spans {
		b.add(s.words, "put", d.ID, fmt.Sprint(s.hours))
	}
	doc := Doc{Blocks: []Block{
		Heading{"Put this play to the crew?", Plain}, Quote{Line(d.Text)},
		Para{Line("Nothing is posted yet, and only you see this. The crew gets the play as it was read, and these calls to choose among:")},
		l,
		Para{Line("When it closes, all see the counts and this ruling:")},
	}}
	doc.Blocks = append(doc.Blocks, d.plain().Blocks...)
	doc.Blocks = append(doc.Blocks, b)
	return doc
}

// pollDoc is the board of a poll.
func (d dialogue) pollDoc(p store.Poll, offered []choice) Doc {
	var doc Doc
	for _, c := range d.answer.Cautions {
		doc.Blocks = append(doc.Blocks, Heading{c, Care})
	}
	if !p.Closed.IsZero() {
		doc.Blocks = append(doc.Blocks, Heading{"Closed: a play that you ruled on together", Plain}, Quote{Line(d.Text)},
			Para{Line("What came of it is shown on its own.")})
		return doc
	}
	b := Buttons{Label: "Your call"}
	for _, c := range offered {
		b.add(c.words, "vote", d.ID, c.call, c.team)
	}
	m := Buttons{Label: "Mentors"}
	m.add("Close it", "close", d.ID)
	doc.Tone = Open
	doc.Blocks = append(doc.Blocks, Heading{"What do you call?", Open}, Quote{Line(d.Text)},
		Fields{[]Field{{"Read as", lines(d.answer.Read)}, {"Closes", []Text{Line(closes(p))}}}},
		Para{Line("Nobody sees who called what. You can change your call until it closes; then the counts and the ruling are shown.")},
		b, m)
	doc.Blocks = filled(doc.Blocks)
	return doc
}

// pollsDoc lists the plays that are open.
func pollsDoc(open []store.Poll, texts []string) Doc {
	if len(open) == 0 {
		return Doc{Blocks: []Block{Heading{"No play is put to a crew", Plain}, Para{Line("To put one, say in your crew's channel: poll, and the play. You see it first.")}}}
	}
	d := Doc{Blocks: []Block{Heading{many(len(open), "play is", "plays are") + " put to a crew", Plain}}}
	var l List
	b := Buttons{Label: "Mentors"}
	for i, p := range open[:min(len(open), mostCalls)] {
		l.Items = append(l.Items, Line(fmt.Sprintf("%d. %s (%s so far; closes %s)", i+1, Clip(oneLineOf(texts[i]), 120), many(p.Votes, "call", "calls"), closes(p))))
		b.add(fmt.Sprintf("Close %d", i+1), "close", p.Question)
	}
	d.Blocks = append(d.Blocks, l)
	if n := len(open) - mostCalls; n > 0 {
		d.Blocks = append(d.Blocks, Aside{Line(fmt.Sprintf("And %d more, once these are closed.", n))})
	}
	d.Blocks = append(d.Blocks, b)
	return d
}

// resultDoc is what came of a poll: the counts, the ruling, what split the
// members, and the notes.
func (t *turn) resultDoc(d dialogue, counts []store.VoteCount) Doc {
	doc := d.plain()
	at := 0 // after what comes before the ruling: people first, an association's own
	for at < len(doc.Blocks) {
		if h, ok := doc.Blocks[at].(Heading); ok && h.Text == headline(d.answer) {
			break
		}
		at++
	}
	if at < len(doc.Blocks) {
		at++
	}
	votes, agreed := 0, 0
	offered := t.choices(d)
	var said []Text
	for _, c := range counts {
		votes += c.Members
		if d.agrees(c.Call, c.Team) {
			agreed += c.Members
		}
		said = append(said, Text{{fmt.Sprint(c.Members), Strong}, {Text: " " + callWords(offered, c)}})
	}
	fields := Fields{}
	switch {
	case votes == 0:
		fields.Items = append(fields.Items, Field{"Calls", []Text{Line("nobody made one")}})
	case votes < leastVoters:
		fields.Items = append(fields.Items, Field{"Calls", []Text{Line("fewer than three made one, so they are not shown")}})
	default:
		fields.Items = append(fields.Items, Field{"Calls", said},
			Field{"As the ruling", []Text{Line(fmt.Sprintf("%d of %d", agreed, votes))}},
			Field{"Split you", t.splitting(d, counts)})
	}
	head := slices.Clone(doc.Blocks[:at])
	head = append(head, Quote{Line(d.Text)}, fields)
	doc.Blocks = filled(append(head, doc.Blocks[at:]...))
	b := Buttons{Label: "Also"}
	b.add(differentLabel, "saw", d.ID)
	b.add("Ask a mentor", "mentor", d.ID)
	b.add(disagreeLabel, "differ", d.ID)
	doc.Blocks = append(doc.Blocks, Aside{Line("Ruled together: nobody sees who called what.")}, b)
	return doc
}

// callWords is a call as it was offered, else its ids.
func callWords(offered []choice, c store.VoteCount) string {
	for _, o := range offered {
		if o.call == c.Call && o.team == c.Team {
			return lower(o.words)
		}
	}
	s := strings.NewReplacer(":", ": ", "!", "", "+", ", ", "-", " ").Replace(c.Call)
	if c.Team != "" {
		s += ", against " + c.Team
	}
	return s
}

// splitting is the fact between the two calls that most members made.
func (t *turn) splitting(d dialogue, counts []store.VoteCount) []Text {
	o := optionsOf(t.assocAt(d.Where), d.Question, d.given)
	verdicts := answer.Calls(d.Text, o, mostChoices)
	var top []answer.Verdict
	turns := false
	for _, c := range counts { // most first
		if c.Call == depends {
			turns = turns || len(top) < 2
			continue
		}
		i := slices.IndexFunc(verdicts, func(v answer.Verdict) bool {
			call, team := v.ID()
			return call == c.Call && team == c.Team
		})
		if i >= 0 && len(top) < 2 {
			top = append(top, verdicts[i])
		}
	}
	if len(top) == 2 {
		return sides(answer.Between(d.Text, o, top[0], top[1]), top)
	}
	if tree := d.answer.Tree; turns && tree != nil && len(top) == 1 {
		return []Text{{{tree.Ask.Words, Strong}}}
	}
	return nil
}

// sides are the facts between two calls, with what each side makes of them.
func sides(ds []answer.Difference, top []answer.Verdict) []Text {
	var out []Text
	for _, f := range ds {
		out = append(out, Text{{f.Ask, Strong}})
		for i, g := range []answer.Given{f.First, f.Second} {
			if g.Words != "" {
				out = append(out, Line(g.Words+": "+verdict(top[i])))
			}
		}
	}
	return out
}
