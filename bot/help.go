package bot

import "strings"

// Two ways to type where players stand, for people to try.
const (
	AlignmentExample = "receiving: 1 at 7.5 m 1.5 m; 2 at 7.5 m 2 m"
	GridExample      = "receiving: 4 . 3 . 2 / . 5 . 1 . 6"
)

// Help lays out what can be said after the chat command, from the table.
func Help() Doc {
	var f Fields
	var examples List
	for _, r := range commandRows {
		label := r.Name
		if r.Words != "" {
			label += " " + strings.ToUpper(r.Words)
		}
		summary := r.Summary
		if r.Role > Anyone {
			summary += " (" + r.Role.String() + "s)"
		}
		f.Items = append(f.Items, Field{label, []Text{Line(summary)}})
		if r.Example != "" {
			examples.Items = append(examples.Items, Line(r.Name+" "+r.Example))
		}
	}
	f.Items = append(f.Items,
		Field{"public, private", []Text{Line("before the words: who sees the answer; a command's answer is for you alone, a mention's for the thread")}},
		Field{"club: or code=club", []Text{Line("before the words: the code to rule under; " + codeNames())}},
		Field{"season=2025-26", []Text{Line("before the words: the season to rule under")}},
	)
	examples.Items = append(examples.Items, Line(AlignmentExample), Line(GridExample))
	return Doc{Blocks: []Block{
		Heading{"Tell me a play, and I rule on it", Plain},
		Para{Line("Without a command, your words are a play. Where a fact decides that you did not tell, I ask for it: press an answer, or say it in words in the thread.")},
		f,
		Para{Line("For example:")},
		examples,
		Para{Line("The last two tell where players stand at the service. By lengths: of each position how far from its own left side line, then how far from the net, in metres, centimetres, feet or inches. " +
			"By rows, the one nearest to the net first, a dot where nobody is: that tells only the order. Two teams are parted by a |.")},
		Aside{Line("Leave people's names out; call them setter, hitter, R1. A ruling here overturns no result: protests follow the competition's own procedure.")},
	}}
}
