// Package discordfake is a Discord for tests: a REST API and a gateway on the
// loopback that speak the real wire, and people who type commands, press
// buttons and send forms off. It refuses what Discord refuses, by Discord's
// codes, and keeps what the bot said.
//
//	d := discordfake.New()
//	defer d.Close()
//	// The bot runs against d.APIURL() with the token d.Token.
//	i := d.Slash(ana, crew, "ask", map[string]string{"play": "…"})
//	m := i.Message() // waits for the answer
//	d.Press(ana, m, "above")
package discordfake

import (
	"context"
	"crypto/ed25519"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"net"
	"net/http"
	"strings"
	"sync"
	"time"
)

// Server is one Discord with one application.
type Server struct {
	// Token is the bot's, App and Bot its ids.
	Token, App, Bot string
	// Deadline is how long an interaction waits for its first response.
	Deadline time.Duration
	// Endpoint, where it is not empty, gets the interactions over HTTP in place
	// of the gateway.
	Endpoint string

	http *http.Server
	addr string
	pub  ed25519.PublicKey
	key  ed25519.PrivateKey

	mu           sync.Mutex
	count        int
	messages     []*Message
	history      []Message
	met          map[string]bool
	interactions map[string]*Interaction // by token
	commands     json.RawMessage
	puts         int
	threads      map[string]string // parent by thread
	refusals     []*Refusal
	violations   []string
	requests     []string
	gateway      gatewayState
}

// New starts a server.
func New() *Server {
	pub, key, err := ed25519.GenerateKey(nil)
	if err != nil {
		panic(err)
	}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		panic(err)
	}
	s := &Server{Token: "dGVzdA.invented.token-for-tests", App: "8800", Bot: "7700", Deadline: 3 * time.Second,
		addr: l.Addr().String(), pub: pub, key: key, count: 100_000,
		interactions: map[string]*Interaction{}, met: map[string]bool{}, threads: map[string]string{}, commands: json.RawMessage("[]")}
	s.gateway.changed = sync.NewCond(&s.mu)
	s.http = &http.Server{Handler: s.handler(), ReadHeaderTimeout: 5 * time.Second}
	go func() { _ = s.http.Serve(l) }()
	return s
}

// Close ends it.
func (s *Server) Close() {
	s.Drop()
	ctx, cancel := context.WithTimeout(context.Background(), time.Second)
	defer cancel()
	if s.http.Shutdown(ctx) != nil {
		_ = s.http.Close()
	}
}

// APIURL is where the REST API is.
func (s *Server) APIURL() string { return "http://" + s.addr + "/api/v9/" }

// PublicKey is the application's, in hex.
func (s *Server) PublicKey() string { return hex.EncodeToString(s.pub) }

// Channels that a bot can't post to: one that is not there, and one that it has
// no permission for.
const (
	GoneChannel   = "4040"
	ClosedChannel = "4030"
)

// Message is one that stands in a channel.
type Message struct {
	ID, Channel string
	To          string // only they see it; empty: all there
	Content     string
	Embeds      []Embed
	Buttons     [][]Button
	Files       []File
	Deferred    bool // it says "thinking"
	Deleted     bool
	Edits       int
	First       bool            // in History: it is the first that was shown
	Raw         json.RawMessage // the payload that it was last made from
}

// Embed is what we keep of one.
type Embed struct {
	Title       string `json:"title"`
	Description string `json:"description"`
	Color       int    `json:"color"`
	Footer      struct {
		Text string `json:"text"`
	} `json:"footer"`
}

// Button is one button.
type Button struct {
	Label string `json:"label"`
	ID    string `json:"custom_id"`
}

// File is one that came with a message.
type File struct {
	Name, Type, Alt string
	Size            int
}

// Labels are those of its buttons.
func (m Message) Labels() []string {
	var out []string
	for _, row := range m.Buttons {
		for _, b := range row {
			out = append(out, b.Label)
		}
	}
	return out
}

// Messages are all that stand, oldest first.
func (s *Server) Messages() []Message {
	s.mu.Lock()
	defer s.mu.Unlock()
	var out []Message
	for _, m := range s.messages {
		if !m.Deleted {
			out = append(out, *m)
		}
	}
	return out
}

// History is every state that every message was in, oldest first.
func (s *Server) History() []Message {
	s.mu.Lock()
	defer s.mu.Unlock()
	return append([]Message(nil), s.history...)
}

// shown keeps the state of a message that people see now.
func (s *Server) shown(m *Message) {
	c := *m
	c.First = !s.met[m.ID]
	s.met[m.ID] = true
	s.history = append(s.history, c)
	s.gateway.changed.Broadcast()
}

// Message gives one as it stands now; nil: there is none, or it was deleted.
func (s *Server) Message(id string) *Message {
	s.mu.Lock()
	defer s.mu.Unlock()
	if m := s.find(id); m != nil {
		c := *m
		return &c
	}
	return nil
}

func (s *Server) find(id string) *Message {
	for i := len(s.messages) - 1; i >= 0; i-- {
		if m := s.messages[i]; m.ID == id && !m.Deleted {
			return m
		}
	}
	return nil
}

// Plant puts somebody's message into a channel, for others to pick.
func (s *Server) Plant(channel, content string) Message {
	s.mu.Lock()
	defer s.mu.Unlock()
	m := &Message{ID: s.id(), Channel: channel, Content: content}
	s.messages = append(s.messages, m)
	return *m
}

// Violations are the payloads that Discord would have refused, and was refused
// here.
func (s *Server) Violations() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return append([]string(nil), s.violations...)
}

// Requests are the calls so far, such as "POST channels/5/messages", with
// tokens left out.
func (s *Server) Requests() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return append([]string(nil), s.requests...)
}

// Commands are those registered, and how often they were.
func (s *Server) Commands() (json.RawMessage, int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.commands, s.puts
}

// Refusal has the server refuse calls.
type Refusal struct {
	Method, Path string // Path is a part of it
	Times        int    // how often; 0: always
	After        int    // calls let through before

	Status, Code int
	Message      string
	RetryAfter   time.Duration // with status 429
	Global       bool
	HTML         bool // no JSON in the answer
	Hang         time.Duration
	Lose         bool // it is done, and the answer is lost
}

// Refuse adds a refusal.
func (s *Server) Refuse(r Refusal) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.refusals = append(s.refusals, &r)
}

// Allow takes all refusals away.
func (s *Server) Allow() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.refusals = nil
}

func (s *Server) refusal(method, path string) *Refusal {
	s.mu.Lock()
	defer s.mu.Unlock()
	for i, r := range s.refusals {
		if r.Method != "" && r.Method != method || !strings.Contains(path, r.Path) {
			continue
		}
		if r.After > 0 {
			r.After--
			continue
		}
		if r.Times == 1 {
			s.refusals = append(s.refusals[:i], s.refusals[i+1:]...)
		}
		r.Times--
		c := *r
		return &c
	}
	return nil
}

func (s *Server) id() string { s.count++; return fmt.Sprint(s.count) }

// Clear forgets what was said and done.
func (s *Server) Clear() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.messages, s.history, s.requests, s.gateway.sent = nil, nil, nil, nil
	clear(s.met)
	clear(s.interactions)
}

// Parent is the channel of a thread that was begun on a message; empty: it is
// no such thread.
func (s *Server) Parent(thread string) string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.threads[thread]
}
