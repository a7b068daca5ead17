package command

import (
	"fmt"
	"strings"

	"example.org/netpost/bot"
)

// help prints the table, or one command of it.
func help(w *World, args []string) error {
	if len(args) == 0 {
		return w.print(overview())
	}
	c, found := find(args[0])
	if !found {
		return fmt.Errorf("help: unknown command %s; there are %s", visible(args[0]), strings.Join(names(), ", "))
	}
	return w.print(manual(c))
}

func overview() bot.Doc {
	var table bot.Fields
	for _, c := range commands() {
		table.Items = append(table.Items, bot.Field{Label: c.name, Lines: []bot.Text{bot.Line(c.summary)}})
	}
	table.Items = append(table.Items, bot.Field{Label: "help", Lines: []bot.Text{bot.Line("print this, or the manual of one command: netpost help ask")}})
	return bot.Doc{Blocks: []bot.Block{
		bot.Heading{Text: "netpost COMMAND [FLAGS] [WORDS]"},
		bot.Para{Text: bot.Line("Rulings for volleyball officials' crews: asks what it must know, says why and by which rule.")},
		table,
		bot.Aside{Text: bot.Line("Exit status: 0 answered, 1 check or doctor found something, 2 bad usage or configuration.")},
	}}
}

func manual(c command) bot.Doc {
	usage := []string{"netpost", c.name}
	var table bot.Fields
	for _, f := range c.flags {
		s := "[" + f.String() + "]"
		if f.repeat {
			s += "..."
		}
		usage = append(usage, s)
		table.Items = append(table.Items, bot.Field{Label: f.String(), Lines: []bot.Text{bot.Line(f.doc)}})
	}
	if c.args != "" {
		usage = append(usage, c.args)
	}
	blocks := []bot.Block{bot.Heading{Text: strings.Join(usage, " ")}, bot.Para{Text: bot.Line(sentence(c.summary) + " " + c.help)}}
	if len(table.Items) > 0 {
		blocks = append(blocks, table)
	}
	return bot.Doc{Blocks: blocks}
}

func sentence(s string) string { return strings.ToUpper(s[:1]) + s[1:] + "." }
