package answer

import (
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation/playgen"
	"example.org/netpost/engine/play"
)

func keysOf(ds []Difference) []string {
	var out []string
	for _, d := range ds {
		out = append(out, play.Key{Fact: play.FactID(d.Fact), Of: d.Of}.String())
	}
	return out
}

func TestCompare(t *testing.T) {
	tip := "our setter tips the ball over from inside the 3m line, ball above the net"
	for _, c := range []struct {
		name          string
		text          string
		first, second []string
		ruled, alike  bool
		split, idle   []string
	}{
		{"one fact splits them", tip, []string{"row@p1=front"}, []string{"row@p1=back"}, true, false, []string{"row@p1"}, nil},
		{"the other does not matter", tip, []string{"row@p1=front", "place@e1=plane"}, []string{"row@p1=back"}, true, false, []string{"row@p1"}, []string{"place@e1"}},
		{"both front row", tip, []string{"row@p1=front"}, []string{"row@p1=front", "height@e1=not-above"}, true, true, nil, []string{"height@e1"}},
		{"one tells what the other does not", tip, []string{"row@p1=front"}, nil, true, false, []string{"row@p1"}, nil},
		{"nothing differs", tip, nil, nil, true, true, nil, nil},
		{"a fact that the play does not have", tip, []string{"row@p9=front"}, nil, false, false, nil, nil},
		{"no play", "the weather is fine", nil, nil, false, false, nil, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := Compare(c.text, Options{Code: code.Scholastic}, given(t, c.first...), given(t, c.second...))
			if got.Ruled != c.ruled || got.Alike != c.alike || !slices.Equal(keysOf(got.Split), c.split) || !slices.Equal(keysOf(got.Idle), c.idle) {
				t.Errorf("ruled %v, alike %v, split by %q, idle %q; want %+v", got.Ruled, got.Alike, keysOf(got.Split), keysOf(got.Idle), c)
			}
		})
	}
}

// What two views differ in, over random plays and pairs of views: the facts
// that split them are facts that differ; agreed on, whichever way, the two rule
// alike; no smaller set does that; and it is the same whoever comes first.
func TestSplit(t *testing.T) {
	r := rand.New(rand.NewPCG(20, 26))
	splits, alike, more := 0, 0, 0
	for n := 0; n < 400; n++ {
		p := playgen.Rally(r, playgen.Options{Events: 3})
		v := views{first: side{see(r, p), []code.Code{code.All()[r.IntN(len(code.All()))]}}}
		v.second = side{see(r, p), v.first.codes}
		one, two := v.rule(v.first), v.rule(v.second)
		all := v.differing()
		split, idle := v.split()
		if same := slices.Equal(sortedKeys(slices.Concat(split, idle)), sortedKeys(all)); !same {
			t.Fatalf("%v and %v are not %v", split, idle, all)
		}
		if one == two {
			alike++
			if split != nil {
				t.Fatalf("they rule alike and are split by %v", split)
			}
			continue
		}
		splits++
		if len(split) > 1 {
			more++
		}
		does := func(keys []play.Key) bool {
			return v.rule(v.first.with(v.second, keys)) == two && v.rule(v.second.with(v.first, keys)) == one
		}
		if !does(split) {
			t.Fatalf("agreed on %v they do not rule alike", split)
		}
		back := views{first: v.second, second: v.first}
		again, _ := back.split()
		if len(again) != len(split) {
			t.Fatalf("split by %v, the other way round by %v", split, again)
		}
		if len(all) > ExactViews {
			continue
		}
		for set := range 1 << len(all) {
			var keys []play.Key
			for i, k := range all {
				if set>>i&1 == 1 {
					keys = append(keys, k)
				}
			}
			if len(keys) > 0 && len(keys) < len(split) && does(keys) {
				t.Fatalf("%v splits them, and %v does too", split, keys)
			}
		}
	}
	if splits < 50 || alike < 50 || more == 0 {
		t.Errorf("%d pairs are split, %d rule alike, %d are split by more than one fact: too few to prove anything", splits, alike, more)
	}
}

// see is a play with a few facts told at random.
func see(r *rand.Rand, p *play.Rally) engine.Subject {
	keys := playgen.Keys(p)
	var s engine.Subject = p
	for range 1 + r.IntN(4) {
		k := keys[r.IntN(len(keys))]
		f, _ := p.Fact(k.Fact)
		if t := s.Tell(k, f.Values[r.IntN(len(f.Values))].Value); t.Check() == nil {
			s = t
		}
	}
	return s
}

func sortedKeys(ks []play.Key) []string {
	var out []string
	for _, k := range ks {
		out = append(out, k.String())
	}
	slices.Sort(out)
	return out
}

// Above the exact search no fact of those that split them can be spared.
func TestSplitMany(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	found := 0
	for n := 0; n < 4000 && found < 20; n++ {
		p := playgen.Rally(r, playgen.Options{Events: 4})
		far := func() engine.Subject {
			s := see(r, p)
			for range 5 {
				s = see(r, s.(*play.Rally))
			}
			return s
		}
		v := views{first: side{far(), code.All()[:1]}, second: side{far(), code.All()[:1]}}
		if len(v.differing()) <= ExactViews || v.rule(v.first) == v.rule(v.second) {
			continue
		}
		found++
		split, _ := v.split()
		one, two := v.rule(v.first), v.rule(v.second)
		for i := range split {
			less := slices.Delete(slices.Clone(split), i, i+1)
			if v.rule(v.first.with(v.second, less)) == two && v.rule(v.second.with(v.first, less)) == one {
				t.Fatalf("of %v, %v can be spared", split, split[i])
			}
		}
	}
	if found == 0 {
		t.Error("no pair differs in so much: the test proves nothing")
	}
}
