package playtest

import (
	"strings"
	"testing"
)

const sample = `# a comment
play    x-1
topic   block
code    any 2025-26
source  common practice, no source
basis   practice
trust   high
text    a story
slash   a, play
want    fault over-net,interference against B, them
accept  net-contact

play    x-2
code    club
want    depends
if      nobody there => play-on
if      somebody there => replay outside-interference
under   club => measure delay,deny against A
now     unsure
`

func TestRead(t *testing.T) {
	ps, err := Read("sample", strings.NewReader(sample))
	if err != nil {
		t.Fatal(err)
	}
	if len(ps) != 2 {
		t.Fatalf("%d plays, want 2", len(ps))
	}
	p := ps[0]
	if p.ID != "x-1" || p.Code != "any" || p.Season != "2025-26" || len(p.Want.Faults) != 2 || len(p.Want.Against) != 2 || !p.Counted() {
		t.Errorf("%+v", p)
	}
	p = ps[1]
	if p.Counted() || len(p.If) != 2 || p.If[1].Want.Replay != "outside-interference" || len(p.Under["club"].Measures) != 2 {
		t.Errorf("%+v", p)
	}
}

func TestReadErrors(t *testing.T) {
	for in, want := range map[string]string{
		"topic x":               "f:1: topic: a block begins",
		"play a\nwant perhaps":  "f:2: want: unknown ruling",
		"play a\nif no arrow":   "f:2: if: write WHEN",
		"play a\nweather sunny": "f:2: weather: unknown key",
	} {
		if _, err := Read("f", strings.NewReader(in)); err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("%q: error %v, want %s…", in, err, want)
		}
	}
}
