package bot

import (
	"strings"
	"testing"

	"example.org/netpost/engine/answer"
)

func index(i int) *int { return &i }

func when(words string) []answer.Given { return []answer.Given{{Words: words}} }

func fault(id string, against ...string) answer.Verdict {
	return answer.Verdict{Outcome: "fault", Fault: answer.Maybe(id), Against: against}
}

var playOn = answer.Verdict{Outcome: "play-on"}

// settled is an answer with every part that a settled one can have.
var settled = answer.Answer{
	Code: "scholastic", Edition: "2025-26", Kind: answer.Ruling,
	Read:      []string{"we and they touch the ball at the same time, ball in the plane", "we have used three contacts"},
	Unread:    []string{"sweaty", "gym"},
	Corrected: []answer.Correction{{From: "jousst", To: "joust"}},
	Presumed:  []string{"the ball was live", "nobody was hindered"},
	Verdict:   answer.Verdict{Outcome: "fault", Fault: "four-contacts", Also: []string{"net-contact"}, Against: []string{"A", "us", "serving"}},
	Because:   []string{"three contacts used", "both touched it at the same time"},
	Rules: []answer.Rule{
		{ID: "four-contacts", Title: "four contacts", Cite: "9-4", Basis: "published", Code: "scholastic", Edition: "2025-26"},
		{ID: "four-contacts", Title: "four contacts", Cite: "9-4-2", Basis: "published", Code: "scholastic", Edition: "2025-26"},
		{ID: "net-contact", Title: "net contact", Basis: "memory", Code: "scholastic", Edition: "2025-26", Adopted: "league vote of May"},
	},
	Call: &answer.Call{By: "R1", Signal: "four contacts", Number: "18", Whistle: "one whistle; signal the team to serve, then the fault"},
	Next: &answer.Next{Point: []string{"B", "them"}, Serves: []string{"B", "them"}},
	Codes: answer.Codes{
		{Code: "international", Edition: "2025-28", Verdict: playOn, Cite: "9.1.2", Differs: true, Why: []string{"joust after three hits: a fresh start"}},
		{Code: "club", Edition: "2025-26", Verdict: fault("four-contacts", "A", "us")},
	},
	Notes:    []answer.Note{{ID: "2026-014", Title: "Tight save, hands on it", URL: "https://notes.example/2026-014"}},
	Cautions: []string{answer.PeopleFirst},
	Doubts:   []string{"scholastic: the case itself was not seen"},
	Evidence: []string{"spin is not evidence of a ball-handling fault"},
	Changes:  []answer.Branch{{When: when("they touched it first"), Verdict: playOn}},
	More:     []string{"who serves next?"},
}

// open is an answer that turns on two facts.
var open = answer.Answer{
	Code: "any", Kind: answer.Ruling, Read: []string{"A's setter touches the ball"},
	Verdict: answer.Verdict{Outcome: answer.Depends},
	Tree: &answer.Tree{
		Ask: answer.Question{Fact: "row", Of: "p1", Words: "Was A's setter front row or back row?",
			Values: []answer.Value{{ID: "front", Words: "front row"}, {ID: "back", Words: "back row"}}},
		Kids: []answer.Kid{{Is: "front", Leaf: index(0)}, {Is: "back", Tree: &answer.Tree{
			Ask: answer.Question{Fact: "place", Of: "e1", Words: "Where was the ball?",
				Values: []answer.Value{{ID: "own", Words: "on A's side"}, {ID: "plane", Words: "in the plane"}, {ID: "beyond", Words: "on B's side"}}},
			Kids: []answer.Kid{{Is: "own", Leaf: index(1)}, {Is: "plane", Leaf: index(2)}, {Is: "beyond", Leaf: index(3)}},
		}}},
	},
	Branches: []answer.Branch{{Verdict: playOn}, {Verdict: playOn}, {Verdict: fault("back-row-block", "A")}, {Verdict: playOn}},
	Rules: []answer.Rule{
		{Title: "back-row block", Cite: "14.6.2", Basis: "published", Code: "international", Edition: "2025-28"},
		{Title: "back-row block", Cite: "9-5-5", Basis: "practice", Code: "scholastic", Edition: "2026-27"},
	},
}

func TestRuling(t *testing.T) {
	all := settled
	all.Codes = append(answer.Codes{{Code: "scholastic", Edition: "2025-26", Verdict: settled.Verdict, Cite: "9-4"}}, settled.Codes...)
	for _, test := range []struct {
		name string
		a    answer.Answer
	}{
		{"settled", settled},
		{"all-codes", all},
		{"open", open},
		{"code", answer.Answer{Kind: answer.Ruling, Read: []string{"a foot over the line"}, Verdict: open.Verdict,
			Tree: &answer.Tree{Ask: answer.Question{Fact: answer.CodeFact, Words: "Under which code is it played?",
				Values: []answer.Value{{ID: "club", Words: "club"}, {ID: "scholastic", Words: "scholastic"}}},
				Kids: []answer.Kid{{Is: "club", Leaf: index(0)}, {Is: "scholastic", Leaf: index(1)}}},
			Branches: []answer.Branch{{Verdict: playOn}, {Verdict: fault("centre-line", "A")}},
			Codes:    answer.Codes{{Code: "club", Verdict: playOn, Differs: true}}}},
		{"unread", answer.Answer{Code: "club", Kind: answer.Ruling, Read: []string{"A's setter dumps the ball"}, Unread: []string{"frobbed"},
			Could: []answer.Given{{Words: "the ball is dead"}, {Words: "A's setter was back row"}}}},
		{"none", answer.Answer{Kind: answer.None, Reason: "no play was read in this", Unread: []string{"hello"}}},
		{"none-caution", answer.Answer{Kind: answer.None, Reason: "no play was read in this", Cautions: []string{answer.PeopleFirst}}},
		{"replay", answer.Answer{Kind: answer.Ruling, Code: "club", Verdict: answer.Verdict{Outcome: "replay", Replay: "double-fault"},
			Next: &answer.Next{Serves: []string{"B", "them"}}}},
		{"re-serve", answer.Answer{Kind: answer.Ruling, Code: "club", Verdict: answer.Verdict{Outcome: "re-serve"}, Next: &answer.Next{Serves: []string{"A"}}}},
		{"measure", answer.Answer{Kind: answer.Measure, Code: "club", Verdict: answer.Verdict{Measure: []string{"deny", "delay-warning"}, Against: []string{"A"}}}},
		{"fact", answer.Answer{Kind: answer.Fact, Code: "club", Answer: "8 seconds"}},
		{"error", answer.Answer{Kind: answer.None, Error: &answer.Problem{Where: "question", What: "it is empty", Mend: "tell a play"}}},
	} {
		t.Run(test.name, func(t *testing.T) {
			golden(t, "ruling/"+test.name, printed(t, Ruling(test.a), TextOptions{}))
		})
	}
}

// People come first, then the ruling.
func TestRulingOrder(t *testing.T) {
	d := Ruling(settled)
	if h, ok := d.Blocks[0].(Heading); !ok || h.Tone != Care {
		t.Errorf("the first block is %+v, want the caution", d.Blocks[0])
	}
	if h, ok := d.Blocks[1].(Heading); !ok || !strings.HasPrefix(h.Text, "Fault: ") {
		t.Errorf("the second block is %+v, want the ruling", d.Blocks[1])
	}
}

// A button's state is read back as the fact that it offers, and fits.
func TestButtonStates(t *testing.T) {
	found := 0
	for _, b := range Ruling(open).Blocks {
		buttons, ok := b.(Buttons)
		if !ok {
			continue
		}
		for _, i := range buttons.Items {
			found++
			if _, err := answer.ParseGiven(i.State); err != nil || len(i.State) > 100 {
				t.Errorf("state %q: %v", i.State, err)
			}
		}
	}
	if found != 2 {
		t.Errorf("%d buttons, want 2", found)
	}
}
