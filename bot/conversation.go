package bot

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/netpost/bot/store"
	"example.org/netpost/engine"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// dialogue is one question with what was told since, and its answer: always
// computed from the words and the facts, so that a later edition of the tables
// or the notation is never mixed with an earlier one.
type dialogue struct {
	store.Question
	given   []engine.Given
	answer  answer.Answer
	subject play.Subject // as read, with the facts; nil: nothing that can be ruled on was read
}

// begun answers a new question that is not kept yet, or says why it can't be
// answered.
func (t *turn) begun(s spoken, private bool) (dialogue, Reply) {
	q := store.Question{Asker: t.Who.Person, Where: t.Where, Text: s.text, Private: private, Asked: t.Now()}
	if p := t.rulesOf(&q, s.args); p != nil {
		return dialogue{}, t.tell(p.What, p.Mend)
	}
	d := t.answered(q, nil)
	if e := d.answer.Error; e != nil {
		return dialogue{}, t.tell("Not answered: "+e.What, upper(e.Mend))
	}
	return d, nil
}

// ask answers a new question and keeps it.
func (t *turn) ask(s spoken, v view) Reply {
	d, refused := t.begun(s, t.alone())
	if refused != nil {
		return refused
	}
	if names := Names(s.text, d.answer.Unread); len(names) > 0 {
		return t.hold(s, v, names, d)
	}
	return t.keep(d, v)
}

// alone reports whether only the asker sees the answer.
func (t *turn) alone() bool { return !t.public || t.Direct }

// rulesOf fills the code and the season that a question is asked under.
func (t *turn) rulesOf(q *store.Question, a Args) *answer.Problem {
	q.Code = string(t.assoc.Code)
	if a.Code != "" {
		c, err := code.Parse(strings.ToLower(a.Code))
		if err != nil {
			return &answer.Problem{What: fmt.Sprintf("There is no code “%s”.", Clip(a.Code, 40)), Mend: "Use one of " + codeNames() + "."}
		}
		q.Code = string(c)
	}
	switch {
	case a.Season != "":
		s, err := code.ParseSeason(a.Season)
		if err != nil {
			return &answer.Problem{What: fmt.Sprintf("“%s” is no season.", Clip(a.Season, 40)), Mend: "Write it like 2025-26."}
		}
		q.Season = s.String()
	case t.assoc.Season != 0:
		q.Season = t.assoc.Season.String()
	}
	return nil
}

func codeNames() string {
	var s []string
	for _, c := range code.All() {
		s = append(s, string(c))
	}
	return strings.Join(s, ", ")
}

// answered is a question with its answer under the facts told.
func (t *turn) answered(q store.Question, given []engine.Given) dialogue {
	d := dialogue{Question: q, given: given}
	o := optionsOf(t.assoc, q, given)
	d.answer = answer.Ask(q.Text, o)
	if d.answer.Error != nil {
		return d
	}
	if r, err := notation.Read(q.Text); err == nil && r.Subject() != nil {
		d.subject = r.Subject()
		for _, g := range given {
			if g.Key.Fact != answer.CodeFact {
				d.subject = d.subject.Tell(g.Key, g.Value)
			}
		}
	}
	if t.assoc.Notes != nil {
		notes, err := t.assoc.Notes.Notes(t.ctx, Question{Words: q.Text, Given: given, Code: o.Code, Season: o.Season})
		if err != nil {
			t.Log.ErrorContext(t.ctx, "search", "association", t.assoc.ID, "cause", err)
		} else {
			d.answer = WithNotes(d.answer, notes)
		}
	}
	return d
}

// optionsOf are how a question is put to the engine.
func optionsOf(a Association, q store.Question, given []engine.Given) answer.Options {
	o := answer.Options{Code: code.Code(q.Code), Given: given, Overlays: a.Overlays}
	if s, err := code.ParseSeason(q.Season); err == nil {
		o.Season = s
	}
	return o
}

// keep keeps a new question with its answer, and says it. The post of the
// answer is marked in the same write: what a kill leaves between here and the
// platform is found at the next start. A store that fails costs the buttons,
// not the ruling.
func (t *turn) keep(d dialogue, v view) Reply {
	d.ID = t.NewID()
	now := d.Asked
	err := t.write(func(w store.Writer) error {
		d.Answer = d.record(now)
		if err := w.Ask(d.Question); err != nil {
			return err
		}
		for _, g := range d.given {
			if err := w.Give(given(d.ID, g, t.Who.Person, now)); err != nil {
				return err
			}
		}
		if talk, ok := t.talk(); ok && (t.public || t.Direct) {
			if err := w.SetThread(store.Thread{Where: talk, Question: d.ID, Role: store.Asked, At: now}); err != nil {
				return err
			}
		}
		return t.mark(w, answerKey(d.ID), d.ID)
	})
	if err == errSeen {
		return Nothing{}
	}
	m, ref := t.show(d, v), answerKey(d.ID)
	if err != nil {
		m, ref = Message{Doc: d.plain()}, ""
		m.Doc.Blocks = append(m.Doc.Blocks, Aside{Line(fmt.Sprintf(
			"This could not be kept, so it has no buttons; ask again in a while. If it stays so, tell whoever runs netpost: error %s.", t.report(err)))})
	}
	if t.inPlace && t.private && !t.public {
		return Update{Message: m, Ref: ref}
	}
	say := t.say(m)
	say.Ref = ref
	return say
}

// write changes the association's rows for this event, once however often it
// is delivered: the second time is errSeen.
func (t *turn) write(fn func(store.Writer) error) error {
	t.checked = true
	return t.Store.Write(t.ctx, t.assoc.ID, func(w store.Writer) error {
		now := t.Now()
		first, err := w.Deliver(t.Who.Platform+"/"+t.Delivery, now, now.Add(remember))
		switch {
		case err != nil:
			return err
		case !first:
			return errSeen
		}
		return fn(w)
	})
}

// mark queues the post of a reply and marks it in one: it is sent as soon as
// the write is through.
func (t *turn) mark(w store.Writer, key, question string) error {
	now := t.Now()
	first, err := w.Queue(store.Post{Key: key, Question: question, Where: t.Where, Body: []byte(key), Queued: now})
	if err == nil && !first {
		return errSeen
	}
	if err != nil {
		return err
	}
	return w.Mark(key, now)
}

// Keys of posts: they say what the post is.
func answerKey(question string) string { return "answer/" + question }
func shareKey(question string) string  { return "share/" + question }

// given is a fact as the store keeps it.
func given(question string, g engine.Given, by Person, at time.Time) store.Given {
	return store.Given{Question: question, Fact: string(g.Key.Fact), Event: g.Key.Of, Value: string(g.Value), By: by, At: at}
}

// record is what the store keeps of the answer.
func (d dialogue) record(at time.Time) store.Answer {
	a := store.Answer{Message: d.Answer.Message, Outcome: string(d.answer.Outcome), At: at}
	if d.subject != nil {
		a.Play = notation.Say(d.subject)
	}
	if b, err := answer.Keep(d.answer); err == nil {
		a.Ruling = b
	}
	add := func(k store.TagKind, v string) {
		if tag := (store.Tag{Kind: k, Value: v}); v != "" && !slices.Contains(a.Tags, tag) {
			a.Tags = append(a.Tags, tag)
		}
	}
	topics := func(v answer.Verdict) {
		add(store.Topic, string(v.Fault))
		add(store.Topic, string(v.Replay))
		for _, m := range v.Measure {
			add(store.Topic, m)
		}
	}
	topics(d.answer.Verdict)
	for _, b := range d.answer.Branches {
		topics(b.Verdict)
	}
	if d.answer.Tree != nil {
		add(store.Deciding, d.answer.Tree.Ask.Fact)
	}
	for _, u := range d.answer.Unread {
		add(store.Unread, u)
	}
	for _, n := range d.answer.Notes {
		add(store.Linked, n.ID)
	}
	slices.SortFunc(a.Tags, func(x, y store.Tag) int {
		return strings.Compare(string(x.Kind)+"\x00"+x.Value, string(y.Kind)+"\x00"+y.Value)
	})
	return a
}
