package web

import (
	"context"
	"encoding/json"
	"math/rand/v2"
	"net/url"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/court"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// random puts everybody somewhere.
func random(r *rand.Rand) stands {
	s := atFirst()
	s.Serving = play.A + play.Team(r.IntN(2))
	for team := range s.At {
		for i := range s.At[team] {
			s.At[team][i] = spot{r.IntN(23)*50 - beside, r.IntN(22)*50 - across}
		}
	}
	return s
}

// What is typed is the same as what was dragged: read in a chat it gives the
// same facts, the same answer, and on the page the same places.
func TestAlignmentTyped(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	for n := range 60 {
		s := random(r)
		dragged := s.alignment()
		got, err := notation.Read(s.Text())
		typedA, ok := got.Other.(*court.Alignment)
		if err != nil || !ok || !got.Whole() {
			t.Fatalf("%s: not read as an alignment: %v", s.Text(), err)
		}
		k := dragged.Known()
		if !slices.Equal(k, typedA.Known()) {
			t.Fatalf("%s: dragged %v, typed %v", s.Text(), k, typedA.Known())
		}
		for _, k := range k {
			if dragged.Get(k) != typedA.Get(k) {
				t.Fatalf("%s: %v is %s dragged and %s typed", s.Text(), k, dragged.Get(k), typedA.Get(k))
			}
		}
		if back, ok := typed(s.Text()); !ok || back != s {
			t.Fatalf("%s: put on the court it is %+v, not %+v", s.Text(), back, s)
		}
		o := answer.Options{Code: code.All()[n%4]}
		one, err1 := json.Marshal(answer.Of(notation.Reading{Other: dragged}, o))
		two, err2 := json.Marshal(answer.Ask(s.Text(), o))
		if err1 != nil || err2 != nil || string(one) != string(two) {
			t.Fatalf("%s: dragged and typed are answered otherwise:\n%s\n%s", s.Text(), one, two)
		}
	}
}

// What is at fault on the page is what the plain geometry finds.
func TestAlignmentRuled(t *testing.T) {
	w, err := New(Options{Listener: listen(t)})
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(1, 9))
	for _, c := range code.All() {
		b, err := code.Open(c, 0)
		if err != nil {
			t.Fatal(err)
		}
		law := court.LawOf(b)
		for range 50 {
			s := random(r)
			got, err := w.rule(s, c)
			if err != nil {
				t.Fatal(err)
			}
			want := 0
			for team := range s.At {
				var six court.Six
				for i, at := range s.At[team] {
					six[i].Feet = []court.Tread{court.Seen(team == 0, court.Cm(900), court.Cm(at.X), court.Cm(at.Near))}
				}
				serves := s.Serving == play.A+play.Team(team)
				if serves && law.Serving || !serves && law.Receiving {
					want += len(law.Overlaps(&six, serves))
				}
			}
			if len(got.Pairs) != want {
				t.Fatalf("%s, %s: %d pairs at fault, by the geometry %d", c, s.Text(), len(got.Pairs), want)
			}
			if fault := len(got.Pairs)+len(got.Off) > 0; fault != (got.Tone == "bad" || got.Tone == "again") {
				t.Fatalf("%s, %s: %v and %v at fault, and the ruling is %s", c, s.Text(), got.Pairs, got.Off, got.Told)
			}
		}
	}
}

// The page works by hand: it shows the court as it is at first, rules on what
// is sent, and puts on the court what was typed.
func TestAlignmentPage(t *testing.T) {
	w, err := New(Options{Listener: listen(t), Find: func(bot.Place) (bot.Association, bool) { return bot.Association{}, false }})
	if err != nil {
		t.Fatal(err)
	}
	serve(t, w, func(context.Context, bot.Event) bot.Reply { return bot.Nothing{} })
	b := newBrowser(t, w)
	first := b.get("/alignment")
	if first.status != 200 || strings.Count(first.body, `role="button" aria-pressed="false"`) != 12 || !strings.Contains(first.body, "Play on, no fault") {
		t.Fatalf("%d\n%s", first.status, first.body)
	}
	token := b.token()
	at := "a1:750,100 a2:750,200 a3:450,200 a4:150,200 a5:150,620 a6:450,620 b1:150,960 b2:150,200 b3:450,200 b4:750,200 b5:750,620 b6:450,620"
	send := func(change func(url.Values)) page {
		v := url.Values{"form": {token}, "code": {"scholastic"}, "serving": {"b"}, "at": {at}}
		change(v)
		return b.post("/alignment/rule", v)
	}
	var got ruled
	p := send(func(url.Values) {})
	if err := json.Unmarshal([]byte(p.body), &got); err != nil || p.status != 200 {
		t.Fatalf("%d: %v\n%s", p.status, err, p.body)
	}
	if len(got.Pairs) != 1 || got.Pairs[0] != [2]string{"a1", "a2"} || !strings.Contains(got.Told, "Fault: ") || !strings.Contains(string(got.HTML), "player in 1 stands ahead of the player in 2") {
		t.Errorf("1 ahead of 2 is ruled %+v", got)
	}
	for name, change := range map[string]func(url.Values){
		"no token":      func(v url.Values) { v.Del("form") },
		"no code":       func(v url.Values) { v.Set("code", "") },
		"a player less": func(v url.Values) { v.Set("at", strings.TrimPrefix(at, "a1:750,100 ")) },
		"one twice":     func(v url.Values) { v.Set("at", strings.Replace(at, "a1", "a2", 1)) },
		"far away":      func(v url.Values) { v.Set("at", strings.Replace(at, "750,100", "99999999999,100", 1)) },
		"no number":     func(v url.Values) { v.Set("at", strings.Replace(at, "750,100", "NaN,100", 1)) },
		"nobody serves": func(v url.Values) { v.Set("serving", "") },
	} {
		if p := send(change); p.status < 400 || p.status >= 500 {
			t.Errorf("%s: %d\n%s", name, p.status, p.body)
		}
	}
	p = b.post("/alignment", url.Values{"form": {token}, "code": {"scholastic"}, "words": {got.Text}})
	if p.status != 200 || !strings.Contains(p.body, `data-pairs="a1-a2"`) || !strings.Contains(p.body, `translate(750 100)`) {
		t.Errorf("typed: %d\n%s", p.status, p.body)
	}
	p = b.post("/alignment", url.Values{"form": {token}, "code": {"club"}, "words": {"<b>our setter</b> tips"}})
	if p.status != 200 || !strings.Contains(p.body, "No lengths were read in that") || !strings.Contains(p.body, "&lt;b&gt;our setter&lt;/b&gt; tips") {
		t.Errorf("no lengths: %d\n%s", p.status, p.body)
	}
}

// What the page asks for each move, at fault and not.
func BenchmarkAlignmentRule(b *testing.B) {
	w, err := New(Options{Listener: listen(b)})
	if err != nil {
		b.Fatal(err)
	}
	fault := atFirst()
	fault.At[0][0].Near = 100
	for name, s := range map[string]stands{"legal": atFirst(), "fault": fault} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := w.rule(s, code.Scholastic); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
