package slack

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/url"
	"slices"
	"strings"
	"testing"
	"time"

	slackapi "github.com/slack-go/slack"
	"go.yaml.in/yaml/v3"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/wire"
)

func TestRefusals(t *testing.T) {
	for i, r := range refusals {
		if r.does == 0 || r.does == hopeless && r.mends == "" || r.does == doubt && r.mends != "" {
			t.Errorf("%s: a fatal one says how to mend it, one in doubt can't", r.code)
		}
		if i > 0 && refusals[i-1].code >= r.code {
			t.Errorf("%s: not sorted or twice", r.code)
		}
	}
}

func TestScopes(t *testing.T) {
	for i, s := range scopes {
		if s.without == "" {
			t.Errorf("%s: undocumented", s.name)
		}
		if i > 0 && scopes[i-1].name >= s.name {
			t.Errorf("%s: not sorted or twice", s.name)
		}
		if strings.HasSuffix(s.name, ":history") && s.name != "im:history" || s.name == "chat:write.public" {
			t.Errorf("%s: more than is needed", s.name)
		}
	}
}

func TestManifest(t *testing.T) {
	socket, web := Manifest(ManifestOptions{}), Manifest(ManifestOptions{Name: "Rulings: \"ours\"\n#1", URL: "https://bot.example/slack", Groups: true})
	bottest.Golden(t, "manifest.yaml", socket)
	for _, m := range []string{socket, web} {
		var v struct {
			Info struct {
				Name, Description string
			} `yaml:"display_information"`
			Features struct {
				Commands []struct {
					Command, Description, URL string
					Hint                      string `yaml:"usage_hint"`
				} `yaml:"slash_commands"`
				Shortcuts []struct {
					Name, Type, Description string
					Callback                string `yaml:"callback_id"`
				}
			}
			OAuth struct {
				Scopes struct{ Bot []string }
			} `yaml:"oauth_config"`
			Settings struct {
				Events struct {
					URL  string   `yaml:"request_url"`
					Bots []string `yaml:"bot_events"`
				} `yaml:"event_subscriptions"`
				Interactivity struct {
					On  bool   `yaml:"is_enabled"`
					URL string `yaml:"request_url"`
				}
				Socket bool `yaml:"socket_mode_enabled"`
			}
		}
		if err := yaml.Unmarshal([]byte(m), &v); err != nil {
			t.Fatalf("%v\n%s", err, m)
		}
		c, s := v.Features.Commands[0], v.Features.Shortcuts[0]
		over := wire.Size(v.Info.Name) > 35 || wire.Size(v.Info.Description) > 140 || wire.Size(s.Name) > 24 || wire.Size(s.Description) > 150 || wire.Size(c.Description) > 2000
		if over || c.Command != "/netpost" || s.Callback != shortcutID || !v.Settings.Interactivity.On ||
			slices.Contains(v.OAuth.Scopes.Bot, scopeGroups) != (m == web) || m == web && len(v.OAuth.Scopes.Bot) != len(scopes) {
			t.Errorf("%+v", v)
		}
		address := ""
		if m == web {
			address = "https://bot.example/slack"
		}
		if c.URL != address || v.Settings.Events.URL != address || v.Settings.Interactivity.URL != address || v.Settings.Socket == (address != "") {
			t.Errorf("the addresses are wrong: %+v", v)
		}
	}
}

// What is certain not to be out, and what is not.
func TestNotSent(t *testing.T) {
	dial := &url.Error{Op: "Post", URL: "https://hooks.example/T1/secret", Err: &net.OpError{Op: "dial", Err: errors.New("refused")}}
	for _, test := range []struct {
		err  error
		want bool
	}{
		{slackapi.SlackErrorResponse{Err: "channel_not_found"}, true},
		{slackapi.SlackErrorResponse{Err: "no_such_code"}, true},
		{slackapi.SlackErrorResponse{Err: "fatal_error"}, false},
		{&slackapi.RateLimitedError{RetryAfter: time.Second}, true},
		{slackapi.StatusCodeError{Code: 404}, true},
		{slackapi.StatusCodeError{Code: 503}, false},
		{dial, true},
		{&url.Error{Op: "Post", URL: "https://hooks.example/T1/secret", Err: &net.OpError{Op: "read", Err: errors.New("reset")}}, false},
		{context.DeadlineExceeded, false},
		{errHeld, true},
		{fmt.Errorf("upload: %w", dial), true},
	} {
		if got := notSent(test.err); got != test.want {
			t.Errorf("notSent(%v) = %v", test.err, got)
		}
		err := failure("x", test.err)
		if errors.Is(err, bot.ErrNotSent) != test.want || strings.Contains(err.Error(), "secret") {
			t.Errorf("failure(%v) = %v", test.err, err)
		}
	}
}

func TestScrub(t *testing.T) {
	for _, s := range []string{"xoxb-1-secret", "xapp-1-secret", "wss://link.example/?ticket=secret", "https://hooks.example/secret"} {
		if got := scrub(errors.New("dialling " + s + " failed")); strings.Contains(got, "secret") || !strings.Contains(got, "failed") {
			t.Errorf("scrub of %q: %q", s, got)
		}
	}
}

// Where too much is in hand, a command's person is told, and an event is left
// to be delivered again.
func TestBusy(t *testing.T) {
	a := testAdapter(t)
	a.begin(t.Context())
	for range wire.MostWork {
		a.work.Begin()
	}
	for _, test := range []struct {
		typ, payload string
		want         verdict
	}{
		{"slash_commands", `{"user_id":"U1","channel_id":"C1","trigger_id":"t1"}`, refuseAloud},
		{"events_api", `{"type":"event_callback","event":{"type":"app_mention","user":"U1","channel":"C1","ts":"1.1"}}`, refuse},
	} {
		in, err := a.decode(test.typ, []byte(test.payload))
		if err != nil {
			t.Fatal(err)
		}
		for range 2 { // it is not known the second time either
			if got := a.take(t.Context(), nil, in, nil); got != test.want {
				t.Errorf("%s: %v, want %v", test.typ, got, test.want)
			}
		}
	}
}
