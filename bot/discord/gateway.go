package discord

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"strconv"
	"sync"
	"time"

	"github.com/bwmarrin/discordgo"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// runGateway receives over the gateway until ctx ends.
func (a *Adapter) runGateway(ctx context.Context, h bot.Handler) error {
	work, finish := a.begin(ctx)
	defer finish()
	var g *gateway
	for wait := time.Second; ; {
		if g == nil {
			var err error
			if g, err = a.gateway(work, h); err != nil {
				return err
			}
		}
		err := g.connect(ctx)
		switch {
		case err == nil:
			wait = time.Second
			a.log.Info("discord: connected")
			select {
			case <-g.lost:
				// Taken up again at once: what was missed meanwhile is repeated.
				a.log.Info("discord: the connection was lost, taking it up again")
				if !wire.Sleep(ctx, 50*time.Millisecond) {
					return nil
				}
				continue
			case <-ctx.Done():
				g.close()
				return nil
			}
		case ctx.Err() != nil:
			g.close()
			return nil
		case fatal(err):
			return startError(err)
		case errors.Is(err, errStuck), g.failures >= 3:
			g.close()
			g = nil // begun anew, without what was missed
		}
		a.log.Warn("discord: no connection, trying again", "in", wait, "cause", scrub(err))
		if !wire.Sleep(ctx, wait) {
			return nil
		}
		wait = min(2*wait, time.Minute)
	}
}

// gateway is one session with Discord: it may be taken up again over many
// connections.
type gateway struct {
	s        *discordgo.Session
	lost     chan struct{} // holds one token once the connection is lost
	failures int           // to connect, in a row
	conn     conns
	stuck    bool
	patience time.Duration
}

// gateway makes a session that hands interactions on.
func (a *Adapter) gateway(ctx context.Context, h bot.Handler) (*gateway, error) {
	s, err := a.session()
	if err != nil {
		return nil, err
	}
	g := &gateway{s: s, lost: make(chan struct{}, 1), patience: a.openTimeout}
	dialer := *s.Dialer
	dialer.HandshakeTimeout = a.openTimeout / 2
	dialer.NetDialContext = g.conn.dial
	s.Dialer = &dialer
	s.AddHandler(func(_ *discordgo.Session, e *discordgo.Event) {
		// Events come one by one, and a panic would end the process: the library
		// recovers none. Nothing is worked on here.
		defer func() {
			if p := recover(); p != nil {
				a.log.Error("discord: a panic", "cause", secret.ReplaceAllString(fmt.Sprint(p), "[…]"))
			}
		}()
		if e.Type == "INTERACTION_CREATE" {
			a.received(ctx, h, e.RawData, a.callback)
		}
	})
	s.AddHandler(func(*discordgo.Session, *discordgo.Disconnect) {
		select {
		case g.lost <- struct{}{}:
		default:
		}
	})
	return g, nil
}

// errStuck: the library does not come back from opening a connection.
var errStuck = errors.New("the connection did not open in time")

// connect opens a connection. The library waits for ever for a server that says
// nothing, and locks itself out for good where it is told to reconnect before
// it is ready: it is given a time, and a session that is stuck is left behind.
func (g *gateway) connect(ctx context.Context) error {
	select {
	case <-g.lost: // of the connection before
	default:
	}
	opened := make(chan error, 1)
	go func() { opened <- g.s.Open() }()
	t := time.NewTimer(g.patience)
	defer t.Stop()
	var err error
	select {
	case err = <-opened:
	case <-t.C:
		err = errStuck
	case <-ctx.Done():
		err = ctx.Err()
	}
	if err == errStuck || ctx.Err() != nil && err != nil {
		// Without its connection it comes back, unless it is locked out.
		g.conn.close()
		select {
		case <-opened:
		case <-time.After(time.Second):
			g.stuck = true
		}
		return err
	}
	if errors.Is(err, discordgo.ErrWSAlreadyOpen) {
		err = nil
	}
	if err == nil {
		g.failures = 0
		return nil
	}
	g.failures++
	if m := closeCode.FindStringSubmatch(err.Error()); m != nil {
		if n, _ := strconv.Atoi(m[1]); closes[closed(n)] != "" {
			return closed(n)
		}
	}
	return err
}

// close ends the session. The library takes a second over it.
func (g *gateway) close() {
	if g.stuck {
		g.conn.close()
		return
	}
	_ = g.s.Close()
	g.conn.close()
}

// conns keeps the connection that was dialled last, so that it can be ended
// from outside.
type conns struct {
	mu   sync.Mutex
	last net.Conn
}

func (c *conns) dial(ctx context.Context, network, address string) (net.Conn, error) {
	d := net.Dialer{Timeout: callTimeout, KeepAlive: 15 * time.Second}
	conn, err := d.DialContext(ctx, network, address)
	if err == nil {
		c.mu.Lock()
		c.last = conn
		c.mu.Unlock()
	}
	return conn, err
}

func (c *conns) close() {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.last != nil {
		_ = c.last.Close()
	}
}

// callback responds over the REST API.
type callback struct {
	*Adapter
	id, token string
}

func (a *Adapter) callback(r route) responder { return &callback{a, r.id, r.token} }

func (c *callback) inBody() bool { return false }
func (c *callback) none()        {}

func (c *callback) respond(ctx context.Context, r response) (string, error) {
	var out struct {
		Interaction struct {
			Message string `json:"response_message_id"`
		} `json:"interaction"`
	}
	err := c.call(ctx, request{method: http.MethodPost, path: "interactions/" + c.id + "/" + c.token + "/callback?with_response=true",
		key: "callback/" + c.id, free: true, payload: r, files: r.files}, &out)
	return out.Interaction.Message, err
}
