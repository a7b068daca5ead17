package bot

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"
	"time"

	"example.org/netpost/bot/store"
	"example.org/netpost/casebook"
)

// tooLate is how long after its moment a bulletin is still posted by the
// schedule. One that was missed for longer is left to a publisher.
const tooLate = 24 * time.Hour

// BulletinKey is the key of a bulletin's post to a place: it goes there once.
func BulletinKey(week string, p Place) string {
	return "bulletin/" + week + "/" + p.Platform + "/" + p.Channel
}

// zone is where the association's weeks begin.
func (a Association) zone() *time.Location { return a.Bulletin.zone() }

// LastWeek is the last week that is over in the association's zone.
func (a Association) LastWeek(now time.Time) Week { return WeekOf(now.In(a.zone())).Before() }

// notesOf reads the association's casebook; nil: it has none.
func (a Association) notesOf() (*casebook.Book, error) {
	if a.Book == nil {
		return nil, nil
	}
	return a.Book()
}

// BulletinOf is an association's bulletin of a week: as it was kept when it
// was posted first, else as it would be now, of a book and what is kept of the
// questions; either may be missing. Kept tells which.
func BulletinOf(a Association, w Week, book *casebook.Book, r store.Reader) (b Bulletin, kept bool, err error) {
	if r != nil {
		k, err := r.Bulletin(w.String())
		switch {
		case err == nil:
			if err := json.Unmarshal(k.Data, &b); err != nil {
				return b, true, fmt.Errorf("the bulletin %s as it was kept can't be read: %w", w, err)
			}
			return b, true, nil
		case store.CodeOf(err) != store.NotFound:
			return b, false, err
		}
	}
	b, err = NewBulletin(a.Name, w, a.zone(), book, r)
	return b, false, err
}

// PublishBulletin keeps a bulletin and queues it for places. It goes to each
// once, whoever posts it and however often: queued is how many are new. What
// was kept before is what goes out.
func PublishBulletin(a Association, b Bulletin, places []Place, by Person, now time.Time, w store.Writer) (queued int, err error) {
	if b.Empty() {
		return 0, errEmpty
	}
	week, err := ParseWeek(b.Week)
	if err != nil {
		return 0, err
	}
	if _, err = w.Bulletin(b.Week); store.CodeOf(err) == store.NotFound {
		err = w.KeepBulletin(store.Bulletin{ID: b.Week, Title: b.Title(), Text: b.Markdown(), Data: b.data(), Span: week.Span(a.zone()), By: by, At: now})
	}
	if err != nil {
		return 0, err
	}
	for _, p := range places {
		first, err := w.Queue(store.Post{Key: BulletinKey(b.Week, p), Where: p, Queued: now})
		if err != nil {
			return queued, err
		}
		if first {
			queued++
		}
	}
	return queued, w.Log(store.Entry{At: now, Who: by, Did: "publish", To: b.Week, Details: many(queued, "channel", "channels")})
}

// errEmpty: there is nothing in a bulletin.
var errEmpty = errors.New("there is nothing in it, so it is not posted")

// composeBulletin makes the message of a bulletin as it was kept.
func (t *turn) composeBulletin(p store.Post) (Target, Message, error) {
	parts := strings.Split(p.Key, "/")
	w, err := ParseWeek(parts[1])
	if err != nil {
		return Target{}, Message{}, err
	}
	b, err := t.keptBulletin(w)
	return Target{Place: p.Where}, b.message(), err
}

func (t *turn) keptBulletin(w Week) (b Bulletin, err error) {
	err = t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) error {
		k, err := r.Bulletin(w.String())
		if err != nil {
			return err
		}
		return json.Unmarshal(k.Data, &b)
	})
	return b, err
}

// bulletin previews a week's bulletin to a publisher.
func (t *turn) bulletin(words string) Reply {
	w := t.assoc.LastWeek(t.Now())
	if words != "" {
		var err error
		if w, err = ParseWeek(strings.ToUpper(words)); err != nil {
			return t.tell(upper(err.Error())+".", "For example: bulletin "+w.String())
		}
	}
	m, failed := t.preview(w, "")
	if failed != nil {
		return failed
	}
	return Say{Message: m, Private: true, InThread: t.Where.Thread != ""}
}

// preview shows a bulletin with the buttons to post it. The reply is not nil
// where that failed.
func (t *turn) preview(w Week, done string) (Message, Reply) {
	var b Bulletin
	kept := false
	var out []store.Post
	book, err := t.assoc.notesOf()
	if err != nil {
		return Message{}, t.tell("The case notes can't be read: "+err.Error()+".", "Whoever looks after them finds more with: netpost check")
	}
	err = t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		if b, kept, err = BulletinOf(t.assoc, w, book, r); err != nil {
			return err
		}
		for _, p := range t.assoc.BulletinTo {
			switch p, err := r.Post(BulletinKey(b.Week, p)); {
			case err == nil:
				out = append(out, p)
			case store.CodeOf(err) != store.NotFound:
				return err
			}
		}
		return nil
	})
	if err != nil {
		return Message{}, t.trouble(err, "The bulletin could not be made.")
	}
	m := b.message()
	if b.Empty() {
		m.Doc.Blocks = append(m.Doc.Blocks, Para{Line(noPreview)})
		return m, nil
	}
	open := slices.DeleteFunc(slices.Clone(t.assoc.BulletinTo), func(p Place) bool {
		return slices.ContainsFunc(out, func(o store.Post) bool { return o.Key == BulletinKey(b.Week, p) })
	})
	var head []Block
	if done != "" {
		head = append(head, Para{Line(done)})
	}
	if !kept {
		head = append(head, Para{Text{{"A preview: only you see it, and nothing is posted yet.", Strong}}})
	}
	m.Doc.Blocks = append(head, m.Doc.Blocks...)
	if len(out) > 0 {
		var l List
		for _, p := range out {
			l.Items = append(l.Items, Line(postedWords(p)))
		}
		m.Doc.Blocks = append(m.Doc.Blocks, l)
	}
	switch {
	case len(t.assoc.BulletinTo) == 0:
		m.Doc.Blocks = append(m.Doc.Blocks, Para{Line("No channel is set for bulletins. Whoever runs netpost names them in the settings: bulletin_channels.")})
	case len(open) > 0:
		buttons := Buttons{Label: "Post it"}
		if len(open) > 1 {
			buttons.add(fmt.Sprintf("To all %d channels", len(open)), "publish", b.Week, b.digest(), "all")
		}
		for _, p := range open {
			buttons.add("To "+p.Channel+" on "+p.Platform, "publish", b.Week, b.digest(), p.Platform+"/"+p.Channel)
		}
		m.Doc.Blocks = append(m.Doc.Blocks, buttons)
	}
	return m, nil
}

// postedWords says how a bulletin's post to a channel stands.
func postedWords(p store.Post) string {
	where := p.Where.Channel + " on " + p.Where.Platform + ": "
	switch p.State {
	case store.Sent:
		return where + "posted"
	case store.Doubt:
		return where + "may have been posted; look there, then: posts"
	case store.Failed:
		return where + "not posted: " + Clip(p.Why, 200)
	case store.Skipped:
		return where + "dropped"
	}
	return where + "on its way"
}

// publish posts a bulletin as it was previewed.
func (t *turn) publish(week, digest, where string) Reply {
	if t.role < Publisher {
		return t.refuse(Publisher)
	}
	w, err := ParseWeek(week)
	if err != nil {
		return t.tell(upper(err.Error())+".", "Look at the bulletin again.")
	}
	places := t.assoc.BulletinTo
	if where != "all" {
		places = slices.DeleteFunc(slices.Clone(places), func(p Place) bool { return p.Platform+"/"+p.Channel != where })
	}
	if len(places) == 0 {
		return t.tell("That channel is none for bulletins any more.", "Whoever runs netpost names them in the settings: bulletin_channels.")
	}
	book, err := t.assoc.notesOf()
	if err != nil {
		return t.tell("The case notes can't be read: "+err.Error()+".", "Nothing was posted. Whoever looks after them finds more with: netpost check")
	}
	queued, stale := 0, false
	err = t.write(func(wr store.Writer) error {
		b, _, err := BulletinOf(t.assoc, w, book, wr)
		if err != nil {
			return err
		}
		if stale = b.digest() != digest; stale {
			return nil
		}
		queued, err = PublishBulletin(t.assoc, b, places, t.Who.Person, t.Now(), wr)
		return err
	})
	done := "It is on its way to " + many(queued, "channel", "channels") + "."
	switch {
	case err == errSeen:
		return Nothing{}
	case errors.Is(err, errEmpty):
		return t.tell("There is nothing in this bulletin any more, so it was not posted.", "")
	case err != nil:
		return t.trouble(err, "The bulletin was not posted.")
	case stale:
		done = "It has changed since you looked, so nothing was posted. Look at it again."
	case queued == 0:
		done = "It was posted there before."
	default:
		t.soon()
	}
	m, failed := t.preview(w, done)
	if failed != nil {
		return failed
	}
	return Update{Message: m}
}

// turnBulletin turns to a page of a bulletin.
func (t *turn) turnBulletin(week string, page int) Reply {
	w, err := ParseWeek(week)
	if err != nil {
		return t.tell("I don't know this bulletin.", "")
	}
	var m Message
	if t.private && t.role >= Publisher { // a preview
		var failed Reply
		if m, failed = t.preview(w, ""); failed != nil {
			return failed
		}
	} else {
		b, err := t.keptBulletin(w)
		if store.CodeOf(err) == store.NotFound {
			return t.tell("That bulletin is not kept.", "")
		}
		if err != nil {
			return t.trouble(err, "The bulletin could not be looked up.")
		}
		m = b.message()
	}
	m.Page = page
	return Update{Message: m}
}

// decided are the weeks that a schedule is through with, so that the notes are
// not read again at every look. The store knows them too.
type decided struct {
	mu  sync.Mutex
	all map[string]bool
}

func (d *decided) has(key string) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.all[key]
}

func (d *decided) add(key string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.all == nil {
		d.all = map[string]bool{}
	}
	d.all[key] = true
}

// scheduled posts the bulletin of the last week that is over when its moment
// has come: once, and not when it is empty.
func (t *turn) scheduled() error {
	due, ok := t.assoc.Bulletin.Last(t.Now())
	if !ok || len(t.assoc.BulletinTo) == 0 || t.Now().Sub(due) > tooLate {
		return nil
	}
	w := t.assoc.LastWeek(due)
	key := "schedule/bulletin/" + w.String()
	if t.decided.has(t.assoc.ID + "/" + key) {
		return nil
	}
	book, err := t.assoc.notesOf()
	if err != nil {
		return err
	}
	err = t.Store.Write(t.ctx, t.assoc.ID, func(wr store.Writer) error {
		now := t.Now()
		first, err := wr.Deliver(key, now, now.Add(30*24*time.Hour))
		if err != nil || !first {
			return err
		}
		b, _, err := BulletinOf(t.assoc, w, book, wr)
		if err != nil {
			return err
		}
		_, err = PublishBulletin(t.assoc, b, t.assoc.BulletinTo, Person{}, now, wr)
		if errors.Is(err, errEmpty) {
			t.Log.InfoContext(t.ctx, "nothing happened in the week, so no bulletin is posted", "association", t.assoc.ID, "week", w.String())
			return nil
		}
		return err
	})
	if err == nil {
		t.decided.add(t.assoc.ID + "/" + key)
	}
	return err
}
