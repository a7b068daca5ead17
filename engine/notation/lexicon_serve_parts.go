package notation

import "strings"

// serveMacros stand for fields that many patterns share.
var serveMacros = strings.NewReplacer(
	"{p}", "player|kid|girl|boy|guy|child|teammate|middle|setter|blocker|hitter|outside|opposite|mb|oh|people|lady|woman|man|defender|one",
	"{kid}", "player|kid|girl|boy|guy|child|lady|woman|man|person|dude|gal",
	"{line}", "end|back|base|service|serving? line|endline|baseline|backline",
	"{w}", "whistle|beckon|beckoning|signal|authorization|authorisation|authorize",
	"{r1}", "r1|ref|referee|i|official|we",
	"{hit}", "contact|hit|strike|serve|swing|touch|smack|whack|pound|swat|push|punch|poke|slap",
	"{meet}", "touch|hit|clip|nick|tick|graze|brush|catch|strike|nail|smack|kiss|scrape|skim|bump|find|drill|smoke|peg|bean|plunk|hammer|whack|thump",
	"{meets}", "touch|hit|clip|nick|tick|graze|brush|catch|strike|nail|smack|kiss|scrape|skim|bump|find|drill|smoke|peg|bean|plunk|whack|thump|bonk|ping|bounce|ricochet|carom off|into|on?",
	"{plays}", "play|dig|pop|save|get|hit|bump|pass|bring|keep|scoop|touch|knock|poke|volley|take|return|hammer|send|put|flip|swat|punch|bat|push",
	"{step}", "step|stepped|stand|walk|drag|put|tread",
	"{wh}", "whistle|blow|beckon|signal|authorize|authorise|wave",
	"{over}", "over|across|past|through",
)

// serveParts are phrases that many patterns share, by name. Sorted by name.
var serveParts = []struct {
	name    string
	phrases []string
}{
	{"actor", []string{"@S", "@S setter|libero|outside|middle|opposite|defender|hitter|{kid}|blocker|digger|passer|one", "@S back|front row {kid}", "@S outside|middle|right? side? hitter",
		"setter|libero|outside|middle|opposite|defender|hitter|digger|passer|player|kid|girl|guy", "she|he|who", "<label>", "@S <label>"}},
	{"athit", []string{"at|on|upon|before contact|hit|strike|serve", "at moment|time of contact|hit|strike|serve", "at serve|service contact|hit",
		"when|as|while $server {hit} $ball?", "as|when ball leave @X? hand", "just? as|when $server {hit} $ball?", "during serve|service", "on jump? serve|take off|takeoff|approach",
		"at take off|takeoff"}},
	{"ball", []string{"ball|it", "serve"}},
	{"chases", []string{"chase", "go|run|dive|sprint|race after|for|down", "track down", "pursue"}},
	{"fans", []string{"parent|fan|mom|dad in row|section|stand|bleacher #?", "fan|spectator|parent|coach|cameraman|camera|kid|photographer|trainer|ballboy|retriever|scorer|scorekeeper|timer|people", "@X coach|sub|substitute|assistant|bench player?", "ball retriever|kid|girl|boy|person", "one of @X sub|coach|bench player?"}},
	{"foot", []string{"her|his|their? front|back|left|right|lead|plant? foot|toe|heel|shoe|sneaker|feet", "both? foot|feet", "her|his? whole|entire|left|right foot", "@S foot|toe|heel",
		"server foot|toe|heel|shoe", "big toe", "half|part|edge|tip of foot|shoe|toe", "heel|toe"}},
	{"gets", []string{"get", "get|got to", "run down", "come up with", "still get|dig|play"}},
	{"goes", []string{"ball|it?", "just|then|still?", "go|goes|come|fly|sail up? and"}},
	{"hangs", []string{"hang|hanging|vertical|side|low|retracted|folded? basketball? backboard|hoop|basket|rim|goal", "low? cable|rope|banner|strap|beam|pipe|light|speaker"}},
	{"high", []string{"one of? $highs", "$highs"}},
	{"highs", []string{"ceiling", "ceiling beam|fan|tile|light|pipe", "rafter|beam|truss|duct|roof|joist|girder|light|fan|pipe|vent", "overhead|ceiling|heating|hvac|air? duct|light|beam|pipe|fixture|heater|vent",
		"light fixture", "jumbotron", "scoreboard above", "overhead|hanging? speaker hang|hanging? from? ceiling|rafter?", "fixture|thing|unit|duct hang|hanging from ceiling|rafter"}},
	{"hoop", []string{"hang|hanging? basketball? backboard|hoop|basket|rim|goal", "retract|retracted|raised|folded basketball? backboard|hoop|basket|rim|goal"}},
	{"line", []string{"end|base|back|service|serving line", "endline|baseline|backline", "line", "paint|edge|chalk|tape|part of end|base|back|service? line|endline|baseline"}},
	{"low", []string{"hang|hanging? basketball? backboard|hoop|basket|rim|goal", "divider? curtain|net divider", "divider", "strap|banner|rope|backboard|cable"}},
	{"man", []string{"official|referee|ref|umpire|r1|r2|<lj>", "down|up|line ref|official|referee|judge|person|guy|lady", "second|first referee|official", "@X down|up? ref|r2|r1|official|judge", "line judge|official"}},
	{"mate", []string{"teammate", "@S? teammate|mate", "teammate of server", "server teammate", "@S middle|setter|blocker|hitter|outside|opposite|libero|{kid}",
		"@S front|back row {p}", "@S outside|right|left|middle|back? side|row? hitter|blocker", "@S mb|oh|rs|opp", "@S <label>", "one of @S {kid}?", "one of @S teammate", "@S right|left|middle|center front|back"}},
	{"official", []string{"official|r2|r1|referee|ref|umpire", "down|up ref|official", "<lj>", "second|first referee", "ref|official stand|ladder", "stand"}},
	{"outer", []string{"post|pole|standard|upright", "net cable|cord|cable", "net post|pole|standard"}},
	{"places", []string{"bleacher|stand|bench|chair|seat|table|barrier|wall|rail|fence|curtain|divider|cable|stage|step", "pulled|pull out? bleacher", "folded? chair|bleacher|table", "@X bench|chair|table",
		"score|scorer|scorekeeper|official|announcer|press|media table|bench|row", "team bench|chair", "non|no playing|playable|play area|surface", "first|second|third|fourth|front row|step|seat|bleacher", "row of chair|seat|bleacher"}},
	{"receiver", []string{"@R", "@R passer|libero|player|{kid}|defender|back|front? row?", "@R back|front row {kid}", "passer|receiver", "@R # back|front? row? {kid}", "@R back|front row and back|front row", "@R back|front row"}},
	{"seconds", []string{"# second|sec|s", "like|about|around|maybe|probably # second|sec"}},
	{"server", []string{"@S", "@S? server", "@S? jump|float|floater|topspin server", "@S {kid}", "@S {p}", "she|he", "<label>", "player|kid|girl|boy|guy|lady|dude|woman|man"}},
	{"shanks", []string{"shanked|bad|errant|wild|ugly"}},
	{"sidemark", []string{"right|left? sideline hash? mark?", "side? hash? mark|line|hash of? service|serving? zone|area?", "service|serving zone|area", "sideline extension|extended?", "extension|extended of? sideline|side? line?", "extended sideline|side? line?"}},
	{"signal", []string{"{w}", "{w} for? service|serve", "r1|ref|referee|official|up {w}", "{r1} {wh} it? service|serve?", "{r1} {wh} for service|serve", "i blow whistle", "whistle blow"}},
	{"stuff", []string{"wall|curtain|divider|bleacher|bench|chair|table|railing|rail|fence|pad|padding|cart|stage|door|mat|trash|scoreboard|banner", "@X bench|chair|table", "scorer|score|scorekeeper|official table|bench", "official|ref|referee|r1|up stand|ladder|chair|platform",
		"divider|dividing curtain|net", "stand|ladder|platform", "ball cart|rack|bag", "wall pad", "curtain between court", "@X warm up area", "team bench|chair"}},
	{"sv", []string{"@S? serve", "@S? jump|float|topspin serve", "ball|it", "served|serve ball"}},
	{"toss", []string{"toss", "@S? toss", "toss ball", "second|first? toss"}},
	{"where", []string{"court|floor|net|line|sideline|endline|corner|zone|feet|foot|leg|heel|play", "@X? hitter|setter|libero|passer|defender|player|middle|outside|server|{kid} feet|foot|leg?", "far|near|side|back|end line|sideline|side|corner|court", "far|near back corner|side", "playing? area|surface|court", "side|end line"}},
}

// serveAsides are words that may stand anywhere in what is told of a serve, and
// say nothing there.
var serveAsides = wordSet("anyway apparently basically completely dang definitely did do does finally forever honestly instead kinda like " +
	"literally lol maybe omg probably somehow sort super tad though too totally way whole")

// serveTalkers are those whose words are no facts.
var serveTalkers = wordSet("announcer assistant bench captain captains coach coaches crowd dad everybody everyone fans i i'm lj ljs <lj> mom official parent parents partner " +
	"i people r1 r2 ref referee scorer she someone somebody table they umpire up down he")

// serveWhose tells which of those who talk.
var serveWhose = wordSet("assistant head home old opposing other visiting")

// serveAuxiliary may stand between those who talk and the verb.
var serveAuxiliary = wordSet("am are been did do does is keeps kept now was were just always starts started immediately")

// serveSays are what they do.
var serveSays = wordSet("argue argued ask asked asking beg call complain complained cry disagree flag gripe insist insisted moan object point protest " +
	"pop raise say said scream shout swear think thought want whine wonder yell")

// serveGate are the words without one of which no serve and no stop of play is
// told.
var serveGate = wordSet("serve service server beckon toss tossed whistle authorize authorise ankle injure hurt disagree overlap float floater ace baseline endline screen passer passers second seconds sec hash line huddle catch disagreement antenna shoulder side contact r1 r2 ref wave jump")
