package command

import (
	"context"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"net/http/httputil"
	"sync"
	"time"
)

// front is the one address that platforms post to. Each adapter that receives
// over HTTP gets a listener of its own in memory, and the front hands every
// request on by its path, body and headers as they came: they are signed.
type front struct {
	mux    *http.ServeMux
	server *http.Server
	listen net.Listener
}

// newFront takes the address.
func newFront(address string, log *slog.Logger) (*front, error) {
	l, err := net.Listen("tcp", address)
	if err != nil {
		return nil, fmt.Errorf("listen: %s can't be taken: %w; end what has it, or name another address in the settings", address, err)
	}
	mux := http.NewServeMux()
	return &front{mux, &http.Server{
		Handler: mux, ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 10 * time.Second, WriteTimeout: 20 * time.Second,
		IdleTimeout: time.Minute, MaxHeaderBytes: 64 << 10, ErrorLog: slog.NewLogLogger(log.Handler(), slog.LevelWarn),
	}, l}, nil
}

// to makes the listener that an adapter serves, which knows one path and gets
// the requests for all of those named.
func (f *front) to(own string, paths []string) net.Listener {
	inner := newPipes(f.listen.Addr())
	proxy := &httputil.ReverseProxy{
		Rewrite: func(r *httputil.ProxyRequest) {
			r.Out.URL.Scheme, r.Out.URL.Host, r.Out.URL.Path, r.Out.URL.RawPath = "http", "adapter", own, ""
			r.Out.Host = r.In.Host
		},
		Transport: &http.Transport{
			DialContext:        func(ctx context.Context, _, _ string) (net.Conn, error) { return inner.dial(ctx) },
			DisableCompression: true,
			MaxIdleConns:       64,
		},
		ErrorLog: f.server.ErrorLog,
	}
	for _, p := range paths {
		f.mux.Handle(p, proxy)
	}
	return inner
}

// serve hands requests on until it is closed.
func (f *front) serve() error {
	if err := f.server.Serve(f.listen); err != http.ErrServerClosed {
		return fmt.Errorf("listen: %s failed: %w; start it again", f.listen.Addr(), err)
	}
	return nil
}

// close lets the requests in hand end, for as long as ctx does.
func (f *front) close(ctx context.Context) {
	if f.server.Shutdown(ctx) != nil {
		_ = f.server.Close()
	}
}

// pipes is a listener in memory.
type pipes struct {
	conns chan net.Conn
	addr  net.Addr
	once  sync.Once
	done  chan struct{}
}

func newPipes(addr net.Addr) *pipes {
	return &pipes{conns: make(chan net.Conn), addr: addr, done: make(chan struct{})}
}

func (p *pipes) dial(ctx context.Context) (net.Conn, error) {
	ours, theirs := net.Pipe()
	select {
	case p.conns <- theirs:
		return ours, nil
	case <-p.done:
		return nil, net.ErrClosed
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}

// Accept is part of net.Listener.
func (p *pipes) Accept() (net.Conn, error) {
	select {
	case c := <-p.conns:
		return c, nil
	case <-p.done:
		return nil, net.ErrClosed
	}
}

// Close is part of net.Listener.
func (p *pipes) Close() error {
	p.once.Do(func() { close(p.done) })
	return nil
}

// Addr is the front's own.
func (p *pipes) Addr() net.Addr { return p.addr }
