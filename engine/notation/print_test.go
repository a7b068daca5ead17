package notation

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine/notation/playgen"
	"example.org/netpost/engine/play"
)

// options are the sorts of random plays that the property tests run over.
var options = []playgen.Options{
	{},
	{Wild: true},
	{Names: true, Voids: true},
	{Wild: true, Names: true, Voids: true},
}

// canon is all that a play says: players numbered as they come up, sides by
// their names, so that a play and its swap are alike. A void beside a told
// fact says nothing, and the name "A" of side A is no name.
func canon(p *play.Rally) string {
	var b strings.Builder
	ids := map[string]string{"": ""}
	name := func(id string) string {
		if n, ok := ids[id]; ok {
			return n
		}
		ids[id] = fmt.Sprintf("p%d", len(ids))
		pl, _ := p.Player(id)
		fmt.Fprintf(&b, "%s: %s %s #%s\n", ids[id], called(p, pl.Team), pl.Role, pl.Label)
		return ids[id]
	}
	for i, e := range p.Events {
		ids[e.ID] = fmt.Sprintf("e%d", i+1)
		fmt.Fprintf(&b, "e%d: %s %s by %s of %s, number %d\n", i+1, e.Kind, e.Action, name(e.Player), called(p, e.Team), e.Number)
	}
	for _, pl := range p.Players {
		name(pl.ID)
	}
	var facts []string
	of := func(k play.Key) string {
		if a, c, ok := strings.Cut(k.Of, "-"); ok {
			return ids[a] + "-" + ids[c]
		}
		return ids[k.Of]
	}
	for _, k := range p.Known() {
		v := string(p.Get(k))
		if f, _ := play.FactByID(k.Fact); f.Sided {
			v = called(p, map[string]play.Team{"A": play.A, "B": play.B}[v])
		}
		facts = append(facts, fmt.Sprintf("%s@%s=%s\n", k.Fact, of(k), v))
	}
	for _, k := range p.Voided() {
		if p.Get(k) == play.Unknown {
			facts = append(facts, fmt.Sprintf("%s@%s void\n", k.Fact, of(k)))
		}
	}
	slices.Sort(facts)
	b.WriteString(strings.Join(facts, ""))
	fmt.Fprintf(&b, "asked %q\n", p.Asked)
	return b.String()
}

func TestPrint(t *testing.T) {
	setter := play.Player{ID: "p1", Team: play.A, Role: play.Setter}
	blocker := play.Player{ID: "p2", Team: play.B, Role: play.Blocker}
	other := play.Player{ID: "p3", Team: play.B, Role: play.Blocker}
	somebody := play.Player{ID: "p1", Team: play.A}
	usThem := [3][]string{play.A: {"us"}, play.B: {"them"}}
	contact := func(id string, pl play.Player, a play.Action) play.Event {
		return play.Event{ID: id, Kind: play.Contact, Team: pl.Team, Player: pl.ID, Action: a}
	}
	for _, test := range []struct {
		p     play.Rally
		facts map[play.Key]play.Value
		voids []play.Key
		want  string
	}{
		{p: play.Rally{}},
		{
			p: play.Rally{Players: []play.Player{{ID: "p1", Team: play.A, Label: "8"}, blocker},
				Events: []play.Event{contact("e1", play.Player{ID: "p1", Team: play.A}, play.Touch), contact("e2", blocker, play.Touch)}},
			facts: map[play.Key]play.Value{
				{Fact: play.Has}: play.ValueA, {Fact: play.Used}: play.N3, {Fact: play.Row, Of: "p1"}: play.Front,
				{Fact: play.Place, Of: "e1"}: play.Plane, {Fact: play.Order, Of: "e1-e2"}: play.Same,
			},
			want: "A has the ball, three contacts used, A's front-row player #8 touches the ball, ball in the plane, at the same time B's blocker touches the ball",
		},
		{
			p: play.Rally{Players: []play.Player{setter}, Names: usThem,
				Events: []play.Event{contact("e1", setter, play.Set), {ID: "e2", Kind: play.NetTouch, Team: play.A, Player: "p1"}}},
			facts: map[play.Key]play.Value{
				{Fact: play.Has}: play.ValueB, {Fact: play.Serving}: play.ValueA, {Fact: play.Row, Of: "p1"}: play.Back,
				{Fact: play.Place, Of: "e1"}: play.Beyond, {Fact: play.Order, Of: "e1-e2"}: play.After, {Fact: play.Part, Of: "e2"}: play.PartAntenna,
			},
			want: "they have the ball, we are serving, our back-row setter sets the ball, ball wholly on their side, before that our setter touches the antenna",
		},
		{
			p: play.Rally{Players: []play.Player{blocker, other}, Asked: play.AskedPoint,
				Events: []play.Event{contact("e1", blocker, play.Block), contact("e2", other, play.Block), {ID: "e3", Kind: play.Land}}},
			facts: map[play.Key]play.Value{{Fact: play.Lands, Of: "e3"}: play.Out, {Fact: play.Order, Of: "e2-e3"}: play.Before},
			voids: []play.Key{{Fact: play.Manner, Of: "e1"}, {Fact: play.Order, Of: "e1-e2"}, {Fact: play.Lands, Of: "e3"}},
			want:  "B's first blocker blocks the ball, a clean contact or not; B's second blocker blocks the ball, which first, then the ball lands out, who gets the point",
		},
		{
			p: play.Rally{Players: []play.Player{somebody}, Names: [3][]string{play.A: {"visitors"}, play.B: {"red"}},
				Events: []play.Event{
					{ID: "e1", Kind: play.Contact, Team: play.A, Number: 3},
					contact("e2", somebody, play.Touch), contact("e3", somebody, play.Touch),
					{ID: "e4", Kind: play.Contact, Team: play.B},
				}},
			facts: map[play.Key]play.Value{{Fact: play.Place, Of: "e4"}: play.Own},
			want:  "visitors touch the ball on the third contact; visitors' player touches the ball; visitors' same player touches the ball; red touches the ball, ball wholly on red's side",
		},
	} {
		p := &test.p
		for k, v := range test.facts {
			p = p.With(k, v)
		}
		for _, k := range test.voids {
			p = p.WithVoid(k)
		}
		if err := p.Check(); err != nil {
			t.Fatal(err)
		}
		if got := Print(p); got != test.want {
			t.Errorf("got  %s\nwant %s", got, test.want)
		}
	}
}

// No two plays that say different things have the same print: nothing told is
// lost, and nothing presumed is printed as if it had been told.
func TestPrintTellsPlaysApart(t *testing.T) {
	plays := map[string]string{}
	check := func(p *play.Rally) {
		t.Helper()
		s, c := Print(p), canon(p)
		if was, ok := plays[s]; ok && was != c {
			t.Fatalf("one print\n%s\nof two plays\n%s\n%s", s, was, c)
		}
		plays[s] = c
	}
	playgen.Short(2, func(p *play.Rally) bool { check(p); return true })
	r := rand.New(rand.NewPCG(3, 4))
	for _, o := range options {
		for range 50 {
			p := playgen.Rally(r, o)
			check(p)
			for _, k := range playgen.Keys(p) {
				if k.Fact == play.Side {
					continue // told together with the event's team
				}
				check(p.With(k, play.Unknown))
				if p.Get(k) == play.Unknown {
					check(p.WithVoid(k))
				}
				f, _ := play.FactByID(k.Fact)
				for _, c := range f.Values {
					check(p.With(k, c.Value))
				}
			}
		}
	}
}

func TestSentences(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 300 {
		p := playgen.Rally(r, playgen.Options{Wild: true, Names: true, Voids: true})
		s := Sentences(p)
		if strings.Join(s, ", ") != strings.ReplaceAll(Print(p), "; ", ", ") {
			t.Fatalf("the sentences %q are not the print %q", s, Print(p))
		}
		if len(s) < len(p.Events) {
			t.Fatalf("%d sentences for %d events: %q", len(s), len(p.Events), s)
		}
		for _, line := range s {
			if line != strings.TrimSpace(line) || strings.Contains(line, "  ") || strings.ContainsAny(line, "{}%") {
				t.Errorf("badly put together: %q", line)
			}
		}
	}
}

// A player without an event, as in a line-up question, is printed too.
func TestPrintPlayerAlone(t *testing.T) {
	p := &play.Rally{Players: []play.Player{{ID: "p1", Team: play.B, Role: play.Libero}}}
	p = p.With(play.Key{Fact: play.Row, Of: "p1"}, play.Back)
	if got, want := Print(p), "there is B's back-row libero"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestVerbs(t *testing.T) {
	rows := map[string]bool{}
	for _, v := range verbs {
		rows[string(v.kind)+" "+string(v.action)] = true
		if v.one == "" || v.many == "" || v.was == "" {
			t.Errorf("%s %s: a form of the verb is missing", v.kind, v.action)
		}
	}
	want := len(play.Kinds()) + len(play.Actions()) - 1
	if len(rows) != want || len(verbs) != want {
		t.Errorf("%d rows, %d different: want %d", len(verbs), len(rows), want)
	}
	for _, k := range play.Kinds() {
		if !rows[string(k)+" "] {
			t.Errorf("no verb for an event of kind %s", k)
		}
	}
	for _, a := range play.Actions() {
		if !rows["contact "+string(a)] {
			t.Errorf("no verb for the action %s", a)
		}
	}
	for i, o := range objects {
		if i > 0 && objects[i-1].fact >= o.fact {
			t.Errorf("objects: %s is out of order", o.fact)
		}
		if f, ok := play.FactByID(o.fact); !ok || f.About != play.OfEvent {
			t.Errorf("objects: %s is no fact of an event", o.fact)
		}
	}
	for i, w := range sideWords {
		if i > 0 && sideWords[i-1].name >= w.name {
			t.Errorf("sideWords: %s is out of order", w.name)
		}
	}
}

// FuzzPrint feeds bytes to the generator: whatever they draw is read back from
// its print, and no fact taken away leaves the print as it was.
func FuzzPrint(f *testing.F) {
	for _, s := range []string{"", "serve and receive", "\x05\x01\x02\x03\x04\x05\x06\x07", "a set on the edge of the net, both up"} {
		f.Add([]byte(s), false)
		f.Add([]byte(s), true)
	}
	f.Fuzz(func(t *testing.T, data []byte, wild bool) {
		b := playgen.Bytes(data)
		p := playgen.Rally(&b, playgen.Options{Wild: wild, Names: true, Voids: true})
		sameRead(t, p)
		s := Print(p)
		for _, k := range p.Known() {
			if k.Fact == play.Side {
				continue // told together with the event's team
			}
			if q := p.With(k, play.Unknown); Print(q) == s {
				t.Errorf("%s=%s is not in %q", k, p.Get(k), s)
			}
		}
	})
}

func BenchmarkPrint(b *testing.B) {
	p := playgen.Rally(rand.New(rand.NewPCG(1, 1)), playgen.Options{Wild: true})
	for b.Loop() {
		Print(p)
	}
}
