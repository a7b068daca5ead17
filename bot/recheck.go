package bot

import (
	"context"
	"crypto/sha256"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"sync"
	"time"

	"example.org/netpost/bot/store"
	"example.org/netpost/casebook"
	"example.org/netpost/engine"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// Rechecked is what ruling again on all that is kept came to.
type Rechecked struct {
	Questions int // that were looked at
	Plays     int // different ones among them, each ruled on once
	// Left are those that can't be compared: nothing was kept of what they came
	// to, or their ruling is not shown yet.
	Left    int
	Changes []Change          // in the order in which they were asked
	Notes   []casebook.Turned // notes that today's tables and rules don't bear out
	// Cut: the time was over before all had been looked at.
	Cut bool
}

// Change is a question that is ruled otherwise today.
type Change struct {
	Question store.Question
	Open     bool // everybody in the place may see it
	Was, Now answer.Past
	Causes   []answer.Cause
	// Stuck says why there is no ruling to send: the facts told fit the play no
	// longer. Empty: there is one.
	Stuck string
}

// recheckPage is how many questions are read at once.
const recheckPage = 500

// Recheck rules again, under today's tables, rules, adoptions and notes, on the
// questions of an association that were asked since a time, with the facts told
// to each; the zero time is all. What was kept with each is compared. Plays that
// were asked in the same words are ruled on once. When the time of ctx is over
// it gives what it has.
func (b *Bot) Recheck(ctx context.Context, a Association, since time.Time) (Rechecked, error) {
	var out Rechecked
	book, err := a.notesOf()
	if err != nil {
		return out, err
	}
	for _, c := range code.All() {
		// Adoptions that no book can have would leave every play without a ruling.
		if o, err := code.Open(c, 0); err == nil {
			if _, err := o.With(a.Overlays...); err != nil {
				return out, fmt.Errorf("what the association adopted can't be laid over the books: %w", err)
			}
		}
	}
	r := &rechecker{Bot: b, ctx: ctx, assoc: a, departing: departures(book), plays: map[[sha256.Size]byte]*ruledPlay{}}
	if book != nil {
		out.Notes = casebook.Recheck(book)
	}
	at, id := since, ""
	if !since.IsZero() {
		at = since.Add(-time.Microsecond) // what was asked at that very time too
	}
	for ctx.Err() == nil {
		page, err := r.page(at, id)
		if err != nil {
			if ctx.Err() != nil {
				break
			}
			return out, err
		}
		if len(page) == 0 {
			out.Plays = len(r.plays)
			return out, nil
		}
		last := page[len(page)-1].Question
		at, id = last.Asked, last.ID
		n, left, changes := r.again(page)
		out.Questions += n
		out.Left += left
		out.Changes = append(out.Changes, changes...)
		out.Plays = len(r.plays)
	}
	out.Cut = true
	return out, nil
}

// rechecker rules again.
type rechecker struct {
	*Bot
	ctx       context.Context
	assoc     Association
	departing map[string][]*departingNote
	mu        sync.Mutex
	plays     map[[sha256.Size]byte]*ruledPlay
}

// ruledPlay is a play that was ruled on again, for all who asked it alike.
type ruledPlay struct {
	once   sync.Once
	key    string // of the ruling today
	stuck  string
	mu     sync.Mutex
	causes map[string]turnedPlay // by what was kept
}

type turnedPlay struct {
	now    answer.Past
	causes []answer.Cause
}

// askedPlay is a kept question with the facts that stand.
type askedPlay struct {
	store.Question
	given  []engine.Given
	open   bool
	hidden bool // a play that a crew rules on together, and that is open still
}

func (r *rechecker) page(at time.Time, id string) ([]askedPlay, error) {
	var out []askedPlay
	err := r.Store.Read(r.ctx, r.assoc.ID, func(rd store.Reader) error {
		qs, err := rd.QuestionsAfter(at, id, recheckPage)
		if err != nil {
			return err
		}
		polls, err := rd.Polls()
		if err != nil {
			return err
		}
		for _, q := range qs {
			facts, err := rd.Given(q.ID)
			if err != nil {
				return err
			}
			hidden := slices.ContainsFunc(polls, func(p store.Poll) bool { return p.Question == q.ID })
			out = append(out, askedPlay{q, standing(facts), isOpen(rd, q), hidden})
		}
		return nil
	})
	return out, err
}

// again rules on a page of questions, several at a time, and gives how many
// were looked at, how many of them can't be compared, and what changed.
func (r *rechecker) again(page []askedPlay) (looked, left int, changes []Change) {
	found := make([]*Change, len(page))
	done := make([]bool, len(page))
	skipped := make([]bool, len(page))
	next := make(chan int)
	var wg sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for i := range next {
				found[i], skipped[i] = r.one(page[i])
				done[i] = true
			}
		})
	}
	for i := range page {
		if r.ctx.Err() != nil {
			break
		}
		next <- i
	}
	close(next)
	wg.Wait()
	for i := range page {
		if done[i] {
			looked++
		}
		if skipped[i] {
			left++
		}
		if found[i] != nil {
			changes = append(changes, *found[i])
		}
	}
	return looked, left, changes
}

// one compares one question. It reports whether that can't be done.
func (r *rechecker) one(q askedPlay) (*Change, bool) {
	if len(q.Answer.Ruling) == 0 || q.hidden {
		return nil, true
	}
	was, err := answer.ParsePast(q.Answer.Ruling)
	if err != nil {
		r.Log.WarnContext(r.ctx, "an answer as it was kept can't be read", "association", r.assoc.ID, "question", q.ID, "cause", err)
		return nil, true
	}
	// A note that departed then may be gone: the notes are searched where one
	// departed or might.
	noted := was.Association != nil
	p := r.play(q, noted)
	p.once.Do(func() {
		a := r.rule(q, noted)
		p.key = a.Past().Key()
		if a.Error != nil {
			p.stuck = a.Error.What
		}
	})
	before := was.Key()
	if p.key == before {
		return nil, false
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	t, ok := p.causes[before]
	if !ok {
		a := r.rule(q, noted)
		t = turnedPlay{a.Past(), answer.Causes(q.Text, optionsOf(r.assoc, q.Question, q.given), was, a)}
		if p.causes == nil {
			p.causes = map[string]turnedPlay{}
		}
		p.causes[before] = t
	}
	return &Change{Question: q.Question, Open: q.open, Was: was, Now: t.now, Causes: t.causes, Stuck: p.stuck}, false
}

// play is the entry of a question's play.
func (r *rechecker) play(q askedPlay, noted bool) *ruledPlay {
	h := sha256.New()
	fmt.Fprintf(h, "%q %s %s %t", strings.TrimSpace(q.Text), q.Code, q.Season, noted)
	for _, g := range q.given {
		fmt.Fprintf(h, " %s=%s", g.Key, g.Value)
	}
	var key [sha256.Size]byte
	h.Sum(key[:0])
	r.mu.Lock()
	defer r.mu.Unlock()
	p := r.plays[key]
	if p == nil {
		p = &ruledPlay{}
		r.plays[key] = p
	}
	return p
}

// rule answers a question as the conversation would today. The notes are
// searched only where one of them may depart from the book in this play: no
// other changes what the answer comes to.
func (r *rechecker) rule(q askedPlay, noted bool) answer.Answer {
	a := answer.Ask(q.Text, optionsOf(r.assoc, q.Question, q.given))
	if a.Error != nil || r.assoc.Notes == nil || !noted && !r.mayDepart(q) {
		return a
	}
	t := &turn{Bot: r.Bot, ctx: r.ctx, assoc: r.assoc}
	return t.answered(q.Question, q.given).answer
}

// departingNote is a note in force that departs from the book, with its play.
type departingNote struct {
	note  *casebook.Note
	rally *play.Rally
}

// departures are the published notes that depart, by the events of their plays.
func departures(b *casebook.Book) map[string][]*departingNote {
	if b == nil {
		return nil
	}
	out := map[string][]*departingNote{}
	for _, n := range b.Notes() {
		if n.Status != casebook.Published || n.Departs == "" || n.Play == "" {
			continue
		}
		r, err := notation.Read(n.Play)
		if err != nil || r.Rally == nil || !r.Whole() {
			continue
		}
		k := eventKinds(r.Rally)
		out[k] = append(out[k], &departingNote{n, r.Rally})
	}
	return out
}

// eventKinds are the kinds of a play's events, in no order.
func eventKinds(p *play.Rally) string {
	var kinds []string
	for _, e := range p.Events {
		kinds = append(kinds, fmt.Sprint(e.Kind))
	}
	slices.Sort(kinds)
	return strings.Join(kinds, " ")
}

// mayDepart reports whether a note that departs covers a question's play.
func (r *rechecker) mayDepart(q askedPlay) bool {
	if len(r.departing) == 0 {
		return false
	}
	read, err := notation.Read(q.Text)
	if err != nil || read.Rally == nil || !read.Whole() {
		return false
	}
	p := read.Rally
	for _, g := range q.given {
		if g.Key.Fact != answer.CodeFact {
			if next, ok := p.Tell(g.Key, g.Value).(*play.Rally); ok && next.Check() == nil {
				p = next
			}
		}
	}
	for _, d := range r.departing[eventKinds(p)] {
		if casebook.Covers(d.rally, p) {
			return true
		}
	}
	return false
}
