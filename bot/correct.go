package bot

import (
	"context"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.org/netpost/bot/store"
	"example.org/netpost/casebook"
	"example.org/netpost/engine/answer"
)

// correction is what a correction says, as it is kept until it is sent.
type correction struct {
	Was string   `json:"was"`
	Now string   `json:"now"`
	Why []string `json:"why"`
}

// correctionKey is the key of the correction of one change: of the answer that
// was kept at a time to what it comes to now.
func correctionKey(c Change) string {
	sum := sha256.Sum256([]byte(fmt.Sprintf("%d\n%s\n%s", c.Question.Answer.At.UnixMicro(), c.Was.Key(), c.Now.Key())))
	return fmt.Sprintf("correction/%s/%x", c.Question.ID, sum[:6])
}

// Corrected is what became of corrections.
type Corrected struct {
	Queued int // that are on their way
	Untold int // with nobody or no place left to tell
	Moved  int // whose question was answered anew meanwhile, or is gone
}

// Correct queues the corrections of changes, in the threads where all could
// see the answer, else to whoever asked alone. In the same write what the play
// comes to now is kept with the question, so that a change is corrected once.
func (b *Bot) Correct(ctx context.Context, a Association, changes []Change, by Person) (out Corrected, err error) {
	t := &turn{Bot: b, ctx: ctx, assoc: a, checked: true}
	for _, c := range changes {
		if c.Stuck != "" {
			continue
		}
		if err := ctx.Err(); err != nil {
			return out, err
		}
		if err := t.correct(c, by, &out); err != nil {
			return out, err
		}
	}
	if out.Queued > 0 {
		b.soon()
	}
	return out, nil
}

// errMoved: a question is not as it was when it was looked at.
var errMoved = errors.New("the question has changed meanwhile")

func (t *turn) correct(c Change, by Person, out *Corrected) error {
	body, err := json.Marshal(correction{pastWords(c.Was), pastWords(c.Now), causeWords(c.Causes)})
	if err != nil {
		return err
	}
	var facts []store.Given
	if err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		facts, err = r.Given(c.Question.ID)
		return err
	}); err != nil {
		return err
	}
	now := t.Now()
	d := t.answered(c.Question, standing(facts))
	if d.answer.Past().Key() != c.Now.Key() {
		out.Moved++
		return nil
	}
	told := false
	err = t.Store.Write(t.ctx, t.assoc.ID, func(w store.Writer) error {
		told = false
		q, err := w.Question(c.Question.ID)
		if store.CodeOf(err) == store.NotFound {
			return errMoved
		}
		if err != nil {
			return err
		}
		if !q.Answer.At.Equal(c.Question.Answer.At) || string(q.Answer.Ruling) != string(c.Question.Answer.Ruling) {
			return errMoved
		}
		p, err := t.toldAt(w, q)
		if err != nil {
			return err
		}
		d.Question = q
		if err := w.Answer(q.ID, d.record(now)); err != nil {
			return err
		}
		if p.Where.Channel != "" || !p.To.IsZero() {
			p.Key, p.Question, p.Body, p.Queued = correctionKey(c), q.ID, body, now
			if told, err = w.Queue(p); err != nil {
				return err
			}
			if isOpen(w, q) {
				if err := t.refresh(w, answerKey(q.ID)); err != nil {
					return err
				}
			}
		}
		return w.Log(store.Entry{At: now, Who: by, Did: "correct", To: q.ID, About: q.Asker})
	})
	switch {
	case err == errMoved:
		out.Moved++
		return nil
	case err == nil && told:
		out.Queued++
	case err == nil:
		out.Untold++
	}
	return err
}

// toldAt is where the answer to a question was said: in its thread where all
// could see it, else to whoever asked alone.
func (t *turn) toldAt(r store.Reader, q store.Question) (store.Post, error) {
	q.Private = !isOpen(r, q)
	if q.Private {
		return store.Post{Where: Place{Platform: q.Where.Platform, Workspace: q.Where.Workspace}, To: q.Asker}, nil
	}
	where, err := askedIn(r, q)
	return store.Post{Where: where}, err
}

// composeCorrection makes the message of a correction.
func (t *turn) composeCorrection(p store.Post) (Target, Message, error) {
	var q store.Question
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		q, err = r.Question(p.Question)
		return err
	})
	if err != nil {
		return Target{}, Message{}, err
	}
	var c correction
	if err := json.Unmarshal(p.Body, &c); err != nil {
		return Target{}, Message{}, fmt.Errorf("the correction as it was kept can't be read: %w", err)
	}
	d := Doc{Tone: Again, Blocks: []Block{
		Heading{"Correction: this is ruled otherwise today", Again},
		Quote{Line(Clip(oneLineOf(q.Text), 600))},
		Fields{[]Field{{"Then", []Text{Line(c.Was)}}, {"Now", []Text{{{c.Now, Strong}}}}, {"What changed", lines(c.Why)}}},
		Aside{Line("It overturns no result: protests follow the competition's own procedure.")},
	}}
	b := Buttons{Label: "Also"}
	b.add("Ask a mentor", "mentor", q.ID)
	b.add(disagreeLabel, "differ", q.ID)
	d.Blocks = append(filled(d.Blocks), b)
	return Target{Place: p.Where, To: p.To}, Message{Doc: d, About: q.ID}, nil
}

// correctionGone sends a correction by direct message where its channel is not
// there any more: never to another channel.
func correctionGone(t *turn, w store.Writer, p store.Post) error {
	if !p.To.IsZero() {
		return nil
	}
	q, err := w.Question(p.Question)
	if err != nil || q.Asker.IsZero() {
		return err
	}
	t.soon()
	_, err = w.Queue(store.Post{Key: p.Key + "/direct", Question: p.Question, Body: p.Body, Queued: t.Now(), To: q.Asker,
		Where: Place{Platform: p.Where.Platform, Workspace: p.Where.Workspace}})
	return err
}

// pastWords is what an answer came to, in a line.
func pastWords(p answer.Past) string {
	s := ""
	switch {
	case p.Kind == answer.None:
		s = "no ruling"
	case p.Answer != "":
		s = string(p.Answer)
	case p.Outcome == answer.Depends:
		var ways []string
		for _, b := range p.Branches {
			var when []string
			for _, g := range b.When {
				when = append(when, g.Words)
			}
			ways = append(ways, strings.Join(when, " and ")+": "+result(b))
		}
		s = "it turns on a fact: " + strings.Join(ways, "; ")
	case p.Outcome == "" && len(p.Measure) == 0:
		s = "no ruling"
	default:
		s = verdict(p.Verdict)
	}
	if a := p.Association; a != nil {
		s = departureWords(*a) + "; the book: " + s
	}
	return Clip(s, 600)
}

// departureWords is what the association rules instead of the book.
func departureWords(a answer.Association) string {
	s := "the association's note " + a.Note + " rules " + a.Outcome
	if a.Fault != "" {
		s += ": " + name(string(a.Fault))
	}
	return s
}

// causeWords say, a line each, what made a ruling another one.
func causeWords(causes []answer.Cause) []string {
	var out []string
	for _, c := range causes {
		out = append(out, CauseWords(c))
	}
	return out
}

// CauseWords says what made a ruling another one.
func CauseWords(c answer.Cause) string {
	change := fmt.Sprintf("then “%s”, now “%s”", Clip(orNothing(c.Was), 200), Clip(orNothing(c.Now), 200))
	switch c.Kind {
	case answer.ByCell:
		s := fmt.Sprintf("%s, %s", c.Code, c.Title)
		if c.Cite != "" {
			s += " (" + c.Cite + ")"
		}
		s += ": " + change
		if c.Adopted != "" {
			s += ", adopted: " + c.Adopted
		}
		return s
	case answer.ByNote:
		switch {
		case c.Was == "":
			return fmt.Sprintf("the association's note %s rules it: %s", c.Note, c.Now)
		case c.Now == "":
			return fmt.Sprintf("the association's note %s, which ruled it %s, covers it no longer", c.Note, c.Was)
		}
		return fmt.Sprintf("the association's note %s rules it otherwise: %s", c.Note, change)
	case answer.ByReading:
		return "the words are read otherwise: " + change
	case answer.ByRule:
		return "the rules are applied otherwise: " + change
	}
	panic("bot: CauseWords: a cause outside the closed set: " + string(c.Kind))
}

func orNothing(s string) string {
	if s == "" {
		return "nothing"
	}
	return s
}

// turnedWords says what is wrong with a note.
func turnedWords(n casebook.Turned) []string {
	return append([]string{n.Finding.What}, causeWords(n.Causes)...)
}

// sendable are the changes that there is a ruling to send of.
func sendable(all []Change) []Change {
	return slices.DeleteFunc(slices.Clone(all), func(c Change) bool { return c.Stuck != "" })
}
