// Package playtest reads files of test plays: what somebody asked, in two
// forms, with the ruling that is right. It is test support; no program imports
// it.
//
// A file holds blocks of "key value" lines, blocks separated by an empty line;
// a line that begins with # is a comment:
//
//	play    own-001
//	topic   contacts
//	code    scholastic 2025-26
//	source  book, edition and rule or case; or: common practice, no source
//	basis   published
//	trust   high
//	text    as a person types it
//	slash   the same in the terse comma form
//	want    fault four-contacts against A,us
//	if      what decides => play-on
//	under   international => fault over-net against B
//	accept  other-id
//	also    other-fault
//	flips   what would change it
//	now     unsure
//	why     one line
package playtest

import (
	"bufio"
	"fmt"
	"io"
	"strings"
)

// Want is what is right: of a ruling its outcome with fault or replay, of an
// administrative question its measures, of a look-up its answer.
type Want struct {
	Outcome  string   // play-on, fault, replay, re-serve, depends; empty for a measure or a fact
	Faults   []string // any one of them
	Replay   string
	Measures []string // any one of them
	Fact     string
	Against  []string // names that the team may go by; empty: not compared
}

// Branch is one way that an open play can be.
type Branch struct {
	When string
	Want Want
}

// Play is one block of a file.
type Play struct {
	ID, Topic, Code, Season string
	Source, Basis, Trust    string
	Text, Slash             string
	Want                    Want
	If                      []Branch
	Under                   map[string]Want // per code, in place of Want
	Accept, Also            []string
	Flips, Now, Why         string
	Line                    int
}

// Counted reports whether the play is scored: one that is doubtful, or whose
// ruling is that of an old season, is not.
func (p Play) Counted() bool { return p.Trust != "low" && p.Now == "" }

// Kind is ruling, measure or fact.
func (p Play) Kind() string {
	switch {
	case p.Want.Fact != "":
		return "fact"
	case len(p.Want.Measures) > 0:
		return "measure"
	}
	return "ruling"
}

// Read reads a file of plays. An error names the file and the line.
func Read(name string, r io.Reader) ([]Play, error) {
	var out []Play
	var p *Play
	sc := bufio.NewScanner(r)
	for n := 1; sc.Scan(); n++ {
		line := strings.TrimSpace(sc.Text())
		if line == "" {
			p = nil
			continue
		}
		if line[0] == '#' {
			continue
		}
		key, value, _ := strings.Cut(line, " ")
		value = strings.TrimSpace(value)
		if p == nil {
			if key != "play" {
				return nil, fmt.Errorf("%s:%d: %s: a block begins with play and its id", name, n, key)
			}
			out = append(out, Play{ID: value, Line: n})
			p = &out[len(out)-1]
			continue
		}
		if err := p.set(key, value); err != nil {
			return nil, fmt.Errorf("%s:%d: %s: %w", name, n, key, err)
		}
	}
	return out, sc.Err()
}

func (p *Play) set(key, value string) error {
	switch key {
	case "topic":
		p.Topic = value
	case "code":
		p.Code, p.Season, _ = strings.Cut(value, " ")
	case "source":
		p.Source = value
	case "basis":
		p.Basis = value
	case "trust":
		p.Trust = value
	case "text":
		p.Text = value
	case "slash":
		p.Slash = value
	case "flips":
		p.Flips = value
	case "now":
		p.Now = value
	case "why":
		p.Why = value
	case "accept":
		p.Accept = list(value)
	case "also":
		p.Also = list(value)
	case "want":
		w, err := parseWant(value)
		p.Want = w
		return err
	case "if", "under":
		when, ruling, ok := strings.Cut(value, "=>")
		if !ok {
			return fmt.Errorf("write WHEN => RULING")
		}
		w, err := parseWant(strings.TrimSpace(ruling))
		if err != nil {
			return err
		}
		when = strings.TrimSpace(when)
		if key == "if" {
			p.If = append(p.If, Branch{when, w})
			return nil
		}
		if p.Under == nil {
			p.Under = map[string]Want{}
		}
		p.Under[when] = w
	default:
		return fmt.Errorf("unknown key")
	}
	return nil
}

func list(s string) []string {
	var out []string
	for _, x := range strings.Split(s, ",") {
		if x = strings.TrimSpace(x); x != "" {
			out = append(out, x)
		}
	}
	return out
}

func parseWant(s string) (Want, error) {
	var w Want
	kind, rest, _ := strings.Cut(s, " ")
	if kind == "fact" {
		w.Fact = rest
		return w, nil
	}
	rest, against, _ := strings.Cut(" "+rest, " against ")
	w.Against = list(against)
	rest = strings.TrimSpace(rest)
	switch kind {
	case "play-on", "depends", "re-serve":
		w.Outcome = kind
	case "fault":
		w.Outcome, w.Faults = kind, list(rest)
	case "replay":
		w.Outcome, w.Replay = kind, rest
	case "measure":
		w.Measures = list(rest)
	default:
		return w, fmt.Errorf("unknown ruling %q: use play-on, fault, replay, re-serve, depends, measure or fact", kind)
	}
	return w, nil
}
