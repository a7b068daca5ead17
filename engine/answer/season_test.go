package answer_test

import (
	"testing"

	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
)

// "Last season" rules by the edition of the season before the newest held, or
// before the one asked under.
func TestLastSeason(t *testing.T) {
	text := "last season our setter doubles the second contact, teammate plays it next"
	_, last, _ := code.Held(code.Scholastic)
	for _, c := range []struct {
		o    answer.Options
		want code.Season
	}{
		{answer.Options{Code: code.Scholastic}, last - 1},
		{answer.Options{Code: code.Scholastic, Season: last - 1}, last - 2},
	} {
		b, err := code.Open(code.Scholastic, c.want)
		if err != nil {
			t.Fatal(err)
		}
		if a := answer.Ask(text, c.o); string(a.Edition) != b.Edition() {
			t.Errorf("season %v: edition %s, want %s", c.o.Season, a.Edition, b.Edition())
		}
	}
}
