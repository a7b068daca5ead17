package notation

import (
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
)

// A gate spares work and changes nothing: every text is read the same with all
// areas tried, and so it is cut in two and put together with another one.
func TestGates(t *testing.T) {
	all := allTexts(t)
	for i, text := range all {
		other := all[(i*7+3)%len(all)]
		for _, text := range []string{text, text[:strings.LastIndexByte(text[:len(text)/2+1], ' ')+1] + other[strings.IndexByte(other, ' ')+1:]} {
			if len(text) > MaxText || strings.TrimSpace(text) == "" {
				continue
			}
			got, err := read(text, false)
			if err != nil {
				t.Fatalf("%q: %v", text, err)
			}
			if want, _ := read(text, true); !reflect.DeepEqual(got, want) {
				t.Errorf("%q: behind the gates it is read as\n%sand with all areas tried as\n%s", text, describe(got), describe(want))
			}
		}
	}
}

// Each gate keeps some texts away and lets some through, and every word of it
// is one that a text can have.
func TestGatesWork(t *testing.T) {
	g := readyGates()
	open, shut := make([]int, len(areaReaders)), make([]int, len(areaReaders))
	for _, text := range allTexts(t) {
		s := newScene(tokens(text))
		has := s.gateWords()
		for i := range areaReaders {
			if g.lets(i, has) {
				open[i]++
			} else {
				shut[i]++
			}
		}
	}
	for i, a := range areaReaders {
		switch {
		case a.gate == nil:
			if a.name != "facts" {
				t.Errorf("the area %q has no gate: declare the words without which it reads nothing", a.name)
			}
		case open[i] == 0 || shut[i] < open[i]:
			t.Errorf("the gate of the area %q lets %d texts through and keeps %d away", a.name, open[i], shut[i])
		}
		if a.gate == nil {
			continue
		}
		for _, n := range a.gate() {
			if len(n) == 0 || slices.ContainsFunc(n, func(ws []string) bool { return len(ws) == 0 }) {
				t.Errorf("the gate of the area %q has an empty need in %q", a.name, n)
			}
		}
	}
}

// allTexts are all texts of the tests of the reader.
func allTexts(t testing.TB) []string {
	t.Helper()
	names, err := filepath.Glob("testdata/*.plays")
	if err != nil {
		t.Fatal(err)
	}
	out := texts(t)
	for _, name := range names {
		out = append(out, textsOf(t, name)...)
	}
	return out
}
