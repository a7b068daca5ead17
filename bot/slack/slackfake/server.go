// Package slackfake is a workspace on loopback that speaks Slack's wire: the
// Web API, Socket Mode, signed HTTP requests and response addresses. People in
// it type, press and send forms off, and see what they would see. It refuses
// what Slack refuses: too long a text, too many blocks, a form opened too late.
//
// It is for tests, and for trying the adapter without Slack.
package slackfake

import (
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"

	"example.org/netpost/bot/bottest/socket"
)

// The workspace's own, and what the app is set up with.
const (
	Team          = "T0CREW"
	Self          = "U0NETPOST" // the bot
	BotToken      = "xoxb-fake-bot"
	AppToken      = "xapp-fake-app"
	SigningSecret = "fake-signing-secret"
)

// AllScopes is what the app has been given when the server is new, and
// GroupScope what it needs beside that to see who is in a user group.
const (
	AllScopes  = "app_mentions:read,chat:write,commands,files:write,im:history,im:write"
	GroupScope = "usergroups:read"
)

// Server is a workspace. Its methods may be called by many goroutines.
type Server struct {
	http *httptest.Server

	mu        sync.Mutex
	scopes    string
	channels  map[string]*channel
	groups    []group
	responses map[string]*response
	triggers  map[string]*trigger
	uploads   map[string]*upload
	faults    map[string][]fault
	views     []View
	calls     []Call
	problems  []string
	pings     []string
	history   []Happening
	conns     []*socket.Conn
	links     int // sockets opened so far
	acks      map[string]chan Ack
	clock     int // of message ids
	serial    int
	endpoint  string // where HTTP mode is posted to; empty: Socket Mode
	changed   chan struct{}
}

type channel struct {
	id       string
	members  []string
	messages []*Message
}

type group struct {
	id, handle string
	members    []string
}

// Message is one message in a channel.
type Message struct {
	Channel string
	TS      string
	Thread  string
	From    string
	To      string // the one who sees it; empty: all in the channel
	Text    string
	Blocks  []Block
	File    *File
	Edits   int
	address bool // said through a response address
}

// Private reports whether only one person sees it.
func (m Message) Private() bool { return m.To != "" }

// File is an image in a channel.
type File struct {
	ID, Name, Title, Alt string
	Data                 []byte
}

// View is a form that is open.
type View struct {
	ID, Hash, Callback, Metadata, Title string
	User                                string
	Blocks                              []Block
}

// Call is one call of the Web API, or of a response address.
type Call struct {
	Method string
	At     time.Time
}

type response struct {
	command bool // of a command: it can't replace anything
	channel string
	user    string
	message string
	uses    int
	expired bool
}

type trigger struct {
	born time.Time
	used bool
	user string
}

type upload struct {
	file File
	size int
	done bool
}

type fault struct {
	code   string        // of a refusal
	status int           // of the response, in place of a refusal
	after  time.Duration // Retry-After, with status 429
	slow   time.Duration // before the call is carried out as usual
	lost   bool          // it is carried out, and the answer is lost
}

// New starts a workspace with no channels.
func New() *Server {
	s := &Server{scopes: AllScopes, channels: map[string]*channel{}, responses: map[string]*response{},
		triggers: map[string]*trigger{}, uploads: map[string]*upload{}, faults: map[string][]fault{}, acks: map[string]chan Ack{},
		clock: 1_700_000_000, changed: make(chan struct{})}
	mux := http.NewServeMux()
	mux.HandleFunc("/api/{method}", s.api)
	mux.HandleFunc("/respond/{id}", s.respond)
	mux.HandleFunc("/upload/{id}", s.upload)
	mux.HandleFunc("/link", s.link)
	s.http = httptest.NewServer(mux)
	return s
}

// Close ends the workspace and every connection to it.
func (s *Server) Close() {
	s.Drop()
	s.http.Close()
}

// APIURL is the address of the Web API.
func (s *Server) APIURL() string { return s.http.URL + "/api/" }

// PostTo has everything delivered as signed HTTP requests to an address, in
// place of the socket.
func (s *Server) PostTo(address string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.endpoint = address
}

// SetScopes changes the scopes that the bot token has.
func (s *Server) SetScopes(scopes string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.scopes = scopes
}

// Channel makes a channel with members.
func (s *Server) Channel(id string, members ...string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.channels[id] = &channel{id: id, members: members}
}

// Group makes a user group, or gives one other members.
func (s *Server) Group(id, handle string, members ...string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.groups = slices.DeleteFunc(s.groups, func(g group) bool { return g.id == id })
	s.groups = append(s.groups, group{id, handle, append([]string{}, members...)})
}

// Clear forgets what was said and done; the channels and their members stay.
func (s *Server) Clear() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.calls, s.history, s.views, s.pings = nil, nil, nil, nil
	clear(s.responses)
	clear(s.triggers)
	clear(s.uploads)
	for _, c := range s.channels {
		c.messages = nil
	}
}

// Refuse has the next n calls of a method refused with a code.
func (s *Server) Refuse(method, code string, n int) { s.fault(method, fault{code: code}, n) }

// Status has the next n calls of a method answered with an HTTP status.
func (s *Server) Status(method string, status, n int) { s.fault(method, fault{status: status}, n) }

// Limit has the next n calls of a method refused for their rate.
func (s *Server) Limit(method string, after time.Duration, n int) {
	s.fault(method, fault{status: http.StatusTooManyRequests, after: after}, n)
}

// Lose has the next n calls of a method carried out, and their answers lost.
func (s *Server) Lose(method string, n int) { s.fault(method, fault{lost: true}, n) }

// Slow has the next n calls of a method take time.
func (s *Server) Slow(method string, by time.Duration, n int) { s.fault(method, fault{slow: by}, n) }

// RespondMethod is the method's name of posts to response addresses.
const RespondMethod = "response_url"

func (s *Server) fault(method string, f fault, n int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for range n {
		s.faults[method] = append(s.faults[method], f)
	}
}

// Expire makes every response address useless, as half an hour does.
func (s *Server) Expire() {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, r := range s.responses {
		r.expired = true
	}
	for _, t := range s.triggers {
		t.used = true
	}
}

// Calls are the calls so far of a method; of all where it is empty.
func (s *Server) Calls(method string) []Call {
	s.mu.Lock()
	defer s.mu.Unlock()
	var out []Call
	for _, c := range s.calls {
		if method == "" || c.Method == method {
			out = append(out, c)
		}
	}
	return out
}

// Problems are what was wrong with what was sent so far: limits that were not
// kept, mentions that would ping. Slack answers with a code alone.
func (s *Server) Problems() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return slices.Clone(s.problems)
}

func (s *Server) problem(format string, args ...any) {
	s.problems = append(s.problems, fmt.Sprintf(format, args...))
}

// Wait waits until a condition holds, looking again whenever something changed
// here, and now and then for what changed elsewhere. It reports false when it
// did not within a time.
func (s *Server) Wait(within time.Duration, holds func() bool) bool {
	late := time.NewTimer(within)
	defer late.Stop()
	again := time.NewTicker(10 * time.Millisecond)
	defer again.Stop()
	for {
		s.mu.Lock()
		changed := s.changed
		s.mu.Unlock()
		if holds() {
			return true
		}
		select {
		case <-changed:
		case <-again.C:
		case <-late.C:
			return holds()
		}
	}
}

// tick tells those who wait that something changed. The lock is held.
func (s *Server) tick() {
	close(s.changed)
	s.changed = make(chan struct{})
}

// next gives a serial number. The lock is held.
func (s *Server) next() string {
	s.serial++
	return strconv.Itoa(s.serial)
}

// ts gives a message id. The lock is held.
func (s *Server) ts() string {
	s.clock++
	return fmt.Sprintf("%d.%06d", s.clock, s.clock%1_000_000)
}

// Sees is what a person sees in a channel, in order.
func (s *Server) Sees(user, channel string) []Message {
	s.mu.Lock()
	defer s.mu.Unlock()
	var out []Message
	if c := s.channels[channel]; c != nil {
		for _, m := range c.messages {
			if m.To == "" || m.To == user {
				out = append(out, *m)
			}
		}
	}
	return out
}

// Views are the forms that are open for a person.
func (s *Server) Views(user string) []View {
	s.mu.Lock()
	defer s.mu.Unlock()
	var out []View
	for _, v := range s.views {
		if v.User == user {
			out = append(out, v)
		}
	}
	return out
}

// Room is the direct message of a person with the bot.
func Room(user string) string { return "D" + strings.TrimPrefix(user, "U") }

// room makes sure of a direct message. The lock is held.
func (s *Server) room(user string) *channel {
	id := Room(user)
	if s.channels[id] == nil {
		s.channels[id] = &channel{id: id, members: []string{user, Self}}
	}
	return s.channels[id]
}

func (c *channel) find(ts string) *Message {
	for _, m := range c.messages {
		if m.TS == ts {
			return m
		}
	}
	return nil
}

func answer(w http.ResponseWriter, body any) {
	w.Header().Set("Content-Type", "application/json")
	_ = json.NewEncoder(w).Encode(body)
}

// ok is an answer of the Web API.
func ok(fields ...any) map[string]any {
	m := map[string]any{"ok": true}
	for i := 0; i+1 < len(fields); i += 2 {
		m[fields[i].(string)] = fields[i+1]
	}
	return m
}

func refused(code string) map[string]any { return map[string]any{"ok": false, "error": code} }

// Endpoint is where HTTP mode is posted to; empty: Socket Mode.
func (s *Server) Endpoint() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.endpoint
}
