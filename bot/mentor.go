package bot

import (
	"strings"
	"time"

	"example.org/netpost/bot/store"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// How long a mentor's claim holds, and how long a question waits before
// mentors are reminded of it, where the settings say nothing.
const (
	DefaultClaim = 4 * time.Hour
	DefaultNudge = 24 * time.Hour
)

// longestWords is the most letters that somebody may write to a mentor or a
// mentor to them.
const (
	longestWords  = 500
	longestAnswer = 2000
)

// Another is what a disagreement is about where it is neither a fact nor a
// rule of the answer.
const Another = "other"

// callKey is the post of a call in the mentors' channel.
func callKey(id string) string { return "call/" + id }

// askMentor opens the form for a question to a mentor.
func (t *turn) askMentor(question string) Reply {
	return Form{
		State: Token{"call", []string{question}}.String(), Title: "Ask a mentor", Send: "Ask",
		Intro:  "A mentor gets the play with all that was made of it. Leave people's names out.",
		Fields: []Input{{Name: "words", Label: "What do you want to know?", Hint: "may stay empty", Lines: true, Max: longestWords}},
	}
}

// Most buttons of a disagreement: what every platform shows of one message.
const (
	mostFacts = 10
	mostRules = 6
)

// disagree asks what somebody sees otherwise: which fact or which rule.
func (t *turn) disagree(d dialogue) Reply {
	facts, book := Buttons{Label: "A fact"}, Buttons{Label: "A rule"}
	for _, k := range d.arguable() {
		if len(facts.Items) < mostFacts {
			facts.add(upper(d.clause(k, d.subject.Get(k))), "object", d.ID, k.String())
		}
	}
	if tree := d.answer.Tree; tree != nil && tree.Ask.Fact != answer.CodeFact {
		facts.add(tree.Ask.Words, "object", d.ID, factName(tree.Ask))
	}
	seen := map[string]bool{}
	for _, r := range d.answer.Rules {
		if !seen[r.ID] && len(book.Items) < mostRules {
			seen[r.ID] = true
			book.add(upper(r.Title), "object", d.ID, r.ID)
		}
	}
	other := Buttons{Label: "Or"}
	other.add("Something else", "object", d.ID, Another)
	doc := Doc{Blocks: []Block{
		Heading{"What do you see otherwise?", Plain},
		Para{Line("Choose the fact or the rule. A mentor gets it with your reason, and answers you.")},
	}}
	for _, b := range []Buttons{facts, book, other} {
		if len(b.Items) > 0 {
			doc.Blocks = append(doc.Blocks, b)
		}
	}
	return Say{Message: Message{Doc: doc}, Private: true, InThread: t.Where.Thread != ""}
}

// arguable are the facts of the play that were told and that somebody could
// see otherwise, the last told first.
func (d dialogue) arguable() []play.Key {
	if d.subject == nil {
		return nil
	}
	var out []play.Key
	seen := map[play.Key]bool{{Fact: answer.CodeFact}: true}
	add := func(k play.Key) {
		f, ok := d.subject.Fact(k.Fact)
		if ok && !f.Quiet && !seen[k] && d.subject.Get(k) != play.Unknown {
			seen[k] = true
			out = append(out, k)
		}
	}
	for i := len(d.given) - 1; i >= 0; i-- {
		add(d.given[i].Key)
	}
	for _, k := range d.subject.Known() {
		add(k)
	}
	return out
}

// object opens the form for a disagreement's reason.
func (t *turn) object(question, about string) Reply {
	return Form{
		State: Token{"against", []string{question, about}}.String(), Title: "I disagree", Send: "Send to a mentor",
		Intro: "A mentor looks at it and answers you. Leave people's names out.",
		Fields: []Input{{Name: "words", Label: "How do you see it, and why?", Lines: true, Must: true, Max: longestWords,
			Hint: "for example: she took off behind the line"}},
	}
}

// aboutWords says what a disagreement is about.
func (d dialogue) aboutWords(about string) string {
	if r, ok := judge.ByID(about); ok {
		return "the rule on " + r.Title
	}
	fact, of, _ := strings.Cut(about, "@")
	k := play.Key{Fact: play.FactID(fact), Of: of}
	if _, ok := judge.FactByID(k.Fact); !ok {
		return "something else"
	}
	if d.subject == nil {
		return "the fact " + about
	}
	if v := d.subject.Get(k); v != play.Unknown {
		return "the fact: " + notation.ClauseOf(d.subject, k, v)
	}
	if f, ok := d.subject.Fact(k.Fact); !ok || d.subject.Tell(k, f.Values[0].Value).Check() != nil {
		return "the fact " + about // the play is read otherwise than it was
	}
	return "the fact: " + notation.QuestionOf(d.subject, k)
}

// call puts a question in the mentors' queue.
func (t *turn) call(question string, kind store.CallKind, about, words string) Reply {
	words = strings.TrimSpace(words)
	d, failed := t.load(question)
	if failed != nil {
		return failed
	}
	if names := strangeNames(words); len(names) > 0 {
		return t.holdWords(words, names, func(t *turn, words string) Reply { return t.putCall(question, kind, about, words) })
	}
	return t.putCallOn(d, kind, about, words)
}

func (t *turn) putCall(question string, kind store.CallKind, about, words string) Reply {
	d, failed := t.load(question)
	if failed != nil {
		return failed
	}
	return t.putCallOn(d, kind, about, words)
}

func (t *turn) putCallOn(d dialogue, kind store.CallKind, about, words string) Reply {
	c := store.Call{ID: t.NewID(), Question: d.ID, Kind: kind, By: t.Who.Person, About: about, Words: words, At: t.Now()}
	waiting := false
	err := t.write(func(w store.Writer) error {
		waiting = false
		on, err := w.CallsOn(d.ID)
		if err != nil {
			return err
		}
		for _, o := range on {
			same := o.By == c.By && o.Kind == c.Kind && o.About == c.About
			if st := o.State(c.At); same && (st == store.Open || st == store.Claimed) {
				waiting = true
				return nil
			}
		}
		if err := w.CallMentor(c); err != nil {
			return err
		}
		if err := w.Log(store.Entry{At: c.At, Who: c.By, Did: string(kind), To: d.ID}); err != nil {
			return err
		}
		return t.queue(w, store.Post{Key: callKey(c.ID), Question: d.ID, Where: t.assoc.Mentors})
	})
	switch {
	case err == errSeen:
		return Nothing{}
	case store.CodeOf(err) == store.NotFound:
		return t.gone()
	case err != nil:
		return t.trouble(err, "Your question did not reach the mentors; nothing was kept.")
	case waiting:
		return t.tell("A mentor was asked that already, and has not answered yet.", "You get the answer as soon as there is one. Mentors are reminded once by themselves.")
	}
	t.soon()
	what := "A mentor was asked."
	if kind == store.Disagree {
		what = "Your disagreement is kept, and a mentor was asked."
	}
	where := "You get the answer in a direct message, whenever it comes."
	if !d.Private {
		where = "The answer comes where the play was asked, whenever that is."
	}
	if t.assoc.Mentors.Channel == "" {
		where += " Your association has named no channel for its mentors yet, so tell one of them to look: they see it with: " + CommandName + " queue"
	}
	return t.tell(what, where)
}

// queue queues a post to be sent soon. One to nowhere is left out.
func (t *turn) queue(w store.Writer, p store.Post) error {
	if p.Where.Channel == "" && p.To.IsZero() {
		return nil
	}
	p.Queued = t.Now()
	p.Body = []byte(p.Key)
	_, err := w.Queue(p)
	return err
}

// gone says that a question is not there any more.
func (t *turn) gone() Say {
	return t.tell("That question is not kept any more.", "Questions are deleted after a while. Ask it again.")
}

// strangeNames are names in words that are no play.
func strangeNames(words string) []string {
	if words == "" {
		return nil
	}
	return Names(words, answer.Ask(words, answer.Options{}).Unread)
}

// holdWords asks about a name before words are kept. What they are for is done
// once that is decided.
func (t *turn) holdWords(words string, names []string, then func(*turn, string) Reply) Reply {
	q := heldQuestion{
		id: t.NewID(), delivery: t.Delivery, assoc: t.assoc.ID, asker: t.Who.Person,
		spoken: spoken{text: words}, names: names, then: then, at: t.Now(),
	}
	if !t.held.put(q) {
		return Nothing{}
	}
	b := Buttons{Label: "Before it is kept"}
	b.add("Leave the name out", "held", q.id, "drop")
	b.add("It is no name: go on", "held", q.id, "keep")
	return Say{Message: Message{Doc: Doc{Blocks: []Block{
		Heading{"Is this a person's name? " + Clip(strings.Join(quoted(names), ", "), 120), Plain},
		Para{Line("Nothing of what you wrote is kept yet, and nobody else sees this:")},
		Quote{Line(words)},
		b,
	}}}, Private: true, InThread: t.Where.Thread != ""}
}

// asMentor does what only mentors may.
func (t *turn) asMentor(do func() Reply) Reply {
	if t.role < Mentor {
		return t.refuse(Mentor)
	}
	return do()
}

// moment is a time for people.
func moment(at time.Time) string { return at.UTC().Format("2 Jan 2006 15:04") + " UTC" }
