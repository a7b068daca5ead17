package wire

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"time"
)

// MaxBody is the longest request that is read: the platforms' own are shorter.
const MaxBody = 1 << 20

// A Listener receives what a platform posts over HTTP.
type Listener struct {
	Platform string // as errors begin
	Log      *slog.Logger
	On       net.Listener // nil: Address is listened on
	Address  string
	Path     string
	Finish   func() // waits for what was begun
}

// Serve serves until ctx ends. Requests in hand are answered, new ones are not
// let in; then what was begun is finished.
func (l Listener) Serve(ctx context.Context, h http.Handler) error {
	on := l.On
	if on == nil {
		var err error
		if on, err = net.Listen("tcp", l.Address); err != nil {
			return fmt.Errorf("%s: can't listen on %s: %w: give an address of this machine that nothing else listens on", l.Platform, l.Address, err)
		}
	}
	mux := http.NewServeMux()
	mux.Handle(l.Path, h)
	s := &http.Server{Handler: mux, ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 10 * time.Second,
		WriteTimeout: 15 * time.Second, IdleTimeout: time.Minute, MaxHeaderBytes: 64 << 10,
		ErrorLog: slog.NewLogLogger(l.Log.Handler(), slog.LevelWarn)}
	ended := make(chan error, 1)
	go func() { ended <- s.Serve(on) }()
	select {
	case err := <-ended:
		l.Finish()
		return fmt.Errorf("%s: the listener ended: %w: start it again", l.Platform, err)
	case <-ctx.Done():
	}
	down, cancel := context.WithTimeout(context.WithoutCancel(ctx), WindDown)
	defer cancel()
	err := s.Shutdown(down)
	l.Finish()
	if err != nil {
		_ = s.Close()
	}
	return nil
}

// Posted reads the body of a request that was posted; false: it answered the
// request itself. where says what to do with the address, to a person who
// opened it.
func Posted(w http.ResponseWriter, r *http.Request, where string) (body []byte, ok bool) {
	if r.Method != http.MethodPost {
		w.Header().Set("Allow", http.MethodPost)
		http.Error(w, where, http.StatusMethodNotAllowed)
		return nil, false
	}
	body, err := io.ReadAll(http.MaxBytesReader(w, r.Body, MaxBody))
	if err == nil {
		return body, true
	}
	if _, long := errors.AsType[*http.MaxBytesError](err); long {
		http.Error(w, fmt.Sprintf("The request is longer than %d bytes. Send a shorter one.", MaxBody), http.StatusRequestEntityTooLarge)
	} else {
		http.Error(w, "The request broke off. Send it again.", http.StatusBadRequest)
	}
	return nil, false
}
