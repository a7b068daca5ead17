package command

import (
	"context"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"time"

	"example.org/netpost/bot/store"
)

// Paths of the address for whoever watches over the program.
const (
	healthPath  = "/healthz"
	metricsPath = "/metrics"
)

// health answers whether the program can do its work, and what it did.
type health struct {
	listen net.Listener
	server *http.Server
}

// newHealth takes the address.
func newHealth(address string, s *service) (*health, error) {
	l, err := net.Listen("tcp", address)
	if err != nil {
		return nil, fmt.Errorf("metrics: %s can't be taken: %w; end what has it, name another address in the settings, or write off", address, err)
	}
	mux := http.NewServeMux()
	mux.Handle("GET "+metricsPath, s.metrics)
	mux.HandleFunc("GET "+healthPath, s.healthy)
	return &health{l, &http.Server{
		Handler: mux, ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 10 * time.Second, WriteTimeout: 15 * time.Second,
		IdleTimeout: time.Minute, MaxHeaderBytes: 16 << 10, ErrorLog: slog.NewLogLogger(s.log.Handler(), slog.LevelWarn),
	}}, nil
}

func (h *health) serve() { _ = h.server.Serve(h.listen) }

func (h *health) close() { _ = h.server.Close() }

// healthy says that the store can be read, and what notes there are. Without
// the store nothing can be answered; without notes answers have none.
func (s *service) healthy(w http.ResponseWriter, r *http.Request) {
	ctx, cancel := context.WithTimeout(r.Context(), 2*time.Second)
	defer cancel()
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	if err := s.store.Read(ctx, s.config.Local, func(store.Reader) error { return nil }); err != nil {
		w.WriteHeader(http.StatusServiceUnavailable)
		fmt.Fprintf(w, "store: %v\n", err)
		return
	}
	fmt.Fprintln(w, "store: good")
	for i, a := range s.config.Associations {
		if l := s.shelves[i]; l != nil {
			fmt.Fprintf(w, "notes of %s: %s\n", a.ID, l.state())
		}
	}
}
