package rules

import "example.org/netpost/engine/play"

var serveClock = Rule{
	ID: "serve-clock", Title: "delay in service", Rank: 1,
	Text: "After the signal for service the server has 8 seconds to hit the ball in most codes and 5 in one. A serve hit later, " +
		"or none at all, is a service fault.",
	Cite: "serve.clock-seconds", Call: Call{By: []string{"R1"}, Signal: "serve-clock"},
	Lifts: []string{"out-of-position"},
	Judge: judgeLapse,
}

func judgeLapse(w *Walk, r *Rule, e play.Event) {
	if e.Kind == play.Lapse {
		judgeServeClock(w, r, e)
	}
}

func judgeServeClock(w *Walk, r *Rule, e play.Event) {
	v := w.Get(play.ClockTime, e.ID)
	if v == play.OnTime && e.Kind == play.Serve {
		return
	}
	if w.late(v) {
		w.fault(r, e, e.Team, w.now(), r.Cite)
		return
	}
	w.clear(r.ID, r.Cite, e)
}

// late reports whether the time told is over the code's limit.
func (w *Walk) late(v play.Value) bool {
	limit := w.Param("serve.clock-seconds")
	switch v {
	case play.OnTime, play.Within5:
		return false
	case play.Within8:
		return limit == "5"
	}
	return true
}
