package notation

import (
	"sync"

	"example.org/netpost/engine/play"
)

// What a row of the surroundings does, beside what the serve's rows do.
const (
	grIgnore    serveOp = 100 + iota // read, and tells nothing that a ruling turns on
	grShot                           // a ball that a side has played
	grNth                            // so many-th of a side's contacts
	grBall                           // the ball
	grWho                            // a player
	grPlay                           // somebody plays the ball
	grStrike                         // the ball touches something
	grTear                           // it tears the net, or sticks in it
	grPlace                          // above which side the thing is
	grHigh                           // how high it is
	grCould                          // whether the ball could have been played
	grDown                           // the ball comes down
	grCross                          // the ball goes to the plane of the net
	grCrossPart                      // the ball has not gone wholly through it
	grPartly                         // whether it went completely through
	grArea                           // a place that is not for play
	grFoot                           // where the player stands or comes down
	grIntrude                        // something comes into the rally
	grGear                           // a player loses something
	grHinder                         // whether it hindered anybody
	grReturn                         // somebody brings a chased ball back
	grAreaBy                         // somebody goes to a place that is not for play
	grBlocks                         // an opponent is in the way
	grChased                         // a player goes after a pass into the opponents' free zone
	grOff                            // the player is off the playing surface
	grLandsOn                        // the ball, or the player in the air, comes down on something
	grPlayAir                        // somebody plays the ball in the air
	grInWay                          // somebody who does not play stands in the way
)

// groundGate are the words without one of which the surroundings have no part.
var groundGate = wordSet("antenna around backboard banner barrier basket beam bench bleacher cable camera ceiling chair coach cord court " +
	"curtain divider duct fan fence floor goal hoop judge <lj> light line mesh net official overhead own pad pipe pole post r1 r2 rafter rail ref referee rim " +
	"roof rope row scoreboard scorer seat shoe sneaker kneepad glove glasses headband spectator stand standard strap table truss umpire vent video wall roll corner lose lost surface area chase way playable")

var groundBook = sync.OnceValue(func() *patternBook { return bookOf(groundTables[:]) })

// groundTables are the tables of the surroundings' lexicon.
var groundTables = [...]*[]serveRow{&groundBalls, &groundPeople}

func grDoes(pattern string, op serveOp, v play.Value) serveRow {
	return serveRow{pattern: pattern, op: op, value: v}
}

// groundBalls tell of the ball and the things that it meets: trade words,
// common practice.
var groundBalls = []serveRow{
	// The ball that meets it.
	grDoes("$shanks? @S? pass|bump|shank|reception|receive|platform", grShot, play.Value(play.Pass)),
	grDoes("@S? serve receive|reception pass?", grShot, play.Value(play.Pass)),
	grDoes("@S? shanked|bad|errant|wild|ugly|overhand? pass|bump", grShot, play.Value(play.Pass)),
	grDoes("@S? shanked? dig|save", grShot, play.Value(play.Dig)),
	grDoes("@S? libero|setter|middle|outside|defender|{kid} dig|pass|save|shank|touch", grShot, play.Value(play.Dig)),
	grDoes("@S? free ball|freeball", grShot, play.Value(play.Pass)),
	grDoes("@S? set|overset|backset|back? set", grShot, play.Value(play.Set)),
	grDoes("@S? hitter|outside|middle|opposite? attack|spike|swing|shot|rollshot|tip", grShot, play.Value(play.Attack)),
	grDoes("@S hitter|outside|middle|opposite? hit|kill", grShot, play.Value(play.Attack)),
	grDoes("$goes hit|touch floor|court on|in|over @Y side|half|court?", grDown, play.In),
	grDoes("for|on kill|point", grIgnore, ""),
	grDoes("@S first contact|hit|ball|touch", grNth, "1"),
	grDoes("first contact|hit|touch", grNth, "1"),
	grDoes("@S second contact|hit|ball|touch", grNth, "2"),
	grDoes("second contact|hit|touch", grNth, "2"),
	grDoes("@S third contact|hit|ball|touch", grNth, "3"),
	grDoes("third contact|hit|touch", grNth, "3"),
	grDoes("@S ball", grShot, play.Value(play.Touch)),
	grDoes("@S shank it|ball", grPlay, play.Value(play.Pass)),
	grDoes("ball|it|which", grBall, ""),
	grDoes("come|go|fly|glance|bounce|ricochet off @S block", grPlay, play.Value(play.Block)),
	grDoes("off @S block", grPlay, play.Value(play.Block)),
	grDoes("off @S block|blocker|middle|outside hand|arm|finger|fingertip", grPlay, play.Value(play.Block)),
	grDoes("go|come|fly|bounce|ricochet off @S block|blocker|middle|outside hand|arm|finger|fingertip", grPlay, play.Value(play.Block)),
	grDoes("blocked by @S", grPlay, play.Value(play.Block)),
	grDoes("block deflect|knock|send it|ball down?", grPlay, play.Value(play.Block)),
	// What it meets.
	grDoes("$goes {meets} $high", grStrike, play.Ceiling),
	grDoes("$goes {meets} $high on|over|above @Y side|half|court?", grStrike, play.Ceiling),
	grDoes("go|goes|fly|sail up? in|into|to|off $high", grStrike, play.Ceiling),
	grDoes("go|goes|fly|sail up? in|into|to|off $high on|over|above @Y side|half|court?", grStrike, play.Ceiling),
	grDoes("off $high", grStrike, play.Ceiling),
	grDoes("off $high on|over|above @Y side|half|court?", grStrike, play.Ceiling),
	grDoes("$goes {meets} $hangs on|over|above|in @Y side|half|court?", grStrike, play.LowObject),
	grDoes("$goes {meets} $hangs", grStrike, play.LowObject),
	grDoes("$goes {meets} left|right|near|far? antenna", grStrike, play.Antenna),
	grDoes("$goes {meets} $outer", grStrike, play.Posts),
	grDoes("off $outer", grStrike, play.Posts),
	grDoes("$goes {meets} $man", grStrike, play.Official),
	grDoes("$goes {meets} $man in|on|off|right? back|side? of? shoulder|back|head|arm|leg|chest|hand|face", grStrike, play.Official),
	grDoes("$goes {meets} $man shoulder|back|head|arm|leg|chest|hand|face|shoe", grStrike, play.Official),
	grDoes("$goes {meets} $stuff", grStrike, play.OtherThing),
	grDoes("land|come|end|wind down? up? in|on|off $stuff", grLandsOn, play.OtherThing),
	grDoes("off $stuff", grStrike, play.OtherThing),
	grDoes("$goes {meets} $fans", grStrike, play.Bystander),
	grDoes("$goes {meets} $fans in|on|off shoulder|back|head|arm|leg|chest|hand|face|lap", grStrike, play.Bystander),
	grDoes("{meets} $high", grStrike, play.Ceiling),
	grDoes("{meets} $stuff", grStrike, play.OtherThing),
	// The net that breaks, the ball that stays up there.
	grDoes("$goes rip|tear|break net|mesh", grTear, play.NetBand),
	grDoes("$goes rip|tear hole in? net|mesh", grTear, play.NetBand),
	grDoes("$goes through|into? net|mesh and? rip|tear|ripped|tore|torn it|net?", grTear, play.NetBand),
	grDoes("$goes go|fly|get|drive? right|straight? through net|mesh and? rip|tear|ripped|tore|torn it|hole?", grTear, play.NetBand),
	grDoes("$goes get|got stuck|caught|lodged|wedged|trapped|tangled in|under? net|mesh|top?", grTear, play.NetBand),
	grDoes("$goes stick|stuck|lodge|lodged|wedge|wedged in net|mesh", grTear, play.NetBand),
	grDoes("and? stick|stay there", grIgnore, ""),
	grDoes("and? stick", grIgnore, ""),
	grDoes("in net", grIgnore, ""),
	grDoes("tear|rip net", grTear, play.NetBand),
	// Where it is, how high.
	grDoes("on|over|above @Y side|half|court", grPlace, ""),
	grDoes("on|over|above @Y", grPlace, ""),
	grDoes("directly? over|above @X head", grIgnore, ""),
	grDoes("# foot|ft|feet up|high|above|off floor|court|ground?", grHigh, ""),
	grDoes("# foot|ft|feet", grHigh, ""),
	grDoes("that? hang|hanging|hangs down|low? over|above|in playable? @X? court|area|floor", grIgnore, ""),
	grDoes("that? hang|stand|sit behind|beside|next|past to? endline|sideline|court|baseline", grIgnore, ""),
	grDoes("that? hang|stand|sit behind|beside|past end|side|base line", grIgnore, ""),
	grDoes("drift|float|sail and?", grIgnore, ""),
	grDoes("middle of rally", grIgnore, ""),
	grDoes("between|dividing two|both? court", grIgnore, ""),
	grDoes("by|next near to? @X bench|table|court", grIgnore, ""),
	// Where it then goes.
	grDoes("$goes come|drop|fall|bounce right|straight? back? down? on|to|in? @Y side|half|court?", grDown, ""),
	grDoes("$goes come|drop|fall right|straight? back? down", grDown, ""),
	grDoes("fall|drop|come straight|right? down", grDown, ""),
	grDoes("$goes stay on|over @Y side|half|court?", grDown, ""),
	grDoes("$goes drop|go|come|fall|bounce|carom|cross down? over|across net? to|into|in|on @Y side|half|court?", grCross, play.Between),
	grDoes("$goes drop|go|come|fall|bounce|carom|cross over|across net?", grCross, play.Between),
	grDoes("ball|it cross net|plane", grCross, play.Between),
	grDoes("@X? hit send|sends it|ball toward|over|into|at net and? court on? @Y side?", grCross, play.Between),
	grDoes("instead of back outside antenna", grIgnore, ""),
	grDoes("ball|it half|partly|partway|part across|over|through <cline>? extension|plane? outside? antenna?", grCrossPart, play.OutsideAnt),
	grDoes("$goes land|drop|fall in|inside|on|into @Y side|half|court", grDown, play.In),
	grDoes("in|into @Y court", grIgnore, ""),
	grDoes("$goes roll|go|pass|slide|come|fall under|beneath|below net", grCross, play.Under),
	grDoes("$goes roll|go|pass|slide|come|fall clean|completely|all|entirely? way? under|beneath|below net", grCross, play.Under),
	grDoes("completely through?", grPartly, play.Yes),
	grDoes("all way through?", grPartly, play.Yes),
	grDoes("all way? to|onto|into @Y side|court?", grPartly, play.Yes),
	grDoes("through to @Y side|court?", grPartly, play.Yes),
	grDoes("not completely|all|wholly|fully? way? through|across|yet", grPartly, play.No),
	grDoes("$goes fly|go|sail|pass|cross|travel completely|wholly|way? outside|over|beyond top? of? left|right|near|far? antenna", grCross, play.OutsideAnt),
	grDoes("$goes fly|go|sail|pass|cross|travel completely|wholly|way? outside|over|beyond top? of? left|right|near|far? antenna in|into|to|onto|over|toward @Y free? zone|side|court?", grCross, play.OutsideAnt),
}

// groundPeople tell of players, of places that are not for play, and of what
// comes into the rally: trade words, common practice.
var groundPeople = []serveRow{
	grDoes("$actor", grWho, ""),
	grDoes("$actor {plays} $ball back? up|back|alive|high?", grPlay, play.Value(play.Save)),
	grDoes("{plays} $ball back? up|back|alive|high?", grPlay, play.Value(play.Save)),
	grDoes("to {plays} $ball up|back|alive?", grPlay, play.Value(play.Save)),
	grDoes("$actor make|makes play|save|dig", grPlay, play.Value(play.Save)),
	grDoes("make|makes play|save|dig", grPlay, play.Value(play.Save)),
	grDoes("$actor $gets $ball", grPlay, play.Value(play.Save)),
	grDoes("$gets $ball", grPlay, play.Value(play.Save)),
	grDoes("$actor spike|attack|kill|swing|crush|hit $ball over|in|down?", grPlay, play.Value(play.Attack)),
	grDoes("$actor set $ball", grPlay, play.Value(play.Set)),
	grDoes("$actor $chases $ball down?", grWho, ""),
	grDoes("$chases $ball down?", grIgnore, ""),
	grDoes("$actor run|go|come|reach|step around|round|past|behind post|pole|standard|upright", grWho, ""),
	grDoes("run|go|come|reach|step around|round|past|behind post|pole|standard|upright", grIgnore, ""),
	grDoes("come|go|bounce right|straight? back? to @X? setter|libero|player|{kid}", grIgnore, ""),
	grDoes("easy|easily", grIgnore, ""),
	// A ball chased outside the antenna comes back.
	grDoes("{plays} $ball back? outside|over same|other? antenna", grReturn, play.OutsideAnt),
	grDoes("$actor {plays} $ball back? outside|over same|other? antenna", grReturn, play.OutsideAnt),
	// Could it have been played?
	grDoes("$actor would|could? have had|played|play|reached|gotten|got|dug|hit|saved $ball easy|easily?", grCould, play.Yes),
	grDoes("$actor right|standing? behind|beside|next? to? her|him|it and? would|could have had|played|gotten $ball?", grCould, play.Yes),
	grDoes("would|could have had|played|gotten|reached $ball easy|easily?", grCould, play.Yes),
	grDoes("ball|it would|could have been? playable|played", grCould, play.Yes),
	grDoes("nobody|none could|would have play|played|gotten|reach|reached|had $ball", grCould, play.No),
	grDoes("nobody near|close it|ball|there?", grHinder, play.No),
	grDoes("nobody could play $ball", grCould, play.No),
	grDoes("$actor right behind|beside|next her|him|to?", grIgnore, ""),
	// Places that are not for play, and footing.
	grDoes("jump|dive|leap|fly|run|go|climb|reach|lean|fall|launch|hurdle way|out? over|into|onto|in|on $places", grArea, ""),
	grDoes("$actor jump|dive|leap|fly|run|go|climb|reach|lean|fall|launch|hurdle way|out? over|into|onto|in|on $places", grAreaBy, ""),
	grDoes("over|in|into|above $places", grArea, ""),
	grDoes("$actor run|go around? behind $places", grAreaBy, ""),
	grDoes("run|go around? behind $places", grArea, ""),
	grDoes("behind $places", grArea, ""),
	grDoes("with|w both|two? foot|feet off|above floor|ground|court|surface", grFoot, play.OffSurface),
	grDoes("both|two foot|feet off|above floor|ground|court|surface", grFoot, play.OffSurface),
	grDoes("with nothing on|touching floor|ground|court", grFoot, play.OffSurface),
	grDoes("with no part|foot|feet of? body? on|touching floor|ground|court|surface", grFoot, play.OffSurface),
	grDoes("off playing surface", grOff, play.OffSurface),
	grDoes("$actor leave foot|feet", grFoot, play.OffSurface),
	grDoes("while airborne", grFoot, play.OffSurface),
	grDoes("crash|fall|come|land down? into|onto|on chair|table|bench|bleacher|row|stand", grFoot, play.OffSurface),
	grDoes("crash|fall|come|land down? into|onto|on @X", grFoot, play.OffSurface),
	grDoes("in|while in? air|midair|airborne", grFoot, play.OffSurface),
	grDoes("{plays} $ball in|while air|midair|airborne", grPlayAir, ""),
	grDoes("$actor {plays} $ball in|while air|midair|airborne", grPlayAir, ""),
	grDoes("keep|has|have|with|w|leave one|a? foot|toe|hand|leg on|in|touch @X? gym|playing? floor|ground|court|surface", grFoot, play.OnSurface),
	grDoes("one foot|toe on|still gym|playing? floor|ground|court|surface", grFoot, play.OnSurface),
	grDoes("land|come down? back? on|in|onto @X? playing? floor|court|surface", grFoot, play.LandsOn),
	grDoes("land|come down? back? on|in|onto $places", grFoot, play.OffSurface),
	grDoes("land|come down? on|in first|second|third|fourth|front row|step|seat", grFoot, play.OffSurface),
	grDoes("from there", grIgnore, ""),
	// What comes into the rally.
	grDoes("ball|basketball from next|another|other|different|nearby|adjacent court|game|match|gym # roll|come|bounce|fly|go", grIntrude, ""),
	grDoes("ball|basketball from court # roll|come|bounce|fly|go", grIntrude, ""),
	grDoes("ball|basketball from next|another|other|different|nearby|adjacent court|game|match|gym roll|come|bounce|fly|go", grIntrude, ""),
	grDoes("stray|loose|second|random|foreign ball roll|come|bounce|fly|go", grIntrude, ""),
	grDoes("{kid} lose|lost ball", grIntrude, ""),
	grDoes("{kid} ball roll|come|bounce", grIntrude, ""),
	grDoes("$actor not|never even? see|saw|notice it|ball?", grHinder, play.No),
	grDoes("ball retriever|{kid} lose|lost ball", grIntrude, ""),
	grDoes("it roll|come|bounce", grIgnore, ""),
	grDoes("rule", grIgnore, ""),
	grDoes("to hitting|attacking side", grIgnore, ""),
	grDoes("on|onto|into|in|across|along|over|under|behind|through|by|past in? front? of? @X? $where", grIgnore, ""),
	grDoes("in front of @X? $where", grIgnore, ""),
	grDoes("away from play", grHinder, play.No),
	grDoes("over|on|in|into|across|along far back? corner @X|far? side? of? play", grHinder, play.No),
	grDoes("over|on|in|into|across|along far back? corner", grHinder, play.No),
	grDoes("as|when|while $actor go|goes up|jump|about|ready|swing|approach to? hit|attack|jump?", grIgnore, ""),
	grDoes("in|mid|during rally", grIgnore, ""),
	grDoes("$actor|@X pull|let|give up", grHinder, play.Yes),
	grDoes("$actor|@X stop|bail|freeze|flinch|hesitate playing|play?", grHinder, play.Yes),
	grDoes("$actor|@X can|could not swing|hit|play|get|reach there|to|it|ball", grHinder, play.Yes),
	grDoes("can|could not swing|hit|play|get|reach there|to? it|ball?", grHinder, play.Yes),
	grDoes("defender|player pull up", grHinder, play.Yes),
	grDoes("$actor|@X slip|trip|step on it|ball|over", grHinder, play.Yes),
	grDoes("distract $actor|@X|defender|player", grHinder, play.Yes),
	grDoes("$actor|@X distract", grHinder, play.Yes),
	grDoes("nobody even? look|looked|looking|notice|react|bother|distract|affect|hinder|near|close at|to|by? it|ball?", grHinder, play.No),
	grDoes("no one|body even? look|looked|looking|notice|react|bother|distract|affect|hinder|near|close at|to|by? it|ball?", grHinder, play.No),
	grDoes("$actor shoe|sneaker|kneepad|pad|glasses|headband|brace|sleeve|sock|earring|bandana|hair|contact|tie? come|fly|fall|slip|pop off|out", grGear, ""),
	grDoes("shoe|sneaker|kneepad|headband come|fly|fall|slip|pop off", grGear, ""),
	grDoes("sit|lie|lay|stay there", grIgnore, ""),
	grDoes("sit|lie|lay|stay on court|floor", grIgnore, ""),
	grDoes("i let it go", grIgnore, ""),
	grDoes("line? official|judge|ref|r2|<lj>|umpire not|never move", grInWay, ""),
	grDoes("line? official|judge|ref|r2|<lj>|umpire right? in @X? way", grInWay, ""),
	grDoes("run|bump|crash|collide|smack into|with her|him|<lj>|r2|ref|official", grIgnore, ""),
	grDoes("$actor run|bump|crash|collide|smack into|with her|him|<lj>|r2|ref|official", grIgnore, ""),
	grDoes("$actor would|could|have|had|d have? reach|reached|get|gotten to?", grIgnore, ""),
	grDoes("would|could have reach|reached|gotten to? it|ball?", grIgnore, ""),
	grDoes("playable ball", grIgnore, ""),
	grDoes("@S {kid}|sub|coach? not get|move|step out of @X? way", grBlocks, ""),
	grDoes("@S sub or|and? player not get|move|step out of @X? way", grBlocks, ""),
	grDoes("@S {kid}|setter|libero|blocker|sub in @X? way", grBlocks, ""),
	grDoes("chase one|ball|pass|dig|shank into other teams free? zone|side|area", grChased, ""),
	grDoes("chase one|ball|pass|dig|shank into @Y free? zone|side|area", grChased, ""),
	grDoes("$actor chase one|ball|pass|dig|shank into @Y free? zone|side|area", grChased, ""),
	// What people ask.
	grDoes("dead|live|out|in|replay|play on|keep playing|legal|good|ok|fine right?", svAsk, ""),
	grDoes("dead|live|out|replay|legal|good|fine right?", svAsk, ""),
	grDoes("keep play|playing", svAsk, ""),
	grDoes("play on", svAsk, ""),
	grDoes("@X|we|she|who have|has hit|contact left", grIgnore, ""),
	grDoes("stop", svAsk, ""),
	grDoes("can|may|could we|they|she|he|i|@X|you still? {plays} $ball", svAsk, ""),
	grDoes("replay", svAsk, ""),
}
