package notation

import "example.org/netpost/engine/play"

// svTells is a row that tells a fact of the serve.
func svTells(pattern string, f play.FactID, v play.Value) serveRow {
	return serveRow{pattern: pattern, op: svTell, fact: f, value: v}
}

// svNames is a row of the bare name of a fault, with what it tells.
func svNames(pattern string, f play.FactID, v play.Value) serveRow {
	return serveRow{pattern: pattern, op: svTell, fact: f, value: v, calls: true}
}

func svDoes(pattern string, op serveOp, v play.Value) serveRow {
	return serveRow{pattern: pattern, op: op, value: v}
}

// serveTables are the tables of the serve's own lexicon.
var serveTables = [...]*[]serveRow{&serveRows, &serveHits, &serveTurns, &serveFlights}

// serveRows is the serve's own lexicon: trade words, common practice.
var serveRows = []serveRow{
	// The server and the hit.
	svDoes("@S? server", svServer, ""),
	svDoes("@S serve", svServe, ""),
	svDoes("serve|server serve", svServe, ""),
	svDoes("ball is? serve", svServe, ""),
	svDoes("jump|float|topspin serve", svServe, ""),
	svDoes("serve is hit", svServe, ""),
	svDoes("server hit ball", svServe, ""),
	svDoes("server contact ball", svServe, ""),
	svDoes("{hit} ball|it", svServe, ""),
	svDoes("at serve|service contact|hit", svIgnore, ""),
	svDoes("as|when she|he|server {hit} it?", svServe, ""),
	svDoes("during serve|service", svServe, ""),
	// Time.
	svDoes("# second after|from whistle|beckon|signal for? service|serve?", svSeconds, ""),
	svDoes("{hit} ball? # second after whistle|beckon|signal for? service|serve?", svSeconds, ""),
	svDoes("at # second", svSeconds, ""),
	svDoes("contact|hit|serve ball at # second", svSeconds, ""),
	svDoes("wait # second after whistle|beckon|signal and then? hit|serve it?", svSeconds, ""),
	svDoes("has|have not hit|serve ball # second after whistle|beckon|signal for? service|serve?", svNoServe, ""),
	svDoes("let|lets # second run out without serve|@X", svNoServe, ""),
	svDoes("never|not serve in time", svNoServe, play.RunOut),
	svDoes("let|lets time run out", svNoServe, play.RunOut),
	svTells("serve too late", play.ClockTime, play.RunOut),
	svTells("within 8|eight second", play.ClockTime, play.OnTime),
	svTells("within original 8|eight second", play.ClockTime, play.OnTime),
	// The feet.
	svTells("step|stepped on {line} at? contact?", play.Feet, play.EndLine),
	svTells("has foot on {line} at? contact?", play.Feet, play.EndLine),
	svTells("foot on {line} at? contact|takeoff?", play.Feet, play.EndLine),
	svTells("foot touch {line}", play.Feet, play.EndLine),
	svTells("foot touch {line} at take off of? jump? serve?", play.Feet, play.EndLine),
	svTells("foot on {line} at take off", play.Feet, play.EndLine),
	svNames("foot fault on? end? line?", play.Feet, play.EndLine),
	svTells("foot half? over|outside|beyond side mark of? service? zone? at? contact?", play.Feet, play.BesideZone),
	svTells("foot half? over|outside|beyond little? hash mark? at? contact?", play.Feet, play.BesideZone),
	svDoes("start way? outside but|and? at? contact?", svIgnore, ""),
	svTells("take off behind|from behind? {line}", play.Feet, play.Own),
	svTells("foot behind|back {line} at? contact?", play.Feet, play.Own),
	svDoes("land in|inside|on court after contact|hit", svIgnore, ""),
	svDoes("after contact|hit", svAfterHit, ""),
	svDoes("after she|he hit it", svAfterHit, ""),
	// How it is struck.
	svTells("hit ball? with both|two hand", play.HitWith, play.TwoHands),
	svTells("hit|serve ball|serve with both|two hand|arm", play.HitWith, play.TwoHands),
	svTells("hit ball out of hand without release|toss it?", play.HitWith, play.NotLetGo),
	svTells("without toss|release it|ball?", play.HitWith, play.NotLetGo),
	svTells("hit it|ball with close|closed fist", play.HitWith, play.OneHand),
	svTells("with both|two hand|arm", play.HitWith, play.TwoHands),
	svTells("{p}|server|she|he hit serve with both|two hand|arm", play.HitWith, play.TwoHands),
	svDoes("like push", svIgnore, ""),
	// The toss.
	svDoes("@S? toss ball|it?", svToss, ""),
	svDoes("toss ball|it and? let|lets it? drop|fall|bounce untouched?", svTossed, play.Dropped),
	svDoes("let|lets it|toss|ball? drop|fall untouched?", svTossed, play.Dropped),
	svDoes("catch her|his|second? toss again?", svTossed, play.CaughtToss),
	svDoes("catch it|ball again?", svTossed, play.CaughtToss),
	svDoes("toss drop|fall", svTossed, play.Dropped),
	svDoes("toss touch|hit|clip hang|hanging? basketball? backboard|hoop|basket|ceiling|beam|rafter|light above? server?", svTossed, play.HitsThing),
	svDoes("toss touch|hit server and drop|fall", svTossed, play.HitsServer),
	svDoes("re serve is? give|directed?", svReServe, ""),
	svDoes("reserve is? give|directed?", svReServe, ""),
	svDoes("r1 give re serve", svReServe, ""),
	svDoes("first time in|this? this? term|turn of? service?", svAgain, play.No),
	svDoes("same term|turn of? service?", svAgain, play.Yes),
	svDoes("same serve|service turn|term", svAgain, play.Yes),
	// The signal.
	svTells("before whistle|beckon|signal for? service|serve?", play.Signalled, play.No),
	svTells("serve|serves before whistle|beckon|signal", play.Signalled, play.No),
	svTells("serve too early", play.Signalled, play.No),
	svDoes("r1|referee authorize service|serve", svIgnore, ""),
	svDoes("r1|referee|i whistle for service|serve", svIgnore, ""),
	svTells("@R is? not ready", play.Ready, play.NotReady),
	svDoes("# player on court", svCount, ""),
	svDoes("@R has only? # on court", svCount, ""),
	svDoes("notice in rally", svIgnore, ""),
	svDoes("play stop", svIgnore, ""),
	// Whose turn.
	svNames("wrong server serve?", play.ServerTurn, play.WrongServer),
	svTells("server serve out of turn|order", play.ServerTurn, play.WrongServer),
	svTells("@S <label>? serve instead of <label>", play.ServerTurn, play.WrongServer),
	svTells("wrong server give ball to right one|server", play.ServerTurn, play.StepsIn),
	svTells("wrong server has ball", play.ServerTurn, play.StepsIn),
	svDoes("right server take it and? serve?", svServe, ""),
	svDoes("right server serve", svServe, ""),
	svDoes("scorer signal|catch wrong? server? right? after hit|contact", svIgnore, ""),
	// The screen.
	svTells("@S player|kid|people stand? side by side", play.Grouped, play.CloseBy),
	svTells("@S front row player stand? side by side", play.Grouped, play.CloseBy),
	svTells("@S player stand|are close together", play.Grouped, play.CloseBy),
	svTells("@S player stand shoulder to shoulder", play.Grouped, play.CloseBy),
	svTells("server serve from? behind one? back? row? teammate who? stand? still?", play.Grouped, play.OneStill),
	svTells("teammate stand still", play.Grouped, play.OneStill),
	svTells("arm|hand fully? up", play.HandsUp, play.Yes),
	svTells("@S middle|player at? net? hold|has both? hand above head", play.HandsUp, play.Yes),
	svTells("@S front? row? player hold hand behind head", play.HandsUp, play.No),
	svDoes("not above it", svIgnore, ""),
	svTells("low|flat serve pass|go right|directly over them|<side>", play.LowOver, play.Yes),
	svTells("low|flat serve go over them|<side>", play.LowOver, play.Yes),
	svTells("high serve over them|<side>", play.LowOver, play.No),
	svTells("@R can|could not see server or|and ball", play.Hidden, play.AllHidden),
	svTells("@R could|can see ball|everything", play.Hidden, play.InSight),
	svTells("@R view clear", play.Hidden, play.InSight),
	// The positions.
	svTells("@R is? out of position at? service|serve? contact?", play.Receivers, play.Misaligned),
	svTells("@R is? overlap|overlapped|overlapping at service|serve? contact|hit", play.Receivers, play.Misaligned),
	svTells("@R in position", play.Receivers, play.Aligned),
	// The way of the ball.
	svDoes("serve go straight? into net", svCross, play.IntoNet),
	svDoes("serve land|go|sail out", svLands, play.Out),
	svDoes("serve land in", svLands, play.In),
	svDoes("serve hit|touch teammate of? server?", svMate, ""),
	svDoes("serve hit|touch server teammate", svMate, ""),
	// Stops of play.
	svDoes("@S? player is? injured during rally", svInjury, ""),
	svDoes("@S? {p} roll|twist|sprain ankle|knee mid|during rally", svInjury, ""),
	svDoes("r1 stop it|rally", svIgnore, ""),
	svDoes("r1 whistle and? stop? play?", svIgnore, ""),
	svDoes("r1 stop play at? once?", svIgnore, ""),
	svDoes("r1 and r2 disagree", svDispute, ""),
	svDoes("r1 and r2 has|have different call", svDispute, ""),
	svDoes("and? can not decide", svDecides, play.No),
}
