package code

// The source of what is worn.
const wornBulletin = "USA Volleyball rules interpretation bulletins on shorts and earbuds, undated"

// equipmentRows are the rows about what players wear and how the court is set up.
var equipmentRows = []Row{
	{
		Param: "equipment.antenna-place",
		Title: "Place of the antennas",
		Doc:   "At which edge of the side line the antennas stand.",
		Values: []Value{
			{"outer-edge", "at the outer edge of the side line"},
		},
		cells: table{
			intl: {mem("outer-edge", "2.4", "tangent to the outer edge of each side band")},
			club: {mem("outer-edge", "2.4", "tangent to the outer edge of each side band")},
			coll: {mem("outer-edge", "2", "at the outer edge of each side line").doubt("confidence medium-high")},
			scho: {pub("outer-edge", "3-1", schoolQuestions, "at the outer edge of each side line; moved before the match where they are not").doubt("number from memory")},
		},
	},
	{
		Param: "equipment.electronics",
		Title: "Electronic devices on players",
		Doc:   "Whether a player may wear earbuds or another electronic device for sound.",
		Values: []Value{
			{"not-allowed", "no, also in the warm-up"},
		},
		cells: table{
			intl: {mem("not-allowed", "4.5.1", "objects that may injure or give an advantage are forbidden")},
			club: {pub("not-allowed", "4.5.1", wornBulletin, "earbuds are no jewelry; they are taken out, also in the warm-up").doubt("number from memory")},
			coll: {mem("not-allowed", "", "not in play").doubt("confidence low-medium")},
			scho: {mem("not-allowed", "4-1; 12-2", "not in play").doubt("confidence medium; some devices are allowed on the bench")},
		},
	},
	{
		Param: "equipment.jewelry",
		Title: "Jewelry",
		Doc:   "Whether players may wear jewelry.",
		Values: []Value{
			{"allowed", "yes, where it is safe"},
			{"none", "no, religious and medical pieces apart"},
			{"if-safe", "where it can injure nobody; the first referee judges it"},
			{"studs-above-chin", "studs or posts above the chin, and religious or medical pieces that are taped"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {mem("if-safe", "4.5.1; 4.5.3", "objects that may injure or give an advantage are forbidden")},
			club: {pub("allowed", "4.5.1", wornBulletin, "jewelry is allowed where it is safe").doubt("read in passing in a bulletin on earbuds")},
			coll: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			scho: {
				mem("none", "4-1", "no jewelry but religious and medical pieces").until(2022).doubt("from memory, confidence medium"),
				mem("studs-above-chin", "4-1", "studs or posts above the chin since 2023; other jewelry comes off").since(2023).doubt("number from memory; confidence medium-high"),
			},
		},
	},
	{
		Param: "equipment.net-sleeve",
		Title: "Printed net sleeve",
		Doc:   "Whether a sleeve over the net's tape or cable may carry print.",
		Values: []Value{
			{"allowed", "yes, where it is well fastened and within the width"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {mem("unknown", "", "not known").doubt("no text on it was seen; advertising follows event rules")},
			club: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			coll: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			scho: {pub("allowed", "3-1", schoolQuestions, "a white sleeve within the width limit, well fastened, may carry print").doubt("number from memory")},
		},
	},
	{
		Param: "equipment.religious-or-medical",
		Title: "Religious or medical piece",
		Doc:   "Who decides on a religious or medical exception to what is worn.",
		Values: []Value{
			{"governing-body", "the body that governs the event, not the referee; safety is still judged"},
		},
		cells: table{
			intl: {mem("governing-body", "4.5", "an exception is the organiser's to grant").doubt("confidence low-medium")},
			club: {mem("governing-body", "4.5", "the region's own procedure for exceptions").doubt("confidence medium")},
			coll: {mem("governing-body", "", "the association's procedure for exceptions").doubt("confidence low")},
			scho: {mem("governing-body", "4-1; 4-2", "the state association's procedure; religious headwear needs none in recent books").doubt("confidence low-medium")},
		},
	},
	{
		Param: "equipment.shorts-length",
		Title: "Length of shorts",
		Doc:   "Whether shorts of one team may differ in length.",
		Values: []Value{
			{"may-differ", "yes, where style and colour are alike"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {mem("unknown", "", "not known").doubt("the book asks for uniform shorts; no line on length was seen")},
			club: {pub("may-differ", "4.3.1", wornBulletin, "length does not matter where style and colour are alike").doubt("number from memory")},
			coll: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			scho: {mem("may-differ", "4-2", "bottoms alike in colour may differ in style and length").doubt("confidence low-medium")},
		},
	},
}
