package notation

import "example.org/netpost/engine/deadball"

// deadTables are the tables of the lexicon of dead-ball acts.
var deadTables = [][]deadPhrase{deadRequests}

// deadBeside are the kinds that may be told beside the act asked about, which
// is named first, without changing what it is.
var deadBeside = [][2]deadball.Kind{
	{deadball.Substitution, deadball.TimeOut},
	{deadball.TimeOut, deadball.Substitution},
}

// deadFillers carry nothing in the telling of a dead-ball act.
const deadFillers = "a accept allow allowed an and as but can correct could fine give grant he her him his if is it its legal " +
	"let may might must next official officials ok okay or permit ref referee right she should so still take " +
	"that them then there they this up us want we what when which would yet"

// deadRequests says time-outs and substitutions and their moments. Sorted.
var deadRequests = []deadPhrase{
	{"after [serve/service] whistle [for] [serve/service]", "moment=after-whistle"},
	{"after beckon/authorization/signal", "moment=after-whistle"},
	{"another", "again"},
	{"as i/r1/referee [am] about to whistle", "moment?"},
	{"ask/asks/request/want/call/signal/push/buzz [for]", "request"},
	{"assistant [coach]", "person:assistant"},
	{"before [next] serve/service/whistle/beckon", "moment=before-whistle"},
	{"captain", "person:captain"},
	{"coach", "person:coach"},
	{"during rally", "moment=rally"},
	{"in same dead ball", "quiet"},
	{"make/take/use/complete/have", "done"},
	{"one time out left", "time-outs-left=yes"},
	{"same dead ball", "quiet"},
	{"sub/substitution/substitute", "thing:substitution"},
	{"third time/timeout [out]", "thing:time-out time-outs-left=no"},
	{"time out", "thing:time-out"},
	{"timeout", "thing:time-out"},
}
