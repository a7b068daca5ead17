package lookup

import (
	"slices"
	"strings"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/rules"
)

// A thing is a fault, a call or a request that the crew calls and signals.
type thing struct {
	id     string
	words  string   // what a crew says
	by     []string // who calls it, the one whose call it is first
	signal string   // the id of its signal, empty where it has none of its own
}

// things is sorted by id. Those with the id of a rule of the rally take who
// calls it and the signal from there.
var things = []thing{
	{id: "assisted-contact", words: "an assisted hit"},
	{id: "attack-of-serve", words: "an attack of the serve"},
	{id: "authorise", words: "the authorisation of the serve", by: []string{"R1"}, signal: "begin-serve"},
	{id: "back-row-attack", words: "a back-row attack"},
	{id: "back-row-block", words: "a back-row block"},
	{id: "ball-down", words: "a ball that lands in"},
	{id: "ball-out", words: "a ball out"},
	{id: "block-of-serve", words: "a block of the serve"},
	{id: "caught-or-thrown", words: "a caught or thrown ball"},
	{id: "centre-line", words: "the centre line"},
	{id: "change-of-courts", words: "a change of courts", by: []string{"R1", "R2"}, signal: "change-courts"},
	{id: "delay", words: "a delay sanction", by: []string{"R1"}, signal: "delay"},
	{id: "double-contact", words: "a double contact"},
	{id: "double-fault", words: "a double fault"},
	{id: "end-of-set", words: "the end of a set", by: []string{"R1", "R2"}, signal: "end-of-set"},
	{id: "four-contacts", words: "four contacts"},
	{id: "illegal-substitution", words: "an illegal substitution", by: []string{"R2", "R1"}},
	{id: "interference", words: "interference under the net"},
	{id: "libero-attack", words: "an attack by the libero"},
	{id: "libero-block", words: "a block by the libero"},
	{id: "libero-set-attack", words: "an attack of the libero's finger set"},
	{id: "misconduct", words: "misconduct", by: []string{"R1"}, signal: "misconduct"},
	{id: "net-contact", words: "a touch of the net"},
	{id: "out-of-position", words: "an overlap", signal: "position"},
	{id: "over-net", words: "reaching over the net"},
	{id: "point", words: "the point", by: []string{"R1"}, signal: "point"},
	{id: "receiving-overlap", words: "an overlap of the receiving team", by: []string{"R2"}, signal: "position"},
	{id: "replay", words: "a replay", by: []string{"R1"}, signal: "replay"},
	{id: "screen", words: "a screen", by: []string{"R1"}, signal: "block-or-screen"},
	{id: "serve-clock", words: "the service clock", by: []string{"R1"}, signal: "serve-clock"},
	{id: "serve-contact", words: "a serve without a toss", by: []string{"R1"}, signal: "ball-not-released"},
	{id: "serve-failed", words: "a serve into the net"},
	{id: "serve-foot", words: "a foot fault of the server", by: []string{"R1", "line judge"}, signal: "line"},
	{id: "serving-overlap", words: "an overlap of the serving team", by: []string{"R1"}, signal: "position"},
	{id: "substitution", words: "a substitution", by: []string{"R2"}, signal: "substitution"},
	{id: "time-out", words: "a time-out", by: []string{"R2", "R1"}, signal: "time-out"},
	{id: "touched", words: "a touch of the ball on its way out", by: []string{"R1", "line judge", "R2"}, signal: "touched"},
	{id: "wrong-server", words: "a wrong server", by: []string{"R2", "R1"}, signal: "position"},
}

// thingOf finds a thing, with who calls it and its signal filled in from the
// rule of its id.
func thingOf(id string) (thing, bool) {
	i, ok := slices.BinarySearchFunc(things, id, func(t thing, id string) int { return strings.Compare(t.id, id) })
	if !ok {
		return thing{}, false
	}
	t := things[i]
	if r, ok := rules.ByID(id); ok {
		t.by, t.signal = r.Call.By, r.Call.Signal
	}
	return t, true
}

// words says what an entry is asked of.
func words(of string) string {
	if t, ok := thingOf(of); ok {
		return t.words
	}
	switch of {
	case "player":
		return "any player"
	case "captain", "assistant":
		return "the " + strings.ReplaceAll(of, "assistant", "assistant coach")
	case "head-coach":
		return "the head coach"
	case "who":
		return "who"
	}
	if isNumber(of) {
		return of
	}
	return strings.ReplaceAll(of, "-", " ")
}

func isThing(of string) bool { _, ok := thingOf(of); return ok }

func isSignalled(of string) bool {
	t, ok := thingOf(of)
	return ok && t.signal != ""
}

// callEntries are who calls what, and how it is shown.
var callEntries = []Entry{
	{
		ID: "r2-may-call", Title: "what the second referee may call", Ask: "May the second referee whistle %s?",
		Words: []string{"< r2 whistle thing=* may | unsighted r1 see", "< r2 thing=* whistle | may unsighted r1 see", "thing=* r2-call | may r2 see", "< thing=* may r2 whistle | unsighted r1 see", "< r2 call thing=* may | unsighted r1 see",
			"< r2 whistle thing=* | unsighted r1 may see"},
		Params: []code.Param{"r2.duties", "r2.outside-scope", "crew.serving-positions", "align.serving-team"}, of: isThing,
		says: r2May,
	},
	{
		ID: "rule-number", Title: "what stands under a rule's number", Ask: "What is rule %s?",
		Words:  []string{"rule-number=* | mean"},
		Params: []code.Param{"crew.signals"}, of: isNumber,
		says: func(*engine.Read, string) string { return "" },
	},
	{
		ID: "signal", Title: "the signal", Ask: "What is the signal for %s?",
		Words:  []string{"signal thing=* | r1 r2 what-is show give make"},
		Params: []code.Param{"crew.signals"}, of: isSignalled,
		says: signalOf,
	},
	{
		ID: "whose-call", Title: "whose call it is", Ask: "Whose call is %s?",
		Words:  []string{"whose-call thing=*", "who call thing=* | whistle", "who whistle thing=*"},
		Params: []code.Param{"r2.duties", "crew.serving-positions", "align.serving-team"}, of: isThing,
		says: whose,
	},
}

// free reports whether the serving team has no positions to be out of.
func free(r *engine.Read) bool { return r.Param("align.serving-team") == "free" }

func r2May(r *engine.Read, of string) string {
	t, _ := thingOf(of)
	switch {
	case of == "out-of-position" && free(r):
		return "yes: the receiving team's positions are the second referee's, and the serving team has none"
	case of == "out-of-position":
		return ""
	case of == "serving-overlap" && free(r):
		return "no: the serving team may stand anywhere, there is no such fault"
	case of == "serving-overlap":
		return pick(r.Param("crew.serving-positions"), clause{"first-referee", "no: the first referee's; the second referee signals discreetly"})
	case slices.Contains(t.by, "R2") && r.Param("r2.duties") == "signal-fault-first":
		return "yes: whistle and signal the fault, the first referee then awards the point"
	case slices.Contains(t.by, "R2"):
		return "yes: it is among the faults that the second referee whistles"
	}
	return pick(r.Param("r2.outside-scope"), clause{"signal-only", "no: a discreet signal, the first referee decides"})
}

func whose(r *engine.Read, of string) string {
	t, _ := thingOf(of)
	r.Param("r2.duties")
	switch {
	case of == "serving-overlap" && free(r):
		return "nobody's: the serving team may stand anywhere, there is no such fault"
	case of == "serving-overlap":
		return pick(r.Param("crew.serving-positions"), clause{"first-referee", "R1, the first referee"})
	case of == "out-of-position" && free(r):
		return "R2, for the receiving team; the serving team may stand anywhere"
	case of == "out-of-position":
		return pick(r.Param("crew.serving-positions"), clause{"first-referee", "R2 for the receiving team, R1 for the serving team"})
	case of == "wrong-server":
		return "R2, on the scorer's word, or R1"
	}
	return strings.Join(t.by, ", or ")
}

func signalOf(r *engine.Read, of string) string {
	t, _ := thingOf(of)
	r.Param("crew.signals")
	s, ok := r.Book().Signal(t.signal)
	if !ok {
		return ""
	}
	out := s.Text + " (" + s.Name
	if s.Number != "" {
		out += ", signal " + s.Number
	}
	return out + ")"
}
