package bot

import (
	"context"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.org/netpost/bot/store"
	"example.org/netpost/casebook"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/notation"
)

// draftForm opens the form for a note out of a mentor's answer.
func (t *turn) draftForm(reply string) Reply {
	return Form{
		State: Token{"note", []string{reply}}.String(), Title: "Draft a note", Send: "Draft it",
		Intro: "The play and the ruling are filled in, and the draft is checked. Publishers publish it.",
		Fields: []Input{
			{Name: "title", Label: "Title", Must: true, Max: 100, Hint: "Setter's tight save, blocker on it too"},
			{Name: "text", Label: "The association's words", Lines: true, Max: longestAnswer, Hint: "empty: your answer"},
			{Name: "ruling", Label: "The ruling", Max: 200, Hint: "empty: the engine's; else: fault back-row-block against B"},
			{Name: "departs", Label: "Why it departs from the book", Max: 500, Hint: "empty: it rules as the book does"},
		},
	}
}

// makeDraft drafts a note out of a mentor's answer, proves it against the
// casebook and keeps it, whatever the proof says: a draft is nobody's rule yet.
// Drafted again from the same answer, it takes the place of the last version.
func (t *turn) makeDraft(reply string, values map[string]string) Reply {
	title := oneLineOf(values["title"])
	if title == "" {
		return t.tell("A note needs a title, and nothing was kept.", "Press the button again, and give it one.")
	}
	var r store.Reply
	var drafts []store.Draft
	err := t.Store.Read(t.ctx, t.assoc.ID, func(rd store.Reader) (err error) {
		if r, err = rd.FindReply(reply); err == nil {
			drafts, err = rd.Drafts()
		}
		return err
	})
	switch {
	case store.CodeOf(err) == store.NotFound:
		return t.keptWords(title+"\n"+values["text"], "The mentor's answer is not kept any more, and no draft was made.")
	case err != nil:
		return t.trouble(err, "The draft was not made.")
	}
	f, failed := t.loadCall(r.Call)
	if failed != nil {
		return failed
	}
	own := slices.IndexFunc(drafts, func(d store.Draft) bool { return d.ID == reply })
	if own >= 0 && drafts[own].State == store.Published {
		return t.tell("That draft is published already, as the note "+drafts[own].Note+".", "A published note is superseded by another, never changed.")
	}
	ruling, problem := parseRuling(values["ruling"])
	if problem != "" {
		var wrote []string
		for _, name := range []string{"title", "text", "ruling", "departs"} {
			if v := oneLineOf(values[name]); v != "" {
				wrote = append(wrote, name+": "+v)
			}
		}
		return t.keptWords(strings.Join(wrote, "; "), problem)
	}
	body := strings.TrimSpace(values["text"])
	if body == "" {
		body = r.Text
	}
	if names := strangeNames(title + ". " + body); len(names) > 0 && values["named"] == "" {
		return t.holdWords(title+"\n"+body, names, func(t *turn, words string) Reply {
			next := map[string]string{"ruling": values["ruling"], "departs": values["departs"], "named": "yes"}
			next["title"], next["text"], _ = strings.Cut(words, "\n")
			return t.makeDraft(reply, next)
		})
	}
	n := t.noteOf(f.dialogue)
	n.Title, n.Body = title, wrap(body)
	n.Departs = oneLineOf(values["departs"])
	if !ruling.IsZero() {
		n.Ruling = ruling
	}
	book, err := t.book()
	if err != nil {
		return t.keptWords(title+"\n"+body, "The casebook can't be read, so no draft was made; tell whoever runs netpost: error "+t.report(err)+".")
	}
	n.ID = t.noteID(book, drafts, own)
	n, found := t.prove(book, n)
	text := casebook.Format(n)
	err = t.write(func(w store.Writer) error {
		if err := w.SaveDraft(store.Draft{ID: reply, Question: f.Question, By: t.Who.Person, Text: text, At: t.Now(), State: store.Drafted}); err != nil {
			return err
		}
		return w.Log(store.Entry{At: t.Now(), Who: t.Who.Person, Did: "draft", To: reply})
	})
	switch {
	case err == errSeen:
		return Nothing{}
	case err != nil:
		return t.trouble(err, "The draft could not be kept.")
	}
	return Say{Message: draftDoc(reply, n, text, found), Private: true, InThread: t.Where.Thread != ""}
}

// noteOf is a note with what is known of a question: its play as read, with
// the facts told, and what the engine rules on it.
func (t *turn) noteOf(d dialogue) *casebook.Note {
	n := &casebook.Note{Status: casebook.Draft}
	codes := []code.Code{code.Code(d.Code)}
	if d.Code == "" {
		codes = code.All()
		for _, g := range d.given {
			if g.Key.Fact == answer.CodeFact {
				codes = []code.Code{code.Code(g.Value)}
			}
		}
	}
	n.Codes = codes
	n.Season, _ = code.ParseSeason(d.Season)
	if n.Season == 0 {
		for _, c := range codes {
			if b, err := code.Open(c, 0); err == nil {
				n.Season = max(n.Season, b.Season())
			}
		}
	}
	a := d.answer
	for _, r := range a.Rules {
		for _, number := range cited(r.Cite) {
			if !slices.Contains(n.Rules, number) {
				n.Rules = append(n.Rules, number)
			}
		}
		if topic := strings.ToLower(r.Title); !slices.Contains(n.Topics, topic) {
			n.Topics = append(n.Topics, topic)
		}
	}
	if d.subject == nil || a.Outcome == "" && len(a.Measure) == 0 && a.Answer == "" {
		return n // a play that is not read whole is told in the words alone
	}
	n.Play = oneLineOf(notation.Say(d.subject))
	n.Ruling = casebook.Ruling{Outcome: string(a.Outcome), Fault: string(a.Fault), Replay: string(a.Replay), Measure: a.Measure, Answer: string(a.Answer)}
	if len(a.Against) > 0 && (a.Outcome == "fault" || len(a.Measure) > 0) {
		n.Ruling.Against = a.Against[0]
	}
	if n.Ruling.Outcome == answer.Depends {
		n.Ruling = casebook.Ruling{Outcome: answer.Depends}
	}
	return n
}

// cited takes a citation apart: "9-4; 9-5-1" or "13.2.2-13.2.3; 13.3.3".
func cited(cite string) []string {
	var out []string
	for part := range strings.SplitSeq(cite, ";") {
		for n := range strings.SplitSeq(part, ",") {
			if n = strings.TrimSpace(n); n != "" {
				out = append(out, n)
			}
		}
	}
	return out
}

// noteID is a free id for a draft, the one that it has where it was drafted
// before.
func (t *turn) noteID(book *casebook.Book, drafts []store.Draft, own int) string {
	if own >= 0 {
		if id := idOf(drafts[own].Text); id != "" && book.Note(id) == nil {
			return id
		}
	}
	var taken []string
	for i, d := range drafts {
		if i != own {
			taken = append(taken, idOf(d.Text), d.Note)
		}
	}
	return book.NextID(t.Now().Year(), taken...)
}

// idOf is the id of a draft's note.
func idOf(text string) string {
	if n, _ := casebook.Parse("draft.md", text); n != nil {
		return n.ID
	}
	return ""
}

// book is the association's casebook as it stands; an empty one where it has
// none.
func (t *turn) book() (*casebook.Book, error) {
	if t.assoc.Book == nil {
		return casebook.NewBook(nil, nil), nil
	}
	return t.assoc.Book()
}

var ruleField = regexp.MustCompile(`^rules\[(\d+)\]$`)

// prove checks a note as it would stand once it is published, today. Numbers
// that the engine cites and that the casebook does not know as rules are left
// out of it.
func (t *turn) prove(book *casebook.Book, n *casebook.Note) (*casebook.Note, []casebook.Finding) {
	today := casebook.DateOf(t.Now())
	for {
		issued := *n
		issued.Status, issued.Issued = casebook.Published, today
		read, found := casebook.Parse(n.FileName(), casebook.Format(&issued))
		if len(found) == 0 {
			found = casebook.Prove(book, read, casebook.CheckOptions{Today: today})
		}
		var odd []int
		for _, f := range found {
			if m := ruleField.FindStringSubmatch(f.Field); m != nil {
				i, _ := strconv.Atoi(m[1])
				odd = append(odd, i)
			}
		}
		if len(odd) == 0 {
			return n, found
		}
		next := *n
		next.Rules = nil
		for i, r := range n.Rules {
			if !slices.Contains(odd, i) {
				next.Rules = append(next.Rules, r)
			}
		}
		n = &next
	}
}

// mostFindings is how many findings of a draft are shown.
const mostFindings = 6

// draftDoc shows a draft with what its proof found.
func draftDoc(reply string, n *casebook.Note, text string, found []casebook.Finding) Message {
	d := Doc{Blocks: []Block{Heading{"The draft " + n.ID + " is kept, and every check passes", Good}}}
	d.Tone = Good
	if len(found) > 0 {
		d.Tone = Open
		d.Blocks = []Block{Heading{"The draft " + n.ID + " is kept, and is not ready: " + many(len(found), "finding", "findings"), Open}}
		var l List
		for _, f := range found[:min(len(found), mostFindings)] {
			what := f.What
			if f.Field != "" {
				what = f.Field + ": " + what
			}
			if f.Mend != "" {
				what += "; " + f.Mend
			}
			l.Items = append(l.Items, Line(what))
		}
		d.Blocks = append(d.Blocks, l)
	}
	if n.Play == "" {
		d.Blocks = append(d.Blocks, Para{Line("The engine does not read the play whole, so the note goes without it and says it in words.")})
	}
	d.Blocks = append(d.Blocks, Fields{[]Field{{"The note", textLines(text)}}})
	d.Blocks = append(d.Blocks, Aside{Line("A draft is nobody's rule: publishers publish it.")})
	b := Buttons{Label: "Also"}
	b.add("Draft it anew", "draft", reply)
	b.add("Drop it", "drop", reply)
	d.Blocks = append(d.Blocks, b)
	return Message{Doc: d}
}

// dropDraft takes a draft away that nobody published.
func (t *turn) dropDraft(id string) Reply {
	var state store.DraftState
	err := t.write(func(w store.Writer) (err error) {
		state, err = drop(w, id, t.Who.Person, t.Now())
		return err
	})
	switch {
	case err == errSeen:
		return Nothing{}
	case store.CodeOf(err) == store.NotFound:
		return t.tell("That draft is not kept any more.", "")
	case err != nil:
		return t.trouble(err, "The draft could not be dropped; nothing has changed.")
	}
	done := "The draft is dropped."
	if state != store.Drafted {
		done = "That draft is " + string(state) + " already."
	}
	return Update{Message: Message{Doc: Doc{Blocks: []Block{Heading{done, Plain}}}}}
}

// DropDraft takes a draft away that nobody published.
func (b *Bot) DropDraft(ctx context.Context, a Association, id string, by Person) error {
	return b.Store.Write(ctx, a.ID, func(w store.Writer) error {
		state, err := drop(w, id, by, b.Now())
		if err == nil && state != store.Drafted {
			err = fmt.Errorf("the draft is %s already", state)
		}
		return err
	})
}

// drop drops a draft, and gives the state that it was in: only one that waits
// is dropped.
func drop(w store.Writer, id string, by Person, at time.Time) (store.DraftState, error) {
	d, err := w.Draft(id)
	if err != nil || d.State != store.Drafted {
		return d.State, err
	}
	was := d.State
	d.State, d.At = store.Dropped, at
	if err := w.SaveDraft(d); err != nil {
		return was, err
	}
	return was, w.Log(store.Entry{At: at, Who: by, Did: "drop", To: id, About: d.By})
}

var outcomesInWords = map[string]string{
	"play on": "play-on", "play-on": "play-on", "no fault": "play-on", "fault": "fault", "replay": "replay", "re-serve": "re-serve",
	"serve again": "re-serve", "depends": answer.Depends, "it depends": answer.Depends,
}

// parseRuling reads a ruling as people write it: "play on", "fault
// back-row-block against B". The problem says what is wrong with it.
func parseRuling(s string) (r casebook.Ruling, problem string) {
	s = strings.ToLower(strings.Trim(oneLineOf(s), " ."))
	if s == "" {
		return r, ""
	}
	head, against, _ := strings.Cut(s, " against ")
	words := strings.Fields(head)
	for n := min(2, len(words)); n > 0 && r.Outcome == ""; n-- {
		if o, ok := outcomesInWords[strings.Join(words[:n], " ")]; ok {
			r.Outcome, words = o, words[n:]
		}
	}
	if r.Outcome == "" {
		return r, "The ruling was not understood, and no draft was made. Begin it with play on, fault, replay, re-serve or depends."
	}
	if len(against) == 1 {
		against = strings.ToUpper(against)
	}
	r.Against = against
	id := strings.TrimLeft(strings.Join(words, " "), ": ")
	if id == "" {
		return r, ""
	}
	known := ""
	for _, k := range judge.All() {
		if k.ID == strings.ReplaceAll(id, " ", "-") || strings.EqualFold(k.Title, id) {
			known = k.ID
		}
	}
	switch {
	case known == "":
		return r, fmt.Sprintf("There is no fault or replay “%s”, and no draft was made. Write its name as an answer shows it.", Clip(id, 60))
	case r.Outcome == "fault":
		r.Fault = known
	case r.Outcome == "replay":
		r.Replay = known
	default:
		return r, "Only a fault or a replay has a name, and no draft was made."
	}
	return r, ""
}

// wrapAt is the width of a note's lines.
const wrapAt = 118

// wrap lays words out as a note's text: paragraphs of lines that are not too
// long.
func wrap(s string) string {
	var out strings.Builder
	for i, p := range strings.Split(strings.TrimSpace(strings.ReplaceAll(s, "\r\n", "\n")), "\n\n") {
		if i > 0 {
			out.WriteString("\n")
		}
		n := 0
		for w := range strings.FieldsSeq(p) {
			switch l := len([]rune(w)); {
			case n == 0:
				n = l
			case n+1+l > wrapAt:
				out.WriteString("\n")
				n = l
			default:
				out.WriteString(" ")
				n += 1 + l
			}
			out.WriteString(w)
		}
		out.WriteString("\n")
	}
	return out.String()
}
