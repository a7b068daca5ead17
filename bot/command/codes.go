package command

import (
	"context"
	"fmt"
	"strings"

	"example.org/netpost/bot"
	"example.org/netpost/engine/code"
)

var codesCommand = command{
	name:    "codes",
	args:    "[PARAMETER]",
	summary: "list the codes and their parameters, or print one parameter",
	help: "A parameter is printed as every code has it, season by season, with rule numbers, basis and source. " +
		"The first half of a name lists that area: netpost codes hits.",
	run: listCodes,
}

func listCodes(_ context.Context, w *World, in input) error {
	if len(in.words) > 1 {
		return fmt.Errorf("prints one parameter at a time; %s is one word too many", visible(in.words[1]))
	}
	if len(in.words) == 0 {
		return w.print(bot.Doc{Blocks: []bot.Block{held(), parameters("")}})
	}
	name := in.words[0]
	if r, found := code.Find(code.Param(name)); found {
		return w.print(bot.Doc{Blocks: []bot.Block{
			bot.Heading{Text: r.Title}, bot.Para{Text: bot.Line(r.Doc)}, cells(r.Cells),
		}})
	}
	area := parameters(strings.TrimSuffix(name, ".") + ".")
	if len(area.Items) == 0 {
		return fmt.Errorf("there is no parameter %s; to see all: netpost codes", visible(name))
	}
	return w.print(bot.Doc{Blocks: []bot.Block{area}})
}

func held() bot.Fields {
	var f bot.Fields
	for _, c := range code.All() {
		first, last, _ := code.Held(c)
		f.Items = append(f.Items, bot.Field{Label: string(c), Lines: []bot.Text{bot.Line(fmt.Sprintf("seasons %s to %s", first, last))}})
	}
	return f
}

// parameters lists those whose name begins with a prefix.
func parameters(prefix string) bot.List {
	var l bot.List
	for _, r := range code.Rows() {
		if strings.HasPrefix(string(r.Param), prefix) {
			l.Items = append(l.Items, bot.Text{{Text: string(r.Param), Style: bot.Strong}, {Text: ": " + r.Title}})
		}
	}
	return l
}
