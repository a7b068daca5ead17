package slack_test

import (
	"context"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/slack"
	"example.org/netpost/bot/slack/slackfake"
)

// What is wrong with the options is said before anything is called.
func TestNew(t *testing.T) {
	for _, test := range []struct {
		o    slack.Options
		want string
	}{
		{slack.Options{}, "Bot User OAuth Token"},
		{slack.Options{BotToken: "xapp-secret-1", AppToken: "xapp-1"}, "xoxb-"},
		{slack.Options{BotToken: "xoxb-1", AppToken: "xoxb-secret-1"}, "connections:write"},
		{slack.Options{BotToken: "xoxb-1"}, "Socket Mode"},
		{slack.Options{BotToken: "xoxb-1", SigningSecret: "s"}, "listen"},
		{slack.Options{BotToken: "xoxb-1", AppToken: "xapp-1", APIURL: "http://127.0.0.1/api"}, "slash"},
	} {
		_, err := slack.New(test.o)
		if err == nil || !strings.Contains(err.Error(), test.want) || strings.Contains(err.Error(), "secret-1") {
			t.Errorf("New(%+v): %v, want words of %q and no token", test.o, err, test.want)
		}
	}
}

// A token that Slack refuses for good ends Run with a sentence that says what
// to do.
func TestRefusedTokens(t *testing.T) {
	for _, test := range []struct {
		name, method, code, want string
		spoil                    func(*slackfake.Server, *slack.Options)
	}{
		{name: "revoked", method: "auth.test", code: "token_revoked", want: "bot token with token_revoked: the token was revoked: install the app again"},
		{name: "unknown", want: "install the app again", spoil: func(_ *slackfake.Server, o *slack.Options) { o.BotToken = "xoxb-other" }},
		{name: "no scope to speak", want: "missing_scope (chat:write): add the scope",
			spoil: func(s *slackfake.Server, _ *slack.Options) { s.SetScopes("commands") }},
		{name: "unknown app token", want: "app token with invalid_auth: make an app token with the scope connections:write",
			spoil: func(_ *slackfake.Server, o *slack.Options) { o.AppToken = "xapp-other" }},
		// The client would try these for ever.
		{name: "app token without its scope", method: "apps.connections.open", code: "missing_scope", want: "connections:write"},
		{name: "tokens mixed up", method: "apps.connections.open", code: "not_allowed_token_type", want: "each in its own place"},
	} {
		t.Run(test.name, func(t *testing.T) {
			s := workspace(t)
			var l bottest.Log
			o := options(s, socketMode, &l)
			if test.spoil != nil {
				test.spoil(s, &o)
			}
			if test.method != "" {
				s.Refuse(test.method, test.code, 9)
			}
			a, err := slack.New(o)
			if err != nil {
				t.Fatal(err)
			}
			ctx, cancel := context.WithTimeout(t.Context(), wait)
			defer cancel()
			err = a.Run(ctx, bottest.Echo)
			if err == nil || !strings.Contains(err.Error(), test.want) || strings.Contains(err.Error()+l.String(), "-other") {
				t.Errorf("Run: %v, want words of %q and no token\n%s", err, test.want, &l)
			}
			if _, err := a.Check(ctx); err == nil || !strings.Contains(err.Error(), test.want) {
				t.Errorf("Check: %v, want words of %q", err, test.want)
			}
		})
	}
}

// Where Slack can't be reached, the adapter waits for it.
func TestUnreachable(t *testing.T) {
	s := workspace(t)
	s.Status("auth.test", 503, 1)
	c := start(t, s, socketMode, bottest.Echo)
	ana := c.Person("U0ANA")
	c.fine(ana.Command(talk, "at last"))
	c.says(c.last(ana, talk, slackfake.Message{}), "at last")
	if !strings.Contains(c.log.String(), "trying again") {
		t.Errorf("the log says nothing of it:\n%s", c.log)
	}
}

func TestCheck(t *testing.T) {
	s := workspace(t)
	a, err := slack.New(options(s, socketMode, &bottest.Log{}))
	if err != nil {
		t.Fatal(err)
	}
	if w, err := a.Check(t.Context()); err != nil || w != nil {
		t.Errorf("Check of all scopes: %v, %v", w, err)
	}
	s.SetScopes("chat:write,commands,app_mentions:read")
	w, err := a.Check(t.Context())
	if all := strings.Join(w, "\n"); err != nil || len(w) != 3 || !strings.Contains(all, "files:write") || !strings.Contains(all, "install the app again") {
		t.Errorf("Check of few scopes: %q, %v", w, err)
	}
	s.Close()
	if _, err := a.Check(t.Context()); err == nil {
		t.Error("Check of a server that is gone has no error")
	}
}

// Run ends without an error when it is told to, whatever it is at.
func TestEndWhileUnreachable(t *testing.T) {
	s := workspace(t)
	s.Status("auth.test", 503, 99)
	a, err := slack.New(options(s, socketMode, &bottest.Log{}))
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(t.Context(), 100*time.Millisecond)
	defer cancel()
	if err := a.Run(ctx, bottest.Echo); err != nil {
		t.Errorf("Run: %v", err)
	}
}
