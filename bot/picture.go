package bot

import (
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/play"
)

// Draw makes the pictures that stand below an answer: of the situation as it
// was read, with the facts told since, nil where none was; in a form that the
// platform of the place shows. An answer of which there is nothing to draw has
// none.
type Draw func(Place, answer.Answer, play.Subject) []Picture

// pictures are those of an answer.
func (t *turn) pictures(d dialogue) []Picture {
	if t.Draw == nil || d.subject == nil {
		return nil
	}
	return t.Draw(t.Where, d.answer, d.subject)
}

// drawn shows the pictures of an answer alone, to whoever asks.
func (t *turn) drawn(d dialogue) Reply {
	ps := t.pictures(d)
	if len(ps) == 0 {
		return t.tell("There is nothing to draw of this.", "")
	}
	doc := Doc{Blocks: []Block{Heading{"The play as it was read", Plain}}}
	for _, p := range ps {
		doc.Blocks = append(doc.Blocks, Para{Line(p.Alt)})
	}
	return Say{Message: Message{Doc: doc, Pictures: ps}, Private: true, InThread: t.Where.Thread != ""}
}
