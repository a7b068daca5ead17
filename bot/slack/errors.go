package slack

import (
	"errors"
	"fmt"
	"net/http"
	"regexp"
	"slices"
	"strings"
	"time"

	slackapi "github.com/slack-go/slack"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// refusal is a row of the table of what Slack refuses with.
type refusal struct {
	code  string
	does  does
	mends string // what to do; empty where nobody can do anything
}

// does says what a refusal means for what comes next.
type does uint8

const (
	_        does = iota
	hopeless      // trying again can't mend it: the token or app is not good
	gone          // the channel, thread, message or person is not there
	doubt         // Slack does not know itself whether it was done
)

const (
	newBot   = "install the app again on its page “OAuth & Permissions” and give the new bot token"
	newApp   = "make an app token with the scope connections:write on the app's page “Basic Information”, and give that"
	invite   = "invite the bot there: /invite @" + bot.CommandName
	newScope = "add the scope on the app's page “OAuth & Permissions” and install the app again"
)

// refusals, sorted by code.
var refusals = []refusal{
	{"access_denied", hopeless, "ask an administrator of the workspace to allow the app"},
	{"account_inactive", hopeless, "the app was taken away or its workspace is gone: " + newBot},
	{"cannot_dm_bot", gone, ""},
	{"cant_update_message", gone, ""},
	{"channel_not_found", gone, invite},
	{"ekm_access_denied", hopeless, "ask an administrator of the workspace to allow the app"},
	{"fatal_error", doubt, ""},
	{"internal_error", doubt, ""},
	{"invalid_auth", hopeless, "the token is not one that Slack knows: " + newBot},
	{"is_archived", gone, ""},
	{"message_not_found", gone, ""},
	{"messages_tab_disabled", gone, "switch on the Messages tab on the app's page “App Home”"},
	{"missing_scope", hopeless, newScope},
	{"not_allowed_token_type", hopeless, "the bot token begins with xoxb-, the app token with xapp-: give each in its own place"},
	{"not_authed", hopeless, "no token came with the call: " + newBot},
	{"not_in_channel", gone, invite},
	{"org_login_required", hopeless, "the workspace is being moved: " + newBot},
	{"restricted_action", gone, "a setting of the workspace forbids it: ask an administrator"},
	{"restricted_action_non_threadable_channel", gone, "no threads can be begun there"},
	{"restricted_action_read_only_channel", gone, "the channel can be read only: ask an administrator"},
	{"restricted_action_thread_locked", gone, "the thread is locked"},
	{"restricted_action_thread_only_channel", gone, "only threads can be written in there"},
	{"service_unavailable", doubt, ""},
	{"team_access_not_granted", hopeless, "ask an administrator of the workspace to allow the app"},
	{"thread_not_found", gone, ""},
	{"token_expired", hopeless, "the token has run out: " + newBot + "; token rotation is to stay off"},
	{"token_revoked", hopeless, "the token was revoked: " + newBot},
	{"user_disabled", gone, ""},
	{"user_not_found", gone, ""},
	{"user_not_in_channel", gone, ""},
	{"user_not_visible", gone, ""},
	{"users_not_found", gone, ""},
}

// refused finds the row of what Slack refused with.
func refused(err error) (refusal, bool) {
	e, ok := errors.AsType[slackapi.SlackErrorResponse](err)
	if !ok {
		return refusal{}, false
	}
	for _, r := range refusals {
		if r.code == e.Err {
			return r, true
		}
	}
	return refusal{code: e.Err}, true
}

// fatal reports whether trying again can't mend it.
func fatal(err error) bool {
	r, ok := refused(err)
	return ok && r.does == hopeless
}

// isGone reports whether the place is not there, or the bot may not write
// there.
func isGone(err error) bool {
	r, ok := refused(err)
	return ok && r.does == gone
}

// notSent reports whether it is certain that a call did nothing: Slack refused
// it, or it never left.
func notSent(err error) bool {
	if errors.Is(err, errHeld) || errors.Is(err, bot.ErrNotSent) {
		return true
	}
	if r, ok := refused(err); ok {
		return r.does != doubt
	}
	if _, ok := errors.AsType[*slackapi.RateLimitedError](err); ok {
		return true
	}
	if e, ok := errors.AsType[slackapi.StatusCodeError](err); ok {
		return e.Code >= 400 && e.Code < 500
	}
	return wire.NeverLeft(err)
}

// errHeld: the time for an event was over while a call waited for Slack's rate.
var errHeld = errors.New("slack's rate left no time for it")

// failure is an error of a call as bot.Adapter's Post gives it.
func failure(what string, err error) error {
	if err == nil {
		return nil
	}
	r, _ := refused(err)
	return wire.Failure{Platform: Platform, What: what, Gone: isGone(err), NotSent: notSent(err), Cause: scrub(err), Mend: r.mends}.Err()
}

// startError says why there is no use in trying again.
func startError(token string, err error) error {
	if !fatal(err) {
		return fmt.Errorf("slack: the %s can't be checked: %s", token, scrub(err))
	}
	r, _ := refused(err)
	mend := r.mends
	if token == "app token" {
		switch r.code {
		case "invalid_auth", "not_authed", "account_inactive", "token_revoked", "token_expired", "missing_scope":
			mend = newApp
		}
	}
	code := r.code
	if e, ok := errors.AsType[slackapi.SlackErrorResponse](err); ok && e.Needed != "" {
		code += " (" + e.Needed + ")"
	}
	return fmt.Errorf("slack: Slack refuses the %s with %s: %s", token, code, mend)
}

// scrub is the text of an error without what must not be in a log: addresses
// that let their holder post, or connect.
func scrub(err error) string {
	if err == nil {
		return ""
	}
	if text, ok := wire.Network(err, scrub); ok {
		return text
	}
	if e, ok := errors.AsType[slackapi.SlackErrorResponse](err); ok {
		s := e.Err
		if e.Needed != "" {
			s += ", needed: " + e.Needed
		}
		if len(e.ResponseMetadata.Messages) > 0 {
			s += " " + strings.Join(e.ResponseMetadata.Messages, "; ")
		}
		return s
	}
	return secret.ReplaceAllString(err.Error(), "[…]")
}

// rateHold is how long a call waits after err; zero: it was not refused for
// its rate.
func rateHold(err error) time.Duration {
	const unsaid = 5 * time.Second // where Slack names no time
	if e, ok := errors.AsType[*slackapi.RateLimitedError](err); ok {
		return max(e.RetryAfter, 200*time.Millisecond)
	}
	if e, ok := errors.AsType[slackapi.StatusCodeError](err); ok && e.Code == http.StatusTooManyRequests {
		return unsaid
	}
	if r, ok := refused(err); ok && slices.Contains([]string{"ratelimited", "rate_limited"}, r.code) {
		return unsaid
	}
	return 0
}

// secret is a token, or an address that works without one.
var secret = regexp.MustCompile(`xox[a-z]-\S+|xapp-\S+|(?:wss?|https?)://\S+`)
