package rules

// all is every rule, sorted by id.
var all []Rule

func init() {
	// Set here, since it refers to every rule of the service, this one too.
	earlyServe.Judge = judgeService
	all = []Rule{
		assisted,
		attackOfServe,
		backRowAttack,
		backRowBlock,
		ballDown,
		ballOut,
		blockOfServe,
		caught,
		centreLine,
		crewDisagreement,
		deadBall,
		doubleContact,
		doubleFault,
		earlyServe,
		fourContacts,
		illegalLibero,
		inadvertentWhistle,
		injury,
		interference,
		liberoAttack,
		liberoBlock,
		liberoSet,
		netContact,
		outOfPosition,
		outsideInterference,
		overNet,
		overheadObstruction,
		prematureSignal,
		reServe,
		screen,
		serveClock,
		serveContact,
		serveFailed,
		serveFoot,
		unplayableArea,
		unseen,
		wrongServer,
	}
}
