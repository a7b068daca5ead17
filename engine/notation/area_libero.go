package notation

import (
	"slices"
	"strings"
	"sync"

	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/play"
)

// liberoTree is the lexicon of libero stories made ready: the printed facts,
// the dead-ball phrases of when something was done or found, and its own.
var liberoTree = sync.OnceValue(func() *deadNode {
	root := &deadNode{}
	for _, kind := range liberoKinds {
		row, _ := deadball.KindByID(kind)
		for _, id := range row.Facts {
			if !slices.Contains(liberoTimes, id) {
				continue // the story itself tells it
			}
			f, _ := deadball.FactByID(id)
			for _, c := range f.Values {
				var ws []string
				for _, t := range plain(c.Words) {
					ws = append(ws, t.form)
				}
				root.add(ws, string(f.ID)+"="+string(c.Value))
			}
		}
	}
	for _, t := range deadTables {
		for _, p := range t {
			if !timesOnly(p.says) || strings.Contains(p.phrase, "penalty") { // a penalty is a point here
				continue
			}
			for _, ws := range alternatives(p.phrase) {
				root.add(ws, p.says)
			}
		}
	}
	for _, t := range liberoTables {
		for _, p := range t {
			for _, ws := range alternatives(p.phrase) {
				root.add(ws, p.says)
			}
		}
	}
	return root
})

// liberoKinds are the kinds of act that the reader makes.
var liberoKinds = []deadball.Kind{deadball.LiberoOut, deadball.LiberoReplacement, deadball.LiberoServe}

// liberoTimes are the facts of when something was, and what was had before.
var liberoTimes = []play.FactID{deadball.DelayBefore, deadball.DelaySet, deadball.Found, deadball.Mended, deadball.Moment}

// timesOnly reports whether a dead-ball phrase says only when something was,
// or what delays the team had.
func timesOnly(says string) bool {
	for s := range strings.FieldsSeq(says) {
		f, _, _ := strings.Cut(s, "=")
		if !slices.Contains(liberoTimes, play.FactID(f)) {
			return false
		}
	}
	return true
}

// A liberoItem is one thing that a story of replacements says, in its order.
type liberoItem struct {
	says   string
	from   int // tokens
	to     int
	clause int
	who    liberoWho // of somebody named
	own    bool      // taken as the object of a move
}

// A liberoWho is somebody in the story.
type liberoWho struct {
	kind  string // libero, player, another, front, she
	which string // of two liberos: first, second; of a player: the role
	label string // the shirt number
}

func (w liberoWho) ok() bool { return w.kind != "" }

// A liberoMove is one change of players.
type liberoMove struct {
	in, out liberoWho
	at      int // the item
	sub     bool
	asked   bool
	state   bool // a state told, not a change
	instead bool // in place of the right player
}

// liberoReader makes an act of a story about the libero.
type liberoReader struct {
	deadReader
	items []liberoItem
	moves []liberoMove // all of them
	last  int          // the item of the last libero replacement, -1 for none
}

func readLibero(s *scene) (heard, bool) {
	r := &liberoReader{deadReader: *newDeadReader(s), last: -1}
	r.tree = liberoTree()
	r.find()
	r.list()
	if !slices.ContainsFunc(r.toks, func(t token) bool { return slices.Contains(liberoWords, t.form) || t.base == "libero" }) {
		return heard{}, false
	}
	r.follow()
	kind, ok := r.kind()
	if !ok {
		return heard{}, false
	}
	r.act = deadball.New(kind, play.A)
	r.row, _ = deadball.KindByID(kind)
	r.m = mention{kind: kind, at: len(r.toks)}
	if r.last >= 0 {
		r.m.at = r.items[r.last].from
	}
	r.whoseLibero()
	if !r.tellAll() {
		return heard{}, false
	}
	r.rest()
	left, foreign := r.left()
	if r.act.Check() != nil || foreign || left > 2 {
		return heard{}, false
	}
	return heard{subject: r.act, used: r.used, scenery: r.scene, sure: left == 0}, true
}

// liberoGate: a reading needs the libero.
func liberoGate() gate { return gate{{liberoWords}} }

// liberoWords are words for the libero.
var liberoWords = []string{"l", "lib", "libero", "liberos", "libs"}

// whoseLibero settles whose libero it is: by the side named right before the
// libero, else before a player of the story, else by the first side named that
// is not the crew's own "we".
func (r *liberoReader) whoseLibero() {
	own, best := sideRef{}, 0
	for i, t := range r.toks {
		if t.form != "<side>" {
			continue
		}
		r.used[i] = true
		how := 1
		switch next := r.after1(i); {
		case t.side.fam == relative || t.official():
			continue
		case t.side == us && !t.poss && next != "" && slices.Contains(crewVerbs, next):
			continue
		case slices.Contains(liberoWords, next):
			how = 3
		case t.label != "" || slices.Contains([]string{"player", "setter", "middle", "kid"}, next):
			how = 2
		}
		if how > best {
			own, best = t.side, how
		}
	}
	r.name(own)
}

// after1 is the word after a token, "" at the end of its clause.
func (r *liberoReader) after1(i int) string {
	if i+1 >= len(r.toks) || r.toks[i+1].mark != 0 {
		return ""
	}
	if b := r.toks[i+1].base; b != "" {
		return b
	}
	return r.toks[i+1].form
}

// us is "we", which may be the crew.
var us = sideRef{usThem, 0}

// crewVerbs are what a crew does and a team does not.
var crewVerbs = []string{"authorize", "beckon", "call", "catch", "caught", "discover", "find", "found", "know", "notice", "saw", "see", "spot", "spotted", "stop", "stopped", "whistle"}

// numberUnits are words after which a number counts something.
var numberUnits = wordSet("games kids min minutes players points pt pts rallies rally sec seconds sets times")

// list makes the items of the signs and of the shirt numbers between them.
func (r *liberoReader) list() {
	at := map[int][]sign{}
	for _, g := range r.signs {
		at[g.from] = append(at[g.from], g)
	}
	for i := 0; i < len(r.toks); i++ {
		if gs := at[i]; len(gs) > 0 {
			for _, g := range gs {
				r.items = append(r.items, r.item(g))
			}
			i = gs[0].to - 1
			continue
		}
		t := r.toks[i]
		if verb := bareMoves[t.form]; verb != "" && r.ends(i) {
			r.items = append(r.items, liberoItem{says: verb, from: i, to: i + 1, clause: r.in[i]})
			continue
		}
		label := t.label
		if label == "" && len(t.form) <= 2 && numeric(t.form) && r.player(i) {
			label = t.form
		}
		if label == "" {
			continue
		}
		who := liberoWho{kind: "player", label: label}
		if n := len(r.items); n > 0 && r.items[n-1].to == i && r.items[n-1].who.ok() && r.items[n-1].who.label == "" && t.form != "<side>" {
			r.items[n-1].who.label, r.items[n-1].to = label, i+1 // libero 3, player 3
			continue
		}
		r.items = append(r.items, liberoItem{says: "ent:player", from: i, to: i + 1, clause: r.in[i], who: who})
	}
	for i := len(r.items) - 2; i >= 0; i-- { // her outside: nobody else is named by "her"
		if a, b := r.items[i], r.items[i+1]; a.who.kind == "she" && b.who.ok() && a.to == b.from {
			r.use(sign{from: a.from, to: a.to})
			r.items = slices.Delete(r.items, i, i+1)
		}
	}
	for i := 1; i < len(r.items); i++ { // #4 libero
		a, b := &r.items[i-1], r.items[i]
		if a.to == b.from && a.who.kind == "player" && a.who.label != "" && b.who.kind == "libero" {
			b.who.label = a.who.label
			a.who, a.to = b.who, b.to
			r.items = slices.Delete(r.items, i, i+1)
		}
	}
	r.short()
}

// bareMoves are the moves of a clause that is no more than "5 out".
var bareMoves = map[string]string{"in": "mv:in", "off": "mv:out", "on": "mv:in", "out": "mv:out"}

// ends reports whether a word stands right after somebody named and ends its
// clause.
func (r *liberoReader) ends(i int) bool {
	n := len(r.items)
	return n > 0 && r.items[n-1].to == i && r.items[n-1].who.ok() && (i+1 == len(r.toks) || r.in[i+1] != r.in[i])
}

// short puts in the verb that "libero for 5" leaves out.
func (r *liberoReader) short() {
	for i := 1; i+1 < len(r.items); i++ {
		a, f, b := r.items[i-1], r.items[i], r.items[i+1]
		if f.says == "for" && a.who.ok() && b.who.ok() && a.to == f.from && f.to == b.from && (a.who.kind == "libero") != (b.who.kind == "libero" && b.who.label == a.who.label) {
			if i > 1 && (strings.HasPrefix(r.items[i-2].says, "mv:") || r.items[i-2].says == "by" || r.items[i-2].says == "with") {
				continue
			}
			r.items = slices.Insert(r.items, i, liberoItem{says: "mv:in", from: f.from, to: f.from, clause: f.clause})
			i += 2
		}
	}
}

func (r *liberoReader) item(g sign) liberoItem {
	it := liberoItem{says: g.says, from: g.from, to: g.to, clause: g.clause}
	if name, arg, _ := strings.Cut(g.says, ":"); name == "ent" {
		it.who.kind, it.who.which, _ = strings.Cut(arg, "-")
		for _, t := range r.toks[g.from:g.to] {
			if t.label != "" {
				it.who.label = t.label
			}
		}
	}
	return it
}

// player reports whether a bare number is a shirt: not a place of the court,
// and not a count.
func (r *liberoReader) player(i int) bool {
	if i > 0 && (slices.Contains([]string{"in", "at", "position", "zone", "spot", "set", "game", "first"}, r.toks[i-1].form) && !r.signAt(i-1, "for")) {
		return false
	}
	return i+1 >= len(r.toks) || !numberUnits[r.toks[i+1].form]
}

// kind is the kind of act that the story is about.
func (r *liberoReader) kind() (deadball.Kind, bool) {
	unable := r.unable()
	switch {
	case r.others() && r.has("who-goes"):
		return deadball.PlayerOut, true
	case r.has("freely") && slices.ContainsFunc(r.items, func(it liberoItem) bool { return it.who.kind == "front" }):
		return deadball.IllegalSubstitution, true
	case unable && (r.has("name-libero") || r.has("who-goes") && !r.has("norally")):
		return deadball.LiberoOut, true
	case r.last >= 0, r.has("both"), r.has("stays"), r.stays(), r.has("replacement"), r.has("illegal"):
		return deadball.LiberoReplacement, true
	case r.has("second-serve"), r.serves() && (r.has("served") || r.has("not-served")), r.has("serve"), len(r.servedAt()) > 1:
		return deadball.LiberoServe, true
	}
	return "", false
}

func (r *liberoReader) has(says string) bool {
	return slices.ContainsFunc(r.items, func(it liberoItem) bool { return it.says == says })
}

// stays reports whether the libero stays on court beyond the back row: in the
// front row, or to serve in another position.
func (r *liberoReader) stays() bool {
	return r.has("stays-on") && (r.has("front-rotated") || r.serves())
}

// serves reports whether somebody serves or is about to.
func (r *liberoReader) serves() bool { return r.has("serve") || r.has("serves") }

// unable reports whether the libero is said to be hurt or sent off.
func (r *liberoReader) unable() bool {
	for i, it := range r.items {
		if (it.says == "hurt" || it.says == "sent-off") && r.victim(i).kind == "libero" {
			return true
		}
	}
	return false
}

// victim is who is said to be hurt: the one named right after, else the one
// who acts, named last before.
func (r *liberoReader) victim(i int) liberoWho {
	if i+1 < len(r.items) && r.items[i+1].from == r.items[i].to && r.items[i+1].who.ok() {
		return r.items[i+1].who // injured libero
	}
	for j := i - 1; j >= 0; j-- {
		if it := r.items[j]; it.who.ok() && it.who.kind != "she" && !it.own {
			return it.who
		}
	}
	return liberoWho{kind: "libero"}
}

// servedAt lists the positions of the order in which the libero is said to
// serve, by their numbers.
func (r *liberoReader) servedAt() []string {
	var out []string
	for _, it := range r.items {
		if n := r.toks[it.to-1].form; it.says == "serve-at" && !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return out
}
