package bot

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the expected texts in testdata")

// golden compares with testdata/NAME.txt, or rewrites it.
func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", filepath.FromSlash(name)+".txt")
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatalf("%v; to write it: go test ./bot -update", err)
	}
	if got != string(want) {
		t.Errorf("%s differs; if the new text is right: go test ./bot -update\ngot:\n%s\nwant:\n%s", file, got, want)
	}
}

func printed(t *testing.T, d Doc, o TextOptions) string {
	t.Helper()
	var b strings.Builder
	if err := Print(&b, d, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// everything is a document with every member of the set.
func everything() Doc {
	long := strings.Repeat("one two three four five ", 9)
	return Doc{Tone: Bad, Blocks: []Block{
		Heading{"A heading that leads", Bad},
		Para{Text{{Text: "Plain, "}, {"strong", Strong}, {Text: ", "}, {"fa", Faint}, {"int", Strong}, {Text: ". " + long}}},
		List{[]Text{Line("short"), Line(long)}},
		Quote{Line(long)},
		Fields{[]Field{
			{"One", []Text{Line("a line"), Line(long)}},
			{"A label that is long", []Text{Line("has a line of its own")}},
			{"Empty", nil},
		}},
		Tree{"Turns on", Node{"Who first?", []Kid{
			{When: "A", Then: "a fault"},
			{When: "B", Next: &Node{"What row, and here the question goes on for more than one line can hold?", []Kid{
				{When: "front", Then: "play on"},
				{When: "back", Then: "a fault with a text long enough that it goes over the end of the line"},
			}}},
		}}},
		Buttons{"Answer with", []Button{{"A first", "order@e1-e2=before"}, {"B first", "order@e1-e2=after"}}},
		Link{"2026-001 A note", "https://notes.example/2026-001"},
		Link{"2026-002 A note that is nowhere to be read", ""},
		Aside{Line("small print")},
	}}
}

func TestPrint(t *testing.T) {
	for _, test := range []struct {
		name string
		o    TextOptions
	}{
		{"wide", TextOptions{}},
		{"narrow", TextOptions{Width: 44}},
		{"color", TextOptions{Color: true}},
	} {
		t.Run(test.name, func(t *testing.T) {
			golden(t, "print/"+test.name, printed(t, everything(), test.o))
		})
	}
}

func TestPrintFits(t *testing.T) {
	hostile := Doc{Blocks: []Block{
		Heading{strings.Repeat("x", 500), Plain},
		Para{Line(strings.Repeat("wörd ", 100) + strings.Repeat("排球", 100))},
		Fields{[]Field{{"Label", []Text{Line(strings.Repeat("y", 300))}}}},
	}}
	for _, d := range []Doc{everything(), hostile, {}} {
		for _, width := range []int{0, 80, 60, 37, 5} {
			got := printed(t, d, TextOptions{Width: width})
			most := max(width, minWidth)
			if width == 0 {
				most = DefaultWidth
			}
			for _, line := range strings.Split(got, "\n") {
				if n := columns(line); n > most {
					t.Errorf("width %d: a line of %d columns: %q", width, n, line)
				}
			}
		}
	}
}

// What a person typed must not reach the terminal as an order to it.
func TestPrintCleans(t *testing.T) {
	nasty := "a\x1b[31mb\u202ec\x07d\u200be\nf\x9bg\xffh\u2028i"
	for _, b := range []Block{
		Heading{nasty, Bad}, Para{Line(nasty)}, List{[]Text{Line(nasty)}}, Quote{Line(nasty)},
		Fields{[]Field{{nasty, []Text{Line(nasty)}}}}, Tree{nasty, Node{nasty, []Kid{{When: nasty, Then: nasty}}}},
		Buttons{nasty, []Button{{nasty, nasty}}}, Link{nasty, nasty}, Aside{Line(nasty)},
	} {
		got := printed(t, Doc{Blocks: []Block{b}}, TextOptions{})
		if i := strings.IndexAny(got, "\x1b\u202e\x07\u200b\u2028\u009b\ufffd"); i >= 0 {
			t.Errorf("%T: passes on %q", b, got[i:])
		}
	}
}

func TestPrintPlainIsColorWithoutCodes(t *testing.T) {
	plain := printed(t, everything(), TextOptions{})
	color := printed(t, everything(), TextOptions{Color: true})
	for _, c := range []string{codeStrong, codeFaint, codeReset, toneCode(Good), toneCode(Bad), toneCode(Open)} {
		color = strings.ReplaceAll(color, c, "")
	}
	if plain != color {
		t.Errorf("without its codes the coloured text is another:\n%s\nplain:\n%s", color, plain)
	}
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, os.ErrClosed }

func TestPrintError(t *testing.T) {
	if err := Print(failing{}, everything(), TextOptions{}); err == nil {
		t.Error("a writer that fails gave no error")
	}
}

func FuzzPrint(f *testing.F) {
	f.Add("some words", 80)
	f.Add("\x1b[2J排球 \u0301", 30)
	f.Fuzz(func(t *testing.T, s string, width int) {
		width = min(max(width, minWidth), 200)
		var b strings.Builder
		d := Doc{Blocks: []Block{Heading{s, Bad}, Para{Line(s)}, Fields{[]Field{{s, []Text{Line(s)}}}}}}
		if err := Print(&b, d, TextOptions{Width: width}); err != nil {
			t.Fatal(err)
		}
		for _, line := range strings.Split(b.String(), "\n") {
			if columns(line) > width {
				t.Errorf("%d columns in %d: %q", columns(line), width, line)
			}
		}
	})
}
