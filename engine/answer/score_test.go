package answer_test

import (
	"regexp"
	"slices"
	"strings"

	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/notation/playtest"
)

// The verdicts on an answer, worst first.
const (
	wrong  = "wrong"  // a ruling that is not the one wanted: the only one that hurts a crew
	silent = "silent" // nothing was ruled on
	half   = "half"   // left open where one ruling is wanted and it is among the branches
	right  = "right"
)

var verdicts = []string{wrong, silent, half, right}

// tags are what a decision says, in comparable words.
func tags(v answer.Verdict) []string {
	var out []string
	out = append(out, v.Measure...)
	switch v.Outcome {
	case "fault":
		out = append(out, string(v.Fault))
	case "replay", "re-serve":
		out = append(out, "replay")
	case "play-on":
		out = append(out, "play-on")
	}
	for i, t := range out {
		if t == "allow" || t == "ball-down" {
			out[i] = "play-on"
		}
	}
	return out
}

// wants are the tags of what is right.
func wants(w playtest.Want, also ...string) []string {
	out := slices.Concat(w.Measures, w.Faults)
	switch w.Outcome {
	case "replay", "re-serve":
		out = append(out, "replay")
	case "play-on":
		out = append(out, "play-on")
	}
	if len(w.Faults)+len(w.Measures) > 0 {
		out = append(out, also...)
	}
	for i, t := range out {
		if t == "allow" || t == "ball-down" {
			out[i] = "play-on"
		}
	}
	return out
}

// families are the measures of one ladder.
var families = [][]string{
	{"delay", "delay-warning", "delay-penalty"},
	{"misconduct", "warning", "penalty", "expulsion", "disqualification"},
}

func meets(want, got []string) bool {
	return slices.ContainsFunc(want, func(s string) bool { return s == "any" && len(got) > 0 || slices.Contains(got, s) })
}

var (
	polar   = regexp.MustCompile(`\b(yes|no)\b`)
	numbers = regexp.MustCompile(`\d+(\.\d+)?`)
)

// fact compares the answer of a look-up with the one wanted: the same yes or
// no, every number of it, and where it has neither most of its longer words.
func fact(want, got string) string {
	want, got = strings.ToLower(want), strings.ToLower(got)
	if got == "" {
		return half
	}
	if p := polar.FindString(want); p != "" && p != polar.FindString(got) {
		return wrong
	}
	ns := numbers.FindAllString(want, -1)
	for _, n := range ns {
		if !slices.Contains(numbers.FindAllString(got, -1), n) {
			return wrong
		}
	}
	if len(ns) > 0 || polar.MatchString(want) {
		return right
	}
	met, all := 0, 0
	for _, w := range strings.Fields(strings.Trim(want, ".,:;")) {
		if w = strings.Trim(w, ".,:;"); len(w) > 1 {
			all++
			if strings.Contains(got, w) {
				met++
			}
		}
	}
	if 2*met >= all {
		return right
	}
	return half
}

// score judges an answer to a play under one code.
func score(p playtest.Play, code string, a answer.Answer) string {
	want := p.Want
	branches := p.If
	if u, ok := p.Under[code]; ok {
		want = u
	}
	said := tags(a.Verdict)
	open := a.Outcome == answer.Depends
	switch {
	case a.Kind == answer.None:
		return silent
	case want.Fact != "" && a.Kind == answer.Fact:
		return fact(want.Fact, string(a.Answer))
	case a.Kind == answer.Fact:
		return half
	case !open && len(said) == 0:
		return silent
	case want.Fact != "":
		return half
	}
	var leaves []string
	distinct := 0
	for _, b := range a.Branches {
		for _, t := range tags(b.Verdict) {
			if !slices.Contains(leaves, t) {
				leaves = append(leaves, t)
				distinct++
			}
		}
	}
	accepted := slices.Concat(p.Accept, p.Also)
	if want.Outcome == answer.Depends || open && len(branches) > 0 {
		if !open {
			return wrong
		}
		hits := 0
		for _, b := range branches {
			if meets(wants(b.Want, p.Accept...), leaves) {
				hits++
			}
		}
		switch {
		case hits == len(branches) && distinct <= len(branches)+2:
			return right
		case hits > 0:
			return half
		}
		return wrong
	}
	ok := wants(want, accepted...)
	if open {
		switch {
		case !meets(ok, leaves):
			return wrong
		case distinct <= 4:
			return half
		}
		return silent
	}
	if !meets(ok, said) {
		for _, f := range families { // the ladder is right, the step is not told
			if meets(f, ok) && meets(f, said) {
				return half
			}
		}
		return wrong
	}
	if want.Outcome == "fault" && len(want.Against) > 0 {
		if len(a.Against) == 0 {
			return half
		}
		return side(want.Against, a.Against)
	}
	return right
}

var other = map[string]string{"us": "them", "them": "us", "serving": "receiving", "receiving": "serving"}

// side compares the names of the team at fault.
func side(want, got []string) string {
	names := func(list []string) []string {
		var out []string
		for _, s := range list {
			out = append(out, strings.ToLower(s))
		}
		return out
	}
	w, g := names(want), names(got)
	if !slices.ContainsFunc(w, func(s string) bool { return slices.Contains(g, s) }) {
		return wrong
	}
	for _, s := range w {
		if o := other[s]; o != "" && slices.Contains(g, o) && !slices.Contains(w, o) {
			return wrong
		}
	}
	return right
}
