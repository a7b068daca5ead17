package bot

import (
	"slices"
	"time"

	"example.org/netpost/bot/store"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
)

// A poll is a play that a crew rules on together: a mentor puts it without its
// ruling, each member calls it alone with the bot, and at closing all see the
// counts, the ruling and what split them. It is a board in the channel. While
// it is open its question is the mentor's alone, so that nothing else of ours
// gives the ruling away; votes are counted and forgotten when it closes.

// pollKey is the board of a poll, resultKey the post of what came of it.
func pollKey(question string) string   { return "poll/" + question }
func resultKey(question string) string { return "result/" + question }

// Calls of a poll that are no verdict of the engine's.
const (
	notSure = "not-sure"
	depends = "depends" // it turns on a fact that was not told
)

// mostChoices is the most calls that are offered beside those two.
const mostChoices = 8

// leastVoters is how many members must have voted before counts are shown.
const leastVoters = leastAskers

// spans are how long a poll may stay open, by the hours in its button.
var spans = []struct {
	hours int
	words string
}{
	{0, "Until a mentor closes it"},
	{24, "For a day"},
	{48, "For two days"},
	{168, "For a week"},
}

// choice is a call that members choose among.
type choice struct {
	call, team string // as a vote has it
	words      string
}

// choices are the calls offered on a play, in an order that tells nothing of
// its ruling.
func (t *turn) choices(d dialogue) []choice {
	var out []choice
	for _, v := range answer.Calls(d.Text, optionsOf(t.assocAt(d.Where), d.Question, d.given), mostChoices) {
		call, team := v.ID()
		out = append(out, choice{call, team, upper(verdict(v))})
	}
	if out == nil {
		return nil
	}
	return append(out, choice{depends, "", "It depends on what was not told"}, choice{notSure, "", "Not sure"})
}

// agrees reports whether a vote is as the ruling.
func (d dialogue) agrees(call, team string) bool {
	if d.answer.Outcome == answer.Depends {
		return call == depends
	}
	c, tm := d.answer.Verdict.ID()
	return call == c && team == tm && d.answer.Kind != answer.None
}

// readPoll gets a poll back with its question, whoever asks.
func (t *turn) readPoll(question string) (p store.Poll, d dialogue, err error) {
	var q store.Question
	var facts []store.Given
	err = t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		if p, err = r.Poll(question); err != nil {
			return err
		}
		if q, err = r.Question(question); err != nil {
			return err
		}
		facts, err = r.Given(question)
		return err
	})
	if err != nil {
		return p, d, err
	}
	one := *t
	one.assoc = t.assocAt(q.Where)
	d = one.answered(q, standing(facts))
	if d.answer.Error != nil {
		return p, d, d.answer.Error
	}
	return p, d, nil
}

// assocAt is the association as it is in a place: another channel of the same
// one may have other adoptions and notes.
func (t *turn) assocAt(where Place) Association {
	if a, ok := t.Find(where); ok && a.ID == t.assoc.ID {
		return a
	}
	return t.assoc
}

// pollFailed is the reply where a poll can't be worked on.
func (t *turn) pollFailed(err error) Reply {
	if store.CodeOf(err) == store.NotFound {
		return t.tell("That play is not kept any more.", "Plays are deleted after a while. A mentor can put it anew.")
	}
	return t.trouble(err, "The play could not be looked up; nothing has changed.")
}

// poll previews a play to a mentor, or lists what is open.
func (t *turn) poll(s spoken) Reply {
	if s.text == "" {
		return t.openPolls()
	}
	if t.Direct {
		return t.tell("Alone with me there is nobody else to call it.", "Say it in your crew's channel: the play is put there, once you have looked at it.")
	}
	t.public = false
	d, refused := t.begun(s, true)
	if refused != nil {
		return refused
	}
	if names := Names(s.text, d.answer.Unread); len(names) > 0 {
		return t.holdWords(s.text, names, func(t *turn, words string) Reply {
			d.Text = words
			return t.previewPoll(d.Question)
		})
	}
	return t.previewPoll(d.Question)
}

// previewPoll keeps a play and shows its mentor what the crew will get, and
// what it comes to.
func (t *turn) previewPoll(q store.Question) Reply {
	d := t.answered(q, nil)
	offered := t.choices(d)
	if offered == nil {
		return t.tell(headline(d.answer)+".", "I could show no ruling when it closes, so it is not put to the crew. Tell the play otherwise; a number out of the book is not voted on.")
	}
	d.ID = t.NewID()
	err := t.write(func(w store.Writer) error {
		d.Answer = d.record(q.Asked)
		d.Answer.Tags = nil // nobody asked it: it counts under nothing
		return w.Ask(d.Question)
	})
	switch {
	case err == errSeen:
		return Nothing{}
	case err != nil:
		return t.trouble(err, "The play could not be kept, and nothing was posted.")
	}
	return Say{Message: Message{Doc: d.pollPreview(offered)}, Private: true, InThread: t.Where.Thread != ""}
}

// put posts a play that its mentor has looked at.
func (t *turn) put(question, hours string) Reply {
	d, failed := t.load(question)
	if failed != nil {
		return failed
	}
	now := t.Now()
	p := store.Poll{Question: question, By: t.Who.Person, Season: d.seasonOf(t.assoc), At: now}
	if h := number(hours); h > 0 {
		p.Closes = now.Add(time.Duration(h) * time.Hour)
	}
	err := t.write(func(w store.Writer) error {
		if err := w.OpenPoll(p); err != nil {
			return err
		}
		if err := w.Log(store.Entry{At: now, Who: t.Who.Person, Did: "poll", To: question}); err != nil {
			return err
		}
		return t.queue(w, store.Post{Key: pollKey(question), Question: question, Where: d.Where})
	})
	switch {
	case err == errSeen:
		return Nothing{}
	case store.CodeOf(err) == store.Exists:
		return t.tell("This play was put to the crew already.", "What is open: poll")
	case err != nil:
		return t.trouble(err, "The play could not be put to the crew; nothing was posted.")
	}
	t.soon()
	doc := Doc{Blocks: []Block{Heading{"It is on its way to the crew, without its ruling", Plain}, Quote{Line(d.Text)}, Para{Line("It closes " + closes(p) + ".")}}}
	b := Buttons{Label: "Mentors"}
	b.add("Close it now", "close", question)
	doc.Blocks = append(doc.Blocks, b)
	return t.toOwn(Message{Doc: doc})
}

// seasonOf is the season that a poll counts for.
func (d dialogue) seasonOf(a Association) string {
	if d.Season != "" {
		return d.Season
	}
	c := code.Code(d.Code)
	if d.Code == "" {
		c = code.All()[0]
	}
	if _, last, ok := code.Held(c); ok {
		return last.String()
	}
	return a.Season.String()
}

// vote keeps somebody's call.
func (t *turn) vote(question, call, team string) Reply {
	_, d, err := t.readPoll(question)
	if err != nil {
		return t.pollFailed(err)
	}
	i := slices.IndexFunc(t.choices(d), func(c choice) bool { return c.call == call && c.team == team })
	if i < 0 {
		return t.tell("This call is not offered any more.", "The rules tables have changed since. Choose another.")
	}
	err = t.write(func(w store.Writer) error {
		return w.Vote(store.Vote{Question: question, By: t.Who.Person, Call: call, Team: team, At: t.Now()})
	})
	switch {
	case err == errSeen:
		return Nothing{}
	case store.CodeOf(err) == store.Closed:
		return t.pollClosed()
	case err != nil:
		return t.trouble(err, "Your call could not be kept; one that you made before stands.")
	}
	return t.tell("Your call: "+lower(t.choices(d)[i].words), "Nobody sees who called what. Until it closes you can change it: choose another.")
}

func (t *turn) pollClosed() Reply {
	return t.tell("This play is closed, and votes are counted no more.", "Its ruling is shown where it was put.")
}

// closePoll closes a poll for a mentor.
func (t *turn) closePoll(question string) Reply {
	_, d, err := t.readPoll(question)
	if err != nil {
		return t.pollFailed(err)
	}
	onBoard, asked := false, false
	err = t.write(func(w store.Writer) error {
		if b, err := w.Post(pollKey(question)); err == nil {
			onBoard = b.Message != "" && b.Message == t.message
		}
		if err := w.Log(store.Entry{At: t.Now(), Who: t.Who.Person, Did: "close poll", To: question}); err != nil {
			return err
		}
		asked, err = t.endPoll(w, d)
		return err
	})
	switch {
	case err == errSeen:
		return Nothing{}
	case store.CodeOf(err) == store.Closed:
		return t.pollClosed()
	case store.CodeOf(err) == store.NotFound:
		return t.pollFailed(err)
	case err != nil:
		return t.trouble(err, "The play could not be closed; members may still vote.")
	}
	t.soon()
	if !asked {
		return t.toOwn(Message{Doc: Doc{Blocks: []Block{Heading{"Closed before it reached the crew: nothing is posted", Plain}, Quote{Line(d.Text)}}}})
	}
	if onBoard {
		return Update{Message: Message{Doc: d.pollDoc(store.Poll{Closed: t.Now()}, nil)}}
	}
	return t.toOwn(Message{Doc: Doc{Blocks: []Block{Heading{"Closed: what came of it is on its way to the crew", Plain}, Quote{Line(d.Text)}}}})
}

// endPoll closes a poll in a write, and queues what came of it. It reports
// false where the play never reached the crew: then nothing came of it.
func (t *turn) endPoll(w store.Writer, d dialogue) (asked bool, err error) {
	if err := w.ClosePoll(d.ID, t.Now(), d.agrees); err != nil {
		return false, err
	}
	board, err := w.Post(pollKey(d.ID))
	if err != nil {
		return false, err
	}
	switch board.State {
	case store.Queued:
		return false, w.Skip(board.Key, t.Who.Person, t.Now())
	case store.Failed, store.Skipped:
		return false, nil
	}
	where := board.Where
	threads, err := w.Threads(d.ID)
	if err != nil {
		return false, err
	}
	for _, h := range threads {
		if h.Role == store.Together && near(h.Where, where) {
			where.Thread = h.Where.Thread
		}
	}
	if err := t.queue(w, store.Post{Key: resultKey(d.ID), Question: d.ID, Where: where}); err != nil {
		return false, err
	}
	return true, t.refresh(w, pollKey(d.ID))
}

// closeDue closes the polls whose time has come.
func (t *turn) closeDue() error {
	var due []store.Poll
	now := t.Now()
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) error {
		open, err := r.Polls()
		for _, p := range open {
			if !p.Closes.IsZero() && !now.Before(p.Closes) {
				due = append(due, p)
			}
		}
		return err
	})
	if err != nil {
		return err
	}
	for _, p := range due {
		_, d, err := t.readPoll(p.Question)
		if err == nil {
			err = t.Store.Write(t.ctx, t.assoc.ID, func(w store.Writer) error { _, err := t.endPoll(w, d); return err })
		}
		switch store.CodeOf(err) {
		case store.Closed, store.NotFound:
			continue // a mentor was faster, or it was erased
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// openPolls lists what is open.
func (t *turn) openPolls() Reply {
	var open []store.Poll
	var texts []string
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		if open, err = r.Polls(); err != nil {
			return err
		}
		for _, p := range open {
			q, err := r.Question(p.Question)
			if err != nil {
				return err
			}
			texts = append(texts, q.Text)
		}
		return nil
	})
	if err != nil {
		return t.trouble(err, "The plays could not be looked up.")
	}
	return Say{Message: Message{Doc: pollsDoc(open, texts)}, Private: true, InThread: t.Where.Thread != ""}
}
