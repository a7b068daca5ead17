package notation

import (
	"slices"
	"strings"
)

// follow finds the changes of players that the items tell, in their order.
func (r *liberoReader) follow() {
	for k := range r.items {
		verb, ok := strings.CutPrefix(r.items[k].says, "mv:")
		if !ok {
			continue
		}
		subj := r.before(k)
		obj, how := r.after(k)
		if verb == "sub" && obj.ok() && how == "" { // sub 9 in for 4
			subj = obj
			obj, how = r.second(k)
		}
		if subj.kind == "coach" {
			subj = liberoWho{}
		}
		m, ok := change(verb, subj, obj, how, len(r.moves) == 0 || r.copula(k))
		if !ok {
			continue
		}
		m = r.resolve(m)
		if at := r.items[k].from; at > 0 && r.toks[at-1].form == "had" && m.in.kind == "libero" && len(r.moves) > 0 {
			m.state = true // what had been before
		}
		m.at, m.asked = k, r.wanted(k)
		m.instead = how == "instead" || r.insteadAfter(k)
		r.moves = append(r.moves, m)
	}
	r.complete()
}

// complete fills in what the moves before show: the player whom the libero is
// on for comes on for the libero, and one who swaps with that player goes off.
// It drops the first half of an exchange that is told in two, and finds the
// last replacement.
func (r *liberoReader) complete() {
	var out []liberoMove
	on, regular := liberoWho{}, liberoWho{}
	for _, m := range r.moves {
		mine := regular.label != "" && on.ok()
		switch {
		case mine && m.in.kind == "libero" && m.out.label == regular.label && !m.state && (m.in.label == "" || m.in.label == on.label):
			m.in, m.out = m.out, m.in // they change places
		case mine && m.in.label == regular.label && !m.out.ok():
			m.out = on
		}
		if n := len(out); n > 0 && !m.state && !out[n-1].state && out[n-1].out.kind == "libero" && !out[n-1].in.ok() && m.in.kind == "player" && (m.out.kind == "libero" || !m.out.ok()) {
			m.out = out[n-1].out
			out = out[:n-1]
		}
		if n := len(out); n > 0 && !m.state && m.in.kind == "libero" && !m.out.ok() && out[n-1].out.kind == "player" && !out[n-1].in.ok() && !on.ok() {
			m.out = out[n-1].out // 8 goes off, and the libero comes on
			out = out[:n-1]
		}
		if n := len(out); n > 0 && !m.state && out[n-1].in.kind == "libero" && !out[n-1].out.ok() && m.out.kind == "player" && !m.in.ok() {
			out[n-1].out = m.out // the libero comes on, and 7 goes off
			continue
		}
		switch {
		case m.in.kind == "libero":
			on, regular = m.in, m.out
		case m.out.kind == "libero":
			on, regular = liberoWho{}, liberoWho{}
		}
		out = append(out, m)
	}
	if n := len(out); n > 0 && !slices.ContainsFunc(out, func(m liberoMove) bool { return m.replaces() || m.sub }) && (out[n-1].in.kind == "libero" || out[n-1].out.kind == "libero") {
		out[n-1].state = false // "libero in for 5" is the change itself
	}
	r.moves = out
	for _, m := range r.moves {
		if m.replaces() {
			r.last = m.at
		}
	}
}

// replaces reports whether a move is a libero replacement.
func (m liberoMove) replaces() bool {
	return !m.state && (m.in.kind == "libero" || m.out.kind == "libero")
}

// before is who acts in a move: the one named last before it and not taken by
// another move.
func (r *liberoReader) before(k int) liberoWho {
	at := r.items[k].from
	relative := at > 0 && r.toks[at-1].form == "who" // the libero who was in for 5
	for j := k - 1; j >= 0; j-- {
		if it := r.items[j]; it.who.ok() && (!it.own || relative) {
			return it.who
		}
	}
	return liberoWho{}
}

// copula reports whether a verb of being stands before a move: the libero had
// been in for 5.
func (r *liberoReader) copula(k int) bool {
	at := r.items[k].from
	return at > 0 && slices.Contains([]string{"already", "be", "been", "currently", "is", "still", "was"}, r.toks[at-1].form)
}

// after is whom a move is about beside the one who acts, and the word that
// links them.
func (r *liberoReader) after(k int) (liberoWho, string) {
	how := ""
	for j := k + 1; j < len(r.items) && r.items[j].clause == r.items[k].clause; j++ {
		it := &r.items[j]
		switch {
		case strings.HasPrefix(it.says, "mv:"):
			return liberoWho{}, ""
		case it.says == "for", it.says == "by", it.says == "with", it.says == "instead":
			how = it.says
		case it.who.ok():
			it.own = true
			return it.who, how
		}
	}
	return liberoWho{}, ""
}

// second is who goes out where a substitution names both after its verb: "sub 9
// for 4".
func (r *liberoReader) second(k int) (liberoWho, string) {
	for j := k + 2; j < len(r.items) && r.items[j].clause == r.items[k].clause; j++ {
		switch it := &r.items[j]; {
		case it.says == "mv:in-for", it.says == "mv:in", it.says == "for":
		case it.who.ok():
			it.own = true
			return it.who, "for"
		default:
			return liberoWho{}, ""
		}
	}
	return liberoWho{}, ""
}

// insteadAfter reports whether a clause says that somebody comes in the place
// of the right one.
func (r *liberoReader) insteadAfter(k int) bool {
	for j := k + 1; j < len(r.items) && r.items[j].clause <= r.items[k].clause+1 && !strings.HasPrefix(r.items[j].says, "mv:"); j++ {
		if r.items[j].says == "instead" {
			for i := j + 1; i < len(r.items) && i <= j+1; i++ {
				r.items[i].own = r.items[i].own || r.items[i].who.ok()
			}
			return true
		}
	}
	for j, it := range r.items {
		if it.clause == r.items[k].clause && (it.says == "instead-bare" || it.says == "instead" && j < k) {
			return true
		}
	}
	return false
}

// wanted reports whether a move is only asked for.
func (r *liberoReader) wanted(k int) bool {
	for j := k - 1; j >= 0 && r.items[j].clause == r.items[k].clause; j-- {
		if r.items[j].says == "want" || r.items[j].says == "may" {
			return true
		}
		if strings.HasPrefix(r.items[j].says, "mv:") {
			break
		}
	}
	return k+1 < len(r.items) && r.items[k+1].says == "want" && r.items[k+1].clause == r.items[k].clause
}

// change is the move that a verb makes of who acts and who is named after it.
func change(verb string, subj, obj liberoWho, how string, first bool) (liberoMove, bool) {
	m := liberoMove{}
	switch verb {
	case "in", "sub":
		m.in, m.out = subj, obj
		m.sub = verb == "sub"
		if how == "by" {
			m.in, m.out = obj, subj
		}
	case "on":
		m.in, m.out, m.state = subj, obj, true
	case "in-for": // a state where the libero is named so first
		m.in, m.out, m.state = subj, obj, subj.kind == "libero" && first
	case "out":
		m.out, m.in = subj, obj
		m.sub = false
	case "subout":
		m.out, m.in, m.sub = subj, obj, true
	case "rep":
		m.in, m.out = subj, obj
		if how == "by" || !obj.ok() {
			m.in, m.out = obj, subj
		}
	case "swap":
		m.in, m.out = subj, obj
	default:
		return m, false
	}
	if how == "instead" {
		if verb == "out" || verb == "subout" {
			m.in = liberoWho{}
		} else {
			m.out = liberoWho{}
		}
	}
	return m, m.in.ok() || m.out.ok()
}

// resolve says whom a pronoun means: the libero, unless the other one of the
// move is the libero.
func (r *liberoReader) resolve(m liberoMove) liberoMove {
	named := liberoWho{}
	for _, o := range r.moves {
		for _, w := range []liberoWho{o.in, o.out} {
			if w.kind == "player" {
				named = w
			}
		}
	}
	mean := func(w, other liberoWho) liberoWho {
		switch {
		case w.kind != "she":
			return w
		case other.kind != "libero" || other.which == "second":
			return liberoWho{kind: "libero"}
		}
		return named
	}
	in := mean(m.in, m.out)
	m.out = mean(m.out, in)
	m.in = in
	return m
}
