package metrics

import (
	"context"
	"errors"
	"io"
	"log/slog"
	"net/http/httptest"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/sqlite"
	"example.org/netpost/engine/code"
)

// page is what a reader of the counters gets.
func page(t *testing.T, m *Metrics) string {
	t.Helper()
	w := httptest.NewRecorder()
	m.ServeHTTP(w, httptest.NewRequest("GET", "/metrics", nil))
	if w.Code != 200 {
		t.Fatalf("status %d: %s", w.Code, w.Body)
	}
	return w.Body.String()
}

func has(t *testing.T, page string, lines ...string) {
	t.Helper()
	for _, l := range lines {
		if !strings.Contains("\n"+page, "\n"+l+"\n") {
			t.Errorf("no line %q", l)
		}
	}
	if t.Failed() {
		for l := range strings.Lines(page) {
			if strings.HasPrefix(l, "netpost_") {
				t.Log(l)
			}
		}
	}
}

const question = "club: our back-row setter blocks their attack above the net"

// The conversation itself: a question asked, asked again by the platform, and
// one that is no play.
func TestConversation(t *testing.T) {
	under, err := sqlite.Open(t.Context(), filepath.Join(t.TempDir(), "netpost.db"), sqlite.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer under.Close()
	m := New()
	b := bot.New(bot.Options{Store: m.Store(under), Find: func(bot.Place) (bot.Association, bool) {
		return bot.Association{ID: "riverside", Code: code.Scholastic}, true
	}})
	h := m.Handle("stage", b.Handle)
	ask := func(delivery, text string) {
		h(t.Context(), bot.Command{Meta: bot.Meta{Delivery: delivery, Who: bot.Who{Person: bot.Person{Platform: "stage", ID: "ana"}},
			Where: bot.Place{Platform: "stage", Workspace: "w", Channel: "crew"}}, Text: text})
	}
	ask("d1", question)
	ask("d1", question)
	ask("d2", "hello there")
	got := page(t, m)
	has(t, got,
		`netpost_events_total{kind="command",platform="stage"} 3`,
		`netpost_questions_total{association="riverside"} 2`,
		`netpost_redeliveries_total{association="riverside"} 1`,
		`netpost_rulings_total{association="riverside",outcome="fault"} 1`,
		`netpost_rulings_total{association="riverside",outcome="none"} 1`,
		`netpost_reply_seconds_count{platform="stage"} 3`,
	)
	if strings.Contains(got, "setter") || strings.Contains(got, `"ana"`) {
		t.Error("what was asked, or who asked, is among the counters")
	}
}

// What a transaction that fails would have kept is not counted; an error that
// somebody has to mend is.
func TestUndone(t *testing.T) {
	under, err := sqlite.Open(t.Context(), filepath.Join(t.TempDir(), "netpost.db"), sqlite.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer under.Close()
	m := New()
	s := m.Store(under)
	q := store.Question{ID: store.NewID(), Asker: store.Person{Platform: "stage", ID: "ana"}, Where: store.Place{Platform: "stage"}, Text: "x", Asked: time.Unix(1000, 0)}
	stop := errors.New("stop")
	err = s.Write(t.Context(), "riverside", func(w store.Writer) error {
		if err := w.Ask(q); err != nil {
			return err
		}
		return stop
	})
	if err != stop {
		t.Fatal(err)
	}
	if strings.Contains(page(t, m), "netpost_questions_total{") {
		t.Error("a question is counted that was not kept")
	}
	s = m.Store(failing{&store.Error{Code: store.Full, What: "no room"}})
	if err := s.Read(t.Context(), "riverside", nil); store.CodeOf(err) != store.Full {
		t.Errorf("the error became %v", err)
	}
	has(t, page(t, m), `netpost_store_errors_total{code="full"} 1`)
}

// failing is a store that always fails.
type failing struct{ err error }

func (f failing) Read(context.Context, string, func(store.Reader) error) error  { return f.err }
func (f failing) Write(context.Context, string, func(store.Writer) error) error { return f.err }
func (f failing) Associations(context.Context) ([]string, error)                { return nil, f.err }
func (f failing) Check(context.Context) error                                   { return f.err }
func (f failing) Scrub(context.Context) error                                   { return f.err }
func (f failing) Close() error                                                  { return f.err }

func TestPanic(t *testing.T) {
	m := New()
	h := m.Handle("stage", func(context.Context, bot.Event) bot.Reply { panic("oh") })
	func() {
		defer func() {
			if recover() == nil {
				t.Error("the panic was swallowed; the adapter is to contain it")
			}
		}()
		h(t.Context(), bot.Shortcut{})
	}()
	has(t, page(t, m), `netpost_panics_total{platform="stage"} 1`, `netpost_events_total{kind="shortcut",platform="stage"} 1`)
}

func TestLogAndNotes(t *testing.T) {
	m := New()
	l := slog.New(m.Log(slog.NewTextHandler(io.Discard, nil)))
	l.Error("one")
	l.With("a", 1).WithGroup("g").Error("two")
	l.Info("three")
	l.Debug("below the level of the log")
	m.Notes("riverside", 34, 2)
	has(t, page(t, m),
		`netpost_log_records_total{level="error"} 2`,
		`netpost_log_records_total{level="info"} 1`,
		`netpost_notes{association="riverside"} 34`,
		`netpost_note_findings{association="riverside"} 2`,
	)
}
