package bot

import (
	"context"
	"testing"

	"example.org/netpost/bot/store/sqlite"
)

// An association that wants answers private gets them so where the asker did
// not choose, and only there.
func TestPrivateAssociation(t *testing.T) {
	s, err := sqlite.Open(t.Context(), t.TempDir()+"/netpost.db", sqlite.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	private := true
	b := New(Options{Store: s, Find: func(Place) (Association, bool) { return Association{ID: "riverside", Private: private}, true }})
	for _, test := range []struct {
		name, text      string
		direct, private bool // the place, the association
		want            bool
	}{
		{"left to the association", "ball in plane, fourth contact?", false, true, true},
		{"asked for all", "public ball in plane, fourth contact?", false, true, false},
		{"alone with the bot", "ball in plane, fourth contact?", true, true, false},
		{"no wish", "ball in plane, fourth contact?", false, false, false},
	} {
		private = test.private
		e := Mention{Meta: Meta{Delivery: test.name, Who: Who{Person: Person{Platform: "stage", ID: "ana"}},
			Where: Place{Platform: "stage", Workspace: "riverside", Channel: "crew"}, Direct: test.direct}, Message: "m1", Text: test.text}
		r, ok := b.Handle(context.Background(), e).(Say)
		if !ok || r.Private != test.want {
			t.Errorf("%s: private %t, want %t (%T)", test.name, r.Private, test.want, r)
		}
	}
}
