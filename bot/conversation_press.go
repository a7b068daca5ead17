package bot

import (
	"fmt"
	"slices"
	"strconv"

	"example.org/netpost/bot/store"
	"example.org/netpost/engine"
	"example.org/netpost/engine/answer"
)

// press does what a button says.
func (t *turn) press(state string) Reply {
	tok, err := ParseToken(state)
	if err != nil {
		return t.tell("I don't know this button.", "It may be of another version of netpost. Ask the question again.")
	}
	arg := func(i int) string { return tok.Args[i] }
	switch tok.Verb {
	case "find":
		return t.searchPage(arg(0), arg(1))
	case "guide":
		return Update{Message: Message{Doc: Help(), More: Token{"guide", nil}.String(), Page: number(arg(0))}}
	case "answer":
		return t.asMentor(func() Reply { return t.answerForm(arg(0)) })
	case "both":
		return t.turnViews(arg(0), arg(1))
	case "case":
		return t.asMentor(func() Reply { return t.pageOfCall(arg(0), arg(1)) })
	case "claim":
		return t.asMentor(func() Reply { return t.claim(arg(0)) })
	case "close":
		return t.asMentor(func() Reply { return t.closePoll(arg(0)) })
	case "correct":
		return t.asMentor(func() Reply { return t.sendCorrections(arg(0), arg(1)) })
	case "done":
		return t.asMentor(func() Reply { return t.endCall(arg(0)) })
	case "draft":
		return t.asMentor(func() Reply { return t.draftForm(arg(0)) })
	case "drop":
		return t.asMentor(func() Reply { return t.dropDraft(arg(0)) })
	case "erase":
		return t.erased(arg(0), arg(1), arg(2))
	case "hand":
		return t.hand(arg(0), arg(1))
	case "held":
		return t.release(arg(0), arg(1))
	case "issue":
		return t.asPublisher(func() Reply { return t.issue(arg(0), arg(1)) })
	case "proof":
		return t.asPublisher(func() Reply { return t.proofDraft(arg(0)) })
	case "look":
		return t.asMentor(func() Reply { return t.lookAt(arg(0)) })
	case "mentor":
		return t.askMentor(arg(0))
	case "name":
		return t.nameForm(arg(0))
	case "numbers":
		return t.asMentor(func() Reply { return t.numbers(arg(0), number(arg(1))) })
	case "object":
		return t.object(arg(0), arg(1))
	case "outcome":
		return t.turnResult(arg(0), arg(1))
	case "post":
		return t.decide(arg(0), arg(1))
	case "publish":
		return t.publish(arg(0), arg(1), arg(2))
	case "put":
		return t.asMentor(func() Reply { return t.put(arg(0), arg(1)) })
	case "release":
		return t.asMentor(func() Reply { return t.unclaim(arg(0)) })
	case "saw":
		return t.saw(arg(0))
	case "see":
		return t.seeAs(arg(0), arg(1))
	case "sight":
		return Form{
			State: Token{"sighted", tok.Args}.String(), Title: "In your own words", Send: "That is what I saw",
			Fields: []Input{{Name: "words", Label: "What did you see?", Lines: true, Must: true, Max: 500,
				Hint: "for example: she was back row, ball above the net"}},
		}
	case "unname":
		return t.nameView(arg(0), "")
	case "unsee":
		return t.unsee(arg(0))
	case "vote":
		return t.vote(arg(0), arg(1), arg(2))
	case "week":
		return t.turnBulletin(arg(0), number(arg(1)))
	case "words":
		return Form{
			State: Token{"tell", tok.Args}.String(), Title: "In your own words", Send: "Rule on it",
			Fields: []Input{{Name: "words", Label: "What answers the question?", Lines: true, Must: true, Max: 500,
				Hint: "for example: she was back row, ball above the net"}},
		}
	}
	d, failed := t.load(arg(0))
	if failed != nil {
		return failed
	}
	switch tok.Verb {
	case "differ":
		return t.disagree(d)
	case "draw":
		return t.drawn(d)
	case "give":
		g, err := answer.ParseGiven(arg(1))
		if err != nil {
			return t.tell("I don't know this answer any more.", "The rules tables have changed since. Ask the question again.")
		}
		return t.give(d, []engine.Given{g})
	case "more":
		m := t.show(d, view(arg(1)))
		m.Page = number(arg(2))
		return t.look(d, m)
	case "share":
		return t.share(d)
	case "undo":
		return t.undo(d)
	case "view":
		return t.look(d, t.show(d, view(arg(1))))
	}
	return t.tell("That is no button.", "It is the name of a form. Ask the question again.")
}

func number(s string) int {
	n, err := strconv.Atoi(s)
	if err != nil {
		return 0
	}
	return n
}

// load gets a question back. The reply is not nil where there is none to
// work on.
func (t *turn) load(id string) (d dialogue, failed Reply) {
	var facts []store.Given
	shared := false
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		if d.Question, err = r.Question(id); err != nil {
			return err
		}
		shared = isOpen(r, d.Question)
		facts, err = r.Given(id)
		return err
	})
	switch {
	case store.CodeOf(err) == store.NotFound, err == nil && d.Private && !shared && d.Asker != t.Who.Person:
		return d, t.tell("That question is not kept any more.", "Questions are deleted after a while. Ask it again.")
	case err != nil:
		return d, t.trouble(err, "The question could not be looked up; nothing has changed.")
	}
	d = t.answered(d.Question, standing(facts))
	if d.answer.Error != nil {
		return d, t.tell("The facts told before fit the play no longer: "+d.answer.Error.What+".", "Ask the question again.")
	}
	return d, nil
}

// standing are the facts told of the question itself, the last word on each.
func standing(facts []store.Given) []engine.Given { return factsOf(facts, "") }

// lay puts facts on top of others.
func lay(facts []engine.Given, on ...engine.Given) []engine.Given { return answer.Lay(facts, on...) }

// mine reports whether the person may change the answer that all see.
func (t *turn) mine(d dialogue) bool { return d.Asker == t.Who.Person || t.role >= Mentor }

// look shows an answer in another way: in place to whoever it belongs to, and
// to others privately.
func (t *turn) look(d dialogue, m Message) Reply {
	if t.inPlace && (t.private || t.mine(d)) {
		return Update{Message: m}
	}
	return Say{Message: m, Private: true, InThread: t.Where.Thread != ""}
}

// give tells facts to a question. Whoever may not change the answer gets a
// copy of their own, with their facts.
func (t *turn) give(d dialogue, facts []engine.Given) Reply {
	if !t.mine(d) {
		return t.copied(d, facts)
	}
	next := t.answered(d.Question, lay(d.given, facts...))
	if next.answer.Error != nil {
		return t.tell("That does not fit the play: "+next.answer.Error.What+".", "Ask again, with the play told otherwise.")
	}
	now := t.Now()
	ref := ""
	stale := false
	err := t.write(func(w store.Writer) error {
		kept, err := w.Given(d.ID)
		if err != nil {
			return err
		}
		if stale = !slices.Equal(standing(kept), d.given); stale {
			return fmt.Errorf("the facts of question %s have changed meanwhile", d.ID)
		}
		for _, g := range facts {
			if slices.Contains(d.given, g) {
				continue
			}
			if err := w.Give(given(d.ID, g, t.Who.Person, now)); err != nil {
				return err
			}
		}
		if err := w.Answer(d.ID, next.record(now)); err != nil {
			return err
		}
		if err := t.refresh(w, viewsKey(d.ID)); err != nil {
			return err
		}
		if !t.inPlace {
			ref = toldKey(t.NewID())
			return t.mark(w, ref, d.ID)
		}
		return nil
	})
	switch {
	case err == errSeen:
		return Nothing{}
	case stale:
		again, failed := t.load(d.ID)
		if failed != nil {
			return failed
		}
		return t.give(again, facts)
	case store.CodeOf(err) == store.NotFound:
		return t.tell("That question is not kept any more.", "Questions are deleted after a while. Ask it again.")
	case err != nil:
		return t.trouble(err, "Your answer could not be kept; nothing has changed.")
	}
	return t.changed(next, ref)
}

// changed shows an answer that has changed: in place, or as a reply to words
// in the thread; then the first answer changes too.
func (t *turn) changed(d dialogue, ref string) Reply {
	m := t.show(d, mainView)
	if t.inPlace {
		return Update{Message: m}
	}
	say := t.say(m)
	say.Ref = ref
	if d.Answer.Message != "" && d.Where.Channel == t.Where.Channel {
		say.Edits = []Edit{{d.Answer.Message, m}}
	}
	return say
}

// copied makes a question of the person's own out of another's.
func (t *turn) copied(d dialogue, facts []engine.Given) Reply {
	t.public = false
	q := store.Question{
		Asker: t.Who.Person, Where: t.Where, Text: d.Text, Code: d.Code, Season: d.Season, Private: true, Asked: t.Now(),
	}
	own := t.answered(q, lay(d.given, facts...))
	if own.answer.Error != nil {
		return t.tell("That does not fit the play: "+own.answer.Error.What+".", "Ask again, with the play told otherwise.")
	}
	note := Aside{Line("A copy of your own: the other answer stays as its asker told it.")}
	switch r := t.keep(own, mainView).(type) {
	case Say:
		r.Doc.Blocks = append([]Block{note}, r.Doc.Blocks...)
		return r
	case Update:
		r.Doc.Blocks = append([]Block{note}, r.Doc.Blocks...)
		return r
	default:
		return r
	}
}

// undo takes the last fact back.
func (t *turn) undo(d dialogue) Reply {
	if !t.mine(d) {
		return t.tell("Only who asked, or a mentor, takes a fact back here.", "Press an answer to get a copy of your own.")
	}
	var kept []store.Given
	err := t.write(func(w store.Writer) error {
		if _, err := w.Undo(d.ID, "", t.Who.Person, t.Now()); err != nil && store.CodeOf(err) != store.NotFound {
			return err
		}
		var err error
		kept, err = w.Given(d.ID)
		return err
	})
	switch {
	case err == errSeen:
		return Nothing{}
	case err != nil:
		return t.trouble(err, "The fact could not be taken back; nothing has changed.")
	}
	d = t.answered(d.Question, standing(kept))
	err = t.Store.Write(t.ctx, t.assoc.ID, func(w store.Writer) error {
		if err := w.Answer(d.ID, d.record(t.Now())); err != nil {
			return err
		}
		return t.refresh(w, viewsKey(d.ID))
	})
	if err != nil {
		t.report(err) // what was told is kept; the answer beside it is an older one
	}
	return t.changed(d, "")
}

// share says a private answer to the channel.
func (t *turn) share(d dialogue) Reply {
	if d.Asker != t.Who.Person {
		return t.tell("Only who asked shares an answer.", "")
	}
	shared := false
	err := t.write(func(w store.Writer) error {
		err := t.mark(w, shareKey(d.ID), d.ID)
		if shared = err == errSeen; shared {
			return nil
		}
		if err != nil {
			return err
		}
		return w.Log(store.Entry{At: t.Now(), Who: t.Who.Person, Did: "share", To: d.ID})
	})
	switch {
	case err == errSeen:
		return Nothing{}
	case err != nil:
		return t.trouble(err, "The answer could not be shared.")
	case shared:
		return t.tell("This answer was shared already.", "")
	}
	t.public = true
	return Say{Message: t.show(d, mainView), InThread: t.Where.Thread != "", Ref: shareKey(d.ID)}
}
