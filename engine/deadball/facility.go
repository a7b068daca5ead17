package deadball

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

var facility = Rule{
	ID: "facility", Title: "net and antennas before play",
	Text: "What is found wrong about the net and its antennas before play is put right before play. A sleeve that is " +
		"well fastened may carry print where the code says so.",
	Cite:  "equipment.antenna-place",
	Also:  []code.Param{"equipment.net-sleeve"},
	judge: judgeFacility,
}

func judgeFacility(l *look, r string) engine.Ruling {
	if l.is(FacilityItem, Antenna) {
		l.param(r, "equipment.antenna-place")
		return l.measure("correct-and-go-on")
	}
	if l.param(r, "equipment.net-sleeve") == "allowed" {
		return l.measure("allow")
	}
	return l.unsettled()
}
