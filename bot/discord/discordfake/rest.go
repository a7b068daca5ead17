package discordfake

import (
	"encoding/json"
	"fmt"
	"io"
	"mime"
	"mime/multipart"
	"net/http"
	"strings"
	"time"
)

func (s *Server) handler() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("/gw/", s.serveGateway)
	mux.HandleFunc("/api/v9/", s.serveREST)
	return mux
}

// rest is one call.
type rest struct {
	*Server
	w     http.ResponseWriter
	r     *http.Request
	raw   []byte
	files []File
}

func (c rest) json(status int, v any) {
	b, err := json.Marshal(v)
	if err != nil {
		panic(err)
	}
	c.w.Header().Set("Content-Type", "application/json")
	c.w.WriteHeader(status)
	_, _ = c.w.Write(b)
}

func (c rest) refuse(status, code int, message string) {
	c.json(status, map[string]any{"code": code, "message": message})
}

// invalid refuses a payload, and keeps why.
func (c rest) invalid(why []string) {
	c.mu.Lock()
	c.violations = append(c.violations, why...)
	c.mu.Unlock()
	c.json(http.StatusBadRequest, map[string]any{"code": 50035, "message": "Invalid Form Body",
		"errors": map[string]any{"data": map[string]any{"_errors": []any{map[string]any{"code": "BASE_TYPE_BAD", "message": strings.Join(why, "; ")}}}}})
}

// hidden are the parts of a path that are tokens.
func hidden(parts []string) string {
	if len(parts) > 2 && (parts[0] == "interactions" || parts[0] == "webhooks") {
		parts = append([]string(nil), parts...)
		parts[1], parts[2] = "ID", "TOKEN"
	}
	return strings.Join(parts, "/")
}

func (s *Server) serveREST(w http.ResponseWriter, r *http.Request) {
	path := strings.TrimPrefix(r.URL.Path, "/api/v9/")
	parts := strings.Split(path, "/")
	s.mu.Lock()
	s.requests = append(s.requests, r.Method+" "+hidden(parts))
	token := s.Token
	s.mu.Unlock()
	c := rest{Server: s, w: w, r: r}
	if err := c.read(); err != nil {
		c.refuse(http.StatusBadRequest, 50109, "The request body contains invalid JSON.")
		return
	}
	if f := s.refusal(r.Method, path); f != nil {
		if f.Hang > 0 {
			time.Sleep(f.Hang)
		}
		if f.Lose {
			c.w = &lost{header: http.Header{}}
			c.serve(parts)
			if conn, _, err := http.NewResponseController(w).Hijack(); err == nil {
				_ = conn.Close()
			}
			return
		}
		if f.Status != 0 {
			c.refusal(f)
			return
		}
	}
	if parts[0] != "gateway" && parts[0] != "interactions" && parts[0] != "webhooks" && r.Header.Get("Authorization") != "Bot "+token {
		c.refuse(http.StatusUnauthorized, 0, "401: Unauthorized")
		return
	}
	c.serve(parts)
}

// lost takes an answer that nobody gets.
type lost struct{ header http.Header }

func (l *lost) Header() http.Header         { return l.header }
func (l *lost) Write(b []byte) (int, error) { return len(b), nil }
func (l *lost) WriteHeader(int)             {}

func (c rest) refusal(f *Refusal) {
	h := c.w.Header()
	if f.Status == http.StatusTooManyRequests {
		h.Set("Retry-After", fmt.Sprintf("%.3f", f.RetryAfter.Seconds()))
		h.Set("X-RateLimit-Reset-After", fmt.Sprintf("%.3f", f.RetryAfter.Seconds()))
		h.Set("X-RateLimit-Remaining", "0")
		if f.Global {
			h.Set("X-RateLimit-Global", "true")
		}
		if !f.HTML {
			c.json(f.Status, map[string]any{"message": "You are being rate limited.", "retry_after": f.RetryAfter.Seconds(), "global": f.Global})
			return
		}
	}
	if f.HTML {
		h.Set("Content-Type", "text/html")
		c.w.WriteHeader(f.Status)
		_, _ = io.WriteString(c.w, "<html>no</html>")
		return
	}
	c.refuse(f.Status, f.Code, f.Message)
}

// read takes the body apart.
func (c *rest) read() error {
	kind, params, _ := mime.ParseMediaType(c.r.Header.Get("Content-Type"))
	if kind != "multipart/form-data" {
		b, err := io.ReadAll(io.LimitReader(c.r.Body, 1<<20))
		c.raw = b
		if err == nil && len(b) > 0 && !json.Valid(b) {
			err = fmt.Errorf("no JSON")
		}
		return err
	}
	mr := multipart.NewReader(c.r.Body, params["boundary"])
	for {
		p, err := mr.NextPart()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
		b, err := io.ReadAll(io.LimitReader(p, 26<<20))
		if err != nil {
			return err
		}
		if p.FormName() == "payload_json" {
			c.raw = b
			continue
		}
		c.files = append(c.files, File{Name: p.FileName(), Type: p.Header.Get("Content-Type"), Size: len(b)})
	}
}

func (c rest) serve(parts []string) {
	at := func(i int) string {
		if i < len(parts) {
			return parts[i]
		}
		return ""
	}
	switch m := c.r.Method; {
	case m == "GET" && at(0) == "gateway":
		c.json(200, map[string]string{"url": "ws://" + c.addr + "/gw"})
	case m == "GET" && at(0) == "applications" && at(1) == "@me":
		c.json(200, map[string]any{"id": c.App, "name": "netpost", "verify_key": c.PublicKey(),
			"interactions_endpoint_url": c.Endpoint, "bot": map[string]any{"id": c.Bot, "username": "netpost", "bot": true}})
	case m == "GET" && strings.Join(parts, "/") == "users/@me/guilds":
		c.json(200, []any{map[string]string{"id": "1"}})
	case at(0) == "applications" && at(2) == "commands":
		c.registry(m)
	case m == "POST" && strings.Join(parts, "/") == "users/@me/channels":
		var d struct {
			To string `json:"recipient_id"`
		}
		_ = json.Unmarshal(c.raw, &d)
		c.json(200, map[string]any{"id": "direct-" + d.To, "type": 1})
	case at(0) == "interactions" && at(3) == "callback":
		c.callback(at(1), at(2))
	case at(0) == "webhooks":
		c.webhook(m, at(2), at(4))
	case at(0) == "channels" && at(1) == GoneChannel:
		c.refuse(http.StatusNotFound, 10003, "Unknown Channel")
	case at(0) == "channels" && at(1) == ClosedChannel:
		c.refuse(http.StatusForbidden, 50001, "Missing Access")
	case at(0) == "channels" && at(4) == "threads":
		c.thread(at(1), at(3))
	case at(0) == "channels" && at(2) == "messages":
		c.channel(m, at(1), at(3))
	default:
		c.refuse(http.StatusNotFound, 0, "404: Not Found")
	}
}

func (c rest) registry(method string) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if method == "PUT" {
		// Discord adds fields of its own.
		var list []map[string]any
		if err := json.Unmarshal(c.raw, &list); err != nil {
			c.refuse(http.StatusBadRequest, 50035, "Invalid Form Body")
			return
		}
		for _, x := range list {
			x["id"], x["application_id"], x["version"], x["nsfw"], x["default_member_permissions"] = c.id(), c.App, "1", false, nil
		}
		c.commands, _ = json.Marshal(list)
		c.puts++
	}
	c.json(200, c.commands)
}

// parse checks a message.
func (c rest) parse() (payload, bool) {
	var p payload
	if err := json.Unmarshal(c.raw, &p); err != nil {
		c.invalid([]string{err.Error()})
		return p, false
	}
	if why := p.wrong(); len(why) > 0 {
		c.invalid(why)
		return p, false
	}
	return p, true
}

func (c rest) channel(method, channel, id string) {
	switch method {
	case "POST":
		p, ok := c.parse()
		if !ok {
			return
		}
		c.mu.Lock()
		m := &Message{ID: c.id(), Channel: channel}
		p.into(m, c.raw, c.files)
		c.messages = append(c.messages, m)
		c.shown(m)
		c.mu.Unlock()
		c.json(200, map[string]string{"id": m.ID, "channel_id": channel})
	case "PATCH":
		p, ok := c.parse()
		if !ok {
			return
		}
		c.mu.Lock()
		m := c.find(id)
		if m != nil && m.Channel == channel && m.To == "" {
			p.onto(m, c.raw, c.files)
			m.Edits++
			c.shown(m)
		} else {
			m = nil
		}
		c.mu.Unlock()
		if m == nil {
			c.refuse(http.StatusNotFound, 10008, "Unknown Message")
			return
		}
		c.json(200, map[string]string{"id": id, "channel_id": channel})
	default:
		c.refuse(http.StatusMethodNotAllowed, 0, "405: Method Not Allowed")
	}
}

func (c rest) thread(channel, on string) {
	c.mu.Lock()
	defer c.mu.Unlock()
	m := c.find(on)
	switch {
	case m == nil || m.To != "":
		c.refuse(http.StatusNotFound, 10008, "Unknown Message")
	case c.threads[on] != "":
		c.refuse(http.StatusBadRequest, 160004, "A thread has already been created for this message")
	default:
		c.threads[on] = channel
		c.json(http.StatusCreated, map[string]any{"id": on, "type": 11, "parent_id": channel})
	}
}
