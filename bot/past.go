package bot

import (
	"context"
	"slices"
	"strings"
	"time"

	"example.org/netpost/bot/store"
)

// Asked is a question that was asked before.
type Asked struct {
	ID     string
	Text   string
	Code   string // that it was asked under; empty: all
	Ruling string // what it came to, in a few words
	At     time.Time
	Mine   bool // the person who looks asked it
	Open   bool // everybody in the place may see it
}

// recent is how far back Past looks before it looks at all that is kept.
const recent = 30 * 24 * time.Hour

// Past lists what was asked in a place, newest first: a person's own questions
// and those that all there may see.
func (b *Bot) Past(ctx context.Context, who Who, where Place, limit int) ([]Asked, error) {
	assoc, ok := b.Find(where)
	if !ok {
		return nil, nil
	}
	var out []Asked
	err := b.Store.Read(ctx, assoc.ID, func(r store.Reader) error {
		for _, from := range []time.Time{b.Now().Add(-recent), {}} {
			all, err := r.Questions(store.Span{From: from})
			if err != nil {
				return err
			}
			slices.SortStableFunc(all, func(x, y store.Question) int { return y.Asked.Compare(x.Asked) })
			out = nil
			for _, q := range all {
				if len(out) == limit {
					return nil
				}
				if !near(q.Where, where) {
					continue
				}
				mine, open := q.Asker == who.Person, isOpen(r, q)
				if !mine && !open {
					continue
				}
				out = append(out, Asked{ID: q.ID, Text: q.Text, Code: q.Code, Ruling: gist(q.Answer), At: q.Asked, Mine: mine, Open: open})
			}
		}
		return nil
	})
	return out, err
}

// Recalled is a question as it stands, to be shown again.
type Recalled struct {
	Message
	Text string
	Open bool // everybody in the place may see it
}

// Recall shows a question again to somebody who may see it. It reports false
// for one that is not there, was asked elsewhere, or is another's alone.
func (b *Bot) Recall(ctx context.Context, who Who, where Place, id string) (Recalled, bool) {
	t := &turn{Bot: b, Meta: Meta{Who: who, Where: where}, ctx: ctx}
	var ok bool
	if t.assoc, ok = b.Find(where); !ok || !t.assoc.open(t.Meta) {
		return Recalled{}, false
	}
	t.role = t.assoc.RoleOf(who, where)
	d, failed := t.load(id)
	if failed != nil || !near(d.Where, where) {
		return Recalled{}, false
	}
	err := b.Store.Read(ctx, t.assoc.ID, func(r store.Reader) error { t.public = isOpen(r, d.Question); return nil })
	if err != nil || !t.public && d.Asker != who.Person {
		return Recalled{}, false
	}
	return Recalled{Message: t.show(d, mainView), Text: d.Text, Open: t.public}, true
}

// near reports whether two places are in one channel.
func near(a, b Place) bool {
	return a.Platform == b.Platform && a.Workspace == b.Workspace && a.Channel == b.Channel
}

// isOpen reports whether all in the place may see a question: it was asked
// before them, shared since, or ruled on together.
func isOpen(r store.Reader, q store.Question) bool {
	if !q.Private {
		return true
	}
	if _, err := r.Post(shareKey(q.ID)); err == nil {
		return true
	}
	p, err := r.Poll(q.ID)
	return err == nil && !p.Closed.IsZero()
}

// gist is an answer as it is kept, in a few words.
func gist(a store.Answer) string {
	s := ""
	switch a.Outcome {
	case "":
		return "no ruling"
	case "depends":
		return "it depends"
	case "play-on":
		return "play on, no fault"
	default:
		s = strings.ReplaceAll(a.Outcome, "-", " ")
	}
	for _, t := range a.Tags {
		if t.Kind == store.Topic {
			return s + ": " + name(t.Value)
		}
	}
	return s
}
