package rules

import "example.org/netpost/engine/play"

var centreLine = Rule{
	ID: "centre-line", Title: "centre line", Rank: 90,
	Text: "A foot or hand that is still partly on or above the centre line is within it. What a foot, a hand or another part " +
		"wholly beyond it means differs by code; interference or a hazard is a fault in all. Beyond the extension of the line, " +
		"outside the court, only interference counts.",
	Cite: "centre.foot", Also: []paramID{"centre.hand", "centre.other-body", "centre.outside-court", "centre.hazard"},
	Call:  Call{By: []string{"R2", "R1"}, Signal: "line"},
	Judge: judgeCentreLine,
}

var interference = Rule{
	ID: "interference", Title: "interference", Rank: 95,
	Text: "A player may not hinder an opponent's play: under the net, above it or with a touch of the opponent. A touch that " +
		"keeps nobody from a play is no fault.",
	Cite: "centre.under-net-interference", Call: Call{By: []string{"R2", "R1"}, Signal: "line"},
	Judge: judgeInterference,
}

func judgeCentreLine(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Line {
		return
	}
	if w.Param("centre.hazard") == "fault" && w.Is(play.Hazard, e.ID, play.Yes) {
		w.fault(r, e, e.Team, w.now(), "centre.hazard")
		return
	}
	if w.Param("centre.outside-court") != "fault" && w.Is(play.Where, e.ID, play.OffCourt) {
		w.clear(r.ID, "centre.outside-court", e)
		return
	}
	p := paramID("centre.other-body")
	body := w.Get(play.BodyPart, e.ID)
	switch body {
	case play.Foot:
		p = "centre.foot"
	case play.Hand:
		p = "centre.hand"
	}
	switch w.Param(p) {
	case "fault-always":
		w.fault(r, e, e.Team, w.now(), p)
		return
	case "fault-if-wholly-beyond":
		if w.Is(play.Extent, e.ID, play.WhollyOver) {
			w.fault(r, e, e.Team, w.now(), p)
			return
		}
	}
	w.clear(r.ID, p, e)
}

func judgeInterference(w *Walk, r *Rule, e play.Event) {
	switch e.Kind {
	case play.Line, play.Bump:
		if w.Param(r.Cite) == "fault" && e.Kind == play.Bump || w.Is(play.Hinders, e.ID, play.Yes) {
			w.fault(r, e, e.Team, w.now(), r.Cite)
			return
		}
		w.clear(r.ID, r.Cite, e)
	case play.Contact:
		// A ball on its way under the net is still its own side's until it is
		// wholly through; stopping it there takes a play away.
		c, ok := w.underNet(e)
		if !ok || c.Kind == "" {
			return
		}
		if w.lastTouch(e) == e.Team || w.Is(play.CouldPlay, e.ID, play.No) {
			return
		}
		w.fault(r, e, e.Team, w.now(), r.Cite)
	}
}

// underNet is the crossing under the net that was on its way at a contact.
func (w *Walk) underNet(e play.Event) (play.Event, bool) {
	for i := w.g - 1; i >= 0; i-- {
		for _, f := range w.seq[i] {
			switch f.Kind {
			case play.Cross:
				return f, w.Is(play.How, f.ID, play.Under) && w.Is(play.Wholly, f.ID, play.No)
			case play.Contact, play.Serve:
				return play.Event{}, false
			}
		}
	}
	return play.Event{}, false
}
