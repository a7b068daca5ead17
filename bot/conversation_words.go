package bot

import (
	"errors"
	"slices"
	"strings"

	"example.org/netpost/bot/store"
	"example.org/netpost/engine"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// followUp takes words in a thread as facts of the question that the thread is
// about. It reports false where they are none: there is no such question, or
// they are a play of their own. Loud words were said to the bot, and get an
// answer also when they are not understood.
func (t *turn) followUp(s spoken, loud bool) (Reply, bool) {
	talk, ok := t.talk()
	if !ok || s.name != "ask" || s.text == "" || s.args.Code != "" || s.args.Season != "" {
		return nil, false
	}
	var th store.Thread
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		th, err = r.Thread(talk)
		return err
	})
	if err != nil || th.Role != store.Asked {
		return nil, false // asking anew says what is wrong with the store
	}
	d, failed := t.load(th.Question)
	if failed != nil {
		return nil, false
	}
	facts, err := d.understood(s.text)
	if err == nil {
		return t.give(d, facts), true
	}
	if a := answer.Ask(s.text, optionsOf(t.assoc, d.Question, nil)); a.Kind != answer.None && a.Outcome != "" {
		return nil, false
	}
	if !loud {
		return Nothing{}, true
	}
	if _, cut := supposed(s.text); d.answer.Tree == nil && !cut {
		return nil, false // nothing was asked: it is a question of its own
	}
	return t.misunderstood(err), true
}

// misunderstood says what of an answer was not understood, and the answers
// that there are.
func (t *turn) misunderstood(err error) Reply {
	f, ok := errors.AsType[*notation.FillError](err)
	if !ok {
		r := t.tell("I did not understand that: "+err.Error()+".", "Say it otherwise, or tell the whole play anew.")
		r.Private = !t.public
		return r
	}
	d := Doc{Blocks: []Block{
		Heading{"I did not understand “" + Clip(f.Words, 80) + "”: " + f.Why, Plain},
		Para{Line(f.Ask + " Answer with one of these:")},
	}}
	var l List
	for _, c := range f.Choices {
		l.Items = append(l.Items, Line(c))
	}
	d.Blocks = append(d.Blocks, l)
	return Say{Message: Message{Doc: d}, Private: !t.public, InThread: t.Where.Thread != ""}
}

// whatIf are words before a change of fact that say nothing of it. Sorted.
var whatIf = []string{"and if ", "but if ", "if ", "now if ", "what if "}

// supposed cuts such words off.
func supposed(words string) (rest string, cut bool) {
	for _, w := range whatIf {
		if len(words) > len(w) && strings.EqualFold(words[:len(w)], w) {
			return strings.TrimSpace(words[len(w):]), true
		}
	}
	return words, false
}

// understood is what words tell of the facts: of the one that decides, or,
// where the play is decided, of one told before or of one that would change
// it.
func (d dialogue) understood(words string) ([]engine.Given, error) {
	words, _ = supposed(words)
	if tree := d.answer.Tree; tree != nil {
		return d.fill(tree.Ask.Fact, tree.Ask.Of, words)
	}
	for _, g := range slices.Backward(d.given) {
		if facts, err := d.fill(string(g.Key.Fact), g.Key.Of, words); err == nil {
			return facts, nil
		}
	}
	return d.anyOf(d.changeable(), words)
}

// changeable are the facts that words may change in a decided play.
func (d dialogue) changeable() []play.Key {
	var out []play.Key
	for _, b := range d.answer.Changes {
		for _, g := range b.When {
			out = append(out, play.Key{Fact: play.FactID(g.Fact), Of: g.Of})
		}
	}
	if d.subject != nil {
		out = append(out, d.subject.Known()...)
	}
	return out
}

var (
	errNotAsked = errors.New("nothing was asked, and it changes nothing that was told")
	errWhose    = errors.New("it could be of more than one thing in the play")
)

// anyOf is what words tell of one of some facts. What could be told of two is
// refused.
func (d dialogue) anyOf(keys []play.Key, words string) ([]engine.Given, error) {
	var found []engine.Given
	for _, k := range keys {
		facts, err := d.fill(string(k.Fact), k.Of, words)
		switch {
		case err != nil || slices.Equal(facts, found):
		case found != nil:
			return nil, errWhose
		default:
			found = facts
		}
	}
	if found == nil {
		return nil, errNotAsked
	}
	return found, nil
}

// fill reads words as an answer to one fact; they may tell others too.
func (d dialogue) fill(fact, of, words string) ([]engine.Given, error) {
	if fact == answer.CodeFact {
		return codeIn(words)
	}
	if d.subject == nil {
		return nil, errors.New("no play was read")
	}
	p, err := notation.FillIn(d.subject, play.Key{Fact: play.FactID(fact), Of: of}, words)
	if err != nil {
		return nil, err
	}
	var out []engine.Given
	for _, k := range p.Known() {
		if v := p.Get(k); v != d.subject.Get(k) {
			out = append(out, engine.Given{Key: k, Value: v})
		}
	}
	if len(out) == 0 {
		return nil, errors.New("that was told before")
	}
	return out, nil
}

// codeIn finds the code that an answer names.
func codeIn(words string) ([]engine.Given, error) {
	c, err := code.Parse(strings.ToLower(strings.Trim(words, " .!")))
	if err != nil {
		r, readErr := notation.Read(words)
		if readErr != nil || r.Code == "" {
			choices := strings.Split(codeNames(), ", ")
			return nil, &notation.FillError{Words: words, Why: "it names no code", Ask: "Which code?", Choices: choices}
		}
		c = r.Code
	}
	return []engine.Given{{Key: play.Key{Fact: answer.CodeFact}, Value: play.Value(c)}}, nil
}

// submit takes a form that was sent off.
func (t *turn) submit(e Submit) Reply {
	tok, err := ParseToken(e.State)
	if err != nil {
		return t.tell("I don't know this form.", "It may be of another version of netpost. Ask the question again.")
	}
	words := e.Values["words"]
	switch tok.Verb {
	case "against":
		return t.call(tok.Args[0], store.Disagree, tok.Args[1], words)
	case "called":
		return t.nameView(tok.Args[0], words)
	case "call":
		return t.call(tok.Args[0], store.AskMentor, "", words)
	case "note":
		return t.asMentor(func() Reply { return t.makeDraft(tok.Args[0], e.Values) })
	case "reply":
		return t.asMentor(func() Reply { return t.mentorAnswers(tok.Args[0], words) })
	case "sighted":
		return t.seeInWords(tok.Args[0], words)
	case "tell":
	default:
		return t.tell("I don't know this form.", "It may be of another version of netpost. Ask the question again.")
	}
	d, failed := t.load(tok.Args[0])
	if failed != nil {
		return failed
	}
	facts, err := d.understood(strings.TrimSpace(words))
	if err != nil {
		return t.misunderstood(err)
	}
	return t.give(d, facts)
}

// hold asks about a name before anything is kept. The ruling is there already,
// for whoever can't wait.
func (t *turn) hold(s spoken, v view, names []string, d dialogue) Reply {
	q := heldQuestion{
		id: t.NewID(), delivery: t.Delivery, assoc: t.assoc.ID, asker: t.Who.Person,
		spoken: s, names: names, view: v, message: t.message, public: t.public, at: t.Now(),
	}
	if !t.held.put(q) {
		return Nothing{}
	}
	b := Buttons{Label: "Before it is kept"}
	b.add("Leave the name out", "held", q.id, "drop")
	b.add("It is no name: go on", "held", q.id, "keep")
	doc := d.plain()
	doc.Blocks = slices.Concat([]Block{
		Heading{"Is this a person's name? " + Clip(strings.Join(quoted(names), ", "), 120), Plain},
		Para{Line("Nothing of your question is kept yet, and nobody else sees this. Questions are kept, and some are about minors' matches: they are no place for names.")},
	}, doc.Blocks, []Block{b})
	return Say{Message: Message{Doc: doc}, Private: true, InThread: t.Where.Thread != ""}
}

// release goes on with a question that was held back.
func (t *turn) release(id, choice string) Reply {
	q, ok := t.held.take(id, t.assoc.ID, t.Who.Person, t.Now())
	if !ok {
		return t.tell("I don't hold that question any more, and nothing of it was kept.", "Ask it again.")
	}
	if choice != "keep" {
		q.spoken.text = WithoutNames(q.spoken.text, q.names)
	}
	if q.then != nil {
		return q.then(t, q.spoken.text)
	}
	t.public, t.message = q.public, q.message
	d, refused := t.begun(q.spoken, t.alone())
	if refused != nil {
		return refused
	}
	return t.keep(d, q.view)
}
