package judge

import (
	"testing"

	"example.org/netpost/engine/code"
)

// No two rules share an id, and each is documented and cites a parameter that
// the tables hold.
func TestRules(t *testing.T) {
	all := All()
	for i, r := range all {
		if i > 0 && all[i-1].ID == r.ID {
			t.Errorf("%s: two rules have this id", r.ID)
		}
		if r.Title == "" || r.Text == "" {
			t.Errorf("%s: it has no title or no text", r.ID)
		}
		if _, ok := code.Find(r.Cite); !ok {
			t.Errorf("%s: cites %q, which is not in the tables", r.ID, r.Cite)
		}
		if got, ok := ByID(r.ID); !ok || got != r {
			t.Errorf("ByID(%q) = %v, %v", r.ID, got, ok)
		}
	}
	if _, ok := ByID("no-such-rule"); ok {
		t.Error("a rule was found that does not exist")
	}
	if len(all) == 0 {
		t.Error("there are no rules")
	}
}
