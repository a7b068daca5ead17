package notation

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine/notation/playgen"
	"example.org/netpost/engine/play"
)

func rallyOfTwo() *play.Rally {
	return &play.Rally{
		Players: []play.Player{{ID: "p1", Team: play.A, Role: play.Setter}, {ID: "p2", Team: play.B, Role: play.Blocker}},
		Events: []play.Event{
			{ID: "e1", Kind: play.Contact, Team: play.A, Player: "p1", Action: play.Set},
			{ID: "e2", Kind: play.Contact, Team: play.B, Player: "p2"},
			{ID: "e3", Kind: play.NetTouch, Team: play.B, Player: "p2"},
			{ID: "e4", Kind: play.Land},
		},
	}
}

func TestClause(t *testing.T) {
	p := rallyOfTwo()
	named := *p
	named.Names = [3][]string{play.A: {"us", "A"}, play.B: {"them"}}
	for _, test := range []struct {
		p    *play.Rally
		key  string
		v    play.Value
		want string
	}{
		{p, "row@p1", play.Front, "A's setter was front row"},
		{p, "place@e2", play.Beyond, "ball wholly on A's side when B's blocker touched it"},
		{&named, "place@e2", play.Beyond, "ball wholly on our side when their blocker touched it"},
		{p, "take-off@e1", play.Behind, "A's setter set it from behind the attack line"},
		{p, "used", play.N3, "three contacts used"},
		{&named, "has", play.ValueB, "they have the ball"},
		{p, "order@e1-e2", play.Same, "A's setter set it and B's blocker touched it at the same time"},
		{p, "order@e2-e3", play.After, "B's blocker touched it after B's blocker touched the net"},
		{p, "part@e3", play.PartPost, "B's blocker touched the post"},
		{p, "lands@e4", play.Out, "the ball landed out"},
		{p, "libero@p1", play.No, "A's setter was not the libero"},
		{p, "unheard-of@e1", "x", "unheard-of@e1 is x"},
	} {
		fact, of, _ := strings.Cut(test.key, "@")
		if got := Clause(test.p, play.Key{Fact: play.FactID(fact), Of: of}, test.v); got != test.want {
			t.Errorf("%s: got %q, want %q", test.key, got, test.want)
		}
	}
}

// Every fact of a player and an event has its row, in the order of the table.
func TestClauses(t *testing.T) {
	var want, got []play.FactID
	for _, f := range play.Facts() {
		if f.About == play.OfPlayer || f.About == play.OfEvent {
			want = append(want, f.ID)
		}
	}
	for _, c := range clauses {
		got = append(got, c.fact)
		if !strings.Contains(c.form, "{is}") {
			t.Errorf("%s: %q leaves the value out", c.fact, c.form)
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("rows  %v\nfacts %v", got, want)
	}
}

// In one play no two facts, and no two values of one, are said alike; neither
// are two choices of a question or two questions.
func TestClausesDiffer(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 9))
	for _, o := range options {
		for range 100 {
			p := playgen.Rally(r, o)
			said, asked := map[string]string{}, map[string]string{}
			for _, k := range playgen.Keys(p) {
				f, _ := play.FactByID(k.Fact)
				for _, c := range f.Values {
					s, what := Clause(p, k, c.Value), k.String()+"="+string(c.Value)
					if was, ok := said[s]; ok {
						t.Fatalf("%q says %s and %s in\n%s", s, was, what, Print(p))
					}
					said[s] = what
				}
				q := Question(p, k)
				if was, ok := asked[q]; ok {
					t.Fatalf("%q asks for %s and %s in\n%s", q, was, k, Print(p))
				}
				asked[q] = k.String()
				choices := Choices(p, k)
				if len(choices) != len(f.Values) {
					t.Fatalf("%s: %d choices for %d values", k, len(choices), len(f.Values))
				}
				for i, c := range choices {
					if c == "" || slices.Contains(choices[:i], c) || strings.ContainsAny(c+q, "{}%") {
						t.Fatalf("%s: %q, %q", k, q, choices)
					}
				}
			}
		}
	}
}

func TestQuestion(t *testing.T) {
	p := rallyOfTwo()
	for _, test := range []struct {
		key     string
		want    string
		choices string
	}{
		{"row@p1", "Was A's setter front row or back row?", "front row; back row"},
		{"height@e2", "When B's blocker touched it, was the ball wholly above the top of the net?",
			"ball wholly above the net; ball not wholly above the net"},
		{"place@e1", "When A's setter touched it, where was the ball?", "ball wholly on A's side; ball in the plane; ball wholly on B's side"},
		{"completes@e1", "A's setter set it: did the ball then cross the net, or an opponent touch it?",
			"the ball crosses the net; the ball does not cross the net"},
		{"order@e1-e2", "Which came first: A's setter set it, or B's blocker touched it?", "A's setter first; at the same time; B's blocker first"},
		{"order@e2-e3", "Which came first: B's blocker touched it, or B's blocker touched the net?",
			"B's blocker touched it first; at the same time; B's blocker touched the net first"},
		{"used", "How many contacts had that side used before this?", "no contact used; one contact used; two contacts used; three contacts used"},
		{"lands@e4", "Was the ball in or out?", "in; out"},
		{"unheard-of@e1", "unheard-of@e1?", ""},
	} {
		fact, of, _ := strings.Cut(test.key, "@")
		k := play.Key{Fact: play.FactID(fact), Of: of}
		if got := Question(p, k); got != test.want {
			t.Errorf("%s: got %q, want %q", test.key, got, test.want)
		}
		if got := strings.Join(Choices(p, k), "; "); got != test.choices {
			t.Errorf("%s: got %q, want %q", test.key, got, test.choices)
		}
	}
}

func TestWho(t *testing.T) {
	p := rallyOfTwo()
	p.Players = append(p.Players, play.Player{ID: "p3", Team: play.B, Role: play.Blocker}, play.Player{ID: "p4", Team: play.A, Label: "12"})
	p.Events = append(p.Events, play.Event{ID: "e5", Kind: play.Whistle}, play.Event{ID: "e6", Kind: play.Contact, Team: play.B},
		play.Event{ID: "e7", Kind: play.Intrusion}, play.Event{ID: "e8", Kind: play.Contact})
	for id, want := range map[string]string{
		"p1": "A's setter", "p2": "B's first blocker", "p3": "B's second blocker", "p4": "A's player #12", "e1": "A's setter",
		"e4": "the ball", "e5": "the whistle", "e6": "one of B's players", "e7": "the thing from outside", "e8": "somebody", "e9": "it",
	} {
		if got := Who(p, id); got != want {
			t.Errorf("%s: got %q, want %q", id, got, want)
		}
	}
}
