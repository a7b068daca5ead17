package code

import "slices"

// Signal is how a code's officials show a call.
type Signal struct {
	ID     string
	Name   string
	Number string // in the code's list of signals; empty where no source for one is held
	Text   string // the gesture, or what the signal stands for where the gesture was not seen
	Basis  Basis
	Source string
	Doubt  string
}

// Signals lists the ids of every signal, sorted.
func Signals() []string {
	ids := make([]string, 0, len(signalRows))
	for _, r := range signalRows {
		ids = append(ids, r.id)
	}
	return ids
}

// Signal gives the book's signal of an id, and false for an unknown id.
func (b *Book) Signal(id string) (Signal, bool) {
	i, ok := slices.BinarySearchFunc(signalRows, id, func(r signalRow, id string) int {
		switch {
		case r.id < id:
			return -1
		case r.id > id:
			return 1
		}
		return 0
	})
	if !ok {
		return Signal{}, false
	}
	return signalRows[i].of(b.code), true
}

// signalRow is one signal in every code. The club book reprints the
// international list; the collegiate list was not found, so its signals are the
// international ones without a number.
type signalRow struct {
	id      string
	name    string
	number  string // in diagram 11 of the international rules
	gesture string
	clubAs  string // the club wording of the gesture where it differs
	school  school
	// practice marks a signal that no list names: it is shown by common
	// practice in every code.
	practice bool
}

// school is the signal of the US high-school list.
type school struct {
	name   string
	number string
	text   string
	basis  Basis
	doubt  string
}

func (r signalRow) of(c Code) Signal {
	s := Signal{ID: r.id, Name: r.name, Text: r.gesture}
	switch c {
	case International:
		s.Number, s.Basis, s.Source = r.number, Published, fivb2025+", diagram 11"
	case Club:
		s.Number, s.Basis, s.Source = r.number, Published, usaSignals
		if r.clubAs != "" {
			s.Text = r.clubAs
		}
	case Collegiate:
		s.Basis, s.Source = Memory, c.fromMemory()
		s.Doubt = "the collegiate list of signals was not found; the international gesture is taken; confidence medium"
	case Scholastic:
		s.Name, s.Number, s.Text, s.Basis, s.Doubt = r.school.name, r.school.number, r.school.text, r.school.basis, r.school.doubt
		switch s.Basis {
		case Published:
			s.Source = schoolSignals + "; " + schoolPictures
		case Practice:
			s.Source = noSource
		case Memory:
			s.Source = c.fromMemory()
		}
	}
	if r.practice {
		s.Number, s.Basis, s.Source = "", Practice, noSource
		s.Doubt = "no list names a signal for it"
	}
	return s
}

// noSource is the source of what the trade does without a text.
const noSource = "common practice, no source"

// signalRows is sorted by id. Gestures are from the official hand signals of
// the international rules, diagram 11.
var signalRows = []signalRow{
	{
		id: "assisted", name: "assisted hit, shown as a caught ball", gesture: "forearm lifted slowly, palm up",
		school:   school{name: "assisted hit, shown as an illegal hit", text: "as an illegal hit", basis: Practice},
		practice: true,
	},
	{
		id: "attack-fault", name: "attack-hit fault", number: "21", gesture: "downward motion of the forearm",
		school: school{name: "illegal attack", number: "7", text: "illegal attack by a back-row player or the libero, or on a serve",
			basis: Published, doubt: "number from the picture list; confidence medium-high"},
	},
	{
		id: "ball-in", name: "ball in", number: "14", gesture: "arm and fingers to the floor",
		school: school{name: "ball in", number: "12", text: "ball lands inbounds",
			basis: Published, doubt: "number from the picture list; confidence medium-high"},
	},
	{
		id: "ball-not-released", name: "ball not tossed or released", number: "10", gesture: "arm lifted, palm up",
		school: school{name: "illegal hit", number: "3", text: "the signal of an illegal hit covers an illegal service", basis: Published},
	},
	{
		id: "ball-out", name: "ball out", number: "15", gesture: "forearms vertical, palms to the body",
		school: school{name: "out of bounds", text: "out of bounds or antenna",
			basis: Published, doubt: "its number, 13, is from memory only; confidence low-medium"},
	},
	{
		id: "begin-serve", name: "authorize service", number: "1", gesture: "hand sweeps in the serving direction",
		school: school{name: "begin serve", text: "begin serve",
			basis: Practice, doubt: "its number, 15, is common practice without a source"},
	},
	{
		id: "block-or-screen", name: "blocking fault or screen", number: "12", gesture: "both arms up, palms forward",
		school: school{name: "illegal block or screen", number: "8", text: "illegal block or screening", basis: Published},
	},
	{
		id: "caught", name: "caught ball", number: "16", gesture: "forearm lifted slowly, palm up",
		school: school{name: "illegal hit", number: "3", text: "illegal hit; also more than one re-serve in a term of service", basis: Published},
	},
	{
		id: "change-courts", name: "change of courts", number: "3", gesture: "forearms turned around the body",
		school: school{name: "change of courts", text: "change of courts", basis: Memory, doubt: "number not seen"},
	},
	{
		id: "delay", name: "delay warning or penalty", number: "25", gesture: "card on the wrist: yellow for a warning, red for a penalty",
		school: school{name: "unnecessary delay", number: "21", text: "hand raised beside the head, card on the wrist", basis: Published},
	},
	{
		id: "double-contact", name: "double contact", number: "17", gesture: "two fingers",
		school: school{name: "double hit", number: "11", text: "multiple contacts",
			basis: Published, doubt: "number from the picture list; confidence medium-high"},
	},
	{
		id: "end-of-set", name: "end of set or match", number: "9", gesture: "forearms crossed on the chest",
		school: school{name: "end of set", text: "end of set", basis: Memory, doubt: "number not seen"},
	},
	{
		id: "four-contacts", name: "four contacts", number: "18", gesture: "four fingers",
		school: school{name: "four contacts", text: "four hits",
			basis: Published, doubt: "number in conflict: 10 in a picture list, while an exam gives 10 to the point; confidence low"},
	},
	{
		id: "line", name: "penetration or foot fault", number: "22", gesture: "point to the line",
		school: school{name: "line violation", number: "2", text: "line violation, end line or centre line", basis: Published},
	},
	{
		id: "misconduct", name: "misconduct", number: "6-8", gesture: "6a yellow card, 6b red card, 7 both together, 8 both apart",
		school: school{name: "misconduct", text: "yellow, red or both cards", basis: Memory, doubt: "number not seen"},
	},
	{
		id: "net", name: "net touched by a player or by a serve that does not cross", number: "19", gesture: "point to the side of the net",
		school: school{name: "net foul or net serve", number: "6", text: "net foul or net serve", basis: Published},
	},
	{
		id: "over-net", name: "reaching beyond the net", number: "20", gesture: "hand over the net, palm down",
		school: school{name: "over the net", number: "5", text: "forearm over the net, palm down", basis: Published},
	},
	{
		id: "point", name: "team to serve", number: "2", gesture: "arm extended to the side that will serve",
		school: school{name: "point", text: "point or loss of rally awarded",
			basis: Published, doubt: "number in conflict: 10 in an exam, while a picture list gives 10 to four hits; confidence low"},
	},
	{
		id: "position", name: "position or rotation fault", number: "13", gesture: "circle with the forefinger",
		school: school{name: "illegal alignment", number: "1", text: "slow circle with the arm, palm down, then the player; " +
			"for an illegal alignment, an improper server or an inaccurate line-up", basis: Published},
	},
	{
		id: "replay", name: "double fault and replay", number: "23", gesture: "both thumbs up",
		school: school{name: "re-serve or replay", text: "re-serve or replay",
			basis: Practice, doubt: "its number, 19, was not seen in a source; confidence medium"},
	},
	{
		id: "serve-clock", name: "delay in service", number: "11", gesture: "eight fingers",
		school: school{name: "delay of service", number: "4", text: "hand raised, fingers spread (five)", basis: Published},
	},
	{
		id: "substitution", name: "substitution", number: "5", gesture: "forearms circle each other",
		school: school{name: "substitution", text: "two short whistles with a rolling motion, then authorization to enter",
			basis: Memory, doubt: "number not seen; the two whistles are from exam text"},
	},
	{
		id: "time-out", name: "time-out", number: "4", gesture: "T shape, then the team",
		school: school{name: "time-out", text: "time-out", basis: Memory, doubt: "number not seen"},
	},
	{
		id: "touched", name: "ball touched", number: "24", gesture: "palm brushed over upright fingers",
		clubAs: "palm brushed once over upright fingers",
		school: school{name: "ball touched", number: "9", text: "ball touched", basis: Published},
	},
}
