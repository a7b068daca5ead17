package discordfake

import (
	"bytes"
	"crypto/ed25519"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"strconv"
	"time"
)

// Person is somebody.
type Person struct {
	ID, Name string
	Roles    []string
}

// Where is a channel, a thread in one, or a direct message with the bot.
type Where struct {
	Guild, Channel string
	Thread         string // its id
	Direct         bool
}

// Types of responses that the fake has to tell apart.
const (
	respondMessage   = 4
	respondDefer     = 5
	respondDeferEdit = 6
	respondEdit      = 7
	respondChoices   = 8
	respondForm      = 9
)

// Interaction is something that a person did, and what came of it.
type Interaction struct {
	ID, Token string

	s        *Server
	who      Person
	where    Where
	on       *Message // that was pressed, or whose button opened the form
	typ      int
	at       time.Time
	answered time.Duration // when the first response came
	first    int           // its type; 0: none yet
	original string        // the id of the message that it made or may change
	choices  []string
	form     *payload
	status   int // of the answer to the request, over HTTP
	reply    string
	sent     []byte
}

func (s *Server) begin(who Person, where Where, typ int, data map[string]any, on *Message) *Interaction {
	s.mu.Lock()
	i := &Interaction{ID: s.id(), Token: "tok-" + s.id(), s: s, who: who, where: where, typ: typ, at: time.Now(), on: on}
	s.interactions[i.Token] = i
	i.sent, _ = json.Marshal(i.payload(data))
	s.mu.Unlock()
	s.Deliver(json.RawMessage(i.sent))
	return i
}

// payload is the interaction as Discord sends it.
func (i *Interaction) payload(data map[string]any) map[string]any {
	user := map[string]any{"id": i.who.ID, "username": i.who.Name, "global_name": nil, "bot": false}
	p := map[string]any{"type": i.typ, "id": i.ID, "application_id": i.s.App, "token": i.Token, "version": 1, "locale": "en-US",
		"app_permissions": "2248473465835073", "data": data, "entitlements": []any{}}
	channel := map[string]any{"id": i.where.Channel, "type": 0}
	p["channel_id"] = i.where.Channel
	switch {
	case i.where.Direct:
		channel["type"], p["user"], p["context"] = 1, user, 1
	default:
		p["guild_id"], p["guild_locale"], p["context"] = i.where.Guild, "en-US", 0
		p["member"] = map[string]any{"user": user, "roles": append([]string{}, i.who.Roles...), "permissions": "2248473465835073"}
	}
	if i.where.Thread != "" {
		p["channel_id"] = i.where.Thread
		channel = map[string]any{"id": i.where.Thread, "type": 11, "parent_id": i.where.Channel}
	}
	p["channel"] = channel
	if i.on != nil {
		flags := 0
		if i.on.To != "" {
			flags = ephemeralFlag
		}
		p["message"] = map[string]any{"id": i.on.ID, "channel_id": i.on.Channel, "flags": flags, "type": 0, "content": i.on.Content}
	}
	return p
}

const ephemeralFlag = 64

// Deliver sends an interaction's payload over the gateway, or over HTTP.
func (s *Server) Deliver(payload any) {
	if s.Endpoint == "" {
		s.dispatch("INTERACTION_CREATE", payload)
		return
	}
	body, err := json.Marshal(payload)
	if err != nil {
		panic(err)
	}
	go func() {
		status, reply := s.Post(body, time.Now(), nil)
		var p struct {
			ID, Token string
		}
		_ = json.Unmarshal(body, &p)
		s.mu.Lock()
		i := s.interactions[p.Token]
		if i != nil {
			i.status, i.reply = status, string(reply)
		}
		s.mu.Unlock()
		if i != nil && status == http.StatusOK {
			c := rest{Server: s, w: &lost{header: http.Header{}}, raw: reply}
			c.callback(p.ID, p.Token)
		}
	}()
}

// Post sends a signed request to the bot's endpoint. Change may spoil it before
// it is sent.
func (s *Server) Post(body []byte, at time.Time, change func(*http.Request)) (status int, reply []byte) {
	stamp := strconv.FormatInt(at.Unix(), 10)
	r, err := http.NewRequest(http.MethodPost, s.Endpoint, bytes.NewReader(body))
	if err != nil {
		panic(err)
	}
	r.Header.Set("Content-Type", "application/json")
	r.Header.Set("X-Signature-Timestamp", stamp)
	r.Header.Set("X-Signature-Ed25519", hex.EncodeToString(ed25519.Sign(s.key, append([]byte(stamp), body...))))
	if change != nil {
		change(r)
	}
	client := http.Client{Timeout: s.Deadline}
	resp, err := client.Do(r)
	if err != nil {
		return 0, []byte(err.Error())
	}
	defer func() { _ = resp.Body.Close() }()
	reply, _ = io.ReadAll(io.LimitReader(resp.Body, 1<<20))
	return resp.StatusCode, reply
}

// Slash gives the chat command's part of that name, with options.
func (s *Server) Slash(who Person, where Where, part string, options map[string]string) *Interaction {
	return s.begin(who, where, 2, slash(part, options, ""), nil)
}

func slash(part string, options map[string]string, focused string) map[string]any {
	list := []any{}
	for _, name := range sorted(options) {
		o := map[string]any{"name": name, "type": 3, "value": options[name]}
		if name == focused {
			o["focused"] = true
		}
		list = append(list, o)
	}
	return map[string]any{"id": "500", "name": "netpost", "type": 1,
		"options": []any{map[string]any{"name": part, "type": 1, "options": list}}}
}

// Type is half through typing an option.
func (s *Server) Type(who Person, where Where, part, option, typed string) *Interaction {
	return s.begin(who, where, 4, slash(part, map[string]string{option: typed}, option), nil)
}

// Pick picks a message from its menu.
func (s *Server) Pick(who Person, where Where, m Message) *Interaction {
	return s.begin(who, where, 2, map[string]any{"id": "501", "name": "Rule on this", "type": 3, "target_id": m.ID,
		"resolved": map[string]any{"messages": map[string]any{m.ID: map[string]any{"id": m.ID, "content": m.Content, "channel_id": m.Channel,
			// A component that a client library may not know.
			"components": []any{map[string]any{"type": 99, "id": 1}}, "mentions": []any{}}}}}, nil)
}

// Press presses the button of a label.
func (s *Server) Press(who Person, where Where, m Message, label string) *Interaction {
	for _, row := range m.Buttons {
		for _, b := range row {
			if b.Label == label {
				return s.PressID(who, where, m, b.ID)
			}
		}
	}
	panic(fmt.Sprintf("no button %q on the message, only %q:\n%s", label, m.Labels(), m.Shown()))
}

// PressID presses a button of any id.
func (s *Server) PressID(who Person, where Where, m Message, id string) *Interaction {
	return s.begin(who, where, 3, map[string]any{"custom_id": id, "component_type": 2}, &m)
}

// Submit sends the form off that an interaction opened.
func (s *Server) Submit(opened *Interaction, values map[string]string) *Interaction {
	s.mu.Lock()
	f := opened.form
	s.mu.Unlock()
	if f == nil {
		panic("no form was opened")
	}
	rows := []any{}
	for _, row := range f.Components {
		for _, c := range row.Components {
			rows = append(rows, map[string]any{"type": 1, "components": []any{
				map[string]any{"type": 4, "custom_id": c.ID, "value": values[c.ID]}}})
		}
	}
	return s.begin(opened.who, opened.where, 5, map[string]any{"custom_id": f.ID, "components": rows}, opened.on)
}
