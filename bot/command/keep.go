package command

import (
	"context"
	"slices"
	"time"

	"example.org/netpost/bot/store"
)

// purgeEvery is how often what is too old is deleted.
const purgeEvery = 24 * time.Hour

// associations lists, sorted, those that the store or the settings know: what
// one has left behind that is not in the settings any more is looked after too.
func (s *service) associations(ctx context.Context) ([]string, error) {
	ids, err := s.store.Associations(ctx)
	if err != nil {
		return nil, err
	}
	for _, a := range s.config.Associations {
		ids = append(ids, a.ID)
	}
	slices.Sort(ids)
	return slices.Compact(ids), nil
}

// resume puts the posts in doubt that a kill left in the middle of being sent.
// They wait for a person; none is sent again by itself.
func (s *service) resume(ctx context.Context, now time.Time) error {
	ids, err := s.associations(ctx)
	if err != nil {
		return err
	}
	for _, id := range ids {
		n := 0
		err := s.store.Write(ctx, id, func(w store.Writer) (err error) {
			n, err = w.Resume(now)
			return err
		})
		if err != nil {
			return err
		}
		if n > 0 {
			s.log.Warn("posts may be out or not; a person decides whether to send them again: netpost posts", "association", id, "posts", n)
		}
	}
	return nil
}

// keep deletes what is older than the settings keep it, now and once a day.
func (s *service) keep(ctx context.Context) {
	for {
		if err := s.purge(ctx, time.Now()); err != nil && ctx.Err() == nil {
			s.log.Error("what is too old was not deleted; it is tried again tomorrow", "cause", err)
		}
		select {
		case <-ctx.Done():
			return
		case <-time.After(purgeEvery):
		}
	}
}

// purge deletes what is too old, in every association.
func (s *service) purge(ctx context.Context, now time.Time) error {
	before := time.Unix(1, 0) // older than anything: only deliveries that have expired go
	if s.config.Retention > 0 {
		before = now.Add(-s.config.Retention)
	}
	ids, err := s.associations(ctx)
	if err != nil {
		return err
	}
	var all store.Deleted
	for _, id := range ids {
		var d store.Deleted
		err := s.store.Write(ctx, id, func(w store.Writer) (err error) {
			d, err = w.Purge(before, now)
			return err
		})
		if err != nil {
			return err
		}
		all.Questions += d.Questions
		if d != (store.Deleted{}) {
			s.log.Info("deleted what was too old", "association", id, "questions", d.Questions, "drafts", d.Drafts,
				"posts", d.Posts, "entries", d.Entries, "deliveries", d.Deliveries)
		}
		all.Drafts += d.Drafts
		all.Posts += d.Posts
		all.Entries += d.Entries
	}
	if all == (store.Deleted{}) {
		return nil // no words of anybody were deleted
	}
	if err := s.store.Scrub(ctx); err != nil && store.CodeOf(err) != store.Locked {
		return err // locked: somebody reads, and the log is written back soon in any case
	}
	return nil
}
