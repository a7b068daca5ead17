package command

import (
	"context"
	"fmt"
	"os"
	"time"

	"example.org/netpost/casebook"
	"example.org/netpost/casebook/demo"
)

var checkCommand = command{
	name:    "check",
	args:    "[DIR]",
	summary: "prove a casebook: every note reads, and agrees with the engine and the others",
	help: "DIR is the folder of the notes; when left out that of the settings, else the invented example notes. Each finding names the place, what is " +
		"wrong and how to mend it. The exit status is 1 where there are findings, so that a git hook or a pipeline can stop.",
	flags: []flagRow{
		{name: "season", value: "SEASON", doc: "also list the notes that this coming season's tables overturn"},
		{name: "today", value: "DATE", doc: "the day on which notes may have expired, like 2026-11-15; today when left out"},
		{name: "fix", doc: "first mend in place what a machine can mend"},
		{name: "list", doc: "list the checks, and check nothing"},
		{name: "json", doc: "print the findings as one JSON object"},
		configFlag,
	},
	run: check,
}

// checked is the outcome of a check as it is printed in JSON.
type checked struct {
	Notes    int                `json:"notes"`
	Findings []casebook.Finding `json:"findings"`
	Mended   []string           `json:"mended"` // paths of the files that were changed
}

func check(_ context.Context, w *World, in input) error {
	if len(in.words) > 1 {
		return fmt.Errorf("checks one folder at a time; %s is one word too many", visible(in.words[1]))
	}
	if in.has("list") {
		for _, c := range casebook.Checks() {
			if _, err := fmt.Fprintf(w.Stdout, "%-14s %s\n", c[0], c[1]); err != nil {
				return err
			}
		}
		return nil
	}
	o := casebook.CheckOptions{Today: casebook.DateOf(time.Now())}
	season, err := options("", in.get("season"), nil)
	if err != nil {
		return err
	}
	o.Next = season.Season
	if s := in.get("today"); s != "" {
		if o.Today, err = casebook.ParseDate(s); err != nil {
			return fmt.Errorf("--today: %w", err)
		}
	}
	if len(in.words) == 0 {
		crew, err := w.crew(in)
		if err != nil {
			return err
		}
		if crew.casebook != "" {
			in.words = []string{crew.casebook}
		}
	}
	c, err := checkFolder(in, o)
	if err != nil {
		return err
	}
	if err := c.print(w, in.has("json")); err != nil {
		return err
	}
	if len(c.Findings) > 0 {
		return errFound
	}
	return nil
}

// checkFolder checks the folder that is named, or the example notes.
func checkFolder(in input, o casebook.CheckOptions) (checked, error) {
	c := checked{Findings: []casebook.Finding{}, Mended: []string{}}
	var b *casebook.Book
	var found []casebook.Finding
	switch {
	case len(in.words) == 0 && in.has("fix"):
		return c, fmt.Errorf("--fix needs the folder to mend; the example notes are part of the program")
	case len(in.words) == 0:
		b, found = casebook.Load(demo.FS(), casebook.LoadOptions{})
	default:
		if i, err := os.Stat(in.words[0]); err != nil || !i.IsDir() {
			return c, fmt.Errorf("there is no folder %s; name the one that holds the notes", visible(in.words[0]))
		}
		if in.has("fix") {
			var err error
			if _, c.Mended, err = casebook.FixDir(in.words[0], casebook.LoadOptions{}, o); err != nil {
				return c, err
			}
		}
		b, found = casebook.LoadDir(in.words[0], casebook.LoadOptions{})
	}
	c.Notes = len(b.Notes())
	c.Findings = append(c.Findings, casebook.All(found, casebook.Check(b, o))...)
	if c.Mended == nil {
		c.Mended = []string{}
	}
	return c, nil
}

func (c checked) print(w *World, json bool) error {
	if json {
		return encode(w.Stdout, c)
	}
	for _, p := range c.Mended {
		if _, err := fmt.Fprintf(w.Stdout, "mended %s\n", p); err != nil {
			return err
		}
	}
	if err := casebook.Print(w.Stdout, c.Findings); err != nil {
		return err
	}
	fixable := 0
	for _, f := range c.Findings {
		if f.Fixable {
			fixable++
		}
	}
	s := fmt.Sprintf("%s, %s", count(c.Notes, "note"), count(len(c.Findings), "finding"))
	if fixable > 0 {
		s += fmt.Sprintf(", %d that --fix can mend", fixable)
	}
	_, err := fmt.Fprintln(w.Stdout, s)
	return err
}

// count is a number with its noun.
func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
