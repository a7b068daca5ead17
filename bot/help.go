package bot

import "strings"

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
	return Doc{Blocks: []Block{
		Heading{"Tell me a play, and I rule on it", Plain},
		Para{Line("Without a command, your words are a play. Where a fact decides that you did not tell, I ask for it: press an answer, or say it in words in the thread.")},
		f,
		Para{Line("For example:")},
		examples,
		Aside{Line("Leave people's names out; call them setter, hitter, R1. A ruling here overturns no result: protests follow the competition's own procedure.")},
	}}
}
