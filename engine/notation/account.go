package notation

import "example.org/netpost/engine/play"

// account takes back what was taken up and has no part in the play: a word
// that names a row, a role or the libero counts as read only when the play
// that was built holds it. It is the last guard against words that are
// swallowed.
func (s *scene) account() {
	rows := map[play.Value]bool{}
	roles := map[play.Role]bool{}
	libero, doubted := false, false
	acts := map[int]bool{}
	for _, e := range s.evs {
		acts[e.who] = true
	}
	for i, p := range s.people {
		if !acts[i] {
			continue
		}
		rows[p.row] = true
		roles[p.Role] = true
		libero = libero || p.Role == play.Libero || p.libero == play.Yes
		doubted = doubted || p.void
	}
	for i := range s.atoms {
		a := &s.atoms[i]
		if !a.used {
			continue
		}
		switch a.class {
		case cRow:
			if !rows[a.value] && !doubted && !rows[opposite(a.value)] {
				a.used = false
			}
		case cRole:
			if !roles[a.role] {
				a.used = false
			}
		case cLibero:
			if !libero {
				a.used = false
			}
		}
	}
}

// opposite is the other row: "not front row" tells it.
func opposite(row play.Value) play.Value {
	if row == play.Front {
		return play.Back
	}
	return play.Front
}
