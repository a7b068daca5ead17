package notation

import (
	"slices"
	"strings"
	"sync"
)

// games are the words that say that another game is played. Sorted by words.
var games = []struct{ words, game string }{
	{"beach", "beach volleyball"},
	{"co ed", "co-ed volleyball"},
	{"coed", "co-ed volleyball"},
	{"grass", "grass volleyball"},
	{"mixed six", "co-ed volleyball"},
	{"para volleyball", "sitting volleyball"},
	{"quads", "outdoor volleyball of four"},
	{"reverse coed", "co-ed volleyball"},
	{"sand", "beach volleyball"},
	{"sitting volleyball", "sitting volleyball"},
	{"snow volleyball", "snow volleyball"},
	{"triples", "outdoor volleyball of three"},
}

// aside are words before or after the name of a game that make it somebody's
// history or a comparison: "our beach player", "like in beach".
var aside = struct{ before, after []string }{
	before: []string{"like", "unlike", "than", "not", "from", "plays", "play", "played", "says", "said", "as"},
	after:  []string{"background", "ball", "guy", "girl", "kid", "player", "players", "style", "says", "said"},
}

// gameStarts are the first words of games.
var gameStarts = sync.OnceValue(func() map[string]bool {
	out := map[string]bool{}
	for _, g := range games {
		w, _, _ := strings.Cut(g.words, " ")
		out[w] = true
	}
	return out
})

// otherGame is the game that the text tells of, where it is not the indoor one;
// empty where it is, or where the game is only compared with.
func (s *scene) otherGame() string {
	if slices.ContainsFunc(s.toks, func(t token) bool { return t.form == "indoor" || t.form == "indoors" }) {
		return ""
	}
	for i := range s.toks {
		if !slices.ContainsFunc(s.wordsOf(i), func(w string) bool { return gameStarts()[w] }) {
			continue
		}
		for _, g := range games {
			ws := strings.Fields(g.words)
			if !s.says(i, ws) || s.preceded(i, 2, aside.before) || s.near(i+len(ws), 1, aside.after) {
				continue
			}
			return g.game
		}
	}
	return ""
}
