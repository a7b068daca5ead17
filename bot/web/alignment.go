package web

import (
	"cmp"
	"encoding/json"
	"fmt"
	"html/template"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"example.org/netpost/bot"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/court"
	"example.org/netpost/engine/court/picture"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// spot is where a player stands on the page, seen from above in centimetres:
// from the left side line of the picture, and from the net.
type spot struct{ X, Near int }

// How far off the court a player can be put, in centimetres.
const (
	beside = 100  // of a side line
	across = 30   // beyond the net
	behind = 1060 // the farthest from the net
)

// stands are two sixes on the page: the near one, below the net, and the far
// one. By position, index 0 is position 1.
type stands struct {
	Serving play.Team // A is the near side
	At      [2][6]spot
}

// atFirst is where players are before anybody moves one.
func atFirst() stands {
	s := stands{Serving: play.B}
	for team := range s.At {
		for i := range s.At[team] {
			p := court.Position(i + 1)
			at := spot{150 + 300*p.Lane(), 620}
			if p.Front() {
				at.Near = 200
			}
			if team == 1 {
				at.X = 900 - at.X
			}
			s.At[team][i] = at
		}
	}
	s.At[1][0] = spot{100, 960}
	return s
}

// parseStands reads what the script sends: "a1:750,620 a2:…", each player once.
func parseStands(at, serving string) (stands, bool) {
	s := stands{Serving: play.A}
	if serving == "b" {
		s.Serving = play.B
	} else if serving != "a" {
		return s, false
	}
	var seen [2][6]bool
	fields := strings.Fields(at)
	for _, f := range fields {
		who, place, _ := strings.Cut(f, ":")
		x, near, _ := strings.Cut(place, ",")
		left, err1 := strconv.Atoi(x)
		far, err2 := strconv.Atoi(near)
		if len(who) != 2 || who[0] != 'a' && who[0] != 'b' || who[1] < '1' || who[1] > '6' || err1 != nil || err2 != nil || !(spot{left, far}).ok() {
			return s, false
		}
		team, i := who[0]-'a', who[1]-'1'
		s.At[team][i] = spot{left, far}
		seen[team][i] = true
	}
	return s, len(fields) == 12 && !slices.Contains(slices.Concat(seen[0][:], seen[1][:]), false)
}

func (p spot) ok() bool {
	return p.X >= -beside && p.X <= 900+beside && p.Near >= -across && p.Near <= behind
}

// names are what the sides go by.
func (s stands) names() [3][]string {
	if s.Serving == play.A {
		return [3][]string{play.A: {"serving"}, play.B: {"receiving"}}
	}
	return [3][]string{play.A: {"receiving"}, play.B: {"serving"}}
}

// alignment is the stands as the engine has them: of everybody, or of those
// with these ids alone.
func (s stands) alignment(only ...string) *court.Alignment {
	var six [2]court.Six
	for team := range s.At {
		for i, at := range s.At[team] {
			if len(only) > 0 && !slices.Contains(only, playerID(team, i)) {
				continue
			}
			six[team][i].Feet = []court.Tread{court.Seen(team == 0, court.Cm(900), court.Cm(at.X), court.Cm(at.Near))}
		}
	}
	a, err := court.New(s.Serving, six[0], six[1])
	if err != nil {
		panic("web: places that were checked can't be used: " + err.Error())
	}
	a.Names = s.names()
	return a
}

// playerID is a player of the page, such as a1.
func playerID(team, i int) string { return fmt.Sprintf("%c%d", 'a'+team, i+1) }

// Text is the stands as somebody types them in a chat: of each player how far
// from the own left side line and how far from the net.
func (s stands) Text() string {
	var sides []string
	names := s.names()
	for team := range s.At {
		var each []string
		for i, at := range s.At[team] {
			x := at.X
			if team == 1 {
				x = 900 - x
			}
			each = append(each, fmt.Sprintf("%d at %s %s", i+1, metres(x), metres(at.Near)))
		}
		sides = append(sides, names[team+1][0]+": "+strings.Join(each, "; "))
	}
	return strings.Join(sides, " | ")
}

func metres(cm int) string { return strconv.FormatFloat(float64(cm)/100, 'f', -1, 64) + " m" }

// typed puts what somebody typed onto the page. Who was not told of stays
// where players are at first. It reports false for what tells no lengths.
func typed(words string) (stands, bool) {
	s := atFirst()
	r, err := notation.Read(words)
	a, ok := r.Other.(*court.Alignment)
	if err != nil || !ok {
		return s, false
	}
	if a.Get(play.Key{Fact: court.ServingSide}) == play.ValueA {
		s.Serving = play.A
		s.At[0][0], s.At[1][0] = spot{800, 960}, spot{150, 620}
	}
	found := false
	for _, p := range a.People {
		if len(p.Feet) == 0 || !p.Place.OK() {
			continue
		}
		at := spot{int(p.Feet[0].Left / court.Centimetre), int(p.Feet[0].Near / court.Centimetre)}
		if p.Team == play.B {
			at.X = 900 - at.X
		}
		if !at.ok() {
			return s, false
		}
		s.At[p.Team-play.A][p.Place-1] = at
		found = true
	}
	return s, found
}

// ruled is the ruling on stands.
type ruled struct {
	HTML     template.HTML `json:"html"`
	Tone     string        `json:"tone"`
	Headline string        `json:"headline"`
	Told     string        `json:"told"`  // the ruling in sentences, for those who hear the page
	Text     string        `json:"text"`  // the stands as they are typed
	Pairs    [][2]string   `json:"pairs"` // who overlap, such as a1 and a2
	Off      []string      `json:"off"`   // who is where nobody may be
}

// has reports whether a player has a part in what is at fault.
func (r ruled) has(id string) bool {
	return slices.Contains(r.Off, id) || slices.ContainsFunc(r.Pairs, func(p [2]string) bool { return p[0] == id || p[1] == id })
}

// Marks are the pairs for the script: "a1-a2 b4-b5".
func (r ruled) Marks() string {
	var out []string
	for _, p := range r.Pairs {
		out = append(out, p[0]+"-"+p[1])
	}
	return strings.Join(out, " ")
}

// rule rules on stands under a code, with what the association adopted.
func (w *Web) rule(s stands, c code.Code) (ruled, error) {
	var of bot.Association
	if w.Find != nil {
		of, _ = w.Find(w.place(""))
	}
	b, err := code.Open(c, of.Season)
	if err == nil && len(of.Overlays) > 0 {
		b, err = b.With(of.Overlays...)
	}
	if err != nil {
		return ruled{}, err
	}
	a, text := s.alignment(), s.Text()
	found := picture.Breaches(a, b)
	doc := bot.Ruling(answered(s, a, found, b, answer.Options{Code: c, Season: of.Season, Overlays: of.Overlays}))
	out := ruled{Tone: tones[doc.Tone], Text: text, Headline: title(doc), Told: title(doc) + ".", Pairs: [][2]string{}, Off: []string{}}
	var list bot.List
	for _, br := range found {
		says := a.Clause(br.Key, a.Get(br.Key))
		list.Items = append(list.Items, bot.Line(says))
		out.Told += " " + upper(says) + "."
		if br.Other == "" {
			out.Off = append(out.Off, strings.ToLower(br.Who))
		} else {
			out.Pairs = append(out.Pairs, [2]string{strings.ToLower(br.Who), strings.ToLower(br.Other)})
		}
	}
	var p printer
	for _, block := range brief(doc) {
		p.block(block)
		if _, ok := block.(bot.Heading); ok && len(list.Items) > 0 {
			p.block(list)
			list.Items = nil
		}
	}
	out.HTML = template.HTML(p.String())
	return out, nil
}

// answered is the answer on stands, from far less to think about while
// somebody drags: where something is at fault it is asked of those alone who
// are the first of their side in it; where nothing is, of two sides that are
// said to be in order. Where that would not come to the same, of everybody.
func answered(s stands, a *court.Alignment, found []picture.Breach, b *code.Book, o answer.Options) answer.Answer {
	var who []string
	var seen [3]bool
	for _, br := range found {
		p, _ := a.Person(br.Who)
		if !seen[p.Team] {
			seen[p.Team] = true
			who = append(who, strings.ToLower(br.Who))
			if br.Other != "" {
				who = append(who, strings.ToLower(br.Other))
			}
		}
	}
	few := s.alignment(who...)
	if len(who) == 0 {
		few = (&court.Alignment{Names: a.Names}).With(play.Key{Fact: court.ServingSide}, play.Value(s.Serving.String()))
		for _, t := range []string{"A", "B"} {
			few = few.With(play.Key{Fact: court.TeamOrder, Of: t}, court.InTheOrder)
		}
	}
	all, err1 := judge.Decide(a, b)
	one, err2 := judge.Decide(few, b)
	if err1 == nil && err2 == nil && all.Settled() && one.Settled() && all.Ruling.Key() == one.Ruling.Key() {
		a = few
	}
	return answer.Of(notation.Reading{Other: a}, o)
}

// told on the page already, or of no use beside the court.
var onCourt = map[string]bool{"Read as": true, "Because": true, "Presumed": true, "Would change": true}

// brief is a ruling without what the court beside it shows.
func brief(d bot.Doc) []bot.Block {
	var out []bot.Block
	for _, b := range d.Blocks {
		switch b := b.(type) {
		case bot.Heading:
			out = append(out, b)
		case bot.Fields:
			var items []bot.Field
			for _, i := range b.Items {
				if !onCourt[i.Label] {
					items = append(items, i)
				}
			}
			out = append(out, bot.Fields{Items: items})
		}
	}
	return out
}

func upper(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// board is what the page shows of the court.
type board struct {
	stands
	Code    code.Code
	Players []boardPlayer
	Ruled   ruled
}

// boardPlayer is one player on the page.
type boardPlayer struct {
	ID    string // a1 to b6
	Side  string // what the side is called
	Place court.Position
	X, Y  int // in the drawing: Y is from the net, upward negative
	Fault bool
}

// Far reports whether the player is on the far side.
func (p boardPlayer) Far() bool { return p.ID[0] == 'b' }

// Name is the player for those who hear the page.
func (p boardPlayer) Name() string {
	return fmt.Sprintf("%s %d, %s", strings.ToUpper(p.ID[:1])+" "+p.Side, p.Place, p.Place.Name())
}

// NearServes reports whether the near side serves.
func (b board) NearServes() bool { return b.Serving == play.A }

// alignmentPage is the court on which players are put in their places.
func (w *Web) alignmentPage(out http.ResponseWriter, r *http.Request, s session) {
	w.showBoard(out, s, atFirst(), "", "", "")
}

// putPage is the same court, with players where somebody typed them.
func (w *Web) putPage(out http.ResponseWriter, r *http.Request, s session) {
	typedWords := words(r, "words")
	at, ok := typed(typedWords)
	if ok {
		w.showBoard(out, s, at, r.PostForm.Get("code"), "", "")
		return
	}
	w.showBoard(out, s, at, r.PostForm.Get("code"), typedWords,
		"No lengths were read in that. Write them like: receiving: 1 at 7.5 m 6 m; 2 at 7.5 m 2 m. Rows tell only the order: for these press “Ask it”.")
}

func (w *Web) showBoard(out http.ResponseWriter, s session, at stands, c, typed, trouble string) {
	chosen, err := code.Parse(cmp.Or(c, w.Code, string(code.International)))
	if err != nil {
		w.strange(out)
		return
	}
	b := board{stands: at, Code: chosen}
	if b.Ruled, err = w.rule(at, chosen); err != nil {
		w.Log.ErrorContext(w.run, "an alignment could not be ruled on", "cause", err)
		w.fail(out, http.StatusInternalServerError, "The rules can't be opened just now.", "Try again in a while.")
		return
	}
	names := at.names()
	for team := range at.At {
		for i, p := range at.At[team] {
			y := p.Near
			if team == 1 {
				y = -y
			}
			id := playerID(team, i)
			b.Players = append(b.Players, boardPlayer{id, names[team+1][0], court.Position(i + 1), p.X, y, b.Ruled.has(id)})
		}
	}
	w.write(out, "alignment", frame{Title: "Positions", Here: "alignment", Session: s, Codes: code.All(), Board: &b, Typed: cmp.Or(typed, b.Ruled.Text), Trouble: trouble})
}

// ruleOn answers the script of the court.
func (w *Web) ruleOn(out http.ResponseWriter, r *http.Request, _ session) {
	at, ok := parseStands(r.PostForm.Get("at"), r.PostForm.Get("serving"))
	c, err := code.Parse(r.PostForm.Get("code"))
	if !ok || err != nil {
		w.strange(out)
		return
	}
	got, err := w.rule(at, c)
	if err != nil {
		w.Log.ErrorContext(r.Context(), "an alignment could not be ruled on", "cause", err)
		w.fail(out, http.StatusInternalServerError, "The rules can't be opened just now.", "Try again in a while.")
		return
	}
	out.Header().Set("Content-Type", "application/json; charset=utf-8")
	_ = json.NewEncoder(out).Encode(got) // whoever moved may be gone
}
