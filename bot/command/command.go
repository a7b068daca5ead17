// Package command is the command line: one table of commands, a file each.
// Usage, help and the errors of unknown names are derived from the table.
package command

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"example.org/netpost/bot"
)

// Exit statuses.
const (
	ok    = 0 // answered, whatever the answer is
	found = 1 // a check found something; what, stands in its output
	wrong = 2 // bad usage or configuration
)

// errFound is a check that found something and has said so.
var errFound = errors.New("something was found")

// World is what a command may touch of the outside.
type World struct {
	Stdin          io.Reader
	Stdout, Stderr io.Writer
	Env            func(string) string // nil: an empty environment

	api map[string]string // where a platform's API is, by platform, in place of its own: for tests
}

// command is one row of the table.
type command struct {
	name    string
	args    string // what follows the name and the flags, for the usage line
	summary string // one line, no full stop
	help    string // a paragraph more
	flags   []flagRow
	run     func(ctx context.Context, w *World, in input) error
}

// commands is the table, sorted by name.
func commands() []command {
	return []command{
		askCommand, bulletinCommand, changesCommand, checkCommand, codesCommand, doctorCommand, draftsCommand, exportCommand, manifestCommand, numbersCommand, postsCommand, recheckCommand, rulesCommand, searchCommand,
		serveCommand,
	}
}

// Main runs one command line, without the program's name, and gives the exit
// status. What is wrong with it goes to Stderr in one line, with the way to
// mend it.
func Main(ctx context.Context, args []string, w World) int {
	if w.Env == nil {
		w.Env = func(string) string { return "" }
	}
	err := dispatch(ctx, &w, args)
	switch {
	case err == nil:
		return ok
	case errors.Is(err, errFound):
		return found
	}
	fmt.Fprintln(w.Stderr, "netpost "+err.Error())
	return wrong
}

func dispatch(ctx context.Context, w *World, args []string) error {
	if len(args) == 0 {
		return fmt.Errorf("needs a command: %s; for help: netpost help", strings.Join(names(), ", "))
	}
	name, rest := args[0], args[1:]
	switch name {
	case "help", "-h", "--help":
		return help(w, rest)
	}
	c, found := find(name)
	if !found {
		return fmt.Errorf("%s: unknown command; there are %s; for help: netpost help", visible(name), strings.Join(names(), ", "))
	}
	in, err := parse(rest, c.flags)
	if err != nil {
		return fmt.Errorf("%s: %w; for help: netpost help %s", c.name, err, c.name)
	}
	if in.help {
		return help(w, []string{c.name})
	}
	if err := c.run(ctx, w, in); err != nil {
		return fmt.Errorf("%s: %w", c.name, err)
	}
	return nil
}

func find(name string) (command, bool) {
	for _, c := range commands() {
		if c.name == name {
			return c, true
		}
	}
	return command{}, false
}

func names() []string {
	var out []string
	for _, c := range commands() {
		out = append(out, c.name)
	}
	return out
}

// visible is an argument as it can be shown in a message: short, and without
// what would steer a terminal.
func visible(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		s = string(r[:most]) + "…"
	}
	return strconv.Quote(s)
}

// print writes a document for people: in colour on a terminal, plain else.
func (w *World) print(d bot.Doc) error {
	return bot.Print(w.Stdout, d, w.text())
}

func (w *World) text() bot.TextOptions {
	o := bot.TextOptions{Color: w.color()}
	if n, err := strconv.Atoi(w.Env("COLUMNS")); err == nil && n > 0 && n < bot.DefaultWidth {
		o.Width = n
	}
	return o
}

func (w *World) color() bool {
	if w.Env("NO_COLOR") != "" || w.Env("TERM") == "dumb" {
		return false
	}
	return isTerminal(w.Stdout)
}

// isTerminal reports whether a stream is one that a person sits at.
func isTerminal(stream any) bool {
	f, ok := stream.(*os.File)
	if !ok {
		return false
	}
	i, err := f.Stat()
	return err == nil && i.Mode()&os.ModeCharDevice != 0
}
