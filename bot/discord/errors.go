package discord

import (
	"errors"
	"fmt"
	"maps"
	"net/http"
	"regexp"
	"slices"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// refusal is what Discord refused a call with.
type refusal struct {
	status  int
	code    int
	message string
	where   string // which parts of the payload, and why
}

func (r *refusal) Error() string {
	s := fmt.Sprintf("HTTP %d", r.status)
	if r.message != "" {
		s += " " + r.message
	}
	if r.code != 0 {
		s += fmt.Sprintf(" (%d)", r.code)
	}
	if r.where != "" {
		s += " at " + r.where
	}
	return s
}

// does says what a refusal means for what comes next.
type does uint8

const (
	_      does = iota
	gone        // the channel, thread, message or person is not there, or closed to the bot
	lapsed      // the interaction can't be answered any more
	fatal_      // trying again can't mend it: the token or application is not good
)

// code is a row of the table of what Discord refuses with.
type code struct {
	code  int
	does  does
	mends string // what to do; empty where nobody can do anything
}

const (
	newToken = "make a new one with “Reset Token” on the application's page “Bot”, and give that"
	permit   = "give the bot's role the permissions View Channel, Send Messages, Embed Links, Attach Files, Create Public Threads and Send Messages in Threads there"
	noDirect = "the person has to allow direct messages from members of the server"
)

// codes, sorted by code.
var codes = []code{
	{10003, gone, "the channel was deleted, or " + permit},
	{10004, gone, "the bot is not in that server any more: add it again"},
	{10008, gone, ""},
	{10013, gone, ""},
	{10015, lapsed, ""},
	{10062, lapsed, "it took longer than three seconds, or a second netpost runs with the same token: end one of them"},
	{40001, fatal_, "the token may not do that: " + newToken},
	{40060, lapsed, "a second netpost runs with the same token: end one of them"},
	{50001, gone, permit},
	{50005, gone, ""},
	{50007, gone, noDirect},
	{50008, gone, ""},
	{50013, gone, permit},
	{50014, fatal_, "the token is not good: " + newToken},
	{50024, gone, "no messages can be posted in that kind of channel"},
	{50027, lapsed, ""},
	{50083, gone, "the thread is archived: somebody has to open it again"},
	{160005, gone, "the thread is locked"},
	{160006, gone, "the server has as many open threads as it can"},
}

// row finds the row of what Discord refused with.
func row(err error) (*refusal, code) {
	r, ok := errors.AsType[*refusal](err)
	if !ok {
		return nil, code{}
	}
	if i, ok := slices.BinarySearchFunc(codes, r.code, func(c code, n int) int { return c.code - n }); ok {
		return r, codes[i]
	}
	if r.status == http.StatusUnauthorized {
		return r, code{0, fatal_, "the token is not one that Discord knows, or was reset: " + newToken}
	}
	return r, code{code: r.code}
}

// fatal reports whether trying again can't mend it.
func fatal(err error) bool {
	_, c := row(err)
	if c.does == fatal_ || errors.Is(err, errKey) {
		return true
	}
	_, ok := errors.AsType[closed](err)
	return ok
}

// isGone reports whether the place is not there, or the bot may not write
// there.
func isGone(err error) bool { _, c := row(err); return c.does == gone }

// isLapsed reports whether the interaction can't be answered any more.
func isLapsed(err error) bool { _, c := row(err); return c.does == lapsed || errors.Is(err, errLate) }

// isCode reports whether Discord refused with that code.
func isCode(err error, n int) bool { r, _ := row(err); return r != nil && r.code == n }

// notSent reports whether it is certain that a call did nothing: Discord
// refused it, or it never left.
func notSent(err error) bool {
	if errors.Is(err, errHeld) || errors.Is(err, errLate) || errors.Is(err, bot.ErrNotSent) {
		return true
	}
	if r, _ := row(err); r != nil {
		return r.status >= 400 && r.status < 500
	}
	return wire.NeverLeft(err)
}

var (
	// errHeld: the time for an event was over while a call waited for Discord's
	// rate.
	errHeld = errors.New("no time was left by Discord's rate")
	// errLate: the request that an answer belongs to is over.
	errLate = errors.New("the three seconds for an answer were over")
)

// failure is an error of a call as bot.Adapter's Post gives it.
func failure(what string, err error) error {
	if err == nil {
		return nil
	}
	_, c := row(err)
	return wire.Failure{Platform: Platform, What: what, Gone: isGone(err), NotSent: notSent(err), Cause: scrub(err), Mend: c.mends}.Err()
}

// startError says why there is no use in trying again.
func startError(err error) error {
	if c, ok := errors.AsType[closed](err); ok {
		return fmt.Errorf("discord: Discord closed the connection with %d: %s", int(c), closes[c])
	}
	if errors.Is(err, errKey) {
		return fmt.Errorf("discord: %w", errKey)
	}
	if _, c := row(err); c.mends != "" {
		return fmt.Errorf("discord: Discord refuses with %s: %s", scrub(err), c.mends)
	}
	return fmt.Errorf("discord: it can't be checked: %s", scrub(err))
}

// closed is a code that the gateway closed with and that trying again can't
// mend.
type closed int

func (c closed) Error() string { return fmt.Sprintf("the gateway closed with %d", int(c)) }

// closes are those codes, with what to do.
var closes = map[closed]string{
	4004: "the token is not one that Discord knows, or was reset: " + newToken,
	4010: "Discord does not take the shard that netpost asked for: use another version of netpost",
	4011: "the bot is in too many servers for one connection: use one application for fewer",
	4012: "Discord does not speak this version of the gateway any more: use a newer version of netpost",
	4013: "Discord does not take the intents that netpost asked for: use a newer version of netpost",
	4014: "Discord does not allow an intent that netpost asked for: use a newer version of netpost",
}

// closeCode is in the text of the library's websocket errors. Their type is
// another module's.
var closeCode = regexp.MustCompile(`websocket: close (\d{4})`)

// scrub is the text of an error without what must not be in a log: addresses
// that let their holder answer, and the token.
func scrub(err error) string {
	if err == nil {
		return ""
	}
	if text, ok := wire.Network(err, scrub); ok {
		return text
	}
	return secret.ReplaceAllString(err.Error(), "[…]")
}

// secret is a token, or an address that works without one.
var secret = regexp.MustCompile(`(?:wss?|https?)://\S+|[\w-]{20,}\.[\w-]{5,}\.[\w-]{20,}|(?:interactions|webhooks)/\S+`)

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
