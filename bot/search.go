package bot

import (
	"strings"

	"example.org/netpost/bot/store"
	"example.org/netpost/engine/code"
)

// mostHits is how many notes a search shows.
const mostHits = 5

// search looks through the case notes. It keeps nothing.
func (t *turn) search(s spoken) Reply {
	q := store.Question{Text: s.text}
	if p := t.rulesOf(&q, s.args); p != nil {
		return t.tell(p.What, p.Mend)
	}
	m, failed := t.hits(s, q)
	if failed != nil {
		return failed
	}
	return t.say(m)
}

func (t *turn) hits(s spoken, q store.Question) (Message, Reply) {
	if t.assoc.Notes == nil {
		return Message{}, t.tell("There are no case notes here.", "Whoever runs netpost can name your association's casebook in the configuration.")
	}
	season, _ := code.ParseSeason(q.Season)
	notes, err := t.assoc.Notes.Notes(t.ctx, Question{Words: s.text, Code: code.Code(q.Code), Season: season, Limit: mostHits})
	if err != nil {
		return Message{}, t.tell("The case notes could not be searched.", "Try again in a while; if it stays so, tell whoever runs netpost: error "+t.report(err)+".")
	}
	m := Message{Doc: Notes(notes)}
	if more := (Token{"find", []string{s.String()}}).String(); len(more)+len("/99") <= MaxState {
		m.More = more
	}
	return m, nil
}

// String is a command's words with its options, as parseWords reads them.
func (s spoken) String() string {
	out := []string{s.name}
	if s.args.Code != "" {
		out = append(out, "code="+s.args.Code)
	}
	if s.args.Season != "" {
		out = append(out, "season="+s.args.Season)
	}
	return strings.Join(append(out, s.text), " ")
}

// searchPage turns to a page of hits, found anew.
func (t *turn) searchPage(words, page string) Reply {
	s := parseWords(words)
	q := store.Question{Text: s.text}
	if p := t.rulesOf(&q, s.args); p != nil {
		return t.tell(p.What, p.Mend)
	}
	m, failed := t.hits(s, q)
	if failed != nil {
		return failed
	}
	m.Page = number(page)
	return Update{Message: m}
}
