package discord

import (
	"time"
)

// SetOpenTimeout shortens the wait for a connection that does not open.
func (a *Adapter) SetOpenTimeout(d time.Duration) { a.openTimeout = d }
