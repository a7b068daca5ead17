package casebook

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"example.org/netpost/engine/code"
)

var update = flag.Bool("update", false, "rewrite the findings in the case files")

// A case file tells what it is for, then holds a casebook as
//
//	-- path --
//	text
//
// and below it what comes of it: "-- findings --" as a person sees them, and
// "-- fixed --" the files that a machine mends. "-- options --" may say today
// and next; "␍" at a line's end stands for a carriage return, "␠" for a blank.
type caseFile struct {
	head  string
	files []section
}

type section struct{ name, text string }

func readCase(t testing.TB, path string) caseFile {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var c caseFile
	for line := range strings.SplitAfterSeq(string(data), "\n") {
		name, ok := strings.CutPrefix(strings.TrimSuffix(line, "\n"), "-- ")
		name, ok2 := strings.CutSuffix(name, " --")
		switch {
		case ok && ok2:
			c.files = append(c.files, section{name: name})
		case len(c.files) == 0:
			c.head += line
		default:
			c.files[len(c.files)-1].text += line
		}
	}
	return c
}

var marks = strings.NewReplacer("␍", "\r", "␠", " ", "␀", "\x00", "␤\n", "")

func (c caseFile) run(t testing.TB) (findings, fixed string) {
	t.Helper()
	folder := fstest.MapFS{}
	o := CheckOptions{}
	for _, s := range c.files {
		switch s.name {
		case "findings", "fixed":
		case "options":
			for _, line := range strings.Fields(s.text) {
				key, value, _ := strings.Cut(line, "=")
				var err error
				switch key {
				case "today":
					o.Today, err = ParseDate(value)
				case "next":
					o.Next, err = code.ParseSeason(value)
				default:
					err = fmt.Errorf("unknown option")
				}
				if err != nil {
					t.Fatalf("option %s: %v", line, err)
				}
			}
		default:
			folder[s.name] = &fstest.MapFile{Data: []byte(marks.Replace(s.text))}
		}
	}
	b, found := Load(folder, LoadOptions{})
	found = append(found, Check(b, o)...)
	sortFindings(found)
	var out bytes.Buffer
	if err := Print(&out, found); err != nil {
		t.Fatal(err)
	}
	changes, err := Fix(found, func(p string) (string, error) {
		data, err := folder.ReadFile(p)
		return string(data), err
	})
	if err != nil {
		t.Fatal(err)
	}
	var fix strings.Builder
	for _, ch := range changes {
		name := ch.Path
		if ch.NewPath != "" {
			name += " → " + ch.NewPath
		}
		fmt.Fprintf(&fix, "%s (%d)\n%s", name, ch.Mended, indent(ch.Text))
	}
	return out.String(), fix.String()
}

// indent keeps the text of a file from looking like a section.
func indent(s string) string {
	var b strings.Builder
	for line := range strings.Lines(s) {
		b.WriteString("    " + line)
	}
	return b.String()
}

func TestCases(t *testing.T) {
	paths, err := filepath.Glob("testdata/*.txtar")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no case files: %v", err)
	}
	for _, path := range paths {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".txtar"), func(t *testing.T) {
			c := readCase(t, path)
			findings, fixed := c.run(t)
			got := caseFile{head: c.head}
			for _, s := range c.files {
				if s.name != "findings" && s.name != "fixed" {
					got.files = append(got.files, s)
				}
			}
			got.files = append(got.files, section{"findings", findings})
			if fixed != "" {
				got.files = append(got.files, section{"fixed", fixed})
			}
			var text strings.Builder
			text.WriteString(got.head)
			for _, s := range got.files {
				fmt.Fprintf(&text, "-- %s --\n%s", s.name, s.text)
			}
			old, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if text.String() == string(old) {
				return
			}
			if *update {
				if err := os.WriteFile(path, []byte(text.String()), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			t.Errorf("the findings are not those of the file; look at them, and if they are right run: go test ./casebook -run TestCases -update\n%s", text.String())
		})
	}
}

// TestChecksTable guards the table of checks: sorted, unique, documented, run
// by something, and shown by a case file of that name in which it finds
// something.
func TestChecksTable(t *testing.T) {
	byID := map[string]bool{}
	last := ""
	for _, c := range checks {
		if c.id <= last {
			t.Errorf("%s stands after %s: keep the table sorted and its ids unique", c.id, last)
		}
		last = c.id
		byID[c.id] = true
		if !strings.HasSuffix(c.doc, ".") {
			t.Errorf("%s: its doc is not a sentence", c.id)
		}
		if runs := c.note != nil || c.book != nil; runs == (c.by != "") {
			t.Errorf("%s: has a function, or says what runs it, but not both", c.id)
		}
		found := false
		paths, _ := filepath.Glob("testdata/" + c.id + "*.txtar")
		for _, p := range paths {
			for _, s := range readCase(t, p).files {
				found = found || s.name == "findings" && strings.Contains(s.text, "["+c.id+"]")
			}
		}
		if !found {
			t.Errorf("%s: no file testdata/%s*.txtar shows what it finds", c.id, c.id)
		}
	}
	for _, c := range checks {
		if c.by != "" && c.by != "load" && c.by != "engine" && !byID[c.by] {
			t.Errorf("%s: is run by %s, which is no check", c.id, c.by)
		}
	}
	if got := Checks(); len(got) != len(checks) || got[0][0] != checks[0].id {
		t.Error("Checks does not list the table")
	}
}

// TestFindingsNameChecks holds that no case shows a finding outside the table.
func TestFindingsNameChecks(t *testing.T) {
	known := map[string]bool{}
	for _, c := range checks {
		known[c.id] = true
	}
	paths, _ := filepath.Glob("testdata/*.txtar")
	for _, p := range paths {
		for _, s := range readCase(t, p).files {
			if s.name != "findings" {
				continue
			}
			for line := range strings.Lines(s.text) {
				if strings.HasPrefix(line, " ") {
					continue
				}
				id := line[strings.LastIndexByte(line, '[')+1 : strings.LastIndexByte(line, ']')]
				if !known[id] {
					t.Errorf("%s: finding of %q, which is not in the table", p, id)
				}
				if path, _, ok := strings.Cut(line, ":"); !ok || path == "" {
					t.Errorf("%s: finding without a place: %s", p, line)
				}
			}
		}
	}
}

func TestFieldTables(t *testing.T) {
	for name, table := range map[string][]Field{"Fields": Fields(), "RulingFields": RulingFields(), "association": associationFields} {
		seen := map[string]bool{}
		for _, f := range table {
			if seen[f.Key] || f.read == nil || !strings.HasSuffix(f.Doc, ".") {
				t.Errorf("%s: %s: keys differ, are read and have a sentence for a doc", name, f.Key)
			}
			seen[f.Key] = true
		}
	}
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range Fields() {
		if !bytes.Contains(doc, []byte("//\t"+f.Key+":")) && f.Key != "departs" && f.Key != "withdrawn" {
			t.Errorf("the sample note in doc.go lacks %s", f.Key)
		}
	}
}
