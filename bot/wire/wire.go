// Package wire is what the adapters of chat platforms share: the order of
// events, the window in which a repeated delivery is known again, the platform's
// rates, the work in hand, a listener that ends well, and words that mean
// nothing to any markup. It knows no platform: each adapter tells what is its
// platform's own.
package wire

import (
	"context"
	"regexp"
	"strings"
	"time"
)

// WindDown is how long what was begun is waited for once an adapter ends.
const WindDown = 15 * time.Second

// Sleep waits; false: the context ended first.
func Sleep(ctx context.Context, d time.Duration) bool {
	t := time.NewTimer(d)
	defer t.Stop()
	select {
	case <-t.C:
		return true
	case <-ctx.Done():
		return false
	}
}

// hexArgs are the arguments of a function in a stack: addresses, mostly.
var hexArgs = regexp.MustCompile(`\(0x[0-9a-f, x?{}.]*\)`)

// FirstFrames is as much of a stack as a log line holds.
func FirstFrames(stack []byte) string {
	lines := strings.SplitN(hexArgs.ReplaceAllString(string(stack), "(…)"), "\n", 30)
	return strings.Join(lines[:min(len(lines), 29)], "\n")
}
