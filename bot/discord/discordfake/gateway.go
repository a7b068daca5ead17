package discordfake

import (
	"encoding/json"
	"net/http"
	"sync"
	"time"

	"example.org/netpost/bot/bottest/socket"
)

// gatewayState is the one session that the bot has.
type gatewayState struct {
	conn    *socket.Conn // nil: not connected
	ready   bool         // it was said so on this connection
	session string
	seq     int
	sent    []dispatch // of this session
	changed *sync.Cond

	identified, resumed int
	intents             []int
	silent              bool // no heartbeat is answered
	early7              int  // connections that are told to reconnect before they are ready
	mute                int  // connections that are accepted and told nothing
	heartbeat           time.Duration
}

type dispatch struct {
	seq  int
	data []byte
}

type packet struct {
	Op   int             `json:"op"`
	Data json.RawMessage `json:"d"`
	Seq  int             `json:"s,omitempty"`
	Type string          `json:"t,omitempty"`
}

// Operations of the gateway.
const (
	opDispatch  = 0
	opHeartbeat = 1
	opIdentify  = 2
	opResume    = 6
	opReconnect = 7
	opInvalid   = 9
	opHello     = 10
	opAck       = 11
)

func pack(op int, data any, seq int, typ string) []byte {
	d, err := json.Marshal(data)
	if err != nil {
		panic(err)
	}
	b, err := json.Marshal(packet{op, d, seq, typ})
	if err != nil {
		panic(err)
	}
	return b
}

// serveGateway is one connection.
func (s *Server) serveGateway(w http.ResponseWriter, r *http.Request) {
	c, err := socket.Upgrade(w, r)
	if err != nil {
		return
	}
	defer func() {
		c.Cut()
		s.mu.Lock()
		defer s.mu.Unlock()
		if s.gateway.conn == c {
			s.gateway.conn, s.gateway.ready = nil, false
			s.gateway.changed.Broadcast()
		}
	}()
	s.mu.Lock()
	g := &s.gateway
	g.conn, g.ready = c, false
	mute := g.mute > 0
	if mute {
		g.mute--
	}
	beat := max(g.heartbeat, time.Millisecond)
	if g.heartbeat == 0 {
		beat = 41250 * time.Millisecond
	}
	s.mu.Unlock()
	if !mute && c.Send(pack(opHello, map[string]int{"heartbeat_interval": int(beat.Milliseconds())}, 0, "")) != nil {
		return
	}
	for {
		message, _, err := c.Read()
		if err != nil {
			return
		}
		var p packet
		if json.Unmarshal(message, &p) != nil {
			c.Close(4002, "not JSON")
			return
		}
		s.packet(c, p)
	}
}

func (s *Server) packet(c *socket.Conn, p packet) {
	s.mu.Lock()
	defer s.mu.Unlock()
	g := &s.gateway
	switch p.Op {
	case opHeartbeat:
		if !g.silent {
			_ = c.Send(pack(opAck, nil, 0, ""))
		}
	case opIdentify:
		var d struct {
			Token   string `json:"token"`
			Intents int    `json:"intents"`
		}
		_ = json.Unmarshal(p.Data, &d)
		if d.Token != "Bot "+s.Token {
			c.Close(4004, "Authentication failed.")
			return
		}
		g.identified++
		g.intents = append(g.intents, d.Intents)
		if g.early7 > 0 {
			g.early7--
			_ = c.Send(pack(opReconnect, nil, 0, ""))
			return
		}
		g.session, g.seq, g.sent = "session-"+s.id(), 0, nil
		s.send(c, "READY", map[string]any{"v": 9, "session_id": g.session, "user": map[string]any{"id": s.Bot, "bot": true},
			"application": map[string]any{"id": s.App}, "guilds": []any{}})
		g.ready = true
	case opResume:
		var d struct {
			Token   string `json:"token"`
			Session string `json:"session_id"`
			Seq     int    `json:"seq"`
		}
		_ = json.Unmarshal(p.Data, &d)
		if d.Token != "Bot "+s.Token {
			c.Close(4004, "Authentication failed.")
			return
		}
		if d.Session != g.session || g.session == "" {
			_ = c.Send(pack(opInvalid, false, 0, ""))
			return
		}
		g.resumed++
		for _, m := range g.sent {
			if m.seq > d.Seq {
				_ = c.Send(m.data)
			}
		}
		s.send(c, "RESUMED", map[string]any{})
		g.ready = true
	}
	g.changed.Broadcast()
}

// send dispatches an event; it stays, to be repeated when the session is taken
// up again.
func (s *Server) send(c *socket.Conn, typ string, data any) {
	g := &s.gateway
	g.seq++
	m := dispatch{g.seq, pack(opDispatch, data, g.seq, typ)}
	g.sent = append(g.sent, m)
	if len(g.sent) > 1000 {
		g.sent = append(g.sent[:0], g.sent[500:]...)
	}
	if c != nil {
		_ = c.Send(m.data)
	}
}

// dispatch sends an event to the bot, now or when it is back.
func (s *Server) dispatch(typ string, data any) {
	s.mu.Lock()
	defer s.mu.Unlock()
	c := s.gateway.conn
	if !s.gateway.ready {
		c = nil
	}
	s.send(c, typ, data)
}

// Dispatch sends any event.
func (s *Server) Dispatch(typ string, data any) { s.dispatch(typ, data) }

// Repeat sends the last event again, as a connection that is taken up again
// may.
func (s *Server) Repeat() {
	s.mu.Lock()
	defer s.mu.Unlock()
	if g := &s.gateway; g.conn != nil && len(g.sent) > 0 {
		_ = g.conn.Send(g.sent[len(g.sent)-1].data)
	}
}

// Connected waits until the bot is connected; false: it is not in time.
func (s *Server) Connected(within time.Duration) bool {
	return s.await(within, func() bool { return s.gateway.ready })
}

// Identified and Resumed wait until the bot began a session, or took one up
// again, so many times in all.
func (s *Server) Identified(n int, within time.Duration) bool {
	return s.await(within, func() bool { return s.gateway.identified >= n && s.gateway.ready })
}

// Resumed is told of with Identified.
func (s *Server) Resumed(n int, within time.Duration) bool {
	return s.await(within, func() bool { return s.gateway.resumed >= n && s.gateway.ready })
}

func (s *Server) await(within time.Duration, done func() bool) bool {
	end := time.Now().Add(within)
	t := time.AfterFunc(within, func() {
		s.mu.Lock()
		defer s.mu.Unlock()
		s.gateway.changed.Broadcast()
	})
	defer t.Stop()
	s.mu.Lock()
	defer s.mu.Unlock()
	for !done() {
		if !time.Now().Before(end) {
			return false
		}
		s.gateway.changed.Wait()
	}
	return true
}

// Intents are those that the bot asked for, each time that it began a session.
func (s *Server) Intents() []int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return append([]int(nil), s.gateway.intents...)
}

// Drop breaks the connection off.
func (s *Server) Drop() {
	if c := s.connection(); c != nil {
		c.Cut()
	}
}

// CloseWith closes the connection with a code.
func (s *Server) CloseWith(code int) {
	if c := s.connection(); c != nil {
		c.Close(code, "")
	}
}

// Reconnect tells the bot to connect again.
func (s *Server) Reconnect() {
	if c := s.connection(); c != nil {
		_ = c.Send(pack(opReconnect, nil, 0, ""))
	}
}

// Frame sends raw text to the bot.
func (s *Server) Frame(text string) {
	if c := s.connection(); c != nil {
		_ = c.Send([]byte(text))
	}
}

func (s *Server) connection() *socket.Conn {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.gateway.conn
}

// Forget has the server know nothing of the session any more.
func (s *Server) Forget() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.gateway.session = ""
}

// Revoke makes the token worthless.
func (s *Server) Revoke() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.Token = "revoked." + s.Token
}

// EarlyReconnect has the next n connections be told to reconnect before they
// are ready.
func (s *Server) EarlyReconnect(n int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.gateway.early7 = n
}

// Mute has the next n connections be accepted and told nothing.
func (s *Server) Mute(n int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.gateway.mute = n
}
