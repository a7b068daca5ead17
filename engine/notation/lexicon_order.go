package notation

import (
	"example.org/netpost/engine/court"
	"example.org/netpost/engine/play"
)

// orderOp is what a row of the lexicon of the order of service does.
type orderOp uint8

const (
	orIgnore  orderOp = iota // read, and tells nothing that a ruling turns on
	orTrouble                // what is wrong with the order
	orFive                   // fewer than six players
	orFound                  // when it was found
	orPoints                 // points were scored by the side that is wrong
	orLate                   // it was found or said then
	orMoment                 // whether the moment it began is known
	orCost                   // one point or two is asked
	orAsk                    // what to do is asked
)

// orderRow is a row of that lexicon, written as those of the court are; "@" is
// the name of a side, "#-#" a score.
type orderRow struct {
	pattern string
	op      orderOp
	trouble court.Trouble
	value   play.Value
}

// orderRows are trade words, common practice.
var orderRows = []orderRow{
	{"wrong server|player|kid|girl|person serve?", orTrouble, court.WrongServer, ""},
	{"wrong server|player|kid|girl|person serving", orTrouble, court.WrongServer, ""},
	{"improper server", orTrouble, court.WrongServer, ""},
	{"serve out of order|turn|rotation", orTrouble, court.WrongServer, ""},
	{"server out of order|turn|rotation", orTrouble, court.WrongServer, ""},
	{"be out of rotation for # point|rally|serve", orTrouble, court.WrongOrder, ""},
	{"play in? wrong rotation|order", orTrouble, court.WrongOrder, ""},
	{"in wrong rotation|order for # point|rally|serve", orTrouble, court.WrongOrder, ""},
	{"r2|r1|ref|referee|official|scorer|scorekeeper|table|i|we give|tell @? team? wrong server|order|rotation|lineup", orTrouble, court.OfficialOrder, ""},
	{"r2|r1|ref|referee|official|scorer|scorekeeper|table|i|we put @? team? in wrong one|order|rotation|lineup", orTrouble, court.OfficialOrder, ""},
	{"both team and? coach? lose|lost @? rotation|order|place?", orTrouble, court.BothLost, ""},
	{"both team be? lost", orTrouble, court.BothLost, ""},
	{"both side lose|lost @? rotation|order", orTrouble, court.BothLost, ""},
	{"vacant|empty|open|missing position|spot|place|hole rotate|come back|around? around? to|into serve|right? back?", orTrouble, court.VacantServes, ""},
	{"gap|hole reach|reaches|rotate|rotates to? serve|right back?", orTrouble, court.VacantServes, ""},
	{"play|playing|down with|to only? #", orFive, "", ""},
	{"only? # player", orFive, "", ""},
	{"@? have|has only? # player", orFive, "", ""},
	{"before @ have|has|had serve|served", orFound, "", court.FoundTerm},
	{"before opponent|receiver|receivers have|has|had serve|served", orFound, "", court.FoundTerm},
	{"before @ serve|serves|served|contact serve?", orFound, "", court.FoundTerm},
	{"@ have|has|had not serve|served since|yet|again?", orFound, "", court.FoundTerm},
	{"while|when|and she|he|they|@ is|be|are? still serving|serve", orFound, "", court.FoundTerm},
	{"still serving", orFound, "", court.FoundTerm},
	{"in same term of? service?", orFound, "", court.FoundTerm},
	{"during same? term of? service?", orFound, "", court.FoundTerm},
	{"after @ have|has|had serve|served since?", orFound, "", court.FoundLater},
	{"@ have|has|had already? serve|served since|again?", orFound, "", court.FoundLater},
	{"# rotation later", orFound, "", court.FoundLater},
	{"next term|time around?", orFound, "", court.FoundLater},
	{"right? after rally|point|play", orFound, "", court.FoundRally},
	{"til|till|until rally|point be|is|was over|done|end", orFound, "", court.FoundRally},
	{"during|in rally|play", orFound, "", court.FoundRally},
	{"at hit|contact", orFound, "", court.FoundRally},
	{"as she|he hit it", orFound, "", court.FoundRally},
	{"before she|he|they serve|serves|hit|contact it?", orFound, "", court.FoundBefore},
	{"before serve|service|whistle|contact|hit contact?", orFound, "", court.FoundBefore},
	{"have|has not serve|served yet?", orFound, "", court.FoundBefore},
	{"score|win|get|make|earn|serve # point|pt|serve in? row?", orPoints, "", ""},
	{"score|win|get # point|pt on serve", orPoints, "", ""},
	{"score|win|get|run some|few|several|more? point|pt", orPoints, "", ""},
	{"score|win|get point|pt", orPoints, "", ""},
	{"for # point|pt|serve|rally", orPoints, "", ""},
	{"go|be|is up? #-#", orLate, "", ""},
	{"# point|pt run|later|in? in? row?", orPoints, "", ""},
	{"# point|pt on serve", orPoints, "", ""},
	{"before table|scorer|anyone|anybody|we|i|r2|scorekeeper|someone|bench|book catch|notice|find|found|see it?", orLate, "", ""},
	{"and? then scorer|table|scorekeeper|bookkeeper say|tell|call", orLate, "", ""},
	{"sheet|score|book sheet? show|shows when it? begin|start", orMoment, "", play.Yes},
	{"nobody|noone|none know|knows|remember when|since", orMoment, "", play.No},
	{"nobody can tell|say when it? begin|start", orMoment, "", play.No},
	{"1|one point or 2|two point?", orCost, "", ""},
	{"1|one or 2|two point", orCost, "", ""},
	{"how many point do|does? it? cost|lose?", orCost, "", ""},
	{"how do|should|can? i|we|you fix|handle|correct it|this|that?", orAsk, "", ""},
	{"what now|do|happen|come off?", orAsk, "", ""},
	{"now what", orAsk, "", ""},
	{"which|what point come|comes off", orAsk, "", ""},
	{"fix|skip|ruling|call|penalty", orAsk, "", ""},
	{"what do|should|happen i|we|r2|you? do?", orAsk, "", ""},
	{"do i|we|you skip it?", orAsk, "", ""},
	{"find|found|catch|notice|discover|spot|report|tell|say", orIgnore, "", ""},
	{"nobody|noone notice|say|see anything|something?", orIgnore, "", ""},
	{"table|scorer|scorekeeper|r2|r1|ref|referee|bench|assistant|we|i find|found|catch|notice|say|see|report|signal it|that|this?", orIgnore, "", ""},
	{"first|second server", orIgnore, "", ""},
	{"all along|set|game", orIgnore, "", ""},
	{"timeout|timeouts be? used|use|taken|call by @ at #", orIgnore, "", ""},
	{"@ use|used|take|took|call # timeout|timeouts|time out?", orIgnore, "", ""},
	{"at # and #", orIgnore, "", ""},
	{"after timeout|time out?", orIgnore, "", ""},
	{"@ lose|lost|win|won it|rally|point|that?", orIgnore, "", ""},
	{"which @ lose|lost|win|won", orIgnore, "", ""},
	{"@ had|have|has|put", orIgnore, "", ""},
	{"coach ask|asks i|me? @? order|rotation|lineup", orIgnore, "", ""},
	{"scorer|scorekeeper|table only|just keep|kept score", orIgnore, "", ""},
	{"score sheet show|shows only score", orIgnore, "", ""},
	{"# middle|setter on floor|court", orIgnore, "", ""},
	{"so right|correct one|server|player go|step back|in?", orIgnore, "", ""},
	{"and|but|so|then|since|yet|still|also|she|he|that|it|first", orIgnore, "", ""},
	{"in row", orIgnore, "", ""},
	{"@", orIgnore, "", ""},
	{"team", orIgnore, "", ""},
	{"for|at|on|of|in|to|the|a|had|have|with|so|now|when|while|who|whole", orIgnore, "", ""},
	{"#-#", orIgnore, "", ""},
}
