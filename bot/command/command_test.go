package command

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the expected output in testdata")

// run runs one command line with nothing in the environment but a cache, so
// that the index of the example notes is built once.
func run(stdin string, args ...string) (stdout, stderr string, status int) {
	var out, errs bytes.Buffer
	status = Main(context.Background(), args, World{Stdin: strings.NewReader(stdin), Stdout: &out, Stderr: &errs, Env: env(nil)})
	return out.String(), errs.String(), status
}

// env is an environment with some variables, and the cache.
func env(vars map[string]string) func(string) string {
	return func(k string) string {
		if k == "NETPOST_CACHE" {
			return cache
		}
		return vars[k]
	}
}

// cache is where tests keep indexes.
var cache string

func TestMain(m *testing.M) {
	flag.Parse()
	var err error
	if cache, err = os.MkdirTemp("", "netpost-test-"); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	status := m.Run()
	os.RemoveAll(cache)
	os.Exit(status)
}

// A transcript in testdata is what a person would see: a line "$ netpost ..."
// is a command, lines "< ..." after it are its standard input, then comes what
// it prints, errors behind "! ", and the exit status where it is not 0. Lines
// before the first command are a comment.
func TestTranscripts(t *testing.T) {
	files, err := filepath.Glob("testdata/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatalf("no transcripts: %v", err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			got := replay(t, string(text))
			if *update {
				if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			if got != string(text) {
				t.Errorf("%s differs; if the new text is right: go test ./bot/command -update\n%s", file, diff(string(text), got))
			}
		})
	}
}

// The answers that the README shows are those that the program gives.
func TestReadme(t *testing.T) {
	const file = "../../README.md"
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	const open, shut = "```console\n", "```\n"
	parts := strings.Split(string(text), open)
	if len(parts) < 2 {
		t.Fatal("the README shows no answer")
	}
	for i, part := range parts[1:] {
		block, rest, _ := strings.Cut(part, shut)
		parts[i+1] = replay(t, block) + shut + rest
	}
	got := strings.Join(parts, open)
	switch {
	case got == string(text):
	case *update:
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	default:
		t.Errorf("README.md shows another answer; if the new one is right: go test ./bot/command -update\n%s", diff(string(text), got))
	}
}

// replay runs a transcript's commands and writes it anew.
func replay(t *testing.T, text string) string {
	t.Helper()
	var b strings.Builder
	comment, rest, found := strings.Cut("\n"+text, "\n$ ")
	if !found {
		t.Fatal("the transcript holds no command")
	}
	b.WriteString(strings.TrimPrefix(comment, "\n"))
	for i, part := range strings.Split(rest, "\n$ ") {
		if i > 0 || comment != "" {
			b.WriteByte('\n')
		}
		lines := strings.Split(part, "\n")
		b.WriteString("$ " + lines[0] + "\n")
		var stdin strings.Builder
		for _, l := range lines[1:] {
			in, ok := strings.CutPrefix(l, "< ")
			if !ok {
				break
			}
			stdin.WriteString(in + "\n")
			b.WriteString(l + "\n")
		}
		args := fields(t, lines[0])
		if args[0] != "netpost" {
			t.Fatalf("%q: not a command of ours", lines[0])
		}
		stdout, stderr, status := run(stdin.String(), args[1:]...)
		b.WriteString(stdout)
		for _, l := range strings.SplitAfter(stderr, "\n") {
			if l != "" {
				b.WriteString("! " + l)
			}
		}
		if status != 0 {
			fmt.Fprintf(&b, "exit %d\n", status)
		}
	}
	return b.String()
}

// fields splits a command line at spaces outside double quotes.
func fields(t *testing.T, line string) []string {
	t.Helper()
	var out []string
	quoted := false
	for i, part := range strings.Split(line, `"`) {
		quoted = i%2 == 1
		if quoted {
			out = append(out, part)
		} else {
			out = append(out, strings.Fields(part)...)
		}
	}
	if quoted {
		t.Fatalf("%s: a quote is not closed", line)
	}
	return out
}

// diff shows the first line that differs, with those about it.
func diff(want, got string) string {
	a, b := strings.Split(want, "\n"), strings.Split(got, "\n")
	i := 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	part := func(s []string) string { return strings.Join(s[max(0, min(i-3, len(s))):min(i+8, len(s))], "\n") }
	return fmt.Sprintf("at line %d\nwant:\n%s\n\ngot:\n%s", i+1, part(a), part(b))
}

func TestTable(t *testing.T) {
	if !slices.IsSorted(names()) || len(slices.Compact(names())) != len(commands()) {
		t.Errorf("commands are not sorted or not unique: %q", names())
	}
	for _, c := range commands() {
		if c.name == "" || c.summary == "" || c.help == "" || c.run == nil {
			t.Errorf("%s: name, summary, help and run are needed", c.name)
		}
		if strings.HasSuffix(c.summary, ".") || !strings.HasSuffix(c.help, ".") {
			t.Errorf("%s: the summary is a phrase, the help ends with a full stop", c.name)
		}
		seen := map[string]bool{"help": true}
		for _, f := range c.flags {
			if f.name == "" || f.doc == "" || seen[f.name] {
				t.Errorf("%s: flag %q has no name, no doc or is there twice", c.name, f.name)
			}
			seen[f.name] = true
		}
		out, _, status := run("", "help", c.name)
		if status != 0 || !strings.Contains(out, "netpost "+c.name) {
			t.Errorf("help %s: status %d\n%s", c.name, status, out)
		}
		for _, f := range c.flags {
			if !strings.Contains(out, f.String()) {
				t.Errorf("help %s does not tell of %s", c.name, f)
			}
		}
		file := filepath.Join("testdata", c.name+".txt")
		if text, err := os.ReadFile(file); err != nil || !strings.Contains(string(text), "\n$ netpost "+c.name) {
			t.Errorf("%s holds no %s command: every command needs a transcript (%v)", file, c.name, err)
		}
	}
}

func TestParse(t *testing.T) {
	flags := []flagRow{{name: "code", value: "CODE"}, {name: "json"}, {name: "given", value: "F", repeat: true}}
	for _, test := range []struct {
		args  string
		words string
		code  string
		given string
		json  bool
	}{
		{"a b --code club c", "a b c", "club", "", false},
		{"--code=club --json a", "a", "club", "", true},
		{"a --given x=1 --given=y=2", "a", "", "x=1 y=2", false},
		{"--json -- --code club", "--code club", "", "", true},
		{"a - -b", "a - -b", "", "", false},
		{"", "", "", "", false},
	} {
		in, err := parse(strings.Fields(test.args), flags)
		if err != nil {
			t.Errorf("%s: %v", test.args, err)
			continue
		}
		if w := strings.Join(in.words, " "); w != test.words || in.get("code") != test.code || in.has("json") != test.json ||
			strings.Join(in.values["given"], " ") != test.given {
			t.Errorf("%s: %+v", test.args, in)
		}
	}
	for _, args := range []string{"--cod club", "--code", "--json=yes", "--code a --code b", "--=x"} {
		if in, err := parse(strings.Fields(args), flags); err == nil {
			t.Errorf("%s: read as %+v, want an error", args, in)
		}
	}
}

func TestColorOnlyOnTerminal(t *testing.T) {
	env := map[string]string{}
	w := World{Stdout: &bytes.Buffer{}, Env: func(k string) string { return env[k] }}
	if w.color() {
		t.Error("colour into a pipe")
	}
	device, err := os.OpenFile(os.DevNull, os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer device.Close()
	w.Stdout = device // a character device, as a terminal is
	if !w.color() {
		t.Error("no colour on a terminal")
	}
	for _, off := range []string{"NO_COLOR=1", "TERM=dumb"} {
		k, v, _ := strings.Cut(off, "=")
		env[k] = v
		if w.color() {
			t.Errorf("%s: still colour", off)
		}
		delete(env, k)
	}
}
