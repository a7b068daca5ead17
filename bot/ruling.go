package bot

import (
	"fmt"
	"strings"

	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/judge"
)

// Ruling lays an answer out for people: people's safety, then the ruling, then
// what was read and why, under which rule, who calls it, what it turns on, how
// other codes rule, and what is uncertain. A part with nothing to say is left
// out.
func Ruling(a answer.Answer) Doc {
	d := Doc{Tone: tone(a)}
	add := func(b Block) { d.Blocks = append(d.Blocks, b) }
	for _, c := range a.Cautions {
		add(Heading{c, Care})
	}
	if a.Error != nil {
		add(Heading{"Not answered: " + a.Error.Error(), Plain})
		return d
	}
	if a.Association != nil {
		add(departure(*a.Association))
	}
	add(Heading{headline(a), tone(a)})
	if len(a.Could) > 0 {
		add(Para{Line("Tell it in other words: it could bear on the ruling, for example on this.")})
		add(couldMean(a.Could))
	}
	add(Fields{[]Field{
		{"Read as", lines(a.Read)},
		{"Because", oneLine(a.Because)},
		{"Presumed", oneLine(a.Presumed)},
		{"No evidence", lines(a.Evidence)},
		{"Rule", ruleLines(a.Rules)},
		{"Call", callLine(a.Call)},
		{"Next", nextLine(a.Next)},
	}})
	if a.Tree != nil {
		add(Tree{"Turns on", node(a, a.Tree)})
		add(answers(a.Tree.Ask))
	}
	add(Fields{[]Field{
		{"Other codes", codeLines(a)},
		{"Would change", changeLines(a.Changes)},
		{"In doubt", lines(a.Doubts)},
		{"Not read", oneLine(quoted(a.Unread))},
		{"Corrected", correctedLine(a.Corrected)},
		{"Not answered", lines(a.More)},
	}})
	for _, n := range a.Notes {
		for _, b := range noteLink(n) {
			add(b)
		}
	}
	d.Blocks = filled(d.Blocks)
	return d
}

// filled takes away labelled parts without a line.
func filled(blocks []Block) []Block {
	out := blocks[:0]
	for _, b := range blocks {
		if f, ok := b.(Fields); ok {
			var items []Field
			for _, i := range f.Items {
				if len(i.Lines) > 0 {
					items = append(items, i)
				}
			}
			if len(items) == 0 {
				continue
			}
			b = Fields{items}
		}
		out = append(out, b)
	}
	return out
}

func tone(a answer.Answer) Tone {
	switch a.Outcome {
	case "fault":
		return Bad
	case "play-on":
		return Good
	case "replay", "re-serve":
		return Again
	case answer.Depends:
		return Open
	}
	return Plain
}

// headline is the ruling in one line.
func headline(a answer.Answer) string {
	switch {
	case a.Kind == answer.None, a.Outcome == "" && a.Reason != "":
		return "No ruling: " + string(a.Reason)
	case len(a.Could) > 0:
		return "No ruling: I did not read " + strings.Join(quoted(a.Unread), ", ")
	case a.Outcome == answer.Depends:
		return "It turns on this: " + a.Tree.Ask.Words
	case a.Answer != "":
		return upper(string(a.Answer))
	}
	return upper(verdict(a.Verdict))
}

// verdict is a decision in a crew's words, without a capital.
func verdict(v answer.Verdict) string {
	var parts []string
	switch v.Outcome {
	case "fault":
		s := "fault: " + name(string(v.Fault))
		if side := side(v.Against); side != "" {
			s += ", against " + side
		}
		parts = append(parts, s)
		for _, f := range v.Also {
			parts = append(parts, "also "+name(f))
		}
	case "play-on":
		parts = append(parts, "play on, no fault")
	case "replay":
		parts = append(parts, "replay: "+name(string(v.Replay)))
	case "re-serve":
		parts = append(parts, "serve again")
	case answer.Depends:
		parts = append(parts, "it depends")
	}
	for _, m := range v.Measure {
		parts = append(parts, name(m))
	}
	if len(parts) == 0 {
		return "not settled by the text that is held"
	}
	if side := side(v.Against); side != "" && v.Outcome == "" {
		parts = append(parts, "against "+side)
	}
	return strings.Join(parts, "; ")
}

// name is the title of a fault, replay or measure.
func name(id string) string {
	if r, ok := judge.ByID(id); ok {
		return r.Title
	}
	return strings.ReplaceAll(id, "-", " ")
}

// side is what the asker calls a side, else its letter.
func side(names []string) string {
	switch {
	case len(names) == 0:
		return ""
	case len(names) > 1 && names[1] != "serving" && names[1] != "receiving" && names[1] != "attackers" && names[1] != "blockers":
		return names[1]
	}
	return names[0]
}

func couldMean(gs []answer.Given) List {
	var l List
	for _, g := range gs {
		l.Items = append(l.Items, Line(g.Words))
	}
	return l
}

// ruleLines has a line for each rule: its name and where each code has it.
func ruleLines(rs []answer.Rule) []Text {
	var out []Text
	at := map[string]int{}
	for i, r := range rs {
		n, met := at[r.Title]
		if !met {
			n = len(out)
			at[r.Title] = n
			out = append(out, Text{{Text: r.Title + ": "}})
		}
		cite := r.Cite
		if cite == "" {
			cite = "number not seen"
		}
		sep := "; "
		switch {
		case len(out[n]) == 1:
			sep = ""
		case together(rs, i-1):
			sep = ", "
		}
		out[n] = append(out[n], Span{Text: sep}, Span{cite, Strong})
		if together(rs, i) {
			continue
		}
		s := fmt.Sprintf(" %s %s, %s", r.Code, r.Edition, basis(r.Basis))
		if r.Adopted != "" {
			s += ", adopted: " + string(r.Adopted)
		}
		out[n] = append(out[n], Span{Text: s})
	}
	return out
}

// together reports whether a rule and the one after it differ in their numbers
// alone.
func together(rs []answer.Rule, i int) bool {
	if i+1 >= len(rs) {
		return false
	}
	a, b := rs[i], rs[i+1]
	return a.Title == b.Title && a.Code == b.Code && a.Basis == b.Basis && a.Adopted == b.Adopted
}

func basis(b string) string {
	switch b {
	case "memory":
		return "from memory"
	case "practice":
		return "common practice, no source"
	}
	return b
}

func callLine(c *answer.Call) []Text {
	if c == nil {
		return nil
	}
	s := ""
	if c.Signal != "" {
		s += ": " + string(c.Signal)
		if c.Number != "" {
			s += " (signal " + string(c.Number) + ")"
		}
	}
	if c.Whistle != "" {
		s += "; " + string(c.Whistle)
	}
	return []Text{{{c.By, Strong}, {Text: s}}}
}

func nextLine(n *answer.Next) []Text {
	if n == nil {
		return nil
	}
	var out []Text
	point, serves := side(n.Point), side(n.Serves)
	switch {
	case point == "" && serves == "":
	case point == "":
		out = append(out, Line("no point; "+subject(serves, "serve")+" again"))
	case point == serves:
		out = append(out, Line("point and serve to "+point))
	default:
		out = append(out, Line("point to "+point+"; "+subject(serves, "serve")))
	}
	if n.Words != "" {
		out = append(out, Line(string(n.Words)))
	}
	return out
}

// subject is a side with a verb.
func subject(side, verb string) string {
	switch side {
	case "us":
		return "we " + verb
	case "them":
		return "they " + verb
	}
	return side + " " + verb + "s"
}

func codeLines(a answer.Answer) []Text {
	if a.Tree != nil && a.Tree.Ask.Fact == answer.CodeFact {
		return nil // the tree says it
	}
	every := false
	for _, c := range a.Codes {
		every = every || answer.Maybe(c.Code) == a.Code
	}
	var out []Text
	for _, c := range a.Codes {
		if !c.Differs && !every {
			continue
		}
		t := Text{{Text: c.Code + " " + c.Edition + ": "}, {result(answer.Branch{Verdict: c.Verdict, Answer: c.Answer}), Strong}}
		if c.Cite != "" {
			t = append(t, Span{Text: ", " + string(c.Cite)})
		}
		if len(c.Why) > 0 {
			t = append(t, Span{Text: " (" + strings.Join(c.Why, "; ") + ")"})
		}
		out = append(out, t)
	}
	return out
}

func changeLines(bs []answer.Branch) []Text {
	var out []Text
	for _, b := range bs {
		var when []string
		for _, g := range b.When {
			when = append(when, g.Words)
		}
		out = append(out, Text{{Text: strings.Join(when, " and ") + ": "}, {result(b), Strong}})
	}
	return out
}

func correctedLine(cs []answer.Correction) []Text {
	var out []string
	for _, c := range cs {
		out = append(out, fmt.Sprintf("“%s” read as “%s”", c.From, c.To))
	}
	return oneLine(out)
}

func quoted(words []string) []string {
	var out []string
	for _, w := range words {
		out = append(out, "“"+w+"”")
	}
	return out
}

func lines(ss []string) []Text {
	var out []Text
	for _, s := range ss {
		out = append(out, Line(s))
	}
	return out
}

func oneLine(ss []string) []Text {
	if len(ss) == 0 {
		return nil
	}
	return []Text{Line(strings.Join(ss, "; "))}
}

func upper(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
