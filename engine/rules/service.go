package rules

import "example.org/netpost/engine/play"

// judgeService rules on a service hit, in the order in which a crew looks: was
// it a serve at all, was it in time, from where, how and by whom it was hit,
// how the teams stood, and what was between. Once a fault of the server is
// found, only what was told adds to it.
func judgeService(w *Walk, _ *Rule, e play.Event) {
	if e.Kind != play.Serve {
		return
	}
	if judgeEarlyServe(w, &earlyServe, e) || judgePrematureSignal(w, &prematureSignal, e) {
		return
	}
	for _, j := range []struct {
		rule  *Rule
		fact  play.FactID
		judge func(*Walk, *Rule, play.Event)
	}{
		{&serveClock, play.ClockTime, judgeServeClock},
		{&serveFoot, play.Feet, judgeServeFoot},
		{&serveContact, play.HitWith, judgeServeContact},
		{&wrongServer, play.ServerTurn, judgeWrongServer},
		{&illegalLibero, play.Spot, judgeServingLibero},
		{&outOfPosition, play.Receivers, judgeOutOfPosition},
		{&screen, play.Hidden, judgeScreen},
	} {
		if w.misserved(e) && !w.Told(j.fact, e.ID) {
			continue
		}
		j.judge(w, j.rule, e)
	}
}

// misserved reports whether a fault of the server or of the receivers at the
// hit was found.
func (w *Walk) misserved(e play.Event) bool {
	for _, f := range w.found {
		if f.ruling.Event == e.ID && f.ruling.Moment <= w.now() {
			return true
		}
	}
	return false
}
