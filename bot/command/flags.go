package command

import (
	"fmt"
	"strings"
)

// flagRow is one flag of a command.
type flagRow struct {
	name   string // without the dashes
	value  string // what its value is called; empty: it has none
	doc    string
	repeat bool // may be given more than once
}

func (f flagRow) String() string {
	if f.value == "" {
		return "--" + f.name
	}
	return "--" + f.name + " " + f.value
}

// input is a command line taken apart.
type input struct {
	values map[string][]string // by flag name
	words  []string            // all that is not a flag, in order
	help   bool
}

// has reports whether a flag was given.
func (in input) has(name string) bool { return len(in.values[name]) > 0 }

// get is the value of a flag, empty when it was not given.
func (in input) get(name string) string {
	if v := in.values[name]; len(v) > 0 {
		return v[0]
	}
	return ""
}

// parse takes a command line apart. Flags may stand before, between and after
// the words; after "--" everything is a word.
func parse(args []string, flags []flagRow) (input, error) {
	in := input{values: map[string][]string{}}
	for i := 0; i < len(args); i++ {
		arg := args[i]
		switch {
		case arg == "--":
			in.words = append(in.words, args[i+1:]...)
			return in, nil
		case arg == "-h", arg == "--help":
			in.help = true
			continue
		case !strings.HasPrefix(arg, "--"):
			in.words = append(in.words, arg)
			continue
		}
		name, value, joined := strings.Cut(arg[2:], "=")
		f, err := lookUp(name, flags)
		if err != nil {
			return input{}, err
		}
		switch {
		case f.value == "" && joined:
			return input{}, fmt.Errorf("--%s takes no value", f.name)
		case f.value == "":
			value = "true"
		case !joined && i+1 == len(args):
			return input{}, fmt.Errorf("--%s needs a value: %s", f.name, f)
		case !joined:
			i++
			value = args[i]
		}
		if in.has(f.name) && !f.repeat {
			return input{}, fmt.Errorf("--%s is given twice; give it once", f.name)
		}
		in.values[f.name] = append(in.values[f.name], value)
	}
	return in, nil
}

func lookUp(name string, flags []flagRow) (flagRow, error) {
	var known []string
	for _, f := range flags {
		if f.name == name {
			return f, nil
		}
		known = append(known, "--"+f.name)
	}
	return flagRow{}, fmt.Errorf("unknown flag %s; there are %s (words that begin with -- go after a lone --)",
		visible("--"+name), strings.Join(known, ", "))
}
