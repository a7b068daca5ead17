package bot

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"

	"example.org/netpost/casebook"
	"example.org/netpost/engine/answer"
)

const (
	recheckFor  = 75 * time.Second // how long a recheck in a channel takes at most
	listedFor   = 30 * time.Minute // how long its buttons work
	mostListed  = 20               // how many rechecks are remembered
	mostCauses  = 5                // how many causes are listed with a button
	mostExample = 3                // how many plays are shown of each
	mostNotes   = 5                // how many notes are listed
)

// listed is a recheck that a mentor looked at, kept in memory alone: after a
// restart it is made again.
type listed struct {
	id    string
	assoc string
	at    time.Time
	Rechecked
}

// rechecks are those that mentors looked at, oldest first.
type rechecks struct {
	mu  sync.Mutex
	all []listed
}

func (r *rechecks) put(l listed) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.all = slices.DeleteFunc(r.all, func(o listed) bool { return o.id == l.id || l.at.Sub(o.at) > listedFor })
	if len(r.all) >= mostListed {
		r.all = slices.Delete(r.all, 0, 1)
	}
	r.all = append(r.all, l)
}

func (r *rechecks) get(id, assoc string, now time.Time) (listed, bool) {
	r.mu.Lock()
	defer r.mu.Unlock()
	for _, l := range r.all {
		if l.id == id && l.assoc == assoc && now.Sub(l.at) <= listedFor {
			return l, true
		}
	}
	return listed{}, false
}

// ByCause groups changes by what made them: the cause of most first. Each group
// keeps the order of the changes.
func ByCause(changes []Change) [][]Change {
	var out [][]Change
	at := map[string]int{}
	for _, c := range changes {
		k := strings.Join(causeTitles(c.Causes), "\n")
		i, ok := at[k]
		if !ok {
			i = len(out)
			at[k] = i
			out = append(out, nil)
		}
		out[i] = append(out[i], c)
	}
	slices.SortStableFunc(out, func(a, b []Change) int { return len(b) - len(a) })
	return out
}

// recheck lists to a mentor what is ruled otherwise today.
func (t *turn) recheck() Reply {
	ctx, cancel := context.WithTimeout(t.ctx, recheckFor)
	defer cancel()
	found, err := t.Recheck(ctx, t.assoc, time.Time{})
	if err != nil {
		return t.trouble(err, "The questions could not be ruled on again; nothing has changed.")
	}
	l := listed{id: t.NewID(), assoc: t.assoc.ID, at: t.Now(), Rechecked: found}
	t.rechecks.put(l)
	return Say{Message: l.message(""), Private: true, InThread: t.Where.Thread != ""}
}

// message lays a recheck out with the buttons to send the corrections.
func (l listed) message(done string) Message {
	var d Doc
	add := func(b Block) { d.Blocks = append(d.Blocks, b) }
	if done != "" {
		add(Para{Line(done)})
	}
	head := "Nothing is ruled otherwise today"
	if done != "" {
		head = "Nothing else is ruled otherwise today"
	}
	if n := len(l.Changes); n > 0 {
		head = many(n, "question is", "questions are") + " ruled otherwise today"
	}
	add(Heading{head, Plain})
	add(Para{Line(l.Looked())})
	groups := ByCause(l.Changes)
	for i, g := range groups[:min(len(groups), mostCauses)] {
		for _, w := range causeTitles(g[0].Causes) {
			add(Para{Text{{upper(w), Strong}}})
		}
		var list List
		for _, c := range g[:min(len(g), mostExample)] {
			list.Items = append(list.Items, Line(c.Line()))
		}
		if n := len(g) - mostExample; n > 0 {
			list.Items = append(list.Items, Line(fmt.Sprintf("and %d more", n)))
		}
		add(list)
		if n := len(sendable(g)); n > 0 {
			b := Buttons{Label: fmt.Sprintf("Cause %d", i+1)}
			b.add("Send "+many(n, "correction", "corrections"), "correct", l.id, strconv.Itoa(i))
			add(b)
		}
	}
	if n := len(groups) - mostCauses; n > 0 {
		add(Aside{Line(fmt.Sprintf("And %s more.", many(n, "cause", "causes")))})
	}
	if n := len(sendable(l.Changes)); n > 0 && len(groups) > 1 {
		b := Buttons{Label: "All"}
		b.add("Send all "+many(n, "correction", "corrections"), "correct", l.id, "all")
		add(b)
	}
	if len(l.Notes) > 0 {
		add(Heading{many(len(l.Notes), "thing is", "things are") + " not right in the notes any more", Plain})
		var list List
		for _, n := range l.Notes[:min(len(l.Notes), mostNotes)] {
			list.Items = append(list.Items, Line(TurnedLine(n)))
		}
		if n := len(l.Notes) - mostNotes; n > 0 {
			list.Items = append(list.Items, Line(fmt.Sprintf("and %d more; for all: netpost check", n)))
		}
		add(list)
	}
	return Message{Doc: d}
}

// Looked says in words what was looked at.
func (r Rechecked) Looked() string {
	s := many(r.Questions, "kept question", "kept questions") + " ruled on again, " + many(r.Plays, "different play", "different plays") + "."
	if r.Left > 0 {
		s += " " + many(r.Left, "of them has no ruling to compare.", "of them have no ruling to compare.")
	}
	if r.Cut {
		s += " There was no time for the rest; for all of them, on the machine that netpost runs on: netpost recheck"
	}
	return s
}

// Line tells a change in a line. It shows the words of a question, and what was
// read in them, only where everybody could read them.
func (c Change) Line() string {
	s, words := "a private question", briefly
	if c.Open {
		s, words = "“"+Clip(oneLineOf(c.Question.Text), 120)+"”", pastWords
	}
	s += ": then " + Clip(words(c.Was), 160) + "; now "
	if c.Stuck != "" {
		return s + "no ruling, for the facts told to it fit the play no longer"
	}
	s += Clip(words(c.Now), 160)
	for _, cause := range c.Causes {
		if c.Open && ofTheWords(cause) {
			s += "; " + CauseWords(cause)
		}
	}
	return s
}

// ofTheWords reports whether a cause tells of the words of a question.
func ofTheWords(c answer.Cause) bool { return c.Kind == answer.ByReading || c.Kind == answer.ByRule }

// CauseTitle says what made rulings others, without the words of any of them.
func CauseTitle(c answer.Cause) string {
	switch c.Kind {
	case answer.ByReading:
		return "the words are read otherwise"
	case answer.ByRule:
		return "the rules are applied otherwise"
	}
	return CauseWords(c)
}

func causeTitles(causes []answer.Cause) []string {
	var out []string
	for _, c := range causes {
		out = append(out, CauseTitle(c))
	}
	return out
}

// briefly is what an answer came to, without the facts of the play.
func briefly(p answer.Past) string {
	if p.Outcome == answer.Depends {
		p.Branches, p.Outcome, p.Kind = nil, "", answer.None
		return strings.Replace(pastWords(p), "no ruling", "it turns on a fact", 1)
	}
	return pastWords(p)
}

// Shown is the change as everybody who may list changes may see it: of a
// private question nothing that was read in its words.
func (c Change) Shown() Change {
	if c.Open {
		return c
	}
	c.Question.Text, c.Question.Answer.Play = "", ""
	for _, p := range []*answer.Past{&c.Was, &c.Now} {
		p.Read, p.Because, p.Branches = nil, nil, nil
	}
	c.Causes = slices.Clone(c.Causes)
	for i, cause := range c.Causes {
		if ofTheWords(cause) {
			c.Causes[i].Was, c.Causes[i].Now = "", ""
		}
	}
	return c
}

// TurnedLine tells in a line what is wrong with a note.
func TurnedLine(n casebook.Turned) string {
	return n.Note.ID + " " + n.Note.Title + ": " + strings.Join(turnedWords(n), "; ")
}

// sendCorrections queues the corrections of one cause, or of all.
func (t *turn) sendCorrections(id, which string) Reply {
	l, ok := t.rechecks.get(id, t.assoc.ID, t.Now())
	if !ok {
		return t.tell("This list is too old to act on, so nothing was sent.", "Look again: "+CommandName+" recheck")
	}
	changes := l.Changes
	if which != "all" {
		groups := ByCause(l.Changes)
		i, err := strconv.Atoi(which)
		if err != nil || i < 0 || i >= len(groups) {
			return t.tell("There is no such cause in the list.", "Look again: "+CommandName+" recheck")
		}
		changes = groups[i]
	}
	out, err := t.Correct(t.ctx, t.assoc, changes, t.Who.Person)
	if err != nil {
		return t.trouble(err, fmt.Sprintf("Not all could be sent: %s on the way. What was sent is not sent again.", many(out.Queued, "correction is", "corrections are")))
	}
	sent := sendable(changes)
	l.Changes = slices.DeleteFunc(slices.Clone(l.Changes), func(c Change) bool {
		return slices.ContainsFunc(sent, func(s Change) bool { return s.Question.ID == c.Question.ID })
	})
	t.rechecks.put(l)
	return Update{Message: l.message(out.Words())}
}

// Words says what became of corrections.
func (c Corrected) Words() string {
	s := many(c.Queued, "correction is", "corrections are") + " on the way."
	if c.Untold > 0 {
		s += " " + many(c.Untold, "has", "have") + " nobody left to tell."
	}
	if c.Moved > 0 {
		s += " " + many(c.Moved, "was", "were") + " answered anew or deleted meanwhile, and left alone."
	}
	return s
}
