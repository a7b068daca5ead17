package bot

import (
	"slices"

	"example.org/netpost/casebook"
	"example.org/netpost/engine/code"
)

// Association is one association: what it plays under, its notes, and who may
// do what in its channels. Nothing of one is ever shown to another.
type Association struct {
	ID       string // of its rows in the store; never empty
	Name     string
	Code     code.Code      // what its crews work under; empty: all codes are shown
	Season   code.Season    // zero: the newest held
	Overlays []code.Overlay // its adoptions
	Notes    Searcher       // its case notes; nil: it has none
	// Channels are the ids of the channels that it may be asked in. Empty:
	// all. A direct message is always fine.
	Channels []string
	Grants   []Grant
	// Book reads the casebook as it stands, for what is published of it; nil:
	// it has none.
	Book func() (*casebook.Book, error)
	// Publish writes a note into the casebook's folder, never over another; nil:
	// there is no folder to write to.
	Publish func(*casebook.Note) error
	// BulletinTo is where bulletins are posted, and Bulletin when one is
	// posted by itself. Weeks begin and end in its zone.
	BulletinTo []Place
	Bulletin   Schedule
	// Mentors is the channel where questions wait for a mentor. The zero value:
	// nowhere; then they wait in the queue alone.
	Mentors Place
	// Private: an answer is for the asker alone where they did not say
	// otherwise, also where it was asked in front of all.
	Private bool
}

// Grant gives a role to whoever it matches.
type Grant struct {
	Role    Role
	To      string // the platform's id of a person or of a role or user group there; empty: everyone
	Channel string // only in that channel; empty: in all
}

// RoleOf is what somebody may do in a place.
func (a Association) RoleOf(w Who, p Place) Role {
	best := Anyone
	for _, g := range a.Grants {
		if (g.Channel == "" || g.Channel == p.Channel) &&
			(g.To == "" && g.Channel != "" || g.To != "" && (g.To == w.ID || slices.Contains(w.Roles, g.To))) {
			best = max(best, g.Role)
		}
	}
	return best
}

// open reports whether the association may be asked in a place. Mentors may be
// in theirs.
func (a Association) open(m Meta) bool {
	return m.Direct || len(a.Channels) == 0 || slices.Contains(a.Channels, m.Where.Channel) ||
		a.Mentors.Channel != "" && m.Where.Channel == a.Mentors.Channel && m.Where.Platform == a.Mentors.Platform
}
