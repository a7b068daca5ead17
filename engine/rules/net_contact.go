package rules

import "example.org/netpost/engine/play"

var netContact = Rule{
	ID: "net-contact", Title: "net contact", Rank: 80,
	Text: "Most codes fault a touch of the net between the antennas only in the action of playing the ball or when it " +
		"interferes with play; one faults every touch while the ball is in play. A net that the ball drives into a player, " +
		"and loose hair, are no fault. Posts and what is outside the antennas may be touched unless that gives an advantage.",
	Cite: "net.contact-rule", Also: []paramID{"net.action-of-playing", "net.antenna-by-player", "net.outside-antennas-posts",
		"net.ball-driven", "net.hair", "net.support-or-advantage"},
	Call:  Call{By: []string{"R2", "R1"}, Signal: "net"},
	Judge: judgeNetContact,
}

func judgeNetContact(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.NetTouch {
		return
	}
	switch w.Get(play.Cause, e.ID) {
	case play.ByBall:
		w.clear(r.ID, "net.ball-driven", e)
		return
	case play.ByHair:
		if w.Param("net.hair") == "legal-unless-affects-play" && w.Is(play.Hinders, e.ID, play.Yes) {
			w.fault(r, e, e.Team, w.now(), "net.hair")
			return
		}
		w.clear(r.ID, "net.hair", e)
		return
	}
	p := paramID("net.contact-rule")
	always := false
	switch w.Get(play.Part, e.ID) {
	case play.PartAntenna:
		p = "net.antenna-by-player"
		always = w.Param(p) == "always"
	case play.PartOutside:
		p = "net.outside-antennas-posts"
		always = w.Param(p) == "cables-fault"
	case play.PartPost:
		p = "net.outside-antennas-posts"
	default:
		always = w.Param(p) == "always"
	}
	if always {
		w.fault(r, e, e.Team, w.now(), p)
		return
	}
	if w.Is(play.Hinders, e.ID, play.Yes) || w.Is(play.Deliberate, e.ID, play.Yes) {
		if p == "net.contact-rule" {
			p = "net.support-or-advantage"
		}
		w.fault(r, e, e.Team, w.now(), p)
		return
	}
	if p == "net.outside-antennas-posts" {
		w.clear(r.ID, p, e)
		return
	}
	if w.Is(play.Playing, e.ID, play.Yes) {
		w.fault(r, e, e.Team, w.now(), p)
		return
	}
	w.clear(r.ID, "net.action-of-playing", e)
}
