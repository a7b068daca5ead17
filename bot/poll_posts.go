package bot

import (
	"strconv"
	"strings"

	"example.org/netpost/bot/store"
)

// pollOf is the question that a post of a poll is about.
func pollOf(p store.Post) string {
	_, rest, _ := strings.Cut(p.Key, "/")
	id, _, _ := strings.Cut(rest, "/")
	return id
}

// composePoll makes the board of a poll, or tells its mentor that its channel
// is gone.
func (t *turn) composePoll(p store.Post) (Target, Message, error) {
	poll, d, err := t.readPoll(pollOf(p))
	if err != nil {
		return Target{}, Message{}, err
	}
	to := Target{Place: p.Where, To: p.To}
	if !p.To.IsZero() {
		return to, Message{Doc: Doc{Blocks: []Block{
			Heading{"This play did not reach the crew", Plain}, Quote{Line(d.Text)},
			Para{Line("Its channel is not there any more, or I may not write there. It is closed, and nobody was asked. Put it in another channel: poll, and the play.")},
		}}}, nil
	}
	return to, Message{Doc: d.pollDoc(poll, t.choices(d))}, nil
}

// pollSent notes which thread a poll is talked about in: what is said there is
// no fact of it.
func pollSent(_ *turn, w store.Writer, p store.Post, sent Sent) error {
	if !p.To.IsZero() {
		return nil
	}
	return threadFrom(w, p, sent, store.Together)
}

// pollGone closes a poll that could not be put, and tells its mentor.
func pollGone(t *turn, w store.Writer, p store.Post) error {
	if !p.To.IsZero() {
		return nil
	}
	err := w.ClosePoll(p.Question, t.Now(), func(string, string) bool { return false })
	if err != nil && store.CodeOf(err) != store.Closed {
		return err
	}
	return t.toMentor(w, p)
}

// toMentor sends a poll's post to the mentor who put it, where its channel is
// gone: never to another channel.
func (t *turn) toMentor(w store.Writer, p store.Post) error {
	poll, err := w.Poll(p.Question)
	if err != nil || poll.By.IsZero() {
		return err
	}
	t.soon()
	home := Place{Platform: p.Where.Platform, Workspace: p.Where.Workspace}
	if poll.By.Platform != p.Where.Platform {
		home = t.homeOf(poll.By)
	}
	return t.queue(w, store.Post{Key: p.Key + "/direct", Question: p.Question, To: poll.By, Where: home})
}

// composeResult makes what came of a poll.
func (t *turn) composeResult(p store.Post) (Target, Message, error) {
	id := pollOf(p)
	_, d, err := t.readPoll(id)
	if err != nil {
		return Target{}, Message{}, err
	}
	var counts []store.VoteCount
	err = t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		counts, err = r.Counts(id)
		return err
	})
	if err != nil {
		return Target{}, Message{}, err
	}
	doc := t.resultDoc(d, counts)
	if !p.To.IsZero() {
		doc.Blocks = append([]Block{Para{Line("The channel that this play was put in is not there any more, or I may not write there; so you alone get what came of it.")}}, doc.Blocks...)
	}
	return Target{Place: p.Where, To: p.To}, Message{Doc: doc, About: id, More: Token{"outcome", []string{id}}.String()}, nil
}

// resultGone sends what came of a poll to its mentor alone.
func resultGone(t *turn, w store.Writer, p store.Post) error {
	if !p.To.IsZero() {
		return nil
	}
	return t.toMentor(w, p)
}

// turnResult turns to a page of what came of a poll.
func (t *turn) turnResult(question, page string) Reply {
	_, m, err := t.composeResult(store.Post{Key: resultKey(question)})
	if err != nil {
		return t.pollFailed(err)
	}
	m.Page, _ = strconv.Atoi(page)
	if t.inPlace {
		return Update{Message: m}
	}
	return Say{Message: m, Private: true}
}
