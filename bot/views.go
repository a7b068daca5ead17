package bot

import (
	"slices"
	"strings"

	"example.org/netpost/bot/store"
	"example.org/netpost/engine"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/play"
)

// Two views: two officials saw one play differently. Each gives their facts
// alone with the bot and hands them in; what they come to is a board where the
// play was asked. With one view alone it is compared with the play as it was
// told. Nobody is named unless both agree.

// viewsKey is the board that shows two views of a question.
func viewsKey(question string) string { return "views/" + question }

// longestName is the most letters of the name that somebody wants to be shown
// by.
const longestName = 40

// seen is one official's view with its facts.
type seen struct {
	store.View
	facts []engine.Given
}

// sighting is a question with the views of it.
type sighting struct {
	dialogue // as it was told
	views    []seen
	open     bool // others may give one too
}

// in are the views that were handed in, in that order.
func (s sighting) in() []seen {
	var out []seen
	for _, v := range s.views {
		if !v.Handed.IsZero() {
			out = append(out, v)
		}
	}
	slices.SortStableFunc(out, func(a, b seen) int { return a.Handed.Compare(b.Handed) })
	return out
}

// by is somebody's own view.
func (s sighting) by(p Person) (seen, bool) {
	i := slices.IndexFunc(s.views, func(v seen) bool { return v.By == p })
	if i < 0 {
		return seen{}, false
	}
	return s.views[i], true
}

// full reports whether two others are in.
func (s sighting) full(p Person) bool {
	in := s.in()
	return len(in) >= 2 && !slices.ContainsFunc(in, func(v seen) bool { return v.By == p })
}

// readViews are the views of a question with their facts.
func readViews(r store.Reader, question string) ([]seen, error) {
	all, err := r.Views(question)
	if err != nil {
		return nil, err
	}
	facts, err := r.Given(question)
	if err != nil {
		return nil, err
	}
	var out []seen
	for _, v := range all {
		out = append(out, seen{v, factsOf(facts, v.ID)})
	}
	return out, nil
}

// loadViews gets a question back with the views of it. The reply is not nil
// where there is none to work on.
func (t *turn) loadViews(question string) (sighting, Reply) {
	d, failed := t.load(question)
	if failed != nil {
		return sighting{}, failed
	}
	s := sighting{dialogue: d}
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		s.open = isOpen(r, d.Question)
		s.views, err = readViews(r, question)
		return err
	})
	if err != nil {
		return s, t.trouble(err, "The views could not be looked up; nothing has changed.")
	}
	return s, nil
}

// boardAt is where the views of a question are shown: where its asker shared
// it, else where it was asked. Nowhere where only the asker sees it.
func boardAt(r store.Reader, q store.Question) (Place, error) {
	p, err := r.Post(shareKey(q.ID))
	switch {
	case err == nil:
		return p.Where, nil
	case store.CodeOf(err) != store.NotFound:
		return Place{}, err
	case !isOpen(r, q):
		return Place{}, nil
	}
	return askedIn(r, q)
}

// beginViews puts a play to two officials.
func (t *turn) beginViews(s spoken) Reply {
	if s.args.Show == ShowPrivate {
		return t.tell("Views are compared where both officials see it.", "Say it without private. What each of you saw stays between you and me until both are in.")
	}
	t.public = true
	d, refused := t.begun(s, t.alone())
	if refused != nil {
		return refused
	}
	if d.subject == nil {
		return t.tell(headline(d.answer)+".", "There is nothing in it that two officials could have seen differently. Tell the play.")
	}
	if names := Names(s.text, d.answer.Unread); len(names) > 0 {
		on := t.message
		return t.holdWords(s.text, names, func(t *turn, words string) Reply {
			s.text = words
			t.public, t.message = true, on
			return t.keepViews(s)
		})
	}
	return t.keepViews(s)
}

// keepViews keeps a play that is put to two officials, and posts it without its
// ruling: as a post of its own, which can change as views come in.
func (t *turn) keepViews(s spoken) Reply {
	q := store.Question{ID: t.NewID(), Asker: t.Who.Person, Where: t.Where, Text: s.text, Private: t.alone(), Asked: t.Now()}
	if p := t.rulesOf(&q, s.args); p != nil {
		return t.tell(p.What, p.Mend)
	}
	d := t.answered(q, nil)
	err := t.write(func(w store.Writer) error {
		d.Answer = d.record(q.Asked)
		if err := w.Ask(d.Question); err != nil {
			return err
		}
		if t.Direct {
			return nil
		}
		return t.queue(w, store.Post{Key: viewsKey(q.ID), Question: q.ID, Where: q.Where})
	})
	switch {
	case err == errSeen:
		return Nothing{}
	case err != nil:
		return t.trouble(err, "The play could not be kept, and nothing was shown.")
	}
	if t.Direct {
		return t.say(t.viewsMessage(sighting{dialogue: d}))
	}
	t.soon()
	return t.tell("The play is on its way to the channel, without its ruling.", "Each of you gives their facts there. They stay with you until both are in.")
}

// saw shows somebody their own view, to begin it or go on with it.
func (t *turn) saw(question string) Reply {
	s, failed := t.loadViews(question)
	if failed != nil {
		return failed
	}
	if s.full(t.Who.Person) {
		return t.viewsFull()
	}
	return Say{Message: t.ownView(s), Private: true, InThread: t.Where.Thread != ""}
}

func (t *turn) viewsFull() Reply {
	return t.tell("Two views of this play are in already.", "To compare another pair, put the play anew: views, and the play.")
}

// toOwn shows something of a person's own view to them alone.
func (t *turn) toOwn(m Message) Reply {
	if t.inPlace && (t.private || t.Direct) {
		return Update{Message: m}
	}
	return Say{Message: m, Private: true, InThread: t.Where.Thread != ""}
}

// onView changes somebody's own view, and what is shown of it.
func (t *turn) onView(question string, change func(store.Writer, string) error) Reply {
	full := false
	var open Place
	err := t.write(func(w store.Writer) error {
		q, err := w.Question(question)
		if err != nil {
			return err
		}
		s := sighting{dialogue: dialogue{Question: q}}
		if s.views, err = readViews(w, question); err != nil {
			return err
		}
		if full = s.full(t.Who.Person); full {
			return nil
		}
		mine, begun := s.by(t.Who.Person)
		if !begun {
			mine.ID = t.NewID()
			if err := w.SeeAs(store.View{Question: question, ID: mine.ID, By: t.Who.Person, Private: true, At: t.Now()}); err != nil {
				return err
			}
		}
		if err := change(w, mine.ID); err != nil {
			return err
		}
		s.views, err = readViews(w, question)
		if err != nil {
			return err
		}
		if mine, _ = s.by(t.Who.Person); mine.Handed.IsZero() {
			return nil
		}
		if open, err = boardAt(w, q); err != nil {
			return err
		}
		p, err := w.Post(viewsKey(question))
		switch {
		case store.CodeOf(err) == store.NotFound:
			return t.queue(w, store.Post{Key: viewsKey(question), Question: question, Where: open})
		case err != nil:
			return err
		case p.State == store.Failed:
			return viewsGone(t, w, p)
		}
		return t.refresh(w, viewsKey(question))
	})
	switch {
	case err == errSeen:
		return Nothing{}
	case full:
		return t.viewsFull()
	case store.CodeOf(err) == store.NotFound:
		return t.gone()
	case err != nil:
		return t.trouble(err, "Your view could not be kept; nothing has changed.")
	}
	t.soon()
	s, failed := t.loadViews(question)
	if failed != nil {
		return failed
	}
	if mine, _ := s.by(t.Who.Person); open.Channel == "" && !mine.Handed.IsZero() {
		return t.toOwn(t.viewsMessage(s)) // there is no other place for it
	}
	return t.toOwn(t.ownView(s))
}

// see gives facts to somebody's own view.
func (t *turn) see(question string, facts []engine.Given) Reply {
	s, failed := t.loadViews(question)
	if failed != nil {
		return failed
	}
	mine, _ := s.by(t.Who.Person)
	if d := t.answered(s.Question, lay(lay(s.given, mine.facts...), facts...)); d.answer.Error != nil {
		return t.tell("That does not fit the play: "+d.answer.Error.What+".", "Give another fact, or take one back first.")
	}
	return t.onView(question, func(w store.Writer, view string) error {
		for _, f := range facts {
			if slices.Contains(mine.facts, f) {
				continue
			}
			g := given(question, f, t.Who.Person, t.Now())
			g.View = view
			if err := w.Give(g); err != nil {
				return err
			}
		}
		return nil
	})
}

// seeAs gives one fact, of a button.
func (t *turn) seeAs(question, fact string) Reply {
	g, err := answer.ParseGiven(fact)
	if err != nil {
		return t.tell("I don't know this fact any more.", "The rules tables have changed since. Put the play anew.")
	}
	return t.see(question, []engine.Given{g})
}

// seeInWords takes facts of somebody's own view in words.
func (t *turn) seeInWords(question, words string) Reply {
	s, failed := t.loadViews(question)
	if failed != nil {
		return failed
	}
	mine, _ := s.by(t.Who.Person)
	d := t.answered(s.Question, lay(s.given, mine.facts...))
	facts, err := d.understood(strings.TrimSpace(words))
	if err != nil {
		r := t.misunderstood(err)
		if say, ok := r.(Say); ok {
			say.Private = true
			return say
		}
		return r
	}
	return t.see(question, facts)
}

// unsee takes the last fact of somebody's own view back.
func (t *turn) unsee(question string) Reply {
	return t.onView(question, func(w store.Writer, view string) error {
		_, err := w.Undo(question, view, t.Who.Person, t.Now())
		if store.CodeOf(err) == store.NotFound {
			return nil // pressed twice
		}
		return err
	})
}

// Ways to hand a view in.
const (
	handOpen   = "open"   // shown at once
	handSealed = "sealed" // shown once another is in
)

// hand hands somebody's view in.
func (t *turn) hand(question, how string) Reply {
	return t.onView(question, func(w store.Writer, view string) error {
		return w.HandIn(question, view, how != handOpen, t.Now())
	})
}

// nameForm asks for the name that somebody wants to be shown by.
func (t *turn) nameForm(question string) Reply {
	return Form{
		State: Token{"called", []string{question}}.String(), Title: "Show my name", Send: "Agree",
		Intro: "It is shown only while everybody with a view agrees to be named.",
		Fields: []Input{{Name: "words", Label: "What are you called there?", Must: true, Max: longestName,
			Hint: "for example: R2"}},
	}
}

// nameView notes what somebody agrees to be called; empty: not at all.
func (t *turn) nameView(question, name string) Reply {
	name = Clip(oneLineOf(name), longestName)
	return t.onView(question, func(w store.Writer, view string) error { return w.NameInView(question, view, name) })
}

// factsOf are the facts told in one view ("" for the question itself), the
// last word on each.
func factsOf(facts []store.Given, view string) []engine.Given {
	var out []engine.Given
	for _, f := range facts {
		if f.View == view {
			out = lay(out, engine.Given{Key: play.Key{Fact: play.FactID(f.Fact), Of: f.Event}, Value: play.Value(f.Value)})
		}
	}
	return out
}
