package notation

import (
	"example.org/netpost/engine/court"
	"example.org/netpost/engine/play"
)

// courtOp is what a row of the court's lexicon does.
type courtOp uint8

const (
	coIgnore  courtOp = iota // read, and tells nothing that a ruling turns on
	coAsk                    // asks, or names the fault that is asked about
	coDepth                  // how the one told of stands to the next one, from the net
	coAcross                 // the same from side to side
	coEven                   // level, in the direction in which the two are compared
	coAir                    // the one told of is in the air
	coPlace                  // the one told of is so far from the net
	coInside                 // the one told of is inside or outside the court
	coTime                   // when they stood so
	coOrder                  // a team is in order or out of it
	coEarly                  // somebody left early: perhaps out of order
	coReceive                // the team told of receives
	coPairs                  // who is compared is asked
	coNot                    // a denial
	coOrNot                  // whether a team is in order is left open
	coFor                    // the libero told of is in for the next one
	coBoth                   // both teams are told of
)

// courtRow is a row of that lexicon. A pattern is words in base form, parted by
// blanks; "a|b" is one of several, a field with ? at its end may be missing,
// "#" is a number, "@" the name of a side. The words of a length before a row belong to it.
type courtRow struct {
	pattern string
	op      courtOp
	value   play.Value
}

// The places of a player who is told to stand by a line.
const (
	byLineOn     play.Value = "on"     // on the attack line
	byLineBehind play.Value = "behind" // behind it, by a length where one is told
	byLineFront  play.Value = "front"  // before it
	byNet        play.Value = "net"    // from the net or the centre line
)

// courtRows is sorted by operation, then by pattern. Trade words, common
// practice.
var courtRows = []courtRow{
	{"and|but|so|then|still|also", coIgnore, ""},
	{"at|as|when|on same|this|that? moment|time", coIgnore, ""},
	{"clearly|slightly|well|way|just|barely|exactly|obviously|clear|far|further|farther|directly|straight", coIgnore, ""},
	{"is|was|are|were|be|been|being|has|have|had|do|did|does|end|get|move|step|go|come|up|to|on|with|in|by|for|a", coIgnore, ""},
	{"under new? book|rule", coIgnore, ""},
	{"stack left|right|middle? in|on? serve? receive", coReceive, ""},
	{"stack left|right|middle?", coIgnore, ""},
	{"start|stand|stay|stood", coIgnore, ""},
	{"set|line up", coIgnore, ""},
	{"sub|subbed in? server?", coIgnore, ""},
	{"with nobody between", coIgnore, ""},
	{"call it", coAsk, ""},
	{"is|was that|this|it|they|she|he? legal|illegal|ok|okay|allowed|fine|overlap|overlapped|overlapping anymore|now?", coAsk, ""},
	{"legal|illegal|ok|okay|fine|fault|overlap", coAsk, ""},
	{"positional|position|alignment|overlap|rotation|rotational fault|violation|error", coAsk, ""},
	{"what|which|whats is? call|ruling", coAsk, ""},
	{"whistle it|this as? position|positional|overlap fault?", coAsk, ""},
	{"ahead|forward of", coDepth, court.Ahead},
	{"close|closer|near|nearer to? net|<cline> than", coDepth, court.Ahead},
	{"in front of", coDepth, court.Ahead},
	{"further|farther up|forward than", coDepth, court.Ahead},
	{"behind", coDepth, court.Behind},
	{"deep|deeper than", coDepth, court.Behind},
	{"further|farther back|off|away from? net|<cline>? than", coDepth, court.Behind},
	{"in back of", coDepth, court.Behind},
	{"further|farther left than", coAcross, court.ToTheLeft},
	{"left|leftside of", coAcross, court.ToTheLeft},
	{"on left? side of", coAcross, court.ToTheLeft},
	{"further|farther right than", coAcross, court.ToTheRight},
	{"on right? side of", coAcross, court.ToTheRight},
	{"right of", coAcross, court.ToTheRight},
	{"even|level with|to", coEven, ""},
	{"in line with", coEven, ""},
	{"airborne after? jump?", coAir, ""},
	{"both? foot is|are|was|were? off floor|ground", coAir, ""},
	{"in air", coAir, ""},
	{"jump just? before|as serve|service|hit|contact hit|contact?", coAir, ""},
	{"jump|leap", coAir, ""},
	{"behind <aline>|it", coPlace, byLineBehind},
	{"in front of <aline>|it", coPlace, byLineFront},
	{"inside <aline>", coPlace, byLineFront},
	{"from|off net|<cline>", coPlace, byNet},
	{"on <aline>", coPlace, byLineOn},
	{"out|outside of? bounds|court|sideline|side-line", coInside, court.OutsideHalf},
	{"off court", coInside, court.OutsideHalf},
	{"outside side line", coInside, court.OutsideHalf},
	{"both? foot on line|sideline", coInside, court.OnTheLine},
	{"both? foot on side|end|boundary line", coInside, court.OnTheLine},
	{"foot over <cline> on|onto? @? court|side|half?", coInside, court.OverTheLine},
	{"foot over on opponent|other|@ side|court", coInside, court.OverTheLine},
	{"at|on serve|service|contact contact|hit?", coTime, court.AtContact},
	{"at hit", coTime, court.AtContact},
	{"at|on server|serving contact|hit", coTime, court.AtContact},
	{"when|as ball|serve|it|server is|was? serve|hit|contact|toss? it?", coTime, court.AtContact},
	{"when|as it|she|he|they is|was? serve|hit", coTime, court.AtContact},
	{"before serve|service|contact|hit is|was? contact|hit?", coTime, ""}, // perhaps at the contact too: a question
	{"before serve|service|contact|hit contact|hit? only", coTime, court.BeforeContact},
	{"move|step|get up|back? in time", coTime, court.BeforeContact},
	{"right? after serve|service|contact|hit is|was? contact|hit? only?", coTime, court.AfterContact},
	{"in order|position", coOrder, court.InTheOrder},
	{"misalign|misaligned", coOrder, court.OutOfTheOne},
	{"out of position|alignment|rotation", coOrder, court.OutOfTheOne},
	{"overlap|overlapped|overlapping at service|serve? contact|hit|serve", coOrder, court.OutOfTheOne},
	{"be overlap|overlapped|overlapping", coOrder, court.OutOfTheOne},
	{"illegal alignment", coOrder, court.OutOfTheOne},
	{"early release", coEarly, ""},
	{"leave|release|go|move early before? serve|service|contact|hit? contact|hit?", coEarly, ""},
	{"captain|coach ask|asks i|me? to watch|look if|for", coIgnore, ""},
	{"even|still? illegal|legal anymore|now", coAsk, ""},
	{"obviously ok|legal|fine", coAsk, ""},
	{"in|on? serve receive|reception", coReceive, ""},
	{"on|in? receive", coReceive, ""},
	{"get compare|compared with? for? overlap|alignment?", coPairs, ""},
	{"what|which|who pair matter|count", coPairs, ""},
	{"what|which|who pair is|are? compare|compared for? overlap|alignment?", coPairs, ""},
	{"who do|does?", coIgnore, ""},
	{"not", coNot, ""},
	{"or not", coOrNot, ""},
	{"in for", coFor, ""},
	{"replacing|replace", coFor, ""},
	{"both|each team|side", coBoth, ""},
}

// positionNames are what a position is called, in base form. Sorted.
var positionNames = []struct {
	words string
	is    court.Position
}{
	{"cb", court.CentreBack}, {"center back", court.CentreBack}, {"center front", court.CentreFront}, {"centre back", court.CentreBack},
	{"centre front", court.CentreFront}, {"cf", court.CentreFront}, {"lb", court.LeftBack}, {"left back", court.LeftBack},
	{"left front", court.LeftFront}, {"lf", court.LeftFront}, {"mf", court.CentreFront}, {"middle back", court.CentreBack},
	{"middle front", court.CentreFront}, {"rb", court.RightBack}, {"rf", court.RightFront}, {"right back", court.RightBack},
	{"right front", court.RightFront},
}

// courtRoles are what a person is called. Sorted.
var courtRoles = []struct {
	word string
	role play.Role
	bare bool // it names nobody in particular
}{
	{"backrow", play.NoRole, true}, {"girl", play.NoRole, true}, {"hitter", play.Hitter, false}, {"kid", play.NoRole, true}, {"lib", play.Libero, false}, {"libero", play.Libero, false},
	{"mb", play.Middle, false}, {"middle", play.Middle, false}, {"oh", play.Outside, false}, {"one", play.NoRole, true},
	{"opp", play.Opposite, false}, {"opposite", play.Opposite, false}, {"outside", play.Outside, false}, {"player", play.NoRole, true},
	{"receiver", play.NoRole, true}, {"server", play.Server, false}, {"setter", play.Setter, false},
}
