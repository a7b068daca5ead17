package bot

import (
	"strings"
	"sync"
	"unicode/utf8"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
	"example.org/netpost/engine/rules"
)

// longestChoice is the most letters of a completion that every platform takes.
const longestChoice = 100

// complete offers ways to go on with what is typed. It is called at every key.
func complete(c Complete) []Choice {
	var out []Choice
	add := func(label, value string) {
		if len(out) < MaxChoices && value != "" && utf8.RuneCountInString(value) <= longestChoice {
			out = append(out, Choice{Clip(label, longestChoice), value})
		}
	}
	typed := strings.ToLower(strings.TrimSpace(c.Typed))
	switch c.Option {
	case "code":
		for _, id := range code.All() {
			if strings.HasPrefix(string(id), typed) {
				add(string(id), string(id))
			}
		}
	case "season":
		for _, s := range seasons() {
			if strings.HasPrefix(s, typed) {
				add(s, s)
			}
		}
	case "text":
		if typed == "" {
			for _, r := range commandRows {
				if r.Name == c.Name {
					add(r.Example, r.Example)
				}
			}
		}
		if c.Name == "erase" || c.Name == "bulletin" {
			break // no words of a play
		}
		for _, w := range notation.Complete(c.Typed, deciding, MaxChoices) {
			add(w.Text, w.Text)
		}
	}
	return out
}

// seasons are all that any code holds, the newest first.
var seasons = sync.OnceValue(func() []string {
	var first, last code.Season
	for _, c := range code.All() {
		from, to, _ := code.Held(c)
		if first == 0 || from < first {
			first = from
		}
		last = max(last, to)
	}
	var out []string
	for s := last; s >= first; s-- {
		out = append(out, s.String())
	}
	return out
})

// usual is the book whose question leads the completions: which fact decides
// seldom depends on the code.
var usual = sync.OnceValues(func() (*code.Book, error) { return code.Open(code.All()[0], 0) })

// deciding is the question that decides a half-told play.
func deciding(p *play.Rally) (play.Key, bool) {
	b, err := usual()
	if err != nil {
		return play.Key{}, false
	}
	d, err := rules.Decide(p, b)
	if err != nil || d.Settled() {
		return play.Key{}, false
	}
	return d.Tree.Ask, true
}
