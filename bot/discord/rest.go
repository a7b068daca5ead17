package discord

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"strings"
	"time"

	"github.com/bwmarrin/discordgo"

	"example.org/netpost/bot"
)

// request is one call of the REST API.
type request struct {
	method, path string
	key          string // what Discord counts its rate by
	free         bool   // of the limit over all calls: those about an interaction
	payload      any    // nil: none
	files        []bot.Picture
}

// call calls Discord, and again where Discord refuses for its rate, after the
// time that it names. Nothing else is tried again: it might be out.
func (a *Adapter) call(ctx context.Context, r request, out any) error {
	typ, body, err := r.body()
	if err != nil {
		return err
	}
	for {
		hold, leave, err := a.gates.Enter(ctx, r.key, r.free)
		if err != nil {
			return errHeld
		}
		var saw saw
		answer, err := a.once(ctx, r, typ, body, &saw)
		wait := saw.wait()
		if wait > 0 {
			hold(wait, saw.global)
		}
		leave()
		if saw.status == http.StatusTooManyRequests {
			a.log.Warn("discord: held back for Discord's rate", "in", wait)
			continue
		}
		if err != nil {
			return saw.failed(err)
		}
		if out == nil || len(answer) == 0 {
			return nil
		}
		if err := json.Unmarshal(answer, out); err != nil {
			return fmt.Errorf("an answer that can't be read: %w", err)
		}
		return nil
	}
}

// once makes one call. The library would keep a bucket for each address and
// never drop it, sleep out a refusal without a look at the context, and repeat
// what a gateway between lost, which may be out: so it gets a bucket to throw
// away, and may do none of that.
func (a *Adapter) once(ctx context.Context, r request, typ string, body []byte, s *saw) ([]byte, error) {
	bucket := discordgo.NewRatelimiter().LockBucket(r.key)
	return a.api.RequestWithLockedBucket(r.method, a.base+r.path, typ, body, bucket, 0,
		discordgo.WithContext(context.WithValue(ctx, sawKey{}, s)),
		discordgo.WithRetryOnRatelimit(false), discordgo.WithRestRetries(0))
}

// body is what is sent. Pictures are read from their bytes each time.
func (r request) body() (typ string, body []byte, err error) {
	if r.payload == nil {
		return "", nil, nil
	}
	if len(r.files) == 0 {
		body, err = json.Marshal(r.payload)
		return "application/json", body, err
	}
	var files []*discordgo.File
	for _, p := range r.files {
		files = append(files, &discordgo.File{Name: p.Name, ContentType: p.Type, Reader: bytes.NewReader(p.Data)})
	}
	return discordgo.MultipartBodyWithJSON(r.payload, files)
}

// saw is what a response said besides its body: the library keeps most of it to
// itself, and makes an error of its own of a refusal that is no JSON.
type saw struct {
	status     int
	global     bool
	spent      bool // no call is left
	after      time.Duration
	retryAfter time.Duration
}

type sawKey struct{}

// wait is how long the next call has to wait.
func (s *saw) wait() time.Duration {
	const unsaid = 5 * time.Second // where Discord names no time
	switch {
	case s.status == http.StatusTooManyRequests && max(s.retryAfter, s.after) > 0:
		return max(s.retryAfter, s.after) + 20*time.Millisecond
	case s.status == http.StatusTooManyRequests:
		return unsaid
	case s.spent:
		return s.after
	}
	return 0
}

// failed is the error of a call that was not taken.
func (s *saw) failed(err error) error {
	r := &refusal{status: s.status}
	if e, ok := errors.AsType[*discordgo.RESTError](err); ok {
		if e.Message != nil {
			r.code, r.message = e.Message.Code, e.Message.Message
		}
		r.where = whereIn(e.ResponseBody)
	}
	if s.status >= 400 {
		return r
	}
	return err
}

// whereIn lists which parts of a payload were refused, and why: the names and
// codes, not what stands there.
func whereIn(body []byte) string {
	var top struct {
		Errors map[string]any `json:"errors"`
	}
	if json.Unmarshal(body, &top) != nil {
		return ""
	}
	var out []string
	var walk func(path string, v any)
	walk = func(path string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for _, k := range sortedKeys(v) {
				if code, ok := v[k].(string); ok && k == "code" {
					out = append(out, path+": "+code)
				}
				next := k
				if path != "" && k != "_errors" {
					next = path + "." + k
				} else if k == "_errors" {
					next = path
				}
				walk(next, v[k])
			}
		case []any:
			for _, x := range v {
				walk(path, x)
			}
		}
	}
	walk("", top.Errors)
	return strings.Join(out, "; ")
}

// transport sends requests to the address that the options name, since the
// library's own are variables of the whole process, and notes what the
// response says.
type transport struct {
	base string
	next http.RoundTripper
}

// CloseIdleConnections lets go of the connections that nobody uses.
func (t *transport) CloseIdleConnections() {
	if c, ok := t.next.(interface{ CloseIdleConnections() }); ok {
		c.CloseIdleConnections()
	}
}

func (t *transport) RoundTrip(r *http.Request) (*http.Response, error) {
	if rest, ok := strings.CutPrefix(r.URL.String(), discordgo.EndpointAPI); ok && t.base != discordgo.EndpointAPI {
		again, err := http.NewRequestWithContext(r.Context(), r.Method, t.base+rest, r.Body)
		if err != nil {
			return nil, err
		}
		again.Header, again.ContentLength = r.Header, r.ContentLength
		r = again
	}
	resp, err := t.next.RoundTrip(r)
	if err != nil {
		return nil, err
	}
	if s, ok := r.Context().Value(sawKey{}).(*saw); ok {
		h := resp.Header
		s.status = resp.StatusCode
		s.global = h.Get("X-RateLimit-Global") != "" || h.Get("X-RateLimit-Scope") == "global"
		s.spent = h.Get("X-RateLimit-Remaining") == "0"
		s.after = seconds(h.Get("X-RateLimit-Reset-After"))
		s.retryAfter = seconds(h.Get("Retry-After"))
		// The library fails a call that was taken where it can't read these.
		for _, k := range []string{"Remaining", "Reset", "Reset-After", "Global"} {
			h.Del("X-RateLimit-" + k)
		}
	}
	return resp, nil
}

func seconds(s string) time.Duration {
	f, err := strconv.ParseFloat(s, 64)
	if err != nil || f < 0 || f > 24*60*60 {
		return 0
	}
	return time.Duration(f * float64(time.Second))
}

// room opens the direct message with a person.
func (a *Adapter) room(ctx context.Context, who string) (string, error) {
	return a.rooms.Open(who, func() (string, error) {
		var c struct {
			ID string `json:"id"`
		}
		err := a.call(ctx, request{method: http.MethodPost, path: "users/@me/channels", key: "rooms",
			payload: map[string]string{"recipient_id": who}}, &c)
		return c.ID, err
	})
}
