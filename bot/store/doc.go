// Package store says what must last of the conversation: questions and the
// facts given to them, threads, the mentors' queue, drafts, bulletins, the
// posts that go out, the deliveries that came in, and the audit trail.
//
// Everything belongs to one association, and every read or write names it: two
// associations in one store never see each other's rows, even under the same
// ids. Work is done in transactions; what [Store.Write] has returned nil for
// is kept through a kill of the process or a power cut.
//
//	err := s.Write(ctx, "riverside", func(w store.Writer) error {
//		first, err := w.Deliver("slack/Ev01", now, now.Add(time.Hour))
//		if err != nil || !first {
//			return err // answered before
//		}
//		if err := w.Ask(question); err != nil {
//			return err
//		}
//		_, err = w.Queue(answer) // sent once, however often we are killed
//		return err
//	})
//
// Time and ids are arguments: the store reads no clock and draws no random
// number. Times are kept in UTC to the microsecond; the zero time is kept as
// none. Lists come in the order of their times, then of their ids, but for
// facts, views and the audit trail, which come as they were added.
//
// The package holds the interface and the values; bot/store/sqlite keeps them
// in one file, and bot/store/storetest is the contract that every store passes.
package store
