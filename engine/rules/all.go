package rules

// all is every rule, sorted by id.
var all []Rule

func init() {
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
		deadBall,
		doubleContact,
		doubleFault,
		fourContacts,
		inadvertentWhistle,
		interference,
		liberoAttack,
		liberoBlock,
		liberoSet,
		netContact,
		outsideInterference,
		overNet,
		overheadObstruction,
		serveFailed,
		unseen,
	}
}
