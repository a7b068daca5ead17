package pages

import (
	"bytes"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"html/template"
	"net/url"
	"path"
	"slices"
	"strings"
	"sync"

	"example.org/netpost/casebook"
)

var templates = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("").Funcs(template.FuncMap{"rulePage": func(r string) string { return "rules/" + slug(r) + ".html" },
		"topicPage": func(t string) string { return "topics/" + slug(t) + ".html" }}).ParseFS(embedded, "templates/*.html"))
})

// view is what a page is made of.
type view struct {
	Site  *Site
	Title string
	Here  string // the part of the site
	Up    string // from the page's folder to the root: "" or "../"

	Note  *noteView
	Cards []card
	Lists []list
	Weeks []week
	Week  *week
	Data  template.HTML // for the script of the search
	Lead  string
}

// Policy is what a browser is told that the pages may do.
func (view) Policy() string {
	return "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'self'"
}

// To is the address of a page of the site, from this one.
func (v view) To(p string) string { return v.Up + (&url.URL{Path: p}).EscapedPath() }

// card is a note in a list.
type card struct {
	ID, Title, Page string
	Ruling, Tone    string
	For, Standing   string
}

func (s *Site) html(name string, v view) (File, error) {
	v.Site = s
	var b bytes.Buffer
	if err := templates().ExecuteTemplate(&b, name+".html", v); err != nil {
		panic("pages: a page can't be made: " + err.Error())
	}
	return File{"text/html; charset=utf-8", b.Bytes()}, nil
}

func codesOf(n *casebook.Note) string {
	var out []string
	for _, c := range n.Codes {
		out = append(out, string(c))
	}
	return strings.Join(out, ", ")
}

// standing says where a note stands that is not simply in force; empty: it is.
func (s *Site) standing(n *casebook.Note) string {
	switch {
	case n.Status != casebook.Published:
		return n.Status.String()
	case s.expired(n):
		return "expired"
	}
	return ""
}

func (s *Site) expired(n *casebook.Note) bool {
	return !s.On.IsZero() && !n.Expires.IsZero() && n.Expires.Before(s.On)
}

func (s *Site) cards(notes []*casebook.Note, up string) []card {
	var out []card
	for _, n := range notes {
		out = append(out, card{n.ID, n.Title, up + n.ID + ".html", n.Ruling.Words(), toneOf(n.Ruling), codesOf(n) + " · " + n.Season.String(), s.standing(n)})
	}
	return out
}

func toneOf(r casebook.Ruling) string {
	switch r.Outcome {
	case "fault":
		return "bad"
	case "play-on":
		return "good"
	case "replay", "re-serve":
		return "again"
	case "depends":
		return "open"
	}
	return "plain"
}

// newest is how many notes the first page lists.
const newest = 40

func (s *Site) front() (File, error) {
	title := "Case notes"
	if s.Name != "" {
		title = s.Name + ": case notes"
	}
	var live []*casebook.Note
	for _, n := range s.notes {
		if len(live) < newest && s.standing(n) == "" {
			live = append(live, n)
		}
	}
	return s.html("front", view{Title: title, Here: "notes", Cards: s.cards(live, ""), Lists: s.seasons})
}

func (s *Site) lists(folder, title string, lists []list) (File, error) {
	return s.html("lists", view{Title: title, Here: folder, Up: "../", Lists: lists})
}

func (s *Site) list(folder, one string, l list) (File, error) {
	notes := l.Notes
	if folder == "rules" {
		notes = s.partsOf(l.Slug)
	}
	return s.html("list", view{Title: one + l.Name, Here: folder, Up: "../", Cards: s.cards(notes, "../")})
}

// partsOf are the notes about a rule or a part of it.
func (s *Site) partsOf(rule string) []*casebook.Note {
	var out []*casebook.Note
	for _, n := range s.notes {
		if slices.ContainsFunc(n.Rules, func(r string) bool {
			r = slug(r)
			return r == rule || strings.HasPrefix(r, rule+".") || strings.HasPrefix(r, rule+"-")
		}) {
			out = append(out, n)
		}
	}
	return out
}

// noteView is one note on its page.
type noteView struct {
	*casebook.Note
	For, Tone, Standing string
	Body                template.HTML
	Proof               casebook.Proof
	Proved              bool // the engine rules as the note does, under every code
	Successor           *card
	Replaces            []card
	Attached            []attached
	Picture             template.URL // of the play; empty: none
	Alt                 string
}

// attached is a file of a note.
type attached struct {
	Name, Page string // Page is empty where the file does not go out
}

func (s *Site) note(n *casebook.Note) (File, error) {
	v := &noteView{Note: n, For: codesOf(n), Tone: toneOf(n.Ruling), Standing: s.standing(n), Proof: s.prover.Prove(n)}
	v.Body = template.HTML(n.HTML(s.address)) // which is clean
	v.Proved = len(v.Proof.Rulings) > 0
	for _, r := range v.Proof.Rulings {
		v.Proved = v.Proved && r.Agrees
	}
	if next := s.book.Successor(n.ID); next != nil && n.Status == casebook.Superseded {
		v.Successor = &s.cards([]*casebook.Note{next}, "")[0]
	}
	for _, id := range n.Supersedes {
		if o := s.book.Note(id); o != nil && s.Has(id) {
			v.Replaces = append(v.Replaces, s.cards([]*casebook.Note{o}, "")...)
		} else {
			v.Replaces = append(v.Replaces, card{ID: id})
		}
	}
	for _, a := range n.Attachments {
		to := "files/" + a
		if s.paths[to] == nil {
			to = ""
		}
		v.Attached = append(v.Attached, attached{path.Base(a), to})
	}
	if s.Picture != nil && n.Play != "" {
		if svg, alt, ok := s.Picture(n); ok {
			// As the source of an image, an SVG can run nothing and load nothing.
			v.Picture, v.Alt = template.URL("data:image/svg+xml;base64,"+base64.StdEncoding.EncodeToString(svg)), alt
		}
	}
	return s.html("note", view{Title: n.Title, Here: "notes", Note: v})
}

// address is where a link of a note to a file of the folder leads.
func (s *Site) address(p string) (string, bool) {
	if n := s.written[p]; n != nil {
		return n.ID + ".html", true
	}
	if s.paths["files/"+p] != nil {
		return (&url.URL{Path: "files/" + p}).EscapedPath(), true
	}
	return "", false
}

// mostWords is how many letters of a note's text the search of the pages looks at.
const mostWords = 600

// search has the notes as JSON in the page itself, so that it works from a
// disk too, where a script may fetch nothing.
func (s *Site) search() (File, error) {
	type entry struct {
		ID     string   `json:"id"`
		Title  string   `json:"title"`
		For    string   `json:"for"`
		Ruling string   `json:"ruling,omitempty"`
		Mark   string   `json:"mark,omitempty"`
		Rules  []string `json:"rules,omitempty"`
		Topics []string `json:"topics,omitempty"`
		Text   string   `json:"text"`
	}
	all := make([]entry, 0, len(s.notes))
	for _, n := range s.notes {
		text := []rune(strings.Join(strings.Fields(n.Play+" "+n.Plain()), " "))
		all = append(all, entry{n.ID, n.Title, codesOf(n) + " · " + n.Season.String(), n.Ruling.Words(), s.standing(n), n.Rules, n.Topics,
			string(text[:min(len(text), mostWords)])})
	}
	data, err := json.Marshal(all) // which escapes <, > and &
	if err != nil {
		return File{}, fmt.Errorf("the notes can't be put into the search: %w", err)
	}
	return s.html("search", view{Title: "Search", Here: "search", Data: template.HTML(`<script type="application/json" id="notes">` + string(data) + `</script>`)})
}
