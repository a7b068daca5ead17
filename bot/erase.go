package bot

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"example.org/netpost/bot/store"
	"example.org/netpost/casebook"
)

// erasing is somebody who is to be erased, with the names that they go by.
type erasing struct {
	Person
	names []string
	self  bool
}

// called is what they are called in what is said about it.
func (e erasing) called() string {
	if e.self {
		return "you"
	}
	return e.ID
}

// erase shows what erasing somebody would do, and asks. Words may say whom, by
// a mention or the platform's id ("me" is the person), and then the names that
// they go by, to be looked for in what others wrote.
func (t *turn) erase(words string) Reply {
	e := erasing{Person: t.Who.Person}
	first, rest := cutWord(words)
	switch {
	case len(t.named) > 0:
		e.Person = t.named[0]
		if strings.HasPrefix(first, "@") || strings.HasPrefix(first, "<@") {
			words = rest
		}
	case first != "" && !strings.EqualFold(first, "me"):
		e.Person = Person{Platform: t.Who.Platform, ID: strings.TrimPrefix(first, "@")}
		words = rest
	default:
		words = rest
	}
	e.self = e.Person == t.Who.Person
	e.names = namesIn(words)
	if !e.self && t.role < Publisher {
		return t.refuse(Publisher)
	}
	would, err := t.wouldErase(e)
	if err != nil {
		return t.trouble(err, "It could not be looked up what is kept; nothing has changed.")
	}
	parts := deleted(would)
	if len(parts) == 0 && would.Given == 0 && len(would.Mentions) == 0 {
		if e.self {
			return t.tell("Nothing is kept of you here.", "There is nothing to erase.")
		}
		return t.tell(fmt.Sprintf("Nothing is kept of %s on %s.", Clip(e.ID, 40), e.Platform), "Name a person with @, or by the id in their profile.")
	}
	yes, err1 := Token{"erase", []string{e.ID, strings.Join(e.names, ","), "yes"}}.State()
	no, err2 := Token{"erase", []string{e.ID, strings.Join(e.names, ","), "no"}}.State()
	if err1 != nil || err2 != nil {
		return t.tell("Those are too many names for one button.", "Give fewer, and look for the others with another erase after it.")
	}
	d := Doc{Tone: Care, Blocks: []Block{
		Heading{"Erase all that is kept of " + e.called() + "?", Care},
		Fields{[]Field{{"Deleted would be", lines(parts)}, {"Left without a name", lines(left(would))}}},
	}}
	if n := len(would.Notes); n > 0 {
		d.Blocks = append(d.Blocks, Para{Line(many(n, "published note was", "published notes were") + " made from it: published notes stay, and are listed afterwards for a person to look at.")})
	}
	d.Blocks = append(d.Blocks,
		Buttons{"It can't be taken back", []Button{{"Erase it all", yes}, {"Keep it", no}}},
		Aside{Line("Messages in the channels are the platform's: they stay there until somebody deletes them there.")})
	return Say{Message: Message{Doc: d}, Private: true, InThread: t.Where.Thread != ""}
}

// namesIn are names with commas between.
func namesIn(words string) []string {
	var out []string
	for n := range strings.SplitSeq(words, ",") {
		if n = strings.Join(strings.Fields(n), " "); n != "" {
			out = append(out, n)
		}
	}
	return out
}

// erased carries it out, or not.
func (t *turn) erased(id, names, choice string) Reply {
	e := erasing{Person: Person{Platform: t.Who.Platform, ID: id}, names: namesIn(names)}
	e.self = e.Person == t.Who.Person
	if !e.self && t.role < Publisher {
		return t.refuse(Publisher)
	}
	if choice != "yes" {
		return Update{Message: Message{Doc: Doc{Blocks: []Block{Heading{"Nothing was erased", Plain}, Para{Line("All stays as it was.")}}}}}
	}
	t.held.drop(t.assoc.ID, e.Person)
	look, did, err := t.erasure(e)
	switch {
	case err == errSeen:
		return Nothing{}
	case err != nil:
		return t.trouble(err, "It could not be erased; all is as it was.")
	}
	d := Doc{Blocks: []Block{Heading{"Erased", Plain}}}
	parts := deleted(did)
	if len(parts) == 0 {
		parts = []string{"nothing: nothing was kept"}
	}
	d.Blocks = append(d.Blocks, Fields{[]Field{{"Deleted", lines(parts)}, {"Left without a name", lines(left(did))}}})
	if len(look) > 0 {
		label := "For a person to look at"
		if t.role < Publisher {
			label += " (show it to a publisher)"
		}
		d.Blocks = append(d.Blocks, Fields{[]Field{{label, lines(look)}}})
	}
	if err := t.Store.Scrub(t.ctx); err != nil {
		d.Blocks = append(d.Blocks, Aside{Line("It is out of the store, and may be in the files beside it until the next clean-up: error " + t.report(err) + ".")})
	}
	d.Blocks = append(d.Blocks, Aside{Line("Messages in the channels stay there until somebody deletes them there.")})
	return Update{Message: Message{Doc: d}}
}

// errDry undoes an erasure that was only to be looked at.
var errDry = errors.New("only looked at")

// wouldErase tells what erasing somebody would do.
func (t *turn) wouldErase(e erasing) (would store.Erased, err error) {
	err = t.Store.Write(t.ctx, t.assoc.ID, func(w store.Writer) error {
		if would, err = w.Erase(e.Person, e.names...); err != nil {
			return err
		}
		return errDry
	})
	if err == errDry {
		err = nil
	}
	return would, err
}

// erasure erases somebody in one write. It lists what is left for a person to
// look at. The audit trail has that it was done and by whom, and not of whom.
func (t *turn) erasure(e erasing) (look []string, did store.Erased, err error) {
	book, err := t.assoc.notesOf()
	if err != nil {
		t.report(err) // notes that can't be read are no reason to keep a person's rows
		look = append(look, "the case notes: they can't be read now, so it is not known whether one quotes or names "+e.called())
	}
	err = t.write(func(w store.Writer) error {
		if did, err = w.Erase(e.Person, e.names...); err != nil {
			return err
		}
		entry := store.Entry{At: t.Now(), Who: t.Who.Person, Did: "erase"}
		what := "a person"
		if e.self {
			entry.Who, what = Person{}, "a person, by themself"
		}
		entry.Details = strings.Join(append([]string{what}, deleted(did)...), ", ")
		if ids := noteIDs(did.Notes, quoting(book, did.Quotes)); len(ids) > 0 {
			entry.Details += "; notes to look at: " + strings.Join(ids, ", ")
		}
		return w.Log(entry)
	})
	return append(look, t.leftOver(e, did, book)...), did, err
}

// deleted says what was deleted, a kind of thing a line.
func deleted(e store.Erased) []string {
	var out []string
	add := func(n int, one, more string) {
		if n > 0 {
			out = append(out, many(n, one, more))
		}
	}
	add(e.Questions, "question with its answer", "questions with their answers")
	add(e.Views, "view of a play", "views of plays")
	add(e.Votes, "vote", "votes")
	add(e.Calls, "call for a mentor", "calls for a mentor")
	add(e.Replies, "answer as a mentor", "answers as a mentor")
	add(e.Drafts, "draft note", "draft notes")
	add(e.Posts, "record of a message", "records of messages")
	add(e.Entries, "entry of the audit trail", "entries of the audit trail")
	return out
}

// left says what stays without a name.
func left(e store.Erased) []string {
	if e.Given == 0 {
		return nil
	}
	return []string{many(e.Given, "fact told to another's question", "facts told to others' questions")}
}

// mostMentions is how many texts that name a person are listed.
const mostMentions = 10

// leftOver lists what is published or was written by others, for a person to
// look at. What somebody else asked or saw is not shown.
func (t *turn) leftOver(e erasing, did store.Erased, book *casebook.Book) []string {
	var out []string
	for _, id := range did.Notes {
		out = append(out, "note "+id+": it was drafted by them, or from a question of theirs")
	}
	for _, id := range quoting(book, did.Quotes) {
		if !slices.Contains(did.Notes, id) {
			out = append(out, "note "+id+": it has words of theirs")
		}
	}
	for _, id := range naming(book, append([]string{e.ID}, e.names...)) {
		out = append(out, "note "+id+": it names them")
	}
	for i, m := range did.Mentions {
		if i == mostMentions {
			out = append(out, fmt.Sprintf("and %d more that name them", len(did.Mentions)-i))
			break
		}
		s := m.In + " " + m.ID + ": it names them"
		if t.role >= Publisher && m.In != "question" && m.In != "view" {
			s += ": “" + Clip(strings.Join(strings.Fields(m.Text), " "), 160) + "”"
		}
		out = append(out, s)
	}
	return out
}

// noteIDs are the ids of both lists, sorted, each once.
func noteIDs(a, b []string) []string {
	all := append(slices.Clone(a), b...)
	slices.Sort(all)
	return slices.Compact(all)
}

// Words of a person are found in a note by as many of them in a row: fewer are
// what anybody says of a play.
const quotedRun = 8

// quoting lists the notes that have words of a person in them, sorted: some in
// a row in what is written, or all of them as the play.
func quoting(book *casebook.Book, quotes []string) []string {
	runs, plays := map[string]bool{}, map[string]bool{}
	for _, q := range quotes {
		words := bareWords(q)
		plays[strings.Join(words, " ")] = true
		for i := 0; i+quotedRun <= len(words); i++ {
			runs[strings.Join(words[i:i+quotedRun], " ")] = true
		}
	}
	delete(plays, "")
	return notesWhere(book, func(n *casebook.Note) bool {
		if plays[strings.Join(bareWords(n.Play), " ")] {
			return true
		}
		words := bareWords(n.Title + "\n" + n.Body)
		for i := 0; i+quotedRun <= len(words); i++ {
			if runs[strings.Join(words[i:i+quotedRun], " ")] {
				return true
			}
		}
		return false
	})
}

// bareWords are the words of a text in small letters, without what is between
// them.
func bareWords(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// naming lists the notes that have one of the names in them as words, sorted.
func naming(book *casebook.Book, names []string) []string {
	padded := func(s string) string { return " " + strings.Join(bareWords(s), " ") + " " }
	return notesWhere(book, func(n *casebook.Note) bool {
		text := padded(n.Text)
		return slices.ContainsFunc(names, func(name string) bool { p := padded(name); return len(p) > 2 && strings.Contains(text, p) })
	})
}

func notesWhere(book *casebook.Book, is func(*casebook.Note) bool) []string {
	if book == nil {
		return nil
	}
	var out []string
	for _, n := range book.Notes() {
		if is(n) {
			out = append(out, n.ID)
		}
	}
	slices.Sort(out)
	return out
}
