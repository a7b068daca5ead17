// Package discord brings the conversation to Discord: it decodes interactions,
// renders replies as Discord's embeds and components, and keeps Discord's
// deadlines, limits and rates. It works over the gateway, which needs no public
// address, or over signed HTTP requests. It asks for no intent: it hears its
// commands, buttons and forms, and nothing else that is said.
//
//	a, err := discord.New(discord.Options{Token: token, Log: log})
//	if err != nil {
//		return err
//	}
//	return a.Run(ctx, handler)
//
// Manifest prints the commands that it registers, Invite the address that adds
// it to a server.
package discord

import (
	"cmp"
	"context"
	"crypto/ed25519"
	"encoding/hex"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"strings"
	"sync/atomic"
	"time"

	"github.com/bwmarrin/discordgo"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// Platform is the platform's name in places and persons.
const Platform = "discord"

// Options say how to reach Discord. Tokens are values: whoever makes the
// adapter reads them from the environment or a file. None is ever logged.
type Options struct {
	Token string // of the bot, without the word Bot before it

	// PublicKey, in hex, chooses HTTP mode: Discord posts to Listen at Path,
	// behind a proxy that speaks TLS. Empty: the gateway, the adapter dials out.
	PublicKey string
	Listen    string       // such as 127.0.0.1:8080
	Path      string       // empty: DefaultPath
	Listener  net.Listener // in place of Listen, where there is one already

	// KeepCommands leaves the registered commands as they are when Run starts.
	KeepCommands bool

	APIURL string       // empty: Discord's own; it ends in a slash
	Log    *slog.Logger // nil: nothing is logged. It gets ids and errors, never what people wrote
}

// DefaultPath is where Discord posts to in HTTP mode.
const DefaultPath = "/discord"

// The adapter's own time limits. Discord gives three seconds to acknowledge,
// and bot.DeferAfter is half of that; after that, a quarter of an hour.
const (
	callTimeout = 20 * time.Second // one call to Discord, an upload included
	carryOut    = 2 * time.Minute  // one event, with all waits for Discord's rates
	// rescueAfter is how long something that can't be deferred is waited for.
	rescueAfter = 2500 * time.Millisecond
	openTimeout = 30 * time.Second // a connection to the gateway, until it stands
)

// A connection that is taken up again repeats what it sent last, and a signed
// request can be replayed for as long as its time is good.
const (
	seenFor  = 10 * time.Minute
	mostSeen = 1 << 17
)

// Adapter is Discord as a bot.Adapter.
type Adapter struct {
	o      Options
	key    ed25519.PublicKey // HTTP mode
	api    *discordgo.Session
	client *http.Client
	base   string // of the REST API
	log    *slog.Logger
	self   atomic.Pointer[self] // nil until Discord told
	seen   *wire.Seen
	lanes  *wire.Lanes
	gates  *wire.Gates
	work   wire.Work
	rooms  wire.Rooms // direct messages opened

	openTimeout time.Duration // openTimeout, but in tests
}

var _ bot.Adapter = (*Adapter)(nil)

// self is who the bot is.
type self struct{ app, user string }

// New makes an adapter. It calls nobody; an error says which option is wrong
// and how to mend it.
func New(o Options) (*Adapter, error) {
	a := &Adapter{o: o, log: o.Log, base: o.APIURL, seen: wire.NewSeen(seenFor, mostSeen), lanes: wire.NewLanes(), gates: wire.NewGates(), openTimeout: openTimeout}
	a.o.Token = strings.TrimPrefix(strings.TrimSpace(o.Token), "Bot ")
	if err := a.check(); err != nil {
		return nil, err
	}
	if a.log == nil {
		a.log = slog.New(slog.DiscardHandler)
	}
	if a.o.Path == "" {
		a.o.Path = DefaultPath
	}
	if a.base == "" {
		a.base = discordgo.EndpointAPI
	}
	// The usual two connections that are kept to a host are too few: every other
	// answer would begin a new one.
	next := http.DefaultTransport.(*http.Transport).Clone()
	next.MaxIdleConnsPerHost = 64
	a.client = &http.Client{Timeout: callTimeout, Transport: &transport{base: a.base, next: next}}
	var err error
	a.api, err = a.session()
	return a, err
}

func (a *Adapter) check() error {
	o := a.o
	switch {
	case o.Token == "":
		return errors.New("discord: no token: copy it from the application's page “Bot”, with “Reset Token”")
	case strings.ContainsFunc(o.Token, func(r rune) bool { return r <= ' ' || r > '~' }):
		return errors.New("discord: the token has characters in it that no token has: copy it again from the application's page “Bot”")
	case o.PublicKey == "" && (o.Listen != "" || o.Listener != nil):
		return errors.New("discord: an address to listen on but no public key: copy the public key from the application's page “General Information”, or give no address to use the gateway")
	case o.PublicKey != "" && o.Listen == "" && o.Listener == nil:
		return errors.New("discord: a public key but no address to listen on: give one such as 127.0.0.1:8080, with a proxy before it that speaks TLS")
	case o.APIURL != "" && !strings.HasSuffix(o.APIURL, "/"):
		return errors.New("discord: the address of the REST API does not end in a slash")
	}
	if o.PublicKey != "" {
		key, err := hex.DecodeString(strings.TrimSpace(o.PublicKey))
		if err != nil || len(key) != ed25519.PublicKeySize {
			return fmt.Errorf("discord: the public key is not %d digits of hex: copy it from the application's page “General Information”", 2*ed25519.PublicKeySize)
		}
		a.key = key
	}
	return nil
}

// session makes the library's client, with its habits switched off that would
// hurt: see call and connect for what is done in their place.
func (a *Adapter) session() (*discordgo.Session, error) {
	s, err := discordgo.New("Bot " + a.o.Token)
	if err != nil {
		return nil, fmt.Errorf("discord: %w", err)
	}
	s.Client = a.client
	s.Identify.Intents = discordgo.IntentsNone // the library's own is all that is not privileged
	s.StateEnabled = false
	s.LogLevel = -1 // it prints payloads, and addresses with tokens in them
	s.SyncEvents = true
	s.ShouldReconnectOnError = false // it would try for ever with a token that was revoked
	s.ShouldReconnectVoiceOnSessionError = false
	s.ShouldRetryOnRateLimit = false
	s.MaxRestRetries = 0
	return s, nil
}

// Run delivers events to the handler until ctx ends.
func (a *Adapter) Run(ctx context.Context, h bot.Handler) error {
	defer a.client.CloseIdleConnections()
	if err := a.meet(ctx); err != nil {
		return err
	}
	if ctx.Err() != nil {
		return nil
	}
	if a.key != nil {
		return a.runHTTP(ctx, h)
	}
	return a.runGateway(ctx, h)
}

// meet finds out who the bot is and registers its commands, and tries until
// Discord says.
func (a *Adapter) meet(ctx context.Context) error {
	for wait := time.Second; ; wait = min(2*wait, time.Minute) {
		warnings, err := a.identify(ctx)
		for _, w := range warnings {
			a.log.Warn("discord: " + w)
		}
		if err == nil && !a.o.KeepCommands {
			if err = a.register(ctx); err != nil && !fatal(err) {
				// Those of the last start are there, most likely.
				a.log.Error("discord: the commands could not be registered; they are at the next start", "cause", scrub(err))
				err = nil
			}
		}
		if err == nil || ctx.Err() != nil {
			return nil
		}
		if fatal(err) {
			return startError(err)
		}
		a.log.Warn("discord: can't be reached, trying again", "in", wait, "cause", scrub(err))
		if !wire.Sleep(ctx, wait) {
			return nil
		}
	}
}

// Check asks Discord whether the token and settings are good, for a person who
// sets the application up. The warnings say what won't work and how to mend
// it; the error is what keeps Run from starting.
func (a *Adapter) Check(ctx context.Context) (warnings []string, err error) {
	warnings, err = a.identify(ctx)
	if err != nil {
		return warnings, startError(err)
	}
	var guilds []struct {
		ID string `json:"id"`
	}
	if err := a.call(ctx, request{method: http.MethodGet, path: "users/@me/guilds?limit=1", key: "guilds"}, &guilds); err != nil {
		return warnings, startError(err)
	}
	if len(guilds) == 0 {
		warnings = append(warnings, "the bot is in no server: open "+Invite(a.self.Load().app)+" and choose one")
	}
	same, err := a.registered(ctx)
	if err != nil {
		return warnings, startError(err)
	}
	if !same {
		warnings = append(warnings, "the commands that Discord knows are not ours: they are registered when serving starts")
	}
	return warnings, nil
}

// errKey: the public key is another application's.
var errKey = errors.New("the public key is not that of the token's application: copy both from the same application's pages “Bot” and “General Information”")

// identify asks Discord who the bot is and how the application is set up.
func (a *Adapter) identify(ctx context.Context) (warnings []string, err error) {
	var app struct {
		ID       string `json:"id"`
		Key      string `json:"verify_key"`
		Endpoint string `json:"interactions_endpoint_url"`
		Bot      struct {
			ID string `json:"id"`
		} `json:"bot"`
	}
	if err := a.call(ctx, request{method: http.MethodGet, path: "applications/@me", key: "me"}, &app); err != nil {
		return nil, err
	}
	if app.ID == "" {
		return nil, errors.New("no id in the answer to applications/@me")
	}
	a.self.Store(&self{app: app.ID, user: cmp.Or(app.Bot.ID, app.ID)})
	switch {
	case a.key != nil && app.Key != "" && !strings.EqualFold(app.Key, hex.EncodeToString(a.key)):
		return nil, errKey
	case a.key != nil && app.Endpoint == "":
		warnings = append(warnings, "no address is set as “Interactions Endpoint URL” on the application's page “General Information”: until the public address of this machine stands there, nothing comes in")
	case a.key == nil && app.Endpoint != "":
		warnings = append(warnings, "an “Interactions Endpoint URL” is set on the application's page “General Information”: as long as it stands there, nothing comes in over the gateway; clear it, or give the public key and an address to listen on")
	}
	return warnings, nil
}
