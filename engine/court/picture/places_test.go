package picture_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/court"
	"example.org/netpost/engine/court/picture"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

func book(t testing.TB, c code.Code) *code.Book {
	t.Helper()
	b, err := code.Open(c, 0)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// The pictures of testdata are drawn as they stand there; look at them in a
// browser after an update.
func TestGoldenPlaces(t *testing.T) {
	for _, tc := range []struct{ name, words string }{
		{"order", "receiving left front stands behind the left back at service contact, overlap?"},
		{"grid", "receiving: 4 . 3 . 2 / . 5 . 1 . 6"},
		{"lengths", "receiving: 1 at 7.5 m 3 m and 7.9 m 3.4 m; 2 at 7.5 m 4 m; 3 at 4.5 m 1 m; 4 at 1.5 m 3 m; 5 at 1.5 m 7 m; 6 at 4.5 m 7 m | " +
			"serving: 1 at 7 m 9.6 m; 2 at 5 m 1 m; 3 at 4.5 m 1 m; 4 at 4 m 1 m; 5 at 2 m 6 m; 6 at 4.5 m 7 m"},
		{"nowhere", "receiving setter ahead of the player in 2 at contact"},
	} {
		r, err := notation.Read(tc.words)
		if err != nil || r.Other == nil {
			t.Fatalf("%s: not read: %v", tc.name, err)
		}
		s, ok := picture.Of(r.Other, picture.Mark{Words: "fault: out of position", Book: book(t, code.International)})
		if !ok {
			t.Fatalf("%s: nothing to draw", tc.name)
		}
		golden(t, tc.name, s)
	}
}

// sixes are two sixes on a coarse grid, so that players are often level.
func sixes(r *rand.Rand) (a, b court.Six) {
	for _, six := range []*court.Six{&a, &b} {
		for i := range six {
			p := court.Position(i + 1)
			left, near := 150+300*p.Lane(), 600
			if p.Front() {
				near = 200
			}
			if r.IntN(6) == 0 { // who strays
				left, near = left+150*(r.IntN(5)-2), near+200*(r.IntN(4)-1)
			}
			six[i].Feet = []court.Tread{court.At(court.Cm(left), court.Cm(near))}
		}
	}
	return a, b
}

// Whatever the rules find at fault is marked in the picture, and nothing is
// marked where they find none.
func TestMarksAgree(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	faults := 0
	for n := range 600 {
		c := code.All()[n%len(code.All())]
		b := book(t, c)
		x, y := sixes(r)
		a, err := court.New(play.A+play.Team(r.IntN(2)), x, y)
		if err != nil {
			t.Fatal(err)
		}
		d, err := judge.Decide(a, b)
		if err != nil || !d.Settled() {
			t.Fatalf("%v: not settled: %v", notation.Say(a), err)
		}
		s, ok := picture.Of(a, picture.Mark{Book: b})
		if !ok {
			t.Fatalf("%v: not drawn", notation.Say(a))
		}
		marked := strings.Contains(s.Alt, "Marked:")
		if found := d.Ruling.Fault != "" || d.Ruling.Replay != ""; marked != found {
			t.Fatalf("%s: %+v, and the picture says %q", notation.Say(a), d.Ruling, s.Alt)
		}
		if marked {
			faults++
		}
	}
	if faults < 100 || faults > 500 {
		t.Errorf("%d of 600 alignments are at fault: too few of a kind", faults)
	}
}

// As many pairs are marked as stand out of order by the plain geometry.
func TestMarksEveryPair(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	b := book(t, code.International)
	law := court.LawOf(b)
	for range 300 {
		x, y := sixes(r)
		a, err := court.New(play.A, x, y)
		if err != nil {
			t.Fatal(err)
		}
		want := 0
		if law.Receiving {
			want += len(law.Overlaps(&y, false))
		}
		if law.Serving {
			want += len(law.Overlaps(&x, true))
		}
		s, _ := picture.Of(a, picture.Mark{Book: b})
		got := 0
		for _, sh := range s.Shapes { // a line of a pair is the only one so thick
			if l, ok := sh.(picture.Line); ok && l.Width == 4 && l.Stroke != "#3D434A" {
				got++
			}
		}
		if got != want {
			t.Fatalf("%s: %d pairs are marked, %d stand out of order", notation.Say(a), got, want)
		}
	}
}

// Players are drawn so that all that was told of how they stand holds.
func TestDrawnAsTold(t *testing.T) {
	for _, words := range []string{
		"receiving left front stands behind the left back at service contact",
		"receiving right front is left of the left front when the serve is hit",
		"receiving setter in 1 level with the player in 2 at service contact",
		"receiving: 4 . 3 . 2 / . 5 . 1 . 6",
	} {
		r, err := notation.Read(words)
		a, ok := r.Other.(*court.Alignment)
		if err != nil || !ok {
			t.Fatalf("%q is no alignment: %v", words, err)
		}
		s, ok := picture.Of(a, picture.Mark{})
		if !ok {
			t.Fatalf("%q is not drawn", words)
		}
		at := map[string]picture.Point{}
		for _, sh := range s.Shapes {
			if l, ok := sh.(picture.Label); ok && l.Size == 13 && l.Bold {
				at[l.Text] = l.At
			}
		}
		for _, k := range a.Known() {
			var x, y string
			team := a.People[0].Team
			for i, p := range a.People {
				for _, q := range a.People[i+1:] {
					if of, _ := a.PairOf(p.ID, q.ID); of == k.Of {
						x, y = p.Place.String(), q.Place.String()
					}
				}
			}
			if x == "" {
				continue
			}
			dx, dy := at[x].X-at[y].X, at[x].Y-at[y].Y
			if team == play.B { // who looks the other way
				dx, dy = -dx, -dy
			}
			v := a.Get(k)
			holds := map[play.Value]bool{court.Ahead: dx > 1, court.Behind: dx < -1, court.ToTheRight: dy > 1, court.ToTheLeft: dy < -1}
			if want, ok := holds[v]; ok && !want {
				t.Errorf("%q: %s, and they are drawn %g, %g from one another", words, a.Clause(k, v), dx, dy)
			}
			if v == court.LevelWith && (k.Fact == court.StandsDepth && (dx > 1 || dx < -1) || k.Fact == court.StandsAcross && (dy > 1 || dy < -1)) {
				t.Errorf("%q: %s, and they are drawn %g, %g from one another", words, a.Clause(k, v), dx, dy)
			}
		}
	}
}

func BenchmarkPlacesSVG(b *testing.B) {
	x, y := sixes(rand.New(rand.NewPCG(1, 1)))
	a, err := court.New(play.A, x, y)
	if err != nil {
		b.Fatal(err)
	}
	bk := book(b, code.International)
	for b.Loop() {
		s, _ := picture.Of(a, picture.Mark{Words: "fault: out of position", Book: bk})
		s.SVG()
	}
}

func ExampleOf() {
	r, _ := notation.Read("receiving left front stands behind the left back at service contact, overlap?")
	b, _ := code.Open(code.International, 0)
	s, _ := picture.Of(r.Other, picture.Mark{Words: "fault: out of position", Book: b})
	fmt.Println(s.Alt)
	// Output: Where the players stood at the service, from above: 2 of receiving. Marked: fault: out of position: the receiving team's player in 4 stands behind the player in 5. What was not told has a broken outline.
}
