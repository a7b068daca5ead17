// Package slack brings the conversation to Slack: it decodes what Slack
// delivers, renders replies as Slack's blocks, and keeps Slack's deadlines,
// limits and rates. It works over Socket Mode, which needs no public address,
// or over signed HTTP requests.
//
//	a, err := slack.New(slack.Options{BotToken: bot, AppToken: app, Log: log})
//	if err != nil {
//		return err
//	}
//	return a.Run(ctx, handler)
//
// Manifest prints what the app is set up from.
package slack

import (
	"context"
	"errors"
	"log/slog"
	"net"
	"net/http"
	"slices"
	"strings"
	"sync/atomic"
	"time"

	slackapi "github.com/slack-go/slack"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// Platform is the platform's name in places and persons.
const Platform = "slack"

// Options say how to reach Slack. Tokens are values: whoever makes the adapter
// reads them from the environment or a file. None is ever logged.
type Options struct {
	BotToken string // xoxb-…: what the bot may do in the workspace

	// AppToken, xapp-…, chooses Socket Mode: the adapter dials out.
	AppToken string

	// SigningSecret chooses HTTP mode, where AppToken is empty: Slack posts to
	// Listen at Path, behind a proxy that speaks TLS.
	SigningSecret string
	Listen        string       // such as 127.0.0.1:8080
	Path          string       // empty: DefaultPath
	Listener      net.Listener // in place of Listen, where there is one already

	// Groups are the user groups that roles are given to, by handle (with or
	// without @) or by id: a person's Roles are those of them that they are in,
	// written as here. Empty: nobody's groups are asked for.
	Groups []string

	APIURL string       // empty: Slack's own; it ends in a slash
	Log    *slog.Logger // nil: nothing is logged. It gets ids and errors, never what people wrote
}

// DefaultPath is where Slack posts to in HTTP mode.
const DefaultPath = "/slack"

// The adapter's own time limits. Slack gives three seconds to acknowledge;
// bot.DeferAfter is half of that.
const (
	callTimeout = 10 * time.Second // one call to Slack
	carryOut    = 2 * time.Minute  // one event, with all waits for Slack's rates
	flush       = 100 * time.Millisecond
)

// Slack delivers an event again at once, after one minute and after five, and a
// signed request can be replayed for five minutes.
const (
	seenFor  = 10 * time.Minute
	mostSeen = 1 << 17

	shownFor  = time.Hour
	mostShown = 1 << 12
)

// Adapter is Slack as a bot.Adapter.
type Adapter struct {
	o      Options
	api    *slackapi.Client
	log    *slog.Logger
	self   atomic.Pointer[self] // nil until Slack told
	seen   *wire.Seen
	lanes  *wire.Lanes
	gates  *wire.Gates
	shown  *wire.Seen // pictures that are under a message already
	work   wire.Work
	groups userGroups
	files  files      // images under messages
	rooms  wire.Rooms // direct messages opened
}

var _ bot.Adapter = (*Adapter)(nil)

// self is who the bot is in the workspace.
type self struct{ team, user string }

// New makes an adapter. It calls nobody; an error says which option is wrong
// and how to mend it.
func New(o Options) (*Adapter, error) {
	if err := o.check(); err != nil {
		return nil, err
	}
	if o.Log == nil {
		o.Log = slog.New(slog.DiscardHandler)
	}
	if o.Path == "" {
		o.Path = DefaultPath
	}
	// The library's own client has no timeout at all.
	opts := []slackapi.Option{slackapi.OptionHTTPClient(&http.Client{Timeout: callTimeout})}
	if o.APIURL != "" {
		opts = append(opts, slackapi.OptionAPIURL(o.APIURL))
	}
	if o.AppToken != "" {
		opts = append(opts, slackapi.OptionAppLevelToken(o.AppToken))
	}
	// OptionDebug stays off: it would also ask Slack to drop the connection
	// every six minutes. OptionRetry stays off: it leaves uploads out and knows
	// nothing of what else waits for the same rate; see gates.
	a := &Adapter{o: o, api: slackapi.New(o.BotToken, opts...), log: o.Log,
		seen: wire.NewSeen(seenFor, mostSeen), shown: wire.NewSeen(shownFor, mostShown), lanes: wire.NewLanes(), gates: wire.NewGates()}
	for _, g := range o.Groups {
		if !slices.Contains(a.groups.wanted, g) {
			a.groups.wanted = append(a.groups.wanted, g)
		}
	}
	return a, nil
}

func (o Options) check() error {
	switch {
	case o.BotToken == "":
		return errors.New("slack: no bot token: copy the “Bot User OAuth Token” from the app's page “OAuth & Permissions”")
	case !strings.HasPrefix(o.BotToken, "xoxb-"):
		return errors.New("slack: the bot token does not begin with xoxb-: copy the “Bot User OAuth Token” from the app's page “OAuth & Permissions”")
	case o.AppToken != "" && !strings.HasPrefix(o.AppToken, "xapp-"):
		return errors.New("slack: the app token does not begin with xapp-: make one with the scope connections:write on the app's page “Basic Information”, under “App-Level Tokens”")
	case o.AppToken == "" && o.SigningSecret == "":
		return errors.New("slack: neither an app token nor a signing secret: give the app token for Socket Mode, or the signing secret and an address to listen on for HTTP")
	case o.AppToken == "" && o.Listen == "" && o.Listener == nil:
		return errors.New("slack: a signing secret but no address to listen on: give one such as 127.0.0.1:8080, with a proxy before it that speaks TLS")
	case o.APIURL != "" && !strings.HasSuffix(o.APIURL, "/"):
		return errors.New("slack: the address of the Web API does not end in a slash")
	}
	return nil
}

// Run delivers events to the handler until ctx ends.
func (a *Adapter) Run(ctx context.Context, h bot.Handler) error {
	if err := a.meet(ctx); err != nil {
		return err
	}
	if ctx.Err() != nil {
		return nil
	}
	a.refresh(ctx) // so that the first event need not wait
	if a.o.AppToken != "" {
		return a.runSocket(ctx, h)
	}
	return a.runHTTP(ctx, h)
}

// meet finds out who the bot is, and tries until Slack says.
func (a *Adapter) meet(ctx context.Context) error {
	for wait := time.Second; ; wait = min(2*wait, time.Minute) {
		warnings, err := a.identify(ctx)
		for _, w := range warnings {
			a.log.Warn("slack: " + w)
		}
		if err == nil || ctx.Err() != nil {
			return nil
		}
		if fatal(err) {
			return startError("bot token", err)
		}
		a.log.Warn("slack: can't be reached, trying again", "in", wait, "cause", scrub(err))
		if !wire.Sleep(ctx, wait) {
			return nil
		}
	}
}

// Check asks Slack whether the tokens and scopes are good, for a person who
// sets the app up. The warnings say what won't work and how to mend it; the
// error is what keeps Run from starting.
func (a *Adapter) Check(ctx context.Context) (warnings []string, err error) {
	warnings, err = a.identify(ctx)
	if err != nil {
		return warnings, startError("bot token", err)
	}
	if len(a.groups.wanted) > 0 && !strings.Contains(strings.Join(warnings, "\n"), scopeGroups) {
		_, found, err := a.members(ctx)
		if err != nil {
			found = []string{groupTrouble(err)}
		}
		warnings = append(warnings, found...)
	}
	if a.o.AppToken != "" {
		if _, _, err := a.api.StartSocketModeContext(ctx); err != nil {
			return warnings, startError("app token", err)
		}
	}
	return warnings, nil
}

// identify asks Slack who the bot is and which scopes it has.
func (a *Adapter) identify(ctx context.Context) (warnings []string, err error) {
	r, err := a.api.AuthTestContext(ctx)
	if err != nil {
		return nil, err
	}
	a.self.Store(&self{team: r.TeamID, user: r.UserID})
	has := r.Header.Get("X-OAuth-Scopes")
	if has == "" {
		return nil, nil // not every way to Slack passes it on
	}
	for _, s := range scopes {
		switch {
		case hasScope(has, s.name), s.name == scopeGroups && len(a.groups.wanted) == 0:
		case s.must:
			return nil, slackapi.SlackErrorResponse{Err: "missing_scope", Needed: s.name, Provided: has}
		default:
			warnings = append(warnings, "the bot token lacks the scope "+s.name+": without it, "+s.without+
				"; add it on the app's page “OAuth & Permissions” and install the app again")
		}
	}
	return warnings, nil
}

func hasScope(list, name string) bool {
	for s := range strings.SplitSeq(list, ",") {
		if strings.TrimSpace(s) == name {
			return true
		}
	}
	return false
}
