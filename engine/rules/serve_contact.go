package rules

import "example.org/netpost/engine/play"

var serveContact = Rule{
	ID: "serve-contact", Title: "ball not served correctly", Rank: 3,
	Text: "The ball is struck with one hand or any part of one arm after it was tossed or let go. Both hands, a ball thrown or " +
		"still held, or a toss that is not hit where the code has no re-serve, is a service fault.",
	Cite: "serve.contact-method", Also: []paramID{"serve.toss-dropped-or-caught", "serve.toss-hits-object"},
	Call:  Call{By: []string{"R1"}, Signal: "ball-not-released"},
	Lifts: []string{"out-of-position"},
	Judge: judgeToss,
}

var reServe = Rule{
	ID: "re-serve", Title: "re-serve", Rank: 204,
	Text: "Where the code has it, a server who lets the toss drop or catches it, untouched, serves again, once in a term of " +
		"service, on a new signal and a new count.",
	Cite: "serve.toss-dropped-or-caught", Call: Call{By: []string{"R1"}, Signal: "replay"},
}

func judgeServeContact(w *Walk, r *Rule, e play.Event) {
	if w.Param(r.Cite) != "any" && !w.Is(play.HitWith, e.ID, play.OneHand) {
		w.fault(r, e, e.Team, w.now(), r.Cite)
		return
	}
	if w.Told(play.HitWith, e.ID) {
		w.clear(r.ID, r.Cite, e)
	}
}

// judgeToss rules on a ball that the server let go and did not hit.
func judgeToss(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Toss {
		return
	}
	switch w.Get(play.EndsAs, e.ID) {
	case play.HitsThing:
		if w.Param("serve.toss-hits-object") == "re-serve" && w.again(e, "serve.toss-hits-object") {
			return
		}
		w.fault(r, e, e.Team, w.now(), "serve.toss-hits-object")
		return
	case play.HitsServer:
		w.fault(r, e, e.Team, w.now(), reServe.Cite) // a re-serve is for a ball untouched
		return
	}
	given := false
	switch w.Param(reServe.Cite) {
	case "re-serve-once-per-term":
		given = true
	case "re-serve-juniors":
		given = w.Is(play.Juniors, "", play.Yes)
	}
	if given && w.again(e, reServe.Cite) {
		return
	}
	w.fault(r, e, e.Team, w.now(), reServe.Cite)
}

// again has the serve repeated, unless this term of service had its re-serve.
// Where the telling goes on with the new serve, that one is judged.
func (w *Walk) again(e play.Event, p paramID) bool {
	if w.Is(play.Again, e.ID, play.Yes) {
		return false
	}
	for i := w.g + 1; i < len(w.seq); i++ {
		for _, f := range w.seq[i] {
			if f.Team == e.Team && (f.Kind == play.Serve || f.Kind == play.Toss) {
				w.clear(reServe.ID, p, e)
				return true
			}
		}
	}
	w.reServed(e, p)
	return true
}
