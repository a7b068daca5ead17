package index

import (
	"cmp"
	"slices"
	"strings"

	"github.com/blevesearch/bleve/v2/analysis"
)

// A lexicon knows the trade's words for the same thing ("joust", "push at the net"). Each
// group becomes one concept: a term that a document carries when its words hold any
// phrase of the group, and that a query carries for the same reason. The search library's
// own synonyms are of no use here: they take single words alone, and one group without a
// usable pair makes every search of the field fail.
type lexicon struct {
	analyzer analysis.Analyzer
	phrases  map[string][]phrase // by the first word's stem, longest phrase first
	kept     phrases             // in place of those: what a generation kept of them
	common   map[string]bool     // stems of commonWords
}

// commonWords are found and counted like any other, but name no reason for a hit and are
// not marked in an excerpt.
const commonWords = "and as at but by can did do does for from had has have he her him his how i if in into it its me my " +
	"no not of on or our she so that their them then there they this to up us we what when which who with would you your"

// A phrase is one way of saying a concept.
type phrase struct {
	stems   []string
	concept string
}

// newLexicon prepares groups of synonymous phrases. A concept is named by its group's
// first phrase. A phrase of two groups stands for both. Phrases that analyse to nothing
// are left out.
func newLexicon(a analysis.Analyzer, groups [][]string) *lexicon {
	l := keptLexicon(a, "")
	l.phrases = map[string][]phrase{}
	for _, g := range groups {
		if len(g) == 0 {
			continue
		}
		for _, p := range g {
			stems := l.stems(p)
			if len(stems) == 0 {
				continue
			}
			known := l.phrases[stems[0]]
			if !slices.ContainsFunc(known, func(q phrase) bool { return q.concept == g[0] && slices.Equal(q.stems, stems) }) {
				l.phrases[stems[0]] = append(known, phrase{stems, g[0]})
			}
		}
	}
	for _, ps := range l.phrases {
		slices.SortFunc(ps, func(p, q phrase) int {
			return cmp.Or(cmp.Compare(len(q.stems), len(p.stems)), slices.Compare(p.stems, q.stems), cmp.Compare(p.concept, q.concept))
		})
	}
	return l
}

// keptLexicon is a lexicon by what a generation kept of it.
func keptLexicon(a analysis.Analyzer, kept phrases) *lexicon {
	l := &lexicon{analyzer: a, kept: kept, common: map[string]bool{}}
	for _, s := range l.stems(commonWords) {
		l.common[s] = true
	}
	return l
}

// begin are the phrases that begin with a stem, the longest first.
func (l *lexicon) begin(stem string) []phrase {
	if l.phrases != nil {
		return l.phrases[stem]
	}
	return l.kept.of(stem)
}

// stems analyses words as the index does.
func (l *lexicon) stems(words string) []string {
	var out []string
	for _, t := range l.analyzer.Analyze([]byte(words)) {
		out = append(out, string(t.Term))
	}
	return out
}

// concepts lists, sorted, what the words mention: at each word the longest phrase wins,
// and its words are not read again.
func (l *lexicon) concepts(words string) []string {
	stems := l.stems(words)
	seen := map[string]bool{}
	var out []string
	for i := 0; i < len(stems); {
		n := 1
		for _, p := range l.begin(stems[i]) {
			if n > 1 && len(p.stems) < n {
				break
			}
			if len(p.stems) > len(stems)-i || !slices.Equal(p.stems, stems[i:i+len(p.stems)]) {
				continue
			}
			n = len(p.stems)
			if !seen[p.concept] {
				seen[p.concept] = true
				out = append(out, p.concept)
			}
		}
		i += n
	}
	slices.Sort(out)
	return out
}

// said finds how the words say a concept: the phrase's own words, as a person wrote them.
func (l *lexicon) said(words, concept string) string {
	tokens := l.analyzer.Analyze([]byte(words))
	for i := range tokens {
		for _, p := range l.begin(string(tokens[i].Term)) {
			if p.concept != concept || len(p.stems) > len(tokens)-i {
				continue
			}
			if slices.EqualFunc(p.stems, tokens[i:i+len(p.stems)], func(s string, t *analysis.Token) bool { return s == string(t.Term) }) {
				return strings.TrimSpace(words[tokens[i].Start:tokens[i+len(p.stems)-1].End])
			}
		}
	}
	return ""
}
