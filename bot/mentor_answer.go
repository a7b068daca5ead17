package bot

import (
	"slices"
	"strings"

	"example.org/netpost/bot/store"
)

// replyKey is the post of a mentor's answer to whoever asked; directKey the
// same in a direct message, where it could not be said in public.
func replyKey(id string) string  { return "reply/" + id }
func directKey(id string) string { return replyKey(id) + "/direct" }

// differKey tells the mentor of an answer that another answered otherwise.
func differKey(reply, earlier string) string { return "differ/" + reply + "/" + earlier }

// answerForm opens the form for a mentor's answer.
func (t *turn) answerForm(call string) Reply {
	return Form{
		State: Token{"reply", []string{call}}.String(), Title: "Answer", Send: "Send",
		Intro: "Whoever asked gets it in your words. Leave people's names out.",
		Fields: []Input{{Name: "words", Label: "Your answer, with the rule if you know it", Lines: true, Must: true, Max: longestAnswer,
			Hint: "for example: fault; she was back row, and the whole ball was above the net"}},
	}
}

// mentorAnswers keeps a mentor's answer and sends it. It is taken whoever holds
// the claim: what somebody wrote is not lost to a claim that lapsed meanwhile.
func (t *turn) mentorAnswers(call, words string) Reply {
	words = strings.TrimSpace(words)
	if words == "" {
		return t.tell("The answer was empty, and nothing was sent.", "Press Answer and write it.")
	}
	if names := strangeNames(words); len(names) > 0 {
		return t.holdWords(words, names, func(t *turn, words string) Reply { return t.putAnswer(call, words) })
	}
	return t.putAnswer(call, words)
}

func (t *turn) putAnswer(call, words string) Reply {
	id, now := t.NewID(), t.Now()
	closed, twice := false, false
	err := t.write(func(w store.Writer) error {
		closed, twice = false, false
		c, err := w.Call(call)
		if err != nil {
			return err
		}
		earlier, err := w.Replies(call)
		if err != nil {
			return err
		}
		if closed = !c.Closed.IsZero(); closed {
			return nil
		}
		if twice = slices.ContainsFunc(earlier, func(r store.Reply) bool { return r.By == t.Who.Person && sameWords(r.Text, words) }); twice {
			return nil
		}
		if err := w.Reply(store.Reply{ID: id, Call: call, By: t.Who.Person, Text: words, At: now}); err != nil {
			return err
		}
		to, err := t.askedAt(w, c)
		if err != nil {
			return err
		}
		to.Key, to.Question = replyKey(id), c.Question
		if err := t.queue(w, to); err != nil {
			return err
		}
		for _, r := range distinct(earlier) {
			if r.By.IsZero() || r.By == t.Who.Person || sameWords(r.Text, words) {
				continue
			}
			p := store.Post{Key: differKey(id, r.ID), Question: c.Question, To: r.By, Where: t.homeOf(r.By)}
			if err := t.queue(w, p); err != nil {
				return err
			}
		}
		if err := w.Log(store.Entry{At: now, Who: t.Who.Person, Did: "answer", To: call, About: c.By}); err != nil {
			return err
		}
		return t.refresh(w, callKey(call))
	})
	switch {
	case err == errSeen:
		return Nothing{}
	case store.CodeOf(err) == store.NotFound:
		return t.keptWords(words, "That question is not kept any more, and nobody waits for the answer.")
	case err != nil:
		return t.trouble(err, "Your answer could not be kept, and was not sent: "+Clip(words, 300))
	case closed:
		return t.keptWords(words, "This question is off the queue; nothing was sent.")
	case twice:
		return t.tell("You answered so already.", "It goes to whoever asked once.")
	}
	t.soon()
	f, failed := t.loadCall(call)
	if failed != nil {
		return failed
	}
	if t.inPlace {
		return Update{Message: t.callDoc(f)}
	}
	d := Doc{Blocks: []Block{Heading{"Your answer is on its way to whoever asked", Plain}}}
	if others := distinct(f.replies); len(others) > 1 {
		d.Blocks = append(d.Blocks, Para{Line("Mentors differ; whoever asked has every answer, and each mentor who answered is told:")})
		for _, r := range others {
			d.Blocks = append(d.Blocks, Quote{Line(Clip(r.Text, 500))})
		}
	}
	b := Buttons{Label: "Also"}
	b.add("Draft a note from it", "draft", id)
	d.Blocks = append(d.Blocks, b)
	return t.say(Message{Doc: d})
}

// keptWords gives somebody their words back where they could not be used.
func (t *turn) keptWords(words, what string) Say {
	return Say{Message: Message{Doc: Doc{Blocks: []Block{
		Heading{what, Plain}, Para{Line("What you wrote, to copy:")}, Quote{Line(words)},
	}}}, Private: true, InThread: t.Where.Thread != ""}
}

// askedAt is where the answer to a call goes: where the question was asked if
// all there could see it, else to whoever called alone.
func (t *turn) askedAt(r store.Reader, c store.Call) (store.Post, error) {
	q, err := r.Question(c.Question)
	if err != nil {
		return store.Post{}, err
	}
	if q.Private {
		home := Place{Platform: q.Where.Platform, Workspace: q.Where.Workspace}
		if c.By.Platform != q.Where.Platform {
			home = t.homeOf(c.By)
		}
		return store.Post{Where: home, To: c.By}, nil
	}
	where, err := askedIn(r, q)
	return store.Post{Where: where}, err
}

// askedIn is where a question was asked, in the thread of its answer.
func askedIn(r store.Reader, q store.Question) (Place, error) {
	where := q.Where
	if where.Thread != "" {
		return where, nil
	}
	threads, err := r.Threads(q.ID)
	if err != nil {
		return Place{}, err
	}
	for _, h := range threads {
		if h.Role != store.Mentors && near(h.Where, where) {
			where.Thread = h.Where.Thread
		}
	}
	return where, nil
}

// homeOf is the workspace to reach somebody in: that of the event where they
// are on its platform, else that of the mentors.
func (t *turn) homeOf(p Person) Place {
	if p.Platform == t.assoc.Mentors.Platform {
		return Place{Platform: p.Platform, Workspace: t.assoc.Mentors.Workspace}
	}
	if p.Platform == t.Where.Platform {
		return Place{Platform: p.Platform, Workspace: t.Where.Workspace}
	}
	return Place{Platform: p.Platform}
}

// mentorSays takes words in a mentors' thread that name the bot as the answer.
// It reports false where the thread is none, or the words are no answer.
func (t *turn) mentorSays(s spoken) (Reply, bool) {
	if t.Where.Thread == "" || s.name != "ask" || s.text == "" || s.args != (Args{}) {
		return nil, false
	}
	var id string
	now := t.Now()
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) error {
		th, err := r.Thread(t.Where)
		if err != nil || th.Role != store.Mentors {
			return err
		}
		calls, err := r.CallsOn(th.Question)
		if err != nil {
			return err
		}
		// The thread begins on the message of one of them.
		for _, c := range slices.Backward(calls) {
			p, err := r.Post(callKey(c.ID))
			switch {
			case err == nil && (p.Message == t.Where.Thread || p.Where.Thread == t.Where.Thread):
				id = c.ID
				return nil
			case id == "" && c.State(now) != store.Done:
				id = c.ID
			}
		}
		return nil
	})
	if err != nil || id == "" {
		return nil, false
	}
	return t.asMentor(func() Reply { return t.mentorAnswers(id, s.text) }), true
}

// composeReply makes the message that brings a mentor's answer to whoever
// asked.
func (t *turn) composeReply(p store.Post) (Target, Message, error) {
	id := strings.TrimSuffix(strings.TrimPrefix(p.Key, "reply/"), "/direct")
	var q store.Question
	var r store.Reply
	var earlier []store.Reply
	err := t.Store.Read(t.ctx, t.assoc.ID, func(rd store.Reader) (err error) {
		if q, err = rd.Question(p.Question); err != nil {
			return err
		}
		if r, earlier, err = replyOf(rd, id); err != nil {
			return err
		}
		return nil
	})
	if err != nil {
		return Target{}, Message{}, err
	}
	d := Doc{Blocks: []Block{Heading{"A mentor answers", Plain}, Quote{Line(Clip(oneLineOf(q.Text), 600))}}}
	for _, l := range textLines(r.Text) {
		d.Blocks = append(d.Blocks, Para{l})
	}
	for _, o := range distinct(earlier) {
		if o.By != r.By && !sameWords(o.Text, r.Text) && o.Text != "" {
			d.Blocks = append(d.Blocks, Para{Line("Another mentor answered otherwise, so take neither for settled:")}, Quote{Line(Clip(o.Text, 1000))})
		}
	}
	d.Blocks = append(d.Blocks, Aside{Line("It overturns no result: protests follow the competition's own procedure.")})
	b := Buttons{Label: "Also"}
	b.add(disagreeLabel, "differ", q.ID)
	d.Blocks = append(d.Blocks, b)
	return Target{Place: p.Where, To: p.To}, Message{Doc: d}, nil
}

// replyOf finds a mentor's answer, with those before it to the same call.
func replyOf(r store.Reader, id string) (store.Reply, []store.Reply, error) {
	a, err := r.FindReply(id)
	if err != nil {
		return a, nil, err
	}
	all, err := r.Replies(a.Call)
	i := slices.IndexFunc(all, func(o store.Reply) bool { return o.ID == id })
	return a, all[:max(i, 0)], err
}

// replySent notes that an answer reached whoever asked.
func replySent(t *turn, w store.Writer, p store.Post, _ Sent) error {
	id := strings.TrimSuffix(strings.TrimPrefix(p.Key, "reply/"), "/direct")
	if err := w.Delivered(id, p.Changed); err != nil {
		return err
	}
	r, err := w.FindReply(id)
	if err != nil {
		return err
	}
	t.soon()
	return t.refresh(w, callKey(r.Call))
}

// replyGone sends an answer by direct message where its channel is not there
// any more: never to another channel.
func replyGone(t *turn, w store.Writer, p store.Post) error {
	if !p.To.IsZero() {
		return nil
	}
	id := strings.TrimPrefix(p.Key, "reply/")
	r, err := w.FindReply(id)
	if err != nil {
		return err
	}
	c, err := w.Call(r.Call)
	if err != nil {
		return err
	}
	t.soon()
	home := Place{Platform: p.Where.Platform, Workspace: p.Where.Workspace}
	return t.queue(w, store.Post{Key: directKey(id), Question: p.Question, To: c.By, Where: home})
}

// composeDiffer tells a mentor that another answered otherwise.
func (t *turn) composeDiffer(p store.Post) (Target, Message, error) {
	_, ids, _ := strings.Cut(p.Key, "/")
	newer, older, _ := strings.Cut(ids, "/")
	var q store.Question
	var mine, other store.Reply
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		if q, err = r.Question(p.Question); err != nil {
			return err
		}
		if other, err = r.FindReply(newer); err != nil {
			return err
		}
		mine, err = r.FindReply(older)
		return err
	})
	if err != nil {
		return Target{}, Message{}, err
	}
	d := Doc{Blocks: []Block{
		Heading{"Another mentor answered otherwise than you", Plain},
		Quote{Line(Clip(oneLineOf(q.Text), 600))},
		Fields{[]Field{{"You", textLines(mine.Text)}, {"The other", textLines(other.Text)}}},
		Para{Line("Whoever asked has both answers. Settle it between you in the mentors' channel, and answer again if you change your mind.")},
	}}
	b := Buttons{Label: "Also"}
	b.add("Look at it", "look", other.Call)
	d.Blocks = append(d.Blocks, b)
	return Target{Place: p.Where, To: p.To}, Message{Doc: d}, nil
}

// composeCall makes the message of a call in the mentors' channel.
func (t *turn) composeCall(p store.Post) (Target, Message, error) {
	f, err := t.readCall(strings.TrimPrefix(p.Key, "call/"))
	if err != nil {
		return Target{}, Message{}, err
	}
	return Target{Place: p.Where}, t.callDoc(f), nil
}

// callSent notes which question the thread on a call's message is about.
func callSent(_ *turn, w store.Writer, p store.Post, sent Sent) error {
	return threadFrom(w, p, sent, store.Mentors)
}

// threadFrom notes which question the thread on a post is about, and as what.
func threadFrom(w store.Writer, p store.Post, sent Sent, role store.ThreadRole) error {
	if sent.Thread == "" {
		return nil
	}
	where := p.Where
	if sent.Channel != "" {
		where.Channel = sent.Channel
	}
	where.Thread = sent.Thread
	return w.SetThread(store.Thread{Where: where, Question: p.Question, Role: role, At: p.Changed})
}
