package bot

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"strings"

	"example.org/netpost/bot/store"
	"example.org/netpost/casebook"
)

// mostDrafts is how many drafts are listed with a button.
const mostDrafts = 10

// draftsList lists to a publisher the drafts that nobody has published.
func (t *turn) draftsList() Reply {
	var all []store.Draft
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		all, err = r.Drafts(store.Drafted)
		return err
	})
	if err != nil {
		return t.trouble(err, "The drafts could not be looked up.")
	}
	d := Doc{Blocks: []Block{Heading{many(len(all), "draft waits", "drafts wait") + " for a publisher", Plain}}}
	if len(all) == 0 {
		d.Blocks = []Block{Heading{"No draft waits for a publisher", Plain}, Para{Line("Mentors draft notes from their answers.")}}
	}
	var l List
	b := Buttons{Label: "Look at"}
	for i, dr := range all[:min(len(all), mostDrafts)] {
		title := "a draft that can't be read"
		if n, _ := casebook.Parse("draft.md", dr.Text); n != nil {
			title = n.ID + " " + n.Title
		}
		l.Items = append(l.Items, Line(fmt.Sprintf("%d. %s (%s)", i+1, title, moment(dr.At))))
		b.add(fmt.Sprintf("Draft %d", i+1), "proof", dr.ID)
	}
	if len(l.Items) > 0 {
		d.Blocks = append(d.Blocks, l)
	}
	if n := len(all) - mostDrafts; n > 0 {
		d.Blocks = append(d.Blocks, Aside{Line(fmt.Sprintf("And %d more, once these are decided.", n))})
	}
	if len(b.Items) > 0 {
		d.Blocks = append(d.Blocks, b)
	}
	return Say{Message: Message{Doc: d}, Private: true, InThread: t.Where.Thread != ""}
}

// asPublisher does what only publishers may.
func (t *turn) asPublisher(do func() Reply) Reply {
	if t.role < Publisher {
		return t.refuse(Publisher)
	}
	return do()
}

// proofDraft shows a draft to a publisher with what its proof finds today.
func (t *turn) proofDraft(id string) Reply {
	p, failed := t.loadDraft(id)
	if failed != nil {
		return failed
	}
	return Say{Message: t.proofDoc(p), Private: true, InThread: t.Where.Thread != ""}
}

// proofed is a draft with its note and what its proof finds.
type proofed struct {
	store.Draft
	note  *casebook.Note
	found []casebook.Finding
	book  *casebook.Book
	out   bool // it stands in the casebook already
}

// loadDraft gets a draft back and proves it. The reply is not nil where there
// is none to work on.
func (t *turn) loadDraft(id string) (p proofed, failed Reply) {
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		p.Draft, err = r.Draft(id)
		return err
	})
	switch {
	case store.CodeOf(err) == store.NotFound:
		return p, t.tell("That draft is not kept any more.", "")
	case err != nil:
		return p, t.trouble(err, "The draft could not be looked up.")
	}
	if p, err = t.proof(p.Draft); err != nil {
		return p, t.tell(upper(err.Error())+".", "The draft is kept. Whoever looks after the notes finds more with: netpost check")
	}
	return p, nil
}

// proof proves a draft as it would stand if it were published today.
func (t *turn) proof(d store.Draft) (p proofed, err error) {
	p.Draft = d
	if p.note, p.found = casebook.Parse("draft.md", p.Text); p.note == nil {
		return p, errors.New("the draft can't be read any more; a mentor drafts it anew")
	}
	if p.book, err = t.book(); err != nil {
		return p, fmt.Errorf("the case notes can't be read: %w", err)
	}
	if there := p.book.Note(p.note.ID); there != nil {
		issued := *p.note
		issued.Status, issued.Issued, issued.Path, issued.Text = there.Status, there.Issued, there.Path, there.Text
		p.out = casebook.Format(&issued) == casebook.Format(there)
		if !p.out { // somebody wrote another note of that number meanwhile
			p.note.ID = p.book.NextID(t.Now().Year(), p.note.ID)
		}
	}
	if !p.out {
		p.note, p.found = t.prove(p.book, p.note)
	}
	return p, nil
}

// digest tells a draft from one with other words.
func (p proofed) digest() string {
	return fmt.Sprintf("%x", sha256.Sum256([]byte(casebook.Format(p.note))))[:8]
}

func (t *turn) proofDoc(p proofed) Message {
	m := draftDoc(p.ID, p.note, casebook.Format(p.note), p.found)
	buttons := &Buttons{Label: "Publishers"}
	m.Doc.Blocks = m.Doc.Blocks[:len(m.Doc.Blocks)-2] // what mentors are told and can press
	switch {
	case p.State != store.Drafted:
		m.Doc.Blocks = append(m.Doc.Blocks, Aside{Line("It is " + string(p.State) + " already.")})
		return m
	case len(p.found) > 0:
		m.Doc.Blocks = append(m.Doc.Blocks, Aside{Line("It is not published before every check passes: a mentor drafts it anew, or it is dropped.")})
	case t.assoc.Publish == nil:
		m.Doc.Blocks = append(m.Doc.Blocks, Aside{Line("The association has no folder of notes in the settings, so it can't be published from here.")})
	default:
		buttons.add("Publish it", "issue", p.ID, p.digest())
	}
	buttons.add("Drop it", "drop", p.ID)
	m.Doc.Blocks = append(m.Doc.Blocks, *buttons)
	return m
}

// issue publishes a draft as it was looked at: it is written into the folder of
// the notes, dated today, and then noted as published. Killed between the two,
// it is found in the folder the next time and only noted.
func (t *turn) issue(id, digest string) Reply {
	p, failed := t.loadDraft(id)
	if failed != nil {
		return failed
	}
	if p.State == store.Dropped {
		return t.tell("That draft was dropped, so it was not published.", "A mentor can draft it anew.")
	}
	if p.State == store.Published {
		return t.tell("That draft is published already, as the note "+p.Note+".", "")
	}
	if !p.out && p.digest() != digest {
		return Update{Message: t.proofDoc(p)} // it is another one than was looked at
	}
	note, err := t.PublishDraft(t.ctx, t.assoc, id, t.Who.Person)
	var bad *NotReady
	switch {
	case errors.As(err, &bad):
		return Update{Message: t.proofDoc(p)}
	case store.CodeOf(err) != "":
		return t.trouble(err, "Whether it is published could not be noted. Publish it again: it is not written twice.")
	case err != nil:
		return t.tell("It was not published: "+err.Error()+".", "Whoever looks after the folder of the notes can help; the draft is kept.")
	}
	d := Doc{Tone: Good, Blocks: []Block{
		Heading{"Published as the note " + note.ID, Good},
		Para{Line("It stands in the folder of the notes as " + note.FileName() + ", and goes into the week's bulletin. Whoever looks after the folder commits it.")},
	}}
	return Update{Message: Message{Doc: d}}
}

// PublishDraft proves a draft and publishes it into the association's folder.
// Done again, it writes nothing twice. The error is *NotReady where a check does
// not pass.
func (b *Bot) PublishDraft(ctx context.Context, a Association, id string, by Person) (*casebook.Note, error) {
	t := &turn{Bot: b, ctx: ctx, assoc: a, checked: true}
	var d store.Draft
	err := b.Store.Read(ctx, a.ID, func(r store.Reader) (err error) {
		d, err = r.Draft(id)
		return err
	})
	if err != nil {
		return nil, err
	}
	p, err := t.proof(d)
	switch {
	case err != nil:
		return nil, err
	case d.State != store.Drafted:
		return nil, fmt.Errorf("the draft is %s already", d.State)
	case len(p.found) > 0:
		return nil, &NotReady{p.note, p.found}
	case a.Publish == nil:
		return nil, errors.New("the association has no folder of notes in the settings")
	}
	now := b.Now()
	if !p.out {
		p.note.Status, p.note.Issued = casebook.Published, casebook.DateOf(now.In(a.zone()))
		if err := a.Publish(p.note); err != nil {
			return nil, err
		}
	}
	return p.note, b.Store.Write(ctx, a.ID, func(w store.Writer) error {
		d, err := w.Draft(id)
		if err != nil {
			return err
		}
		d.State, d.Note, d.At = store.Published, p.note.ID, now
		if err := w.SaveDraft(d); err != nil {
			return err
		}
		return w.Log(store.Entry{At: now, Who: by, Did: "publish", To: p.note.ID, About: d.By})
	})
}

// NotReady is the error of a draft that the checks don't pass.
type NotReady struct {
	Note  *casebook.Note
	Found []casebook.Finding
}

func (e *NotReady) Error() string {
	var all []string
	for _, f := range e.Found {
		all = append(all, f.What)
	}
	return "the draft " + e.Note.ID + " is not ready: " + strings.Join(all, "; ")
}
