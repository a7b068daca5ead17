package deadball

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

var worn = Rule{
	ID: "worn", Title: "what players wear",
	Text: "What can injure or gives an advantage comes off. Jewelry, devices, shorts of another length and religious " +
		"or medical pieces each have a line of their own, which differs between the codes.",
	Cite:  "equipment.jewelry",
	Also:  []code.Param{"equipment.electronics", "equipment.religious-or-medical", "equipment.shorts-length"},
	judge: judgeWorn,
}

func judgeWorn(l *look, r string) engine.Ruling {
	switch l.get(Item) {
	case Electronics:
		l.param(r, "equipment.electronics")
		return l.against("deny")
	case Shorts:
		if l.param(r, "equipment.shorts-length") == "may-differ" {
			return l.measure("allow")
		}
		return l.unsettled()
	case Religious, Brace:
		l.param(r, "equipment.religious-or-medical")
		return saying(l.measure("who-decides"), "the body that governs the event; the first referee still judges safety")
	}
	switch l.param(r, "equipment.jewelry") {
	case "allowed":
		return l.measure("allow")
	case "studs-above-chin":
		if l.is(AboveChin, "yes") {
			return l.measure("allow")
		}
		return l.against("deny")
	case "none":
		return l.against("deny")
	case "if-safe":
		return saying(l.measure("who-decides"), "the first referee judges whether it can injure anybody")
	}
	return l.unsettled()
}
