package notation

import "testing"

// Plays of another game are known as such, and none of them is read.
func TestOtherGame(t *testing.T) {
	for text, game := range map[string]string{
		"beach doubles, open hand tip over the net":                    "beach volleyball",
		"sand volleyball, ball hits the net on the serve":              "beach volleyball",
		"coed league, does a woman have to touch it":                   "co-ed volleyball",
		"in our co-ed match the man in back row attacks from the line": "co-ed volleyball",
		"reverse coed, man blocks at the net":                          "co-ed volleyball",
		"grass tournament, setter double contacts":                     "grass volleyball",
		"sitting volleyball, may she block the serve":                  "sitting volleyball",
		"quads, four contacts, second was a block":                     "outdoor volleyball of four",
		"is a let serve legal in beach":                                "beach volleyball",
	} {
		r, err := Read(text)
		if err != nil || r.Game != game || r.Subject() != nil {
			t.Errorf("%q: %q, subject %v, err %v", text, r.Game, r.Subject(), err)
		}
	}
	for _, text := range []string{
		"four contacts, second was a block",
		"our setter is a beach player, she doubles the second contact",
		"unlike beach, open hand tip over the net",
		"she plays beach, her hand set spins, third contact goes over",
		"indoor match, beach rules say no tip, hitter tips it over",
	} {
		if r, err := Read(text); err != nil || r.Game != "" {
			t.Errorf("%q: taken for %q (%v)", text, r.Game, err)
		}
	}
	for i := 1; i < len(games); i++ {
		if games[i-1].words >= games[i].words {
			t.Errorf("games: %q stands after %q", games[i].words, games[i-1].words)
		}
	}
}
