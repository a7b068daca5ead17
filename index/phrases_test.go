package index

import (
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine/notation"
)

// What is kept of a lexicon finds the same phrases as the lexicon itself, for every first
// stem and for stems that no phrase begins with.
func TestPhrases(t *testing.T) {
	l := testLexicon(t, slices.Concat(notation.Synonyms(), thesaurus))
	ps, err := phrasesOf(l)
	if err != nil {
		t.Fatal(err)
	}
	ask := append(slices.Sorted(maps.Keys(l.phrases)), "", "a", "zzz", "bloc", "blockz", "0")
	for _, stem := range ask {
		got, want := ps.of(stem), l.phrases[stem]
		if !slices.EqualFunc(got, want, func(a, b phrase) bool { return a.concept == b.concept && slices.Equal(a.stems, b.stems) }) {
			t.Errorf("%q: kept %v, not %v", stem, got, want)
		}
	}
	if got := phrases("").of("block"); got != nil {
		t.Errorf("an empty file has the phrases %v", got)
	}
}

// A changed byte in the file is found when it is opened.
func TestPhrasesDamaged(t *testing.T) {
	gen := t.TempDir()
	sum, err := writePhrases(gen, testLexicon(t, thesaurus))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := readPhrases(gen, sum); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(gen, phrasesFile)
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	b[len(b)/2] ^= 1
	if err := os.WriteFile(path, b, 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := readPhrases(gen, sum); err == nil || !strings.Contains(err.Error(), phrasesFile) {
		t.Errorf("a damaged file gives %v", err)
	}
}
