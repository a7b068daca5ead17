package slackfake

import (
	"bytes"
	"crypto/hmac"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"strconv"
	"time"

	"example.org/netpost/bot/bottest/socket"
)

// Deadline is what Slack gives for an acknowledgement.
const Deadline = 3 * time.Second

// Ack is what came back for a delivery.
type Ack struct {
	After   time.Duration
	Payload []byte // empty: nothing to show
	Frames  int    // on a socket
}

// ErrNotAcknowledged: there was no acknowledgement within the deadline.
var ErrNotAcknowledged = errors.New("not acknowledged in time")

// Delivery is a payload that was delivered, and can be again.
type Delivery struct {
	Type    string // of the envelope
	Payload map[string]any
	Ack     Ack
	Err     error
}

// Deliver delivers a payload and waits for the acknowledgement. Over HTTP, the
// payload goes into the form that Slack gives it there.
func (s *Server) Deliver(typ string, payload map[string]any) *Delivery {
	d := &Delivery{Type: typ, Payload: payload}
	d.Ack, d.Err = s.deliver(d, 0)
	return d
}

// Again delivers it once more, as Slack does where it was not acknowledged.
func (s *Server) Again(d *Delivery) *Delivery {
	n := &Delivery{Type: d.Type, Payload: d.Payload}
	n.Ack, n.Err = s.deliver(n, 1)
	return n
}

func (s *Server) deliver(d *Delivery, attempt int) (Ack, error) {
	s.mu.Lock()
	endpoint := s.endpoint
	s.mu.Unlock()
	if endpoint != "" {
		return s.post(endpoint, d, attempt)
	}
	body, err := json.Marshal(d.Payload)
	if err != nil {
		return Ack{}, err
	}
	return s.Envelope(d.Type, body, attempt)
}

// Envelope sends a payload over the socket, whatever it is.
func (s *Server) Envelope(typ string, payload json.RawMessage, attempt int) (Ack, error) {
	s.mu.Lock()
	if len(s.conns) == 0 {
		s.mu.Unlock()
		return Ack{}, errors.New("nobody is connected")
	}
	conn := s.conns[s.serial%len(s.conns)]
	id := "env-" + s.next()
	acked := make(chan Ack, 1)
	s.acks[id] = acked
	s.mu.Unlock()
	defer func() {
		s.mu.Lock()
		delete(s.acks, id)
		s.mu.Unlock()
	}()
	frame, err := json.Marshal(map[string]any{"type": typ, "envelope_id": id, "payload": payload,
		"accepts_response_payload": typ != "events_api", "retry_attempt": attempt})
	if err != nil {
		return Ack{}, err
	}
	began := time.Now()
	if err := conn.Send(frame); err != nil {
		return Ack{}, err
	}
	late := time.NewTimer(Deadline)
	defer late.Stop()
	select {
	case a := <-acked:
		a.After = time.Since(began)
		return a, nil
	case <-late.C:
		return Ack{}, ErrNotAcknowledged
	}
}

// Sign signs a request's body as Slack does.
func Sign(h http.Header, secret string, at time.Time, body []byte) {
	ts := strconv.FormatInt(at.Unix(), 10)
	mac := hmac.New(sha256.New, []byte(secret))
	fmt.Fprintf(mac, "v0:%s:%s", ts, body)
	h.Set("X-Slack-Request-Timestamp", ts)
	h.Set("X-Slack-Signature", "v0="+hex.EncodeToString(mac.Sum(nil)))
}

// Body is a payload as an HTTP request's body, with its content type.
func (d *Delivery) Body() (contentType string, body []byte, err error) {
	raw, err := json.Marshal(d.Payload)
	if err != nil {
		return "", nil, err
	}
	const form = "application/x-www-form-urlencoded"
	switch d.Type {
	case "slash_commands":
		v := url.Values{}
		for k, x := range d.Payload {
			v.Set(k, fmt.Sprint(x))
		}
		return form, []byte(v.Encode()), nil
	case "interactive":
		return form, []byte(url.Values{"payload": {string(raw)}}.Encode()), nil
	}
	return "application/json", raw, nil
}

func (s *Server) post(endpoint string, d *Delivery, attempt int) (Ack, error) {
	typ, body, err := d.Body()
	if err != nil {
		return Ack{}, err
	}
	req, err := http.NewRequest(http.MethodPost, endpoint, bytes.NewReader(body))
	if err != nil {
		return Ack{}, err
	}
	req.Header.Set("Content-Type", typ)
	if attempt > 0 {
		req.Header.Set("X-Slack-Retry-Num", strconv.Itoa(attempt))
	}
	Sign(req.Header, SigningSecret, time.Now(), body)
	began := time.Now()
	client := &http.Client{Timeout: Deadline}
	defer client.CloseIdleConnections()
	resp, err := client.Do(req)
	if err != nil {
		return Ack{}, err
	}
	defer resp.Body.Close()
	out, err := io.ReadAll(resp.Body)
	if err == nil && resp.StatusCode != http.StatusOK {
		err = fmt.Errorf("%s: %s", resp.Status, bytes.TrimSpace(out))
	}
	return Ack{After: time.Since(began), Payload: out}, err
}

// link is the socket.
func (s *Server) link(w http.ResponseWriter, r *http.Request) {
	conn, err := socket.Upgrade(w, r)
	if err != nil {
		return
	}
	defer conn.Cut()
	hello := `{"type":"hello","num_connections":1,"connection_info":{"app_id":"A0NETPOST"},"debug_info":{"host":"loopback"}}`
	if conn.Send([]byte(hello)) != nil {
		return
	}
	s.mu.Lock()
	s.conns = append(s.conns, conn)
	s.links++
	s.tick()
	s.mu.Unlock()
	over := make(chan struct{})
	defer close(over)
	go func() {
		// The client takes a socket without pings for dead.
		t := time.NewTicker(5 * time.Second)
		defer t.Stop()
		for {
			select {
			case <-t.C:
				_ = conn.Ping()
			case <-over:
				return
			}
		}
	}()
	defer s.leave(conn)
	for {
		data, frames, err := conn.Read()
		if err != nil {
			return
		}
		var ack struct {
			ID      string          `json:"envelope_id"`
			Payload json.RawMessage `json:"payload"`
		}
		if err := json.Unmarshal(data, &ack); err != nil {
			continue
		}
		s.mu.Lock()
		if len(data) >= 20480 {
			s.problem("an acknowledgement of %d bytes, which Slack drops", len(data))
		} else if c := s.acks[ack.ID]; c != nil {
			select {
			case c <- Ack{Payload: ack.Payload, Frames: frames}:
			default:
				s.problem("%s was acknowledged twice", ack.ID)
			}
		}
		s.mu.Unlock()
	}
}

func (s *Server) leave(conn *socket.Conn) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for i, c := range s.conns {
		if c == conn {
			s.conns = append(s.conns[:i:i], s.conns[i+1:]...)
			break
		}
	}
	s.tick()
}

// Connections is how many sockets are open.
func (s *Server) Connections() int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return len(s.conns)
}

// Links is how many sockets were opened so far.
func (s *Server) Links() int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.links
}

// Disconnect asks every client to connect anew, as Slack does every few hours.
func (s *Server) Disconnect() {
	for _, c := range s.open() {
		_ = c.Send([]byte(`{"type":"disconnect","reason":"refresh_requested"}`))
	}
}

// Drop cuts every socket without a word.
func (s *Server) Drop() {
	for _, c := range s.open() {
		c.Cut()
	}
}

// Raw sends a frame of any text to every client.
func (s *Server) Raw(text string) {
	for _, c := range s.open() {
		_ = c.Send([]byte(text))
	}
}

func (s *Server) open() []*socket.Conn {
	s.mu.Lock()
	defer s.mu.Unlock()
	return append([]*socket.Conn(nil), s.conns...)
}
