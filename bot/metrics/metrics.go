// Package metrics counts what a running program does, in the form that
// Prometheus reads. It stands beside the conversation: it wraps a handler, a
// store and a log, and neither of them knows.
//
//	m := metrics.New()
//	b := bot.New(bot.Options{Store: m.Store(s), …})
//	err := adapter.Run(ctx, m.Handle("slack", b.Handle))
//	http.Handle("/metrics", m)
//
// What is counted never tells who asked or what: labels are names of
// platforms, of associations, of kinds and of outcomes.
package metrics

import (
	"context"
	"fmt"
	"log/slog"
	"net/http"
	"strings"
	"time"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/collectors"
	"github.com/prometheus/client_golang/prometheus/promhttp"

	"example.org/netpost/bot"
)

// Metrics is one set of counters. It is safe for use by many goroutines.
type Metrics struct {
	page http.Handler

	events       *prometheus.CounterVec   // platform, kind
	seconds      *prometheus.HistogramVec // platform
	panics       *prometheus.CounterVec   // platform
	questions    *prometheus.CounterVec   // association
	rulings      *prometheus.CounterVec   // association, outcome
	redeliveries *prometheus.CounterVec   // association
	storeErrors  *prometheus.CounterVec   // code
	logged       *prometheus.CounterVec   // level
	notes        *prometheus.GaugeVec     // association
	findings     *prometheus.GaugeVec     // association
}

// New makes counters that stand at nothing.
func New() *Metrics {
	r := prometheus.NewRegistry()
	counter := func(name, help string, labels ...string) *prometheus.CounterVec {
		c := prometheus.NewCounterVec(prometheus.CounterOpts{Name: "netpost_" + name, Help: help}, labels)
		r.MustRegister(c)
		return c
	}
	gauge := func(name, help string, labels ...string) *prometheus.GaugeVec {
		g := prometheus.NewGaugeVec(prometheus.GaugeOpts{Name: "netpost_" + name, Help: help}, labels)
		r.MustRegister(g)
		return g
	}
	m := &Metrics{
		events:       counter("events_total", "Events that were handled.", "platform", "kind"),
		panics:       counter("panics_total", "Events that the program failed on.", "platform"),
		questions:    counter("questions_total", "Questions that were kept.", "association"),
		rulings:      counter("rulings_total", "Rulings given, a changed one again; outcome none: nothing was ruled on.", "association", "outcome"),
		redeliveries: counter("redeliveries_total", "Deliveries that had been answered before.", "association"),
		storeErrors:  counter("store_errors_total", "Reads and writes of the store that failed.", "code"),
		logged:       counter("log_records_total", "Lines of the log.", "level"),
		notes:        gauge("notes", "Case notes that can be found.", "association"),
		findings:     gauge("note_findings", "What is wrong in the case notes.", "association"),
		seconds: prometheus.NewHistogramVec(prometheus.HistogramOpts{
			Name: "netpost_reply_seconds", Help: "Time from an event to its reply, before it is sent.",
			// The platforms give three seconds; a ruling takes milliseconds.
			Buckets: []float64{.001, .0025, .005, .01, .025, .05, .1, .25, .5, 1, 1.5, 3, 10},
		}, []string{"platform"}),
	}
	r.MustRegister(m.seconds, collectors.NewGoCollector(), collectors.NewProcessCollector(collectors.ProcessCollectorOpts{}))
	m.page = promhttp.HandlerFor(r, promhttp.HandlerOpts{Registry: r})
	return m
}

// ServeHTTP gives the counters as they stand.
func (m *Metrics) ServeHTTP(w http.ResponseWriter, r *http.Request) { m.page.ServeHTTP(w, r) }

// Handle is a handler whose events are counted and timed.
func (m *Metrics) Handle(platform string, h bot.Handler) bot.Handler {
	return func(ctx context.Context, e bot.Event) bot.Reply {
		began, done := time.Now(), false
		defer func() {
			m.seconds.WithLabelValues(platform).Observe(time.Since(began).Seconds())
			if !done {
				m.panics.WithLabelValues(platform).Inc() // the adapter contains it
			}
		}()
		m.events.WithLabelValues(platform, kind(e)).Inc()
		r := h(ctx, e)
		done = true
		return r
	}
}

// kind is the name of an event's type, in small letters.
func kind(e bot.Event) string {
	return strings.ToLower(strings.TrimPrefix(fmt.Sprintf("%T", e), "bot."))
}

// Notes says how many notes an association has, and how much is wrong in them.
func (m *Metrics) Notes(association string, notes, findings int) {
	m.notes.WithLabelValues(association).Set(float64(notes))
	m.findings.WithLabelValues(association).Set(float64(findings))
}

// Log is a log whose lines are counted by their levels.
func (m *Metrics) Log(h slog.Handler) slog.Handler { return counted{h, m.logged} }

// counted is a log that counts.
type counted struct {
	slog.Handler
	lines *prometheus.CounterVec
}

func (c counted) Handle(ctx context.Context, r slog.Record) error {
	c.lines.WithLabelValues(strings.ToLower(r.Level.String())).Inc()
	return c.Handler.Handle(ctx, r)
}

func (c counted) WithAttrs(as []slog.Attr) slog.Handler {
	return counted{c.Handler.WithAttrs(as), c.lines}
}

func (c counted) WithGroup(name string) slog.Handler {
	return counted{c.Handler.WithGroup(name), c.lines}
}
