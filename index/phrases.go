package index

import (
	"fmt"
	"hash/crc32"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// phrases are the phrases of a lexicon as a generation keeps them, so that opening it need
// not read the whole lexicon as the index reads words: a line a phrase, its stems parted by
// blanks and its concept after a tab. Lines with the same first stem stand together, in the
// order of those stems, the longest phrase first.
type phrases string

// phrasesOf writes down a lexicon.
func phrasesOf(l *lexicon) (phrases, error) {
	var b strings.Builder
	for _, first := range slices.Sorted(maps.Keys(l.phrases)) {
		for _, p := range l.phrases[first] {
			line := strings.Join(p.stems, " ")
			if strings.ContainsAny(line+p.concept, "\t\n") || strings.Contains(first, " ") {
				return "", fmt.Errorf("the phrase %q of %q can't be written as one line", line, p.concept)
			}
			fmt.Fprintf(&b, "%s\t%s\n", line, p.concept)
		}
	}
	return phrases(b.String()), nil
}

// of are the phrases that begin with a stem, the longest first.
func (ps phrases) of(stem string) []phrase {
	lo, hi := 0, len(ps)
	for lo < hi {
		at := (lo + hi) / 2
		at = strings.LastIndexByte(string(ps[:at]), '\n') + 1
		line, _, _ := strings.Cut(string(ps[at:]), "\n")
		if firstStem(line) < stem {
			lo = at + len(line) + 1
		} else {
			hi = at
		}
	}
	var out []phrase
	for rest := string(ps[min(lo, len(ps)):]); rest != ""; {
		var line string
		line, rest, _ = strings.Cut(rest, "\n")
		if firstStem(line) != stem {
			break
		}
		stems, concept, _ := strings.Cut(line, "\t")
		out = append(out, phrase{strings.Fields(stems), concept})
	}
	return out
}

func firstStem(line string) string {
	if i := strings.IndexAny(line, " \t"); i >= 0 {
		return line[:i]
	}
	return line
}

func (ps phrases) sum() uint32 { return crc32.ChecksumIEEE([]byte(ps)) }

// writePhrases keeps the phrases of a lexicon in a generation.
func writePhrases(gen string, l *lexicon) (sum uint32, err error) {
	ps, err := phrasesOf(l)
	if err != nil {
		return 0, err
	}
	return ps.sum(), os.WriteFile(filepath.Join(gen, phrasesFile), []byte(ps), 0o644)
}

// readPhrases gives back those of a generation.
func readPhrases(gen string, sum uint32) (phrases, error) {
	b, err := os.ReadFile(filepath.Join(gen, phrasesFile))
	if err != nil {
		return "", fmt.Errorf("%w: %w", ErrCorrupt, err)
	}
	ps := phrases(b)
	if ps.sum() != sum {
		return "", fmt.Errorf("%w: %s is not what was written", ErrCorrupt, phrasesFile)
	}
	return ps, nil
}
