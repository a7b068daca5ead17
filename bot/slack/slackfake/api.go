package slackfake

import (
	"encoding/json"
	"io"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"time"
)

// needs is the scope that each method needs; those that need none have an
// empty one.
var needs = map[string]string{
	"auth.test":                    "",
	"apps.connections.open":        "",
	"chat.postMessage":             "chat:write",
	"chat.postEphemeral":           "chat:write",
	"chat.update":                  "chat:write",
	"conversations.open":           "im:write",
	"files.completeUploadExternal": "files:write",
	"files.delete":                 "files:write",
	"files.getUploadURLExternal":   "files:write",
	"usergroups.list":              "usergroups:read",
	"usergroups.users.list":        "usergroups:read",
	"views.open":                   "",
}

// trouble carries the fault of a call out. It reports true where the call is
// answered already.
func (s *Server) trouble(w http.ResponseWriter, method string) (f fault, answered bool) {
	s.mu.Lock()
	s.calls = append(s.calls, Call{method, time.Now()})
	if fs := s.faults[method]; len(fs) > 0 {
		f, s.faults[method] = fs[0], fs[1:]
	}
	s.tick()
	s.mu.Unlock()
	switch {
	case f.slow > 0:
		time.Sleep(f.slow)
	case f.status == http.StatusTooManyRequests:
		w.Header().Set("Retry-After", strconv.Itoa(int(f.after.Seconds())))
		w.WriteHeader(f.status)
		return f, true
	case f.status != 0:
		w.WriteHeader(f.status)
		return f, true
	case f.code != "":
		answer(w, refused(f.code))
		return f, true
	}
	return f, false
}

// lose breaks the connection off before the answer.
func lose(w http.ResponseWriter) {
	if h, ok := w.(http.Hijacker); ok {
		if conn, _, err := h.Hijack(); err == nil {
			_ = conn.Close()
		}
	}
}

func (s *Server) api(w http.ResponseWriter, r *http.Request) {
	method := r.PathValue("method")
	f, answered := s.trouble(w, method)
	if answered {
		return
	}
	body, err := io.ReadAll(io.LimitReader(r.Body, 4<<20))
	if err != nil {
		w.WriteHeader(http.StatusBadRequest)
		return
	}
	form := url.Values{}
	if strings.HasPrefix(r.Header.Get("Content-Type"), "application/x-www-form-urlencoded") {
		form, _ = url.ParseQuery(string(body))
	}
	token := strings.TrimPrefix(r.Header.Get("Authorization"), "Bearer ")
	if token == "" {
		token = form.Get("token")
	}
	s.mu.Lock()
	w.Header().Set("X-OAuth-Scopes", s.scopes)
	out := s.call(method, token, form, body)
	s.tick()
	s.mu.Unlock()
	if f.lost {
		lose(w)
		return
	}
	answer(w, out)
}

// call carries a call out. The lock is held.
func (s *Server) call(method, token string, form url.Values, body []byte) map[string]any {
	scope, known := needs[method]
	want := BotToken
	if method == "apps.connections.open" {
		want = AppToken
	}
	switch {
	case !known:
		s.problem("%s: no such method", method)
		return refused("unknown_method")
	case token == "":
		return refused("not_authed")
	case token != want && (token == BotToken || token == AppToken):
		return refused("not_allowed_token_type")
	case token != want:
		return refused("invalid_auth")
	case scope != "" && !slices.Contains(strings.Split(s.scopes, ","), scope):
		m := refused("missing_scope")
		m["needed"], m["provided"] = scope, s.scopes
		return m
	}
	if form.Get("link_names") != "" && form.Get("link_names") != "0" && form.Get("link_names") != "false" || form.Get("parse") == "full" {
		s.problem("%s: asks for names to be linked: mentions would ping", method)
	}
	switch method {
	case "auth.test":
		return ok("team_id", Team, "user_id", Self, "team", "crew", "user", "netpost", "bot_id", "B0NETPOST", "url", s.http.URL)
	case "apps.connections.open":
		return ok("url", "ws"+strings.TrimPrefix(s.http.URL, "http")+"/link")
	case "chat.postMessage", "chat.postEphemeral", "chat.update":
		return s.chat(method, form)
	case "conversations.open":
		user := form.Get("users")
		if !strings.HasPrefix(user, "U") {
			return refused("user_not_found")
		}
		return ok("channel", map[string]any{"id": s.room(user).id})
	case "usergroups.list":
		all := []any{}
		for _, g := range s.groups {
			all = append(all, map[string]any{"id": g.id, "team_id": Team, "is_usergroup": true, "handle": g.handle, "name": g.handle, "date_delete": 0})
		}
		return ok("usergroups", all)
	case "usergroups.users.list":
		for _, g := range s.groups {
			if g.id == form.Get("usergroup") {
				return ok("users", g.members)
			}
		}
		return refused("no_such_subteam")
	case "views.open":
		return s.openView(body)
	case "files.delete":
		for _, c := range s.channels {
			if i := slices.IndexFunc(c.messages, func(m *Message) bool { return m.File != nil && m.File.ID == form.Get("file") }); i >= 0 {
				c.messages = slices.Delete(c.messages, i, i+1)
				return ok()
			}
		}
		return refused("file_not_found")
	case "files.getUploadURLExternal":
		size, _ := strconv.Atoi(form.Get("length"))
		if size <= 0 || form.Get("filename") == "" {
			return refused("invalid_arguments")
		}
		id := "F" + s.next()
		s.uploads[id] = &upload{file: File{ID: id, Name: form.Get("filename"), Alt: form.Get("alt_txt")}, size: size}
		return ok("upload_url", s.http.URL+"/upload/"+id, "file_id", id)
	}
	return s.completeUpload(form)
}

func (s *Server) chat(method string, form url.Values) map[string]any {
	c := s.channels[form.Get("channel")]
	if c == nil {
		return refused("channel_not_found")
	}
	if !slices.Contains(c.members, Self) {
		return refused("not_in_channel")
	}
	var blocks []Block
	if b := form.Get("blocks"); b != "" {
		if err := json.Unmarshal([]byte(b), &blocks); err != nil {
			s.problem("%s: blocks that are no JSON: %v", method, err)
			return refused("invalid_blocks_format")
		}
	}
	if code := s.check(method, form.Get("text"), blocks); code != "" {
		return refused(code)
	}
	thread := form.Get("thread_ts")
	if thread != "" && c.find(thread) == nil {
		return refused("thread_not_found")
	}
	m := &Message{Channel: c.id, Thread: thread, From: Self, Text: form.Get("text"), Blocks: blocks}
	switch method {
	case "chat.update":
		old := c.find(form.Get("ts"))
		switch {
		case old == nil || old.To != "":
			return refused("message_not_found")
		case old.From != Self || old.address:
			return refused("cant_update_message")
		}
		s.change(old, m.Text, m.Blocks)
		return ok("channel", c.id, "ts", old.TS)
	case "chat.postEphemeral":
		m.To = form.Get("user")
		if !slices.Contains(c.members, m.To) {
			return refused("user_not_in_channel")
		}
		m.TS = s.ts()
		s.show(c, m)
		return ok("message_ts", m.TS)
	}
	m.TS = s.ts()
	s.show(c, m)
	return ok("channel", c.id, "ts", m.TS)
}

// viewWire is a form on the wire.
type viewWire struct {
	Type     string  `json:"type"`
	Callback string  `json:"callback_id"`
	Metadata string  `json:"private_metadata"`
	Title    Text    `json:"title"`
	Submit   Text    `json:"submit"`
	Blocks   []Block `json:"blocks"`
}

func (s *Server) openView(body []byte) map[string]any {
	var req struct {
		Trigger string   `json:"trigger_id"`
		View    viewWire `json:"view"`
	}
	if err := json.Unmarshal(body, &req); err != nil {
		return refused("invalid_json")
	}
	t := s.triggers[req.Trigger]
	switch {
	case t == nil:
		return refused("invalid_trigger_id")
	case t.used:
		return refused("exchanged_trigger_id")
	case time.Since(t.born) > 3*time.Second:
		return refused("expired_trigger_id")
	}
	v := req.View
	if code := s.checkView(v.Title, v.Submit, v.Callback, v.Metadata, v.Blocks); code != "" {
		return refused(code)
	}
	t.used = true
	id := "V" + s.next()
	open := View{ID: id, Hash: "h" + id, Callback: v.Callback, Metadata: v.Metadata, Title: v.Title.Text, User: t.user, Blocks: v.Blocks}
	s.views = append(s.views, open)
	s.history = append(s.history, Happening{View: &open})
	return ok("view", map[string]any{"id": id})
}

func (s *Server) completeUpload(form url.Values) map[string]any {
	var files []struct {
		ID    string `json:"id"`
		Title string `json:"title"`
	}
	if err := json.Unmarshal([]byte(form.Get("files")), &files); err != nil || len(files) != 1 {
		return refused("invalid_arguments")
	}
	u, c := s.uploads[files[0].ID], s.channels[form.Get("channel_id")]
	switch {
	case u == nil || !u.done:
		return refused("file_not_found")
	case c == nil:
		return refused("channel_not_found")
	case !slices.Contains(c.members, Self):
		return refused("not_in_channel")
	}
	f := u.file
	f.Title = files[0].Title
	s.show(c, &Message{Channel: c.id, TS: s.ts(), Thread: form.Get("thread_ts"), From: Self, File: &f})
	return ok("files", files)
}

func (s *Server) upload(w http.ResponseWriter, r *http.Request) {
	if _, answered := s.trouble(w, "upload"); answered {
		return
	}
	in, _, err := r.FormFile("file")
	if err != nil {
		w.WriteHeader(http.StatusBadRequest)
		return
	}
	data, err := io.ReadAll(in)
	s.mu.Lock()
	defer s.mu.Unlock()
	u := s.uploads[r.PathValue("id")]
	if err != nil || u == nil || len(data) != u.size {
		w.WriteHeader(http.StatusBadRequest)
		return
	}
	u.file.Data, u.done = data, true
	answer(w, ok())
}

// respond is a response address: five uses in half an hour.
func (s *Server) respond(w http.ResponseWriter, r *http.Request) {
	f, answered := s.trouble(w, RespondMethod)
	if answered {
		return
	}
	var m struct {
		Text     string  `json:"text"`
		Blocks   []Block `json:"blocks"`
		Thread   string  `json:"thread_ts"`
		Type     string  `json:"response_type"`
		Replace  bool    `json:"replace_original"`
		LinkName any     `json:"link_names"`
	}
	err := json.NewDecoder(r.Body).Decode(&m)
	s.mu.Lock()
	defer s.mu.Unlock()
	defer s.tick()
	at := s.responses[r.PathValue("id")]
	if err != nil || at == nil || at.expired || at.uses >= 5 {
		w.Header().Set("Content-Type", "application/json")
		w.WriteHeader(http.StatusNotFound)
		_, _ = io.WriteString(w, `{"ok":false,"error":"used_url"}`)
		return
	}
	if code := s.check(RespondMethod, m.Text, m.Blocks); code != "" {
		answer(w, refused(code))
		return
	}
	at.uses++
	c := s.channels[at.channel]
	old := c.find(at.message)
	if m.Replace && !at.command && old != nil {
		s.change(old, m.Text, m.Blocks)
	} else {
		n := &Message{Channel: at.channel, TS: s.ts(), Thread: m.Thread, From: Self, Text: m.Text, Blocks: m.Blocks, address: true}
		if m.Type != "in_channel" {
			n.To = at.user
		}
		s.show(c, n)
	}
	if f.lost {
		lose(w)
		return
	}
	answer(w, ok())
}
