package bot

import (
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/play"
)

// Draw makes the pictures that stand below an answer: of the play as it was
// read, with the facts told since, nil where none was read. An answer of which
// there is nothing to draw has none.
type Draw func(answer.Answer, *play.Rally) []Picture

// pictures are those of an answer.
func (t *turn) pictures(d dialogue) []Picture {
	if t.Draw == nil {
		return nil
	}
	return t.Draw(d.answer, d.rally)
}
