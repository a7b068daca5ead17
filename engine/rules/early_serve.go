package rules

import "example.org/netpost/engine/play"

var earlyServe = Rule{
	ID: "early-serve", Title: "serve before the signal", Rank: 198,
	Text: "A ball served before the signal for service is no serve: it is cancelled and repeated. Done on purpose it may be " +
		"misconduct besides.",
	Cite: "serve.before-signal", Call: Call{By: []string{"R1"}, Signal: "replay"},
	LiftsAll: true,
}

var prematureSignal = Rule{
	ID: "premature-signal", Title: "signal before the teams were ready", Rank: 199,
	Text: "When the first referee authorised the service while a team was not ready or did not have six players, the rally is " +
		"stopped and replayed, with no sanction.",
	Cite: "replay.false-start", Also: []paramID{"replay.wrong-number-at-signal"}, Call: Call{By: []string{"R1"}, Signal: "replay"},
	LiftsAll: true,
}

// judgeEarlyServe reports whether the ball was hit before the signal, so that
// there was no serve.
func judgeEarlyServe(w *Walk, r *Rule, e play.Event) bool {
	if w.Is(play.Signalled, e.ID, play.Yes) {
		if w.Told(play.Signalled, e.ID) {
			w.clear(r.ID, r.Cite, e)
		}
		return false
	}
	if w.Param(r.Cite) == "fault" {
		w.fault(&serveContact, e, e.Team, w.now(), r.Cite)
		return true
	}
	w.replay(r, e, r.Cite)
	if w.Is(play.Deliberate, e.ID, play.Yes) {
		w.found[len(w.found)-1].ruling.Measure = []string{"misconduct"}
	}
	return true
}

// judgePrematureSignal reports whether the signal was given too soon.
func judgePrematureSignal(w *Walk, r *Rule, e play.Event) bool {
	p := r.Cite
	switch w.Get(play.Ready, e.ID) {
	case play.AllReady:
		if w.Told(play.Ready, e.ID) {
			w.clear(r.ID, p, e)
		}
		return false
	case play.WrongCount:
		p = "replay.wrong-number-at-signal"
	}
	switch w.Param(p) {
	case "unknown":
		w.unsettled(r, e, p)
	case "fault":
		w.fault(&serveContact, e, e.Team, w.now(), p)
	default:
		w.replay(r, e, p)
	}
	return true
}
