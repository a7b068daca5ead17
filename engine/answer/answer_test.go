package answer

import (
	"bytes"
	"encoding/json"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/notation/playgen"
	"example.org/netpost/engine/play"
	"example.org/netpost/engine/rules"
)

// save is a tight ball: A's setter saves it in the plane while B's blocker
// touches it too. Whether it is a fault turns on the setter's row and reach.
func save() *play.Rally {
	p := &play.Rally{
		Players: []play.Player{{ID: "p1", Team: play.A, Role: play.Setter}, {ID: "p2", Team: play.B, Role: play.Blocker}},
		Events: []play.Event{
			{ID: "e1", Kind: play.Contact, Team: play.A, Player: "p1", Action: play.Save},
			{ID: "e2", Kind: play.Contact, Team: play.B, Player: "p2", Action: play.Block},
		},
	}
	return p.With(play.Key{Fact: play.Order, Of: "e1-e2"}, play.Same).With(play.Key{Fact: play.Place, Of: "e1"}, play.Plane)
}

// line is a foot over the centre line, on which the codes differ.
func line() *play.Rally {
	p := &play.Rally{
		Players: []play.Player{{ID: "p1", Team: play.B, Role: play.Middle}},
		Events:  []play.Event{{ID: "e1", Kind: play.Line, Team: play.B, Player: "p1"}},
	}
	return p.With(play.Key{Fact: play.BodyPart, Of: "e1"}, play.Foot)
}

func given(t *testing.T, s ...string) []engine.Given {
	t.Helper()
	var out []engine.Given
	for _, s := range s {
		g, err := ParseGiven(s)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, g)
	}
	return out
}

// The JSON form is a contract: these keys, in this order, always there.
func TestJSONKeys(t *testing.T) {
	want := strings.Fields(`id code edition kind read unread corrected presumed outcome fault also replay measure against answer
		branches tree because rules call next codes notes cautions doubts evidence changes could reason more`)
	for _, a := range []Answer{{}, Of(notation.Reading{Rally: save()}, Options{}), Of(notation.Reading{}, Options{})} {
		b, err := json.Marshal(a)
		if err != nil {
			t.Fatal(err)
		}
		if got := keys(t, b); !slices.Equal(got, want) {
			t.Errorf("keys\n%q, want\n%q", got, want)
		}
		for _, list := range []string{"read", "unread", "corrected", "presumed", "also", "measure", "against", "branches", "because", "rules", "notes",
			"cautions", "doubts", "evidence", "changes", "could", "more"} {
			if bytes.Contains(b, []byte(`"`+list+`":null`)) {
				t.Errorf("%s is null, want a list", list)
			}
		}
	}
}

// keys lists the keys of a JSON object in the order they stand in.
func keys(t *testing.T, b []byte) []string {
	t.Helper()
	d := json.NewDecoder(bytes.NewReader(b))
	if _, err := d.Token(); err != nil {
		t.Fatal(err)
	}
	var out []string
	for d.More() {
		k, err := d.Token()
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, k.(string))
		var skip json.RawMessage
		if err := d.Decode(&skip); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

func TestCodeChoice(t *testing.T) {
	r := notation.Reading{Rally: save()}
	named := r
	named.Code = code.Club
	for _, test := range []struct {
		name string
		r    notation.Reading
		o    Options
		want Maybe
	}{
		{"none: all rule alike", r, Options{}, AnyCode},
		{"the words'", named, Options{}, "club"},
		{"the configured one before the words'", named, Options{Configured: code.Collegiate}, "collegiate"},
		{"the asker's before all", named, Options{Code: code.Scholastic, Configured: code.Collegiate}, "scholastic"},
		{"a given answer before all", named, Options{Code: code.Scholastic, Given: given(t, "code=international")}, "international"},
	} {
		if a := Of(test.r, test.o); a.Code != test.want {
			t.Errorf("%s: code %q, want %q", test.name, a.Code, test.want)
		}
	}
}

func TestCodesUnlike(t *testing.T) {
	a := Of(notation.Reading{Rally: line()}, Options{})
	if a.Outcome != Depends || a.Tree.Ask.Fact != CodeFact || a.Code != "" {
		t.Fatalf("outcome %q, code %q, asks %q; want it to turn on the code", a.Outcome, a.Code, a.Tree.Ask.Fact)
	}
	if len(a.Tree.Kids) != len(code.All()) {
		t.Errorf("%d kids, want one a code", len(a.Tree.Kids))
	}
	for i, b := range a.Branches {
		if b.When[0].Fact != CodeFact {
			t.Errorf("branch %d does not begin with the code: %+v", i, b.When)
		}
	}
	one := Of(notation.Reading{Rally: line()}, Options{Code: code.Club})
	for _, c := range one.Codes {
		if c.Code == "club" {
			t.Error("the code asked for is among the others")
		}
		if c.Differs && len(c.Why) == 0 {
			t.Errorf("%s differs and does not say why", c.Code)
		}
	}
	if all := Of(notation.Reading{Rally: line()}, Options{Code: code.Club, AllCodes: true}); len(all.Codes) != len(code.All()) {
		t.Errorf("all codes: %d, want %d", len(all.Codes), len(code.All()))
	}
}

func TestSeason(t *testing.T) {
	r := notation.Reading{Rally: save()}
	a := Of(r, Options{Code: code.Scholastic, Season: 2010})
	if a.Kind != None || a.Outcome != "" || !strings.Contains(string(a.Reason), "2022-23") {
		t.Errorf("a season that is not held: %s %q %q; want none and the range named", a.Kind, a.Outcome, a.Reason)
	}
	if a := Of(r, Options{Season: 2018}); a.Code != "international" {
		t.Errorf("only one code holds 2018-19, code is %q", a.Code)
	}
	r.Season = 2023
	if a := Of(r, Options{Code: code.Scholastic}); a.Edition != "2023-24" {
		t.Errorf("the season in the words gives edition %q", a.Edition)
	}
	if a := Of(r, Options{Code: code.Scholastic, Season: 2024}); a.Edition != "2024-25" {
		t.Errorf("the season asked for gives edition %q", a.Edition)
	}
}

func TestGiven(t *testing.T) {
	r := notation.Reading{Rally: save()}
	a := Of(r, Options{Given: given(t, "row@p1=front")})
	if a.Outcome != "play-on" {
		t.Errorf("front row: %q, want play-on", a.Outcome)
	}
	a = Of(r, Options{Given: given(t, "row@p1=back", "reach@e1=above")})
	if a.Fault != "back-row-block" || a.Against[0] != "A" {
		t.Errorf("back row, above the net: %q against %q", a.Fault, a.Against)
	}
	if a.Call == nil || a.Next == nil || !slices.Contains(a.Next.Point, "B") || !slices.Contains(a.Next.Serves, "B") {
		t.Errorf("call %+v, next %+v; want a call and point and serve to B", a.Call, a.Next)
	}
	for _, s := range []string{"row@p9=front", "row=front", "height@e1-e2=above", "place@p1=own"} {
		a := Of(r, Options{Given: given(t, s)})
		if a.Error == nil || a.Kind != None || a.Outcome != "" {
			t.Errorf("%s: %+v, want an error and no outcome", s, a.Verdict)
		}
	}
	if a := Of(notation.Reading{}, Options{Given: given(t, "row@p1=front")}); a.Error == nil {
		t.Error("a given fact without a play: no error")
	}
	for _, s := range []string{"", "row", "row@p1", "row@p1=", "rows@p1=front", "row@p1=middle", "code=college"} {
		if _, err := ParseGiven(s); err == nil {
			t.Errorf("%q: read without an error", s)
		}
	}
}

// An unread word that could change the ruling takes the outcome away; scenery
// does not.
func TestUnread(t *testing.T) {
	settled := Options{Given: given(t, "row@p1=back", "reach@e1=above")}
	for _, test := range []struct {
		name    string
		o       Options
		scenery bool
		want    Maybe
	}{
		{"settled, scenery", settled, true, "fault"},
		{"settled, unread", settled, false, ""},
		{"open, scenery", Options{}, true, Depends},
		{"open, unread", Options{}, false, ""},
		{"codes unlike, unread", Options{}, false, ""},
	} {
		p := save()
		if strings.HasPrefix(test.name, "codes") {
			p = line()
		}
		a := Of(notation.Reading{Rally: p, Unread: []notation.Unread{{Word: "frobbed", Scenery: test.scenery}}}, test.o)
		if a.Outcome != test.want || a.Kind != Ruling {
			t.Errorf("%s: %s %q, want %q", test.name, a.Kind, a.Outcome, test.want)
		}
		if !slices.Equal(a.Unread, []string{"frobbed"}) || len(a.Read) == 0 {
			t.Errorf("%s: read %q unread %q", test.name, a.Read, a.Unread)
		}
		if test.want != "" {
			continue
		}
		if a.Fault != "" || a.Tree != nil || len(a.Branches)+len(a.Codes)+len(a.Changes) > 0 || a.Call != nil || a.Next != nil {
			t.Errorf("%s: still says a ruling: %+v", test.name, a)
		}
		if len(a.Could) == 0 {
			t.Errorf("%s: does not say what the word could change", test.name)
		}
	}
}

func TestNothingRead(t *testing.T) {
	for _, topic := range topics {
		a := Of(notation.Reading{Topic: topic.id}, Options{})
		if a.Kind != None || !strings.Contains(string(a.Reason), topic.words) {
			t.Errorf("%s: %s %q", topic.id, a.Kind, a.Reason)
		}
	}
	if a := Of(notation.Reading{Caution: true}, Options{}); a.Kind != None || a.Reason == "" || len(a.Cautions) != 1 {
		t.Errorf("%s %q %q", a.Kind, a.Reason, a.Cautions)
	}
	if !slices.IsSortedFunc(topics, func(a, b struct{ id, words string }) int { return strings.Compare(a.id, b.id) }) {
		t.Error("topics are not sorted by id")
	}
}

// A play that no rule looks at is not ruled on, and least of all play on.
func TestVacuous(t *testing.T) {
	p := &play.Rally{Events: []play.Event{{ID: "e1", Kind: play.Serve, Team: play.A}}}
	a := Of(notation.Reading{Rally: p}, Options{})
	if a.Kind != None || a.Outcome != "" || a.Reason == "" || len(a.Read) == 0 {
		t.Errorf("a serve alone: %s %q %q", a.Kind, a.Outcome, a.Reason)
	}
}

func TestBadQuestion(t *testing.T) {
	for _, test := range []struct{ text, want string }{
		{"", "empty"},
		{" \n\t", "empty"},
		{strings.Repeat("noise ", 2000), "12000 bytes"},
		{"ball in \xffplane", "byte 9"},
	} {
		a := Ask(test.text, Options{})
		if a.Error == nil || a.Kind != None || !strings.Contains(a.Error.What, test.want) || a.Error.Where == "" || a.Error.Mend == "" {
			t.Errorf("%.20q: %+v, want a problem that says %q", test.text, a.Error, test.want)
		}
	}
}

// A decision that is taken over from a book that says the same is the one that
// the play would have got.
func TestTakenOver(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	taken := 0
	for range 200 {
		p := playgen.Rally(r, playgen.Options{Events: 3})
		q, err := decide(p, code.All(), 0, Options{})
		if err != nil {
			continue
		}
		for i, d := range q.all {
			if i > 0 && alikeIn(q.all[0].Params, q.all[0].Book, d.Book) {
				taken++
			}
			own, err := rules.Decide(p, d.Book)
			if err != nil || signature(own) != signature(d) || !slices.Equal(cites(own), cites(d)) || !slices.Equal(own.Presumed, d.Presumed) {
				t.Errorf("%s: %s: taken over %s, own %s %v", notation.Print(p), d.Book.Code(), signature(d), signature(own), err)
			}
		}
	}
	if taken == 0 {
		t.Error("no decision was taken over")
	}
}

func TestOverlay(t *testing.T) {
	o := Options{Code: code.Scholastic, Given: given(t, "row@p1=back", "reach@e1=above")}
	plain := Of(notation.Reading{Rally: save()}, o)
	d, err := rules.Decide(rallyOf(t, save(), o.Given), must(code.Open(code.Scholastic, 0)))
	if err != nil {
		t.Fatal(err)
	}
	o.Overlays = []code.Overlay{{Param: d.Ruling.Cites[0].Param, Rule: "A-7", Reason: "our own numbering"}}
	a := Of(notation.Reading{Rally: save()}, o)
	if a.Rules[0].Cite != "A-7" || a.Rules[0].Adopted != "our own numbering" || a.Fault != plain.Fault {
		t.Errorf("rule %+v, want the association's number and reason", a.Rules[0])
	}
}

func rallyOf(t *testing.T, p *play.Rally, given []engine.Given) *play.Rally {
	t.Helper()
	s, problem := tell(p, given)
	if problem != nil {
		t.Fatal(problem)
	}
	return s.(*play.Rally)
}

func must(b *code.Book, err error) *code.Book {
	if err != nil {
		panic(err)
	}
	return b
}

// A call that the words report is no fact of the play; where it was wrong the
// answer says what follows.
func TestMistakenCall(t *testing.T) {
	o := Options{Given: given(t, "row@p1=front")}
	for _, test := range []struct {
		calls []string
		want  string
	}{
		{nil, ""},
		{[]string{"back-row-block"}, "a whistle for back-row block is a mistaken one"},
	} {
		a := Of(notation.Reading{Rally: save(), Calls: test.calls}, o)
		if a.Outcome != "play-on" {
			t.Fatalf("called %q: %q", test.calls, a.Outcome)
		}
		got := ""
		if a.Next != nil {
			got = string(a.Next.Words)
		}
		if !strings.HasPrefix(got, test.want) || (got == "") != (test.want == "") {
			t.Errorf("called %q: next %q, want %q", test.calls, got, test.want)
		}
	}
	o = Options{Given: given(t, "row@p1=back", "reach@e1=above")}
	if a := Of(notation.Reading{Rally: save(), Calls: []string{"back-row-block"}}, o); a.Next.Words != "" {
		t.Errorf("a right call is said to be mistaken: %q", a.Next.Words)
	}
}

// What holds for every play: the answer is consistent in itself, whatever the
// ruling is.
func TestAnswersHold(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for i := range 400 {
		p := playgen.Rally(r, playgen.Options{Wild: i%4 == 0, Names: true, Voids: i%3 == 0, Events: 1 + i%3})
		o := Options{}
		if i%2 == 0 {
			o.Code = code.All()[i/2%4]
		}
		reading := notation.Reading{Rally: p}
		a := Of(reading, o)
		b, _ := json.Marshal(a)
		if c, _ := json.Marshal(Of(reading, o)); !bytes.Equal(b, c) {
			t.Fatalf("%s: two answers to one question:\n%s\n%s", notation.Print(p), b, c)
		}
		if a.Kind == None {
			continue
		}
		if (a.Outcome == Depends) != (a.Tree != nil) || (a.Tree != nil) != (len(a.Branches) > 1) {
			t.Errorf("%s: outcome %q with tree %v and %d branches", notation.Print(p), a.Outcome, a.Tree != nil, len(a.Branches))
		}
		if (a.Outcome == "fault") != (a.Fault != "") || (a.Fault != "") != (len(a.Against) > 0) || (a.Outcome == "replay") != (a.Replay != "") {
			t.Errorf("%s: %+v", notation.Print(p), a.Verdict)
		}
		if a.Tree != nil {
			var seen []int
			walk(t, a, a.Tree, nil, &seen)
			for i, n := range seen {
				if i != n {
					t.Errorf("%s: leaves %d, want every branch once and in order", notation.Print(p), seen)
					break
				}
			}
			if len(seen) != len(a.Branches) {
				t.Errorf("%s: %d leaves, %d branches", notation.Print(p), len(seen), len(a.Branches))
			}
		}
	}
}

// walk checks that every branch is reached by just the answers it lists.
func walk(t *testing.T, a Answer, tree *Tree, path []string, seen *[]int) {
	for i, k := range tree.Kids {
		if k.Is != tree.Ask.Values[i].ID {
			t.Errorf("kid %d is %q, value is %q", i, k.Is, tree.Ask.Values[i].ID)
		}
		p := append(slices.Clone(path), tree.Ask.Fact+"@"+tree.Ask.Of+"="+k.Is)
		if k.Tree != nil {
			walk(t, a, k.Tree, p, seen)
			continue
		}
		*seen = append(*seen, *k.Leaf)
		var when []string
		for _, g := range a.Branches[*k.Leaf].When {
			when = append(when, g.Fact+"@"+g.Of+"="+g.Is)
		}
		if !slices.Equal(when, p) {
			t.Errorf("branch %d: when %q, reached by %q", *k.Leaf, when, p)
		}
	}
}
