package index

import (
	"slices"
	"testing"
)

func TestThesaurus(t *testing.T) {
	l := testLexicon(t, nil)
	if !slices.IsSortedFunc(thesaurus, func(a, b []string) int { return slices.Compare(a, b) }) {
		t.Error("the groups are not sorted")
	}
	seen := map[string]string{}
	for _, g := range thesaurus {
		if len(g) < 2 {
			t.Errorf("%q alone is a synonym of nothing", g)
		}
		for _, p := range g {
			if len(l.stems(p)) == 0 {
				t.Errorf("%q: nothing of it is read", p)
			}
			if other, ok := seen[p]; ok {
				t.Errorf("%q stands in the groups of %q and %q", p, other, g[0])
			}
			seen[p] = g[0]
		}
	}
}
