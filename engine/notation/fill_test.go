package notation

import (
	"errors"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine/notation/playgen"
	"example.org/netpost/engine/play"
)

// The id, the label and the clause of each value answer its question, and tell
// that fact and nothing else.
func TestFillOwnWords(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 11))
	for _, o := range options {
		for range 8 {
			p := playgen.Rally(r, o)
			for _, k := range playgen.Keys(p) {
				f, _ := play.FactByID(k.Fact)
				for i, c := range f.Values {
					want := canon(telling(p, k, c.Value))
					for _, words := range []string{string(c.Value), Choices(p, k)[i], Clause(p, k, c.Value) + "."} {
						q, err := Fill(p, k, words)
						if err != nil {
							t.Fatalf("%s: %v", k, err)
						}
						if got := canon(q); got != want {
							t.Fatalf("%s, %q: got\n%s\nwant\n%s", k, words, got, want)
						}
					}
				}
			}
		}
	}
}

// answerPlay is our set at the net that their blocker goes for, then touches
// the net, and the ball lands.
func answerPlay() *play.Rally {
	p := rallyOfTwo()
	p.Names = [3][]string{play.A: {"us"}, play.B: {"them"}}
	return p
}

func TestFill(t *testing.T) {
	for _, test := range []struct{ ask, words, want string }{
		{"row@p1", "front", "row@p1=front"},
		{"row@p2", "the blocekr was front row", "row@p2=front"},
		{"height@e1", "whollly above the net", "height@e1=above"},
		{"take-off@e1", "behnid the line", "take-off@e1=behind"},
		{"row@p1", "she was front row", "row@p1=front"},
		{"row@p1", "Back row.", "row@p1=back"},
		{"row@p1", "she wasn't front row", "row@p1=back"},
		{"row@p1", "our setter was back row", "row@p1=back"},
		{"row@p1", "the setter was in the back row, the blocker was front row", "row@p1=back row@p2=front"},
		{"row@p1", "no, she was back row", "row@p1=back"},
		{"row@p1", "we think she was back", "row@p1=back"},
		{"place@e2", "ball wholly on our side", "place@e2=beyond"},
		{"place@e2", "wholly on their side", "place@e2=own"},
		{"place@e2", "on her own side", "place@e2=own"},
		{"place@e2", "in the plane", "place@e2=plane"},
		{"place@e2", "other side", "place@e2=beyond"},
		{"place@e1", "our own side", "place@e1=own"},
		{"height@e1", "yes", "height@e1=above"},
		{"height@e1", "nope", "height@e1=not-above"},
		{"height@e1", "no, it was below the net", "height@e1=not-above"},
		{"height@e1", "not above the net", "height@e1=not-above"},
		{"height@e1", "wholly above, ball in the plane", "height@e1=above place@e1=plane"},
		{"height@e1", "above and she was reaching above the net", "height@e1=above reach@e1=above"},
		{"height@e1", "the ball wasn't wholly above the net", "height@e1=not-above"},
		{"take-off@e1", "behind", "take-off@e1=behind"},
		{"take-off@e1", "behind the 10' line", "take-off@e1=behind"},
		{"take-off@e1", "not behind the line", "take-off@e1=in-front"},
		{"take-off@e1", "she took off from behind the attack line", "take-off@e1=behind"},
		{"order@e1-e2", "they touched first", "order@e1-e2=after"},
		{"order@e1-e2", "we hit it first", "order@e1-e2=before"},
		{"order@e1-e2", "their blocker first", "order@e1-e2=after"},
		{"order@e1-e2", "the setter touched it before the blocker", "order@e1-e2=before"},
		{"order@e1-e2", "the setter touched it after the blocker", "order@e1-e2=after"},
		{"order@e1-e2", "before the blocker", "order@e1-e2=before"},
		{"order@e1-e2", "blocker was last", "order@e1-e2=before"},
		{"order@e1-e2", "same time", "order@e1-e2=same"},
		{"order@e1-e2", "both at the same time", "order@e1-e2=same"},
		{"order@e1-e2", "simultaneously", "order@e1-e2=same"},
		{"order@e2-e3", "the net first", "order@e2-e3=after"},
		{"order@e3-e4", "the ball landed first", "order@e3-e4=after"},
		{"order@e3-e4", "she touched the net before the ball landed", "order@e3-e4=before"},
		{"used", "three", "used=3"},
		{"used", "2", "used=2"},
		{"used", "they had used two contacts", "has=B used=2"},
		{"used", "all three", "used=3"},
		{"has", "us", "has=A"},
		{"has", "they had the ball", "has=B"},
		{"has", "team B", "has=B"},
		{"serving", "we were serving", "serving=A"},
		{"side@e4", "on our side", "side@e4=A"},
		{"side@e4", "theirs", "side@e4=B"},
		{"lands@e4", "in", "lands@e4=in"},
		{"lands@e4", "it was out", "lands@e4=out"},
		{"lands@e4", "on the line", "lands@e4=in"},
		{"manner@e1", "double", "manner@e1=double"},
		{"manner@e1", "she caught it", "manner@e1=held"},
		{"part@e3", "the antenna", "part@e3=antenna"},
		{"hinders@e3", "no", "hinders@e3=no"},
		{"hinders@e3", "no interference", "hinders@e3=no"},
		{"seen@e3", "nobody saw it", "seen@e3=no"},
		{"libero@p1", "yes", "libero@p1=yes"},
		{"libero@p1", "not the libero", "libero@p1=no"},
		{"ball", "no", "ball=dead"},
		{"completes@e1", "it crossed the net", "completes@e1=yes"},
		{"spent", "no contact left", "spent=yes"},
	} {
		k, err := play.ParseKey(test.ask)
		if err != nil {
			t.Fatal(err)
		}
		p := answerPlay()
		q, err := Fill(p, k, test.words)
		if err != nil {
			t.Errorf("%s: %v", test.ask, err)
			continue
		}
		var got []string
		for _, k := range q.Known() {
			got = append(got, k.String()+"="+string(q.Get(k)))
		}
		if s := strings.Join(got, " "); s != test.want {
			t.Errorf("%s, %q: got %s, want %s", test.ask, test.words, s, test.want)
		}
		if len(p.Known()) != 0 {
			t.Fatalf("%s, %q: the play given was changed", test.ask, test.words)
		}
	}
}

// An answer that is not plainly one is refused, and the error says what was
// not understood and what can be answered.
func TestFillRefuses(t *testing.T) {
	for _, test := range []struct{ ask, words, why string }{
		{"row@p1", "", "no answer in it"},
		{"row@p1", "?!", "no answer in it"},
		{"row@p1", "purple", `"purple": that was not understood`},
		{"row@p1", "yes", "not one of yes and no"},
		{"row@p1", "not sure", "leaves it open"},
		{"row@p1", "front or back", "leaves it open"},
		{"row@p1", "maybe front", "leaves it open"},
		{"row@p1", "front, back", "says two things"},
		{"row@p1", "the libero was front row", "nothing in the play fits"},
		{"row@p1", "they were front row", `"they": that was not understood`},
		{"row@p1", "their blocker was front row", "does not answer the question"},
		{"row@p1", "not", "nothing in it is an answer"},
		{"row@p1", "she was", "nothing in it is an answer"},
		{"row@p1", "fromt", `"fromt": that was not understood`},
		{"row@p1", "front row unicorn", `"unicorn": that was not understood`},
		{"height@e1", "yes, it was below the net", "says two things"},
		{"height@e1", "not below", "not plain which value"},
		{"height@e1", "not not above", "not plain which value"},
		{"place@e1", "yes", "not one of yes and no"},
		{"place@e1", "in the plane, not above the net", `"above net": that was not understood`},
		{"used", "four", `"four": that was not understood`},
		{"order@e1-e2", "she first", "nothing in it is an answer"},
		{"order@e1-e2", "not first", "not plain which value"},
		{"order@e2-e3", "the blocker first", "nothing in it is an answer"},
		{"side@e4", "own side", "not plain which value"},
	} {
		k, err := play.ParseKey(test.ask)
		if err != nil {
			t.Fatal(err)
		}
		p := answerPlay()
		q, err := Fill(p, k, test.words)
		var bad *FillError
		if q != nil || !errors.As(err, &bad) {
			t.Errorf("%s, %q: got %v, %v", test.ask, test.words, q, err)
			continue
		}
		if !strings.Contains(err.Error(), test.why) {
			t.Errorf("%s, %q: %v\nwant %s", test.ask, test.words, err, test.why)
		}
		if bad.Ask != Question(p, k) || !slices.Equal(bad.Choices, Choices(p, k)) {
			t.Errorf("%s, %q: asks %q with %q", test.ask, test.words, bad.Ask, bad.Choices)
		}
	}
}

// Who "they" are is not guessed where the play has only letters, and what was
// told before is not overturned by the way.
func TestFillNeverGuesses(t *testing.T) {
	p := rallyOfTwo()
	for ask, words := range map[string]string{"order@e1-e2": "they touched first", "place@e1": "on our side", "has": "us"} {
		k, _ := play.ParseKey(ask)
		if q, err := Fill(p, k, words); err == nil {
			t.Errorf("%s, %q was taken for %s", ask, words, q.Get(k))
		}
	}
	p = p.With(play.Key{Fact: play.Place, Of: "e1"}, play.Own)
	if q, err := Fill(p, play.Key{Fact: play.Height, Of: "e1"}, "above, ball in the plane"); err == nil || !strings.Contains(err.Error(), "told before") {
		t.Errorf("got %v, %v", q, err)
	}
	for _, k := range []play.Key{{Fact: "colour"}, {Fact: play.Row, Of: "e1"}, {Fact: play.Height, Of: "e9"}} {
		if _, err := Fill(p, k, "yes"); err == nil {
			t.Errorf("%s was filled", k)
		}
	}
}

func TestAnswers(t *testing.T) {
	facts := play.Facts()
	rank := func(a answer) (int, int) {
		i := slices.IndexFunc(facts, func(f play.Fact) bool { return f.ID == a.fact })
		if i < 0 {
			t.Fatalf("%s is no fact", a.fact)
		}
		return i, slices.IndexFunc(facts[i].Values, func(c play.Choice) bool { return c.Value == a.value })
	}
	said := map[string]answer{}
	for n, a := range answers {
		i, j := rank(a)
		if slots := strings.Contains(a.words, "{side}"); slots != (a.value == "") || j < 0 && !slots {
			t.Errorf("%s=%s: a side's row has no value, any other has one of the fact's", a.fact, a.value)
		}
		if n > 0 {
			if i2, j2 := rank(answers[n-1]); i < i2 || i == i2 && j <= j2 {
				t.Errorf("%s=%s is out of order", a.fact, a.value)
			}
		}
		for words := range strings.SplitSeq(a.words, "|") {
			key := string(a.fact) + " " + strings.Join(units(words), " ")
			if was, ok := said[key]; ok {
				t.Errorf("%q says %s and %s", key, was.value, a.value)
			}
			said[key] = a
		}
	}
	for i, q := range polar {
		if f, ok := play.FactByID(q.fact); !ok || len(f.Values) != 2 || !f.Has(q.yes) || i > 0 && polar[i-1].fact >= q.fact {
			t.Errorf("polar: %s=%s is out of order or no value of two", q.fact, q.yes)
		}
	}
	for i, w := range eventWords {
		if i > 0 && eventWords[i-1].word >= w.word || !slices.Contains(play.Kinds(), w.kind) {
			t.Errorf("eventWords: %q is out of order or of no kind", w.word)
		}
	}
	if !slices.IsSorted(weightless) {
		t.Error("weightless is not sorted")
	}
}

// Every short way to say a value says that value.
func TestFillAnswers(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 13))
	met := map[string]bool{}
	for range 150 {
		p := playgen.Rally(r, playgen.Options{Wild: true})
		for _, k := range playgen.Keys(p) {
			for _, a := range answers {
				if a.fact != k.Fact || a.fact == play.Order && a.value == play.Before {
					continue
				}
				for words := range strings.SplitSeq(a.words, "|") {
					if met[string(k.Fact)+words] {
						continue
					}
					met[string(k.Fact)+words] = true
					words := strings.ReplaceAll(words, "{side}", "team B")
					want := a.value
					if want == "" {
						want = play.ValueB
						if a.fact == play.Place {
							want = play.Own
							if teamOf(p, k) == play.A {
								want = play.Beyond
							}
						}
					}
					// Facts told already might contradict what else the words say.
					bare := &play.Rally{Events: p.Events, Players: p.Players}
					q, err := Fill(bare, k, words)
					if err != nil {
						t.Errorf("%s: %v", k, err)
					} else if got := q.Get(k); got != want || len(q.Known()) != 1 {
						t.Errorf("%s, %q: got %s and %d facts, want %s", k, words, got, len(q.Known()), want)
					}
				}
			}
		}
	}
	for _, a := range answers {
		for words := range strings.SplitSeq(a.words, "|") {
			if !met[string(a.fact)+words] && a.value != play.Before {
				t.Errorf("%s=%s: %q was never tried", a.fact, a.value, words)
			}
		}
	}
}

// FuzzFill answers a question of any play with any words: a success tells the
// fact asked for and leaves a well-formed play, a failure tells nothing.
func FuzzFill(f *testing.F) {
	for _, s := range []string{"yes", "she was front row", "ball wholly on our side", "they touched first", "no, not behind the 10' line", "A's, B's, team a"} {
		f.Add([]byte("some play"), byte(7), s)
		f.Add([]byte{0, 5, 1, 2, 9, 4, 4}, byte(3), s)
	}
	f.Fuzz(func(t *testing.T, data []byte, which byte, words string) {
		b := playgen.Bytes(data)
		p := playgen.Rally(&b, playgen.Options{Names: true, Voids: true})
		keys := playgen.Keys(p)
		k := keys[int(which)%len(keys)]
		before := canon(p)
		q, err := Fill(p, k, words)
		if canon(p) != before {
			t.Fatal("the play given was changed")
		}
		if err != nil {
			if q != nil {
				t.Fatal("an error with a play")
			}
			return
		}
		if q.Get(k) == play.Unknown {
			t.Errorf("%s is still open after %q", k, words)
		}
		if err := q.Check(); err != nil {
			t.Error(err)
		}
	})
}

func BenchmarkFill(b *testing.B) {
	p := answerPlay()
	k := play.Key{Fact: play.Row, Of: "p1"}
	for b.Loop() {
		if _, err := Fill(p, k, "the setter was in the back row, the blocker was front row"); err != nil {
			b.Fatal(err)
		}
	}
}
