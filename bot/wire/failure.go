package wire

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/url"
	"strings"

	"example.org/netpost/bot"
)

// NeverLeft reports whether a call that failed in the network never reached
// the platform: so it is certain that it did nothing.
func NeverLeft(err error) bool {
	if _, ok := errors.AsType[*net.DNSError](err); ok {
		return true
	}
	op, ok := errors.AsType[*net.OpError](err)
	return ok && op.Op == "dial"
}

// Network is the text of an error of the network without the address that was
// called, which may let its holder answer; false: it is no such error. text
// gives the text of the cause.
func Network(err error, text func(error) string) (string, bool) {
	if u, ok := errors.AsType[*url.Error](err); ok {
		host := "?"
		if x, perr := url.Parse(u.URL); perr == nil && x.Host != "" {
			host = x.Host
		}
		return fmt.Sprintf("%s %s: %s", strings.ToUpper(u.Op), host, text(u.Err)), true
	}
	if errors.Is(err, context.DeadlineExceeded) {
		return "no answer in time", true
	}
	return "", false
}

// A Failure is what became of a call, as bot.Adapter's Post tells it.
type Failure struct {
	Platform string
	What     string // was to be done
	Gone     bool   // the place is not there, or the bot may not write there
	NotSent  bool   // it is certain that nothing is out
	Cause    string // without secrets
	Mend     string // what to do; empty where nobody can do anything
}

// Err is the failure as an error.
func (f Failure) Err() error {
	mend := ""
	if f.Mend != "" {
		mend = ": " + f.Mend
	}
	switch {
	case f.Gone:
		return fmt.Errorf("%s: %s: %w: %w: %s%s", f.Platform, f.What, bot.ErrNotSent, bot.ErrGone, f.Cause, mend)
	case f.NotSent:
		return fmt.Errorf("%s: %s: %w: %s%s", f.Platform, f.What, bot.ErrNotSent, f.Cause, mend)
	}
	return fmt.Errorf("%s: %s may be out: %s", f.Platform, f.What, f.Cause)
}
