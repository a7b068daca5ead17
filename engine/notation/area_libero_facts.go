package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/play"
)

// court is what the moves say of the libero's place.
type liberoCourt struct {
	on      bool
	regular liberoWho            // whom the libero replaced
	subs    map[string]liberoWho // who came in for whom, by the number of the one who went
}

// tellAll tells what the story says of the act. It fails where the story goes
// beyond what can be told.
func (r *liberoReader) tellAll() bool {
	for _, it := range r.items {
		r.use(sign{from: it.from, to: it.to})
	}
	switch r.act.Kind {
	case deadball.PlayerOut:
		return true // who is left decides
	case deadball.IllegalSubstitution: // so it went on for rallies, unseen
		r.tell(deadball.Found, deadball.AfterContact)
		return true
	}
	if r.others() {
		return false
	}
	r.when()
	switch r.act.Kind {
	case deadball.LiberoReplacement:
		if !r.exchange() {
			return false
		}
		r.between()
		r.serving()
		if r.unable() {
			r.tell(deadball.LiberoUnable, play.Yes)
		}
	case deadball.LiberoServe:
		r.serving()
	case deadball.LiberoOut:
		if r.has("sent-off") {
			r.tell(deadball.OutFor, deadball.SentOff)
		}
	}
	r.made()
	return true
}

// others reports whether somebody else is hurt, which asks for more than a
// replacement.
func (r *liberoReader) others() bool {
	for i, it := range r.items {
		if (it.says == "hurt" || it.says == "sent-off") && r.victim(i).kind != "libero" {
			return true
		}
	}
	return false
}

// exchange tells whether the right ones change in the last replacement.
func (r *liberoReader) exchange() bool {
	switch {
	case r.has("illegal"):
		r.tell(deadball.Exchange, deadball.ToldIllegal)
		return true
	case r.has("both"):
		r.tell(deadball.Exchange, deadball.BothOn)
		return true
	case r.has("stays") && !r.relieved(), r.stays() && !r.serves():
		r.tell(deadball.Exchange, deadball.StaysFront)
		return true
	}
	c := liberoCourt{subs: map[string]liberoWho{}}
	pair := play.Unknown
	for _, m := range r.moves {
		if m.state && m.in.kind == "libero" && !c.on && r.subbedBefore(m) {
			return false
		}
		switch {
		case m.state && m.in.kind == "libero":
			c.on, c.regular = true, m.out
		case m.in.kind == "libero" && m.out.kind == "libero":
			pair, c.on = deadball.OtherLibero, true
		case m.in.kind == "libero":
			pair = play.Unknown
			switch {
			case m.out.kind == "front":
				pair = deadball.ForFront
			case m.out.kind == "another" && r.toks[r.items[m.at].from].form != "another":
				pair = deadball.ToldIllegal // for the wrong player
			case m.out.kind == "player" || m.out.kind == "own":
				pair = deadball.RightPair
			case m.instead:
				return false
			}
			c.on, c.regular = true, m.out
		case m.out.kind == "libero":
			if !c.regular.ok() {
				c.regular = r.onlyRegular()
			}
			pair = c.against(m)
			c.on = false
		case m.out.ok() && c.on && same(m.out, c.regular):
			return false // a substitution for the player who is off for the libero
		case m.out.ok() && m.in.ok():
			c.subs[m.out.label] = m.in
		}
	}
	if pair != play.Unknown {
		r.tell(deadball.Exchange, pair)
	}
	return true
}

// same reports whether two are one player: by their numbers, or their roles
// where no number is told.
func same(a, b liberoWho) bool {
	if a.label != "" || b.label != "" {
		return a.label == b.label
	}
	return a.which != "" && a.which == b.which
}

// onlyRegular is whom the libero is told to be on for, where it is told after
// the replacement and of one player alone.
func (r *liberoReader) onlyRegular() liberoWho {
	var out liberoWho
	for _, m := range r.moves {
		if m.in.kind != "libero" || m.out.label == "" {
			continue
		}
		if out.ok() && out.label != m.out.label {
			return liberoWho{}
		}
		out = m.out
	}
	return out
}

// relieved reports whether somebody comes in for the libero in the last
// replacement.
func (r *liberoReader) relieved() bool {
	return slices.ContainsFunc(r.moves, func(m liberoMove) bool { return m.at == r.last && m.out.kind == "libero" && m.in.ok() })
}

// subbedBefore reports whether the player whom the libero is on for was taken
// out by a substitution that is told before.
func (r *liberoReader) subbedBefore(state liberoMove) bool {
	for _, m := range r.moves {
		if m.at < state.at && m.sub && same(m.out, state.out) {
			return true
		}
	}
	return false
}

// against compares who comes in for the libero with whom the libero replaced.
func (c *liberoCourt) against(m liberoMove) play.Value {
	in, was := m.in, c.regular
	switch {
	case m.instead, in.kind == "another":
		return deadball.AnotherIn
	case in.kind == "own":
		return deadball.RightPair
	case in.label != "" && was.label != "":
		if in.label == was.label {
			return deadball.RightPair
		}
		return deadball.AnotherIn
	case in.label != "" && c.subs[in.label].ok(): // who was taken out comes back for the libero
		return deadball.AnotherIn
	case in.which != "" && in.which == was.which:
		return deadball.RightPair
	}
	return play.Unknown
}

// between tells what lay between the last two replacements.
func (r *liberoReader) between() {
	prev := -1 // the replacement before the last one
	for _, m := range r.moves {
		if m.replaces() && m.at < r.last {
			prev = m.at
		}
	}
	saw := map[string]bool{}
	for i, it := range r.items {
		switch it.says {
		case "norally":
			saw["norally"] = true
		case "penalty", "replayed", "rally", "rotate", "later", "front-rotated":
			point := it.says == "penalty" || it.says == "replayed"
			late := point || it.says == "rally" && r.moved(i) && !r.noticed(i) // "returns after one rally"
			if i < r.last && i > prev && (prev >= 0 || point) || i > r.last && late || i < prev && it.says == "penalty" && r.afterward(i, prev) {
				saw[it.says] = true
			}
		case "at-once":
			if prev >= 0 {
				saw["norally"] = true
			}
		}
	}
	switch {
	case saw["penalty"] && saw["front-rotated"]:
		r.tell(deadball.Between, deadball.ForcedRotation)
	case saw["penalty"]:
		r.tell(deadball.Between, deadball.PenaltyPoint)
	case saw["replayed"]:
		r.tell(deadball.Between, deadball.Replayed)
	case saw["norally"]:
		r.tell(deadball.Between, deadball.NoRally)
	case saw["rally"], saw["rotate"], saw["later"], saw["front-rotated"]:
		r.tell(deadball.Between, deadball.Completed)
	case prev >= 0, r.has("back") && r.libero(r.last):
		r.act = r.act.WithVoid(deadball.Between)
	}
}

// afterward reports whether an item is told to be after a move that is told
// later: "a red card right after the libero came off".
func (r *liberoReader) afterward(i, move int) bool {
	for at := r.items[i].to; at < r.items[move].from; at++ {
		if r.toks[at].form == "after" && r.in[at] == r.in[r.items[move].from] {
			r.used[at] = true
			return true
		}
	}
	return false
}

// libero reports whether the libero comes in by the move at an item.
func (r *liberoReader) libero(at int) bool {
	return slices.ContainsFunc(r.moves, func(m liberoMove) bool { return m.at == at && m.in.kind == "libero" })
}

// serving tells whether the libero serves next and has served elsewhere.
func (r *liberoReader) serving() {
	var served, serves liberoWho
	next := false
	for i, it := range r.items {
		switch it.says {
		case "serve", "serves":
			next = true
			if w, how := r.after(i); how == "for" {
				serves = w
			}
		case "served":
			if w, how := r.after(i); how == "for" {
				served = w
			}
		}
	}
	if next {
		r.tell(deadball.NextServer, play.Yes)
	}
	switch {
	case r.has("new-set"):
		r.tell(deadball.ServedElsewhere, play.No)
	case r.has("second-serve"), len(r.servedAt()) > 1:
		r.tell(deadball.ServedElsewhere, play.Yes)
	case r.has("not-served"):
		r.tell(deadball.ServedElsewhere, play.No)
	case served.label != "" && serves.label != "" && served.label != serves.label:
		r.tell(deadball.ServedElsewhere, play.Yes)
	case served.label != "" && served.label == serves.label:
		r.tell(deadball.ServedElsewhere, play.No)
	case r.has("served") && r.act.Kind == deadball.LiberoServe:
		r.act = r.act.WithVoid(deadball.ServedElsewhere)
	}
}

// when tells the moment of the replacement and when it was found: words of
// time belong to what was noticed where something was, else to what was done.
func (r *liberoReader) when() {
	for i, it := range r.items {
		if f, ok := strings.CutSuffix(it.says, "?"); ok && slices.Contains(r.row.Facts, play.FactID(f)) {
			r.act = r.act.WithVoid(play.FactID(f))
		}
		f, v, ok := strings.Cut(it.says, "=")
		if !ok {
			continue
		}
		switch id := play.FactID(f); id {
		case deadball.Found, deadball.Moment:
			noticed := r.noticed(i)
			switch {
			case id == deadball.Found && (noticed || v == string(deadball.AfterContact) && !r.moved(i)):
				r.tell(deadball.Found, play.Value(v))
			case id == deadball.Found && v == string(deadball.AfterContact):
				r.tell(deadball.Moment, deadball.DuringRally)
			case id == deadball.Moment && !noticed:
				r.tell(deadball.Moment, play.Value(v))
			}
		default:
			r.tell(id, play.Value(v))
		}
	}
	if r.last >= 0 || r.has("illegal") {
		for i, it := range r.items {
			if i > r.last && it.says == "rally" && (r.noticed(i) || !r.moved(i)) {
				r.tell(deadball.Found, deadball.AfterContact)
			}
		}
	}
}

// noticed reports whether an item is of when something was noticed: its words
// say so, or its clause tells that something was noticed, stopped or mended.
func (r *liberoReader) noticed(i int) bool {
	only := strings.HasPrefix(r.items[i].says, string(deadball.Found)+"=") && r.items[i].says != string(deadball.Found)+"="+string(deadball.AfterContact)
	for j, it := range r.items {
		if j != i && it.from == r.items[i].from && strings.HasPrefix(it.says, string(deadball.Moment)+"=") {
			only = false
		}
	}
	if only {
		return true
	}
	for _, it := range r.items {
		if it.clause == r.items[i].clause && (it.says == "notice" || strings.HasPrefix(it.says, "mended=")) {
			return true
		}
	}
	return false
}

// moved reports whether the clause of an item tells a move.
func (r *liberoReader) moved(i int) bool {
	for _, it := range r.items {
		if it.clause == r.items[i].clause && (strings.HasPrefix(it.says, "mv:") || it.says == "serve" || it.says == "serves") {
			return true
		}
	}
	return false
}

// made tells whether it was done or is only asked for.
func (r *liberoReader) made() {
	asked := false
	for _, m := range r.moves {
		if m.at == r.last {
			asked = m.asked
		}
	}
	switch {
	case r.last < 0 && r.act.Kind == deadball.LiberoReplacement && r.has("want") && !r.has("both") && !r.has("stays") && !r.stays():
		asked = true
	case r.act.Kind == deadball.LiberoServe && r.last < 0:
		for i, it := range r.items {
			if (it.says == "serve" || it.says == "serves") && r.wanted(i) {
				asked = true
			}
		}
	}
	if asked {
		r.tell(deadball.Made, play.No)
		return
	}
	r.tell(deadball.Made, play.Yes)
}
