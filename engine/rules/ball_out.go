package rules

import "example.org/netpost/engine/play"

var ballOut = Rule{
	ID: "ball-out", Title: "ball out", Rank: 100,
	Text: "A ball is out when it lands wholly outside the lines, touches an antenna, a post, a cable or an outside object, goes " +
		"completely under the net, or crosses the plane over or outside an antenna where no pursuit is allowed. A ceiling " +
		"touched on the team's own side is played on in some codes as long as the ball stays there.",
	Cite: "ball.line", Also: []paramID{"ball.antenna-posts", "ball.person-or-object", "ball.pursuit", "ball.pursuit-return-out-moment",
		"ball.under-net", "ball.net-recovery", "block.out", "joust.goes-out", "overhead.own-side", "overhead.crosses-net",
		"overhead.opponent-side", "overhead.low-object"},
	Call:  Call{By: []string{"R1", "R2", "line judge"}, Signal: "ball-out"},
	Judge: judgeBallOut,
}

var serveFailed = Rule{
	ID: "serve-failed", Title: "service fault", Rank: 99,
	Text: "A served ball must cross the net between the antennas to the opponents. One that stays in the net, touches a " +
		"teammate, an antenna, the ceiling or an obstruction, or lands out is a fault of the serving team; a touch of the net " +
		"on the way over is not.",
	Cite: "serve.hits-teammate-or-outside", Also: []paramID{"serve.hits-overhead", "serve.net-touch-live", "ball.line", "ball.antenna-posts"},
	Call: Call{By: []string{"R1"}, Signal: "ball-out"},
}

var ballDown = Rule{
	ID: "ball-down", Title: "ball down", Rank: 110,
	Text: "The rally ends when the ball touches the floor; a ball of which any part touches the court or its lines is in.",
	Cite: "ball.line", Call: Call{By: []string{"R1"}, Signal: "ball-in"},
}

func judgeBallOut(w *Walk, r *Rule, e play.Event) {
	switch e.Kind {
	case play.Land:
		judgeLanding(w, r, e)
	case play.Strike:
		judgeStrike(w, r, e)
	case play.Cross:
		judgeCrossing(w, r, e)
	case play.Contact:
		judgeServedTeammate(w, r, e)
		judgePursuitContact(w, r, e)
	}
}

// out records a ball out, or a failed serve when the service hit was the last
// touch.
func (w *Walk) out(r *Rule, e play.Event, p paramID) {
	if w.served(e) {
		r = &serveFailed
		if p == "overhead.opponent-side" || p == "overhead.own-side" || p == "overhead.low-object" {
			p = "serve.hits-overhead"
		} else if p != "ball.line" && p != "ball.antenna-posts" {
			p = serveFailed.Cite
		}
	}
	w.fault(r, e, w.lastTouch(e), w.now(), p)
}

func judgeLanding(w *Walk, r *Rule, e play.Event) {
	t, g := w.before(w.g)
	if _, chased := w.pursued(w.g); chased {
		w.out(r, e, "ball.pursuit-return-out-moment")
		return
	}
	if w.Is(play.Lands, e.ID, play.Out) {
		switch {
		case g >= 0 && both(t):
			w.out(r, e, "joust.goes-out")
		case g >= 0 && w.isBlock(t[0]):
			w.out(r, e, "block.out")
		default:
			w.out(r, e, "ball.line")
		}
		return
	}
	if g >= 0 && t[0].Kind == play.Serve && w.side(e) == t[0].Team {
		w.out(r, e, serveFailed.Cite)
		return
	}
	w.dead, w.ended = true, w.side(e)
	w.clear(ballDown.ID, ballDown.Cite, e)
}

func judgeStrike(w *Walk, r *Rule, e play.Event) {
	switch w.Get(play.Struck, e.ID) {
	case play.NetBand:
		if w.Is(play.Stuck, e.ID, play.Yes) {
			if w.Param("replay.torn-net") == "replay" {
				w.replay(&outsideInterference, e, "replay.torn-net")
			} else {
				w.out(r, e, "replay.torn-net")
			}
			return
		}
		if w.served(e) {
			w.clear(serveFailed.ID, "serve.net-touch-live", e)
		} else {
			w.clear(r.ID, "ball.net-recovery", e)
		}
	case play.Ceiling:
		judgeCeiling(w, r, e)
	case play.LowObject:
		if w.served(e) {
			w.out(r, e, "overhead.low-object")
			return
		}
		if w.Param("overhead.low-object") != "out" && w.Is(play.CouldPlay, e.ID, play.Yes) {
			w.replay(&overheadObstruction, e, "overhead.low-object")
			return
		}
		w.out(r, e, "overhead.low-object")
	case play.Official, play.Bystander:
		p := w.Param("ball.person-or-object")
		if !w.served(e) && p != "out" && w.stoppedPlay(e, p) {
			w.replay(&outsideInterference, e, "ball.person-or-object")
			return
		}
		w.out(r, e, "ball.person-or-object")
	case play.Antenna, play.Posts:
		if t, g := w.before(w.g); g >= 0 && both(t) {
			// What stands on no side tells of neither who sent the ball there.
			w.unsettled(r, e, "ball.antenna-posts")
			return
		}
		w.out(r, e, "ball.antenna-posts")
	default:
		w.out(r, e, "ball.person-or-object")
	}
}

// stoppedPlay reports whether an official or a person in the way stopped a
// legitimate play. Where the code has the ball out unless it did, that it did
// not is presumed; whether a play was there tells it as well.
func (w *Walk) stoppedPlay(e play.Event, person string) bool {
	if person == "out-unless-told" && !w.Told(play.CouldPlay, e.ID) {
		return w.Is(play.Hinders, e.ID, play.Yes)
	}
	return w.Is(play.CouldPlay, e.ID, play.Yes)
}

// judgeCeiling rules on a ball that touched the ceiling or another high
// object: out in one code; in the others live only above the own side of the
// team that played it, and only while it stays there.
func judgeCeiling(w *Walk, r *Rule, e play.Event) {
	if w.served(e) {
		w.out(r, e, "overhead.own-side")
		return
	}
	own := w.Param("overhead.own-side")
	if own == "out" {
		w.out(r, e, "overhead.own-side")
		return
	}
	last := w.lastTouch(e)
	if t, g := w.before(w.g); g >= 0 && both(t) {
		last = w.side(e) // each side was the last to touch it
	}
	if w.side(e) != last {
		w.out(r, e, "overhead.opponent-side")
		return
	}
	if own == "in-play-if-high" && w.Is(play.High, e.ID, play.No) {
		if w.Is(play.CouldPlay, e.ID, play.Yes) {
			w.replay(&overheadObstruction, e, "overhead.low-object")
		} else {
			w.out(r, e, "overhead.low-object")
		}
		return
	}
	at, over := w.after(e, last)
	if over {
		w.fault(r, e, last, at, "overhead.crosses-net")
		return
	}
	w.clear(r.ID, "overhead.own-side", e)
}

// after is when a ball that struck something above a team's side then goes
// over to the other side, and whether it does.
func (w *Walk) after(e play.Event, t play.Team) (int, bool) {
	for i := w.g + 1; i < len(w.seq); i++ {
		if c := touches(w.seq[i]); both(c) {
			return 2 * i, false // met in the plane by both: it has not crossed
		}
		for _, f := range w.seq[i] {
			switch f.Kind {
			case play.Contact:
				return 2 * i, f.Team != t
			case play.Cross:
				if !w.Is(play.How, f.ID, play.IntoNet) && w.Is(play.Wholly, f.ID, play.Yes) {
					return 2 * i, true
				}
			case play.Land:
				return 2 * i, w.side(f) != t
			}
		}
	}
	return w.now() + 1, w.Is(play.Completes, e.ID, play.Yes)
}

func judgeCrossing(w *Walk, r *Rule, e play.Event) {
	switch w.Get(play.How, e.ID) {
	case play.Under:
		if w.Is(play.Wholly, e.ID, play.Yes) {
			w.out(r, e, "ball.under-net")
			return
		}
		w.clear(r.ID, "ball.under-net", e)
	case play.IntoNet:
		if w.served(e) {
			w.out(r, e, serveFailed.Cite)
			return
		}
		w.clear(r.ID, "ball.net-recovery", e)
	case play.OutsideAnt:
		judgeOutsideAntenna(w, r, e)
	default:
		if _, chased := w.pursued(w.g); chased && w.Is(play.Wholly, e.ID, play.Yes) {
			// The ball comes back, or goes on, through the space that the
			// opponents own.
			w.out(r, e, "ball.pursuit-return-out-moment")
		}
	}
}

// judgeOutsideAntenna rules on a ball that crosses over or outside an antenna.
func judgeOutsideAntenna(w *Walk, r *Rule, e play.Event) {
	if w.Is(play.Wholly, e.ID, play.No) {
		w.clear(r.ID, "ball.pursuit", e)
		return
	}
	if _, back := w.pursued(w.g); back {
		w.clear(r.ID, "ball.pursuit", e)
		return
	}
	if w.served(e) || w.landsNext() || !w.pursuit(e) {
		w.out(r, e, "ball.pursuit")
		return
	}
	w.clear(r.ID, "ball.pursuit", e)
}

// landsNext reports whether the ball comes down with nobody chasing it.
func (w *Walk) landsNext() bool {
	if w.g+1 == len(w.seq) {
		return false
	}
	for _, f := range w.seq[w.g+1] {
		if f.Kind == play.Land {
			return true
		}
	}
	return false
}

// pursuit reports whether the code lets a team chase the ball of its last hit
// outside the antenna.
func (w *Walk) pursuit(e play.Event) bool {
	t, g := w.before(w.g)
	if g < 0 || both(t) {
		return false
	}
	if w.isBlock(t[0]) { // no team hit yet: chased before the third, and no first hit
		return w.Param("ball.pursuit") == "any-before-third"
	}
	switch w.Param("ball.pursuit") {
	case "first-hit-only":
		return w.number(t[0]) == 1
	case "any-before-third":
		return w.number(t[0]) < 3
	case "where-declared":
		return w.Is(play.PursuitSpace, "", play.Yes)
	}
	return false
}

// pursued is the crossing outside an antenna that a ball has not come back
// from before group g.
func (w *Walk) pursued(g int) (play.Event, bool) {
	n, last := 0, play.Event{}
	for i := 0; i < g; i++ {
		for _, f := range w.seq[i] {
			if f.Kind == play.Cross && w.Is(play.How, f.ID, play.OutsideAnt) && w.Is(play.Wholly, f.ID, play.Yes) {
				n, last = n+1, f
			}
		}
	}
	return last, n%2 == 1
}

// judgePursuitContact rules on an opponent's touch of a ball that is out
// beyond the antenna in their free zone: they may not keep it from coming back.
func judgePursuitContact(w *Walk, r *Rule, e play.Event) {
	c, out := w.pursued(w.g)
	if !out {
		return
	}
	if w.lastTouch(c) == e.Team {
		return
	}
	if w.Is(play.CouldPlay, e.ID, play.Yes) {
		w.fault(&interference, e, e.Team, w.now(), "ball.pursuit")
		return
	}
	w.fault(r, e, e.Team.Other(), w.now(), "ball.pursuit")
}

// judgeServedTeammate rules on a serve that touches a teammate of the server.
func judgeServedTeammate(w *Walk, r *Rule, e play.Event) {
	t, g := w.before(w.g)
	if g >= 0 && t[0].Kind == play.Serve && t[0].Team == e.Team {
		w.fault(&serveFailed, e, e.Team, w.now(), serveFailed.Cite)
	}
}
