package bot

import (
	"fmt"
	"slices"
	"strings"

	"example.org/netpost/bot/store"
)

// file is a call with all that belongs to it.
type file struct {
	store.Call
	dialogue dialogue
	replies  []store.Reply
}

// loadCall gets a call back. The reply is not nil where there is none to work
// on. Mentors see the calls on private questions too: whoever called them has
// shown them.
func (t *turn) loadCall(id string) (file, Reply) {
	f, err := t.readCall(id)
	switch {
	case store.CodeOf(err) == store.NotFound:
		return f, t.gone()
	case err != nil:
		return f, t.trouble(err, "The question could not be looked up.")
	}
	return f, nil
}

func (t *turn) readCall(id string) (f file, err error) {
	var q store.Question
	var facts []store.Given
	err = t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		if f.Call, err = r.Call(id); err != nil {
			return err
		}
		if q, err = r.Question(f.Question); err != nil {
			return err
		}
		if facts, err = r.Given(f.Question); err != nil {
			return err
		}
		f.replies, err = r.Replies(id)
		return err
	})
	if err == nil {
		f.dialogue = t.answered(q, standing(facts))
	}
	return f, err
}

// callDoc is a call as mentors see it: what was asked, how it stands, the
// answers so far, and everything that the engine knows of the play.
func (t *turn) callDoc(f file) Message {
	now := t.Now()
	head := "A question for a mentor"
	if f.Kind == store.Disagree {
		head = "Somebody disagrees with " + f.dialogue.aboutWords(f.About)
	}
	d := Doc{Tone: Open, Blocks: []Block{Heading{head, Open}, Quote{Line(f.dialogue.Text)}}}
	var fields Fields
	add := func(label string, ls ...Text) { fields.Items = append(fields.Items, Field{label, ls}) }
	if f.Words != "" {
		add("They write", Line(f.Words))
	}
	state := f.State(now)
	switch state {
	case store.Open:
		add("Stands", Line("open since "+moment(f.At)))
	case store.Claimed:
		add("Stands", Line("a mentor is on it; free again "+moment(f.Lapses)))
	case store.Answered:
		add("Stands", Line("answered"))
	case store.Done:
		add("Stands", Line("off the queue"))
	}
	for i, r := range f.replies {
		label, when := "Answer", moment(r.At)
		if len(f.replies) > 1 {
			label = fmt.Sprintf("Answer %d", i+1)
		}
		if r.Delivered.IsZero() {
			when += ", on its way"
		}
		add(label, append(textLines(r.Text), Text{{"(" + when + ")", Faint}})...)
	}
	if len(distinct(f.replies)) > 1 {
		add("They differ", Line("whoever asked has both"))
	}
	d.Blocks = append(d.Blocks, fields)
	d.Blocks = append(d.Blocks, f.dialogue.plain().Blocks...)
	if told := f.dialogue.told(); len(told) > 0 {
		d.Blocks = append(d.Blocks, Fields{[]Field{{"Told since", lines(told)}}})
	}
	b := Buttons{Label: "Mentors"}
	switch state {
	case store.Open:
		b.add("Claim it", "claim", f.ID)
		b.add("Answer", "answer", f.ID)
	case store.Claimed:
		b.add("Answer", "answer", f.ID)
		b.add("Give it back", "release", f.ID)
	case store.Answered:
		b.add("Answer otherwise", "answer", f.ID)
		for i, r := range f.replies {
			label := "Draft a note from it"
			if len(f.replies) > 1 {
				label = fmt.Sprintf("Draft a note from answer %d", i+1)
			}
			if r.Text != "" && i < 3 {
				b.add(label, "draft", r.ID)
			}
		}
	}
	if state != store.Done {
		b.add("Take it off the queue", "done", f.ID)
	}
	if len(b.Items) > 0 {
		d.Blocks = append(d.Blocks, b)
	}
	return Message{Doc: d, More: Token{"case", []string{f.ID}}.String()}
}

// textLines are somebody's words, a line each.
func textLines(s string) []Text {
	var out []Text
	for l := range strings.Lines(strings.TrimSpace(s)) {
		if l = strings.TrimSpace(l); l != "" {
			out = append(out, Line(l))
		}
	}
	if out == nil {
		out = []Text{Line("(erased)")}
	}
	return out
}

// distinct are the last answers of each mentor that differ in their words.
func distinct(replies []store.Reply) []store.Reply {
	var out []store.Reply
	for _, r := range slices.Backward(replies) {
		if !slices.ContainsFunc(out, func(o store.Reply) bool { return o.By == r.By || sameWords(o.Text, r.Text) }) {
			out = append(out, r)
		}
	}
	return out
}

// sameWords reports whether two texts say the same but for case and spaces.
func sameWords(a, b string) bool {
	return strings.EqualFold(strings.Join(strings.Fields(a), " "), strings.Join(strings.Fields(b), " "))
}

// onCall changes a call and shows it as it is then: in place where the press
// was on it, and in the mentors' channel.
func (t *turn) onCall(id string, change func(store.Writer) error, did string) Reply {
	err := t.write(func(w store.Writer) error {
		c, err := w.Call(id)
		if err != nil {
			return err
		}
		if err := change(w); err != nil {
			return err
		}
		if err := w.Log(store.Entry{At: t.Now(), Who: t.Who.Person, Did: did, To: id, About: c.By}); err != nil {
			return err
		}
		return t.refresh(w, callKey(id))
	})
	switch code := store.CodeOf(err); {
	case err == errSeen:
		return Nothing{}
	case code == store.NotFound:
		return t.gone()
	case code == store.Taken, code == store.Closed:
		return t.refused(id, err)
	case err != nil:
		return t.trouble(err, "That could not be kept; nothing has changed.")
	}
	t.soon()
	f, failed := t.loadCall(id)
	if failed != nil {
		return failed
	}
	return t.showCall(f)
}

// refused says why a call can't be taken or changed now.
func (t *turn) refused(id string, err error) Reply {
	what, mend := "That can't be done now.", ""
	if store.CodeOf(err) == store.Closed {
		what, mend = "This question is off the queue.", "Whoever asked can ask a mentor again."
	} else {
		what, mend = "It is not yours to give back.", "Whoever claimed it can, or the claim lapses by itself."
		if f, failed := t.loadCall(id); failed == nil && f.HeldBy(t.Now()) != t.Who.Person && !f.HeldBy(t.Now()).IsZero() {
			what, mend = "Another mentor is on this question.", "It is free again "+moment(f.Lapses)+". If you know better already, answer: both answers count."
		}
	}
	return t.tell(what, mend)
}

func (t *turn) showCall(f file) Reply {
	m := t.callDoc(f)
	if t.inPlace {
		return Update{Message: m}
	}
	return Say{Message: m, Private: true, InThread: t.Where.Thread != ""}
}

// claim takes a call for the mentor who presses.
func (t *turn) claim(id string) Reply {
	now := t.Now()
	return t.onCall(id, func(w store.Writer) error { return w.Claim(id, t.Who.Person, now, now.Add(t.Claim)) }, "claim")
}

func (t *turn) unclaim(id string) Reply {
	return t.onCall(id, func(w store.Writer) error { return w.Release(id, t.Who.Person, t.Now()) }, "release")
}

func (t *turn) endCall(id string) Reply {
	return t.onCall(id, func(w store.Writer) error { return w.CloseCall(id, t.Now()) }, "close")
}

// lookAt shows a call to a mentor alone.
func (t *turn) lookAt(id string) Reply {
	f, failed := t.loadCall(id)
	if failed != nil {
		return failed
	}
	return Say{Message: t.callDoc(f), Private: true, InThread: t.Where.Thread != ""}
}

// pageOfCall turns to a page of a call.
func (t *turn) pageOfCall(id, page string) Reply {
	f, failed := t.loadCall(id)
	if failed != nil {
		return failed
	}
	m := t.callDoc(f)
	m.Page = number(page)
	return Update{Message: m}
}

// mostCalls is how many calls are listed with a button.
const mostCalls = 10

// mentorsQueue lists what waits for a mentor.
func (t *turn) mentorsQueue() Reply {
	now := t.Now()
	var calls []store.Call
	var late []store.Reply
	texts := map[string]string{}
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		if calls, err = r.Calls(now, store.Open, store.Claimed); err != nil {
			return err
		}
		for _, c := range calls[:min(len(calls), mostCalls)] {
			q, err := r.Question(c.Question)
			if err != nil {
				return err
			}
			texts[c.ID] = q.Text
		}
		late, err = r.Undelivered()
		return err
	})
	if err != nil {
		return t.trouble(err, "The queue could not be looked up.")
	}
	return Say{Message: Message{Doc: queueDoc(calls, late, texts, func(c store.Call) string {
		if c.HeldBy(now).IsZero() {
			return "open since " + moment(c.At)
		}
		return "claimed until " + moment(c.Lapses)
	})}, Private: true, InThread: t.Where.Thread != ""}
}

func queueDoc(calls []store.Call, late []store.Reply, texts map[string]string, stands func(store.Call) string) Doc {
	d := Doc{Blocks: []Block{Heading{many(len(calls), "question waits", "questions wait") + " for a mentor", Plain}}}
	if len(calls) == 0 {
		d.Blocks[0] = Heading{"No question waits for a mentor", Plain}
	}
	var l List
	b := Buttons{Label: "Look at"}
	for i, c := range calls[:min(len(calls), mostCalls)] {
		why := ""
		if c.Kind == store.Disagree {
			why = "disagrees: "
		}
		l.Items = append(l.Items, Line(fmt.Sprintf("%d. %s%s (%s)", i+1, why, Clip(oneLineOf(texts[c.ID]), 120), stands(c))))
		b.add(fmt.Sprintf("Question %d", i+1), "look", c.ID)
	}
	if len(l.Items) > 0 {
		d.Blocks = append(d.Blocks, l)
	}
	if n := len(calls) - mostCalls; n > 0 {
		d.Blocks = append(d.Blocks, Aside{Line(fmt.Sprintf("And %d more, once these are answered.", n))})
	}
	if len(late) > 0 {
		d.Blocks = append(d.Blocks, Para{Line(fmt.Sprintf("Answers that have not reached whoever asked: %d. They are on their way, or wait for a decision in: posts", len(late)))})
	}
	if len(b.Items) > 0 {
		d.Blocks = append(d.Blocks, b)
	}
	return d
}

func oneLineOf(s string) string { return strings.Join(strings.Fields(s), " ") }

// nudgeKey is the post of a reminder; the calls that it is of are in its body.
func nudgeKey(first string) string { return "nudge/" + first }

// remind reminds mentors, once, of the calls that nobody has answered or holds
// after the time that the settings give them: one post in each mentors' channel
// for all that are due. Where there is no such channel they are listed alone.
func (t *turn) remind() error {
	now := t.Now()
	due := func(r store.Reader) (places []Place, ids [][]string, err error) {
		open, err := r.Calls(now, store.Open)
		if err != nil {
			return nil, nil, err
		}
		for _, c := range open {
			if !c.Nudged.IsZero() || now.Sub(c.At) < t.Nudge {
				continue
			}
			q, err := r.Question(c.Question)
			if err != nil {
				return nil, nil, err
			}
			a, ok := t.Find(q.Where)
			if !ok || a.ID != t.assoc.ID || a.Mentors.Channel == "" {
				continue
			}
			i := slices.Index(places, a.Mentors)
			if i < 0 {
				i = len(places)
				places, ids = append(places, a.Mentors), append(ids, nil)
			}
			ids[i] = append(ids[i], c.ID)
		}
		return places, ids, nil
	}
	// Looked at without writing first: it is done often, and seldom due.
	var places []Place
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		places, _, err = due(r)
		return err
	})
	if err != nil || len(places) == 0 {
		return err
	}
	return t.Store.Write(t.ctx, t.assoc.ID, func(w store.Writer) error {
		places, ids, err := due(w)
		if err != nil {
			return err
		}
		for i, p := range places {
			for _, id := range ids[i] {
				if _, err := w.Nudge(id, now); err != nil {
					return err
				}
			}
			if _, err := w.Queue(store.Post{Key: nudgeKey(ids[i][0]), Where: p, Body: []byte(strings.Join(ids[i], " ")), Queued: now}); err != nil {
				return err
			}
		}
		return nil
	})
}

// composeNudge reminds mentors of what waits.
func (t *turn) composeNudge(p store.Post) (Target, Message, error) {
	now := t.Now()
	var calls []store.Call
	texts := map[string]string{}
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) error {
		for _, id := range strings.Fields(string(p.Body)) {
			c, err := r.Call(id)
			if store.CodeOf(err) == store.NotFound || err == nil && c.State(now) != store.Open {
				continue // answered, claimed or erased meanwhile
			}
			if err != nil {
				return err
			}
			q, err := r.Question(c.Question)
			if err != nil {
				return err
			}
			calls, texts[c.ID] = append(calls, c), q.Text
		}
		return nil
	})
	if err != nil {
		return Target{}, Message{}, err
	}
	d := queueDoc(calls, nil, texts, func(c store.Call) string { return "open since " + moment(c.At) })
	d.Blocks = append(d.Blocks, Aside{Line("This reminder comes once. All that waits: " + CommandName + " queue")})
	return Target{Place: p.Where}, Message{Doc: d}, nil
}
