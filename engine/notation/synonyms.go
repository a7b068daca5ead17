package notation

import (
	"slices"
	"strings"
)

// Synonyms lists groups of phrases of the lexicon that mean the same, for a
// search that finds one by another. Groups and phrases are sorted.
func Synonyms() [][]string {
	groups := map[meaning][]string{}
	for _, e := range lex().refs {
		if !e.row {
			continue
		}
		switch e.means.class {
		case cRole, cRow, cVerb, cThing, cFault, cFact, cOpen, cOfficial, cTopic:
			if !strings.Contains(e.phrase, "<") {
				groups[*e.means] = append(groups[*e.means], e.phrase)
			}
		}
	}
	lines := map[string][]string{}
	for _, c := range compounds {
		lines[c.form] = append(lines[c.form], c.words)
	}
	var out [][]string
	for _, g := range groups {
		out = append(out, g)
	}
	for _, g := range lines {
		out = append(out, g)
	}
	out = slices.DeleteFunc(out, func(g []string) bool { return len(g) < 2 })
	for _, g := range out {
		slices.Sort(g)
	}
	slices.SortFunc(out, slices.Compare)
	return out
}
