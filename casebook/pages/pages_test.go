package pages

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"golang.org/x/net/html"

	"example.org/netpost/casebook"
	"example.org/netpost/casebook/demo"
)

var update = flag.Bool("update", false, "rewrite the expected pages in testdata")

var on = casebook.Date{Year: 2026, Month: time.November, Day: 24}

// example is the site of the invented notes.
func example(t testing.TB) *Site {
	t.Helper()
	b, found := casebook.Load(demo.FS(), casebook.LoadOptions{})
	if len(found) > 0 {
		t.Fatalf("the example notes: %v", found)
	}
	return New(b, demo.FS(), Options{Name: "Harbour Lakes", On: on, Example: true})
}

// small is a folder with everything that a page can show.
var small = fstest.MapFS{
	"2025-001.md":     {Data: []byte(note("2025-001", "Old view of a tip", "superseded", "issued: 2025-09-02\nrules: [\"9-5-5\"]\ntopics: [back row]", "The old view."))},
	"sub/2026-002.md": {Data: []byte(note("2026-002", "New view of a tip <b>", "published", "issued: 2026-11-16\nsupersedes: [2025-001]\nrules: [\"9-5-5\", \"9-5\"]\ntopics: [back row, setter's ball]\nattachments: [court.png, notes.html]\nplay: A setter back row dumps it on two, ball wholly above the net, jumped from inside the 3m line\nruling: {outcome: fault, fault: back-row-attack, against: A}", "See [the old one](../2025-001.md), [a draft](../2026-004.md), ![the court](court.png) and ![far](https://example.org/x.png).\n\n<script>alert(1)</script>"))},
	"2026-003.md":     {Data: []byte(note("2026-003", "Taken back", "withdrawn", "issued: 2026-09-01\nwithdrawn: 2026-11-17", "No more."))},
	"2026-004.md":     {Data: []byte(note("2026-004", "A draft", "draft", "topics: [secret]", "Not yet."))},
	"2026-005.md":     {Data: []byte(note("2026-005", "Was for a while", "published", "issued: 2026-08-01\nexpires: 2026-11-18", "Over."))},
	"sub/court.png":   {Data: []byte("\x89PNG")},
	"sub/notes.html":  {Data: []byte("<script>alert(1)</script>")},
}

func note(id, title, status, more, body string) string {
	return "---\nid: " + id + "\ntitle: " + title + "\ncodes: [scholastic]\nseason: 2025-26\nstatus: " + status + "\n" + more + "\n---\n" + body + "\n"
}

func smallSite(t testing.TB, o Options) *Site {
	t.Helper()
	b, found := casebook.Load(small, casebook.LoadOptions{})
	if len(found) > 0 {
		t.Fatal(found)
	}
	o.Name, o.On = "Riverside", on
	return New(b, small, o)
}

func body(t testing.TB, s *Site, p string) string {
	t.Helper()
	f, ok, err := s.Open(p)
	if err != nil || !ok {
		t.Fatalf("%s: %t, %v", p, ok, err)
	}
	return string(f.Body)
}

// Every link of every page leads to a file of the site, and nothing is loaded
// from elsewhere.
func TestLinks(t *testing.T) {
	for name, s := range map[string]*Site{"example": example(t), "small": smallSite(t, Options{})} {
		t.Run(name, func(t *testing.T) {
			n := 0
			for _, p := range s.Paths() {
				f, _, err := s.Open(p)
				if err != nil {
					t.Fatal(err)
				}
				if strings.HasPrefix(f.Type, "text/html") {
					n += checkLinks(t, s, p, string(f.Body))
				}
			}
			if n < 50 {
				t.Errorf("only %d links were looked at", n)
			}
		})
	}
}

func checkLinks(t *testing.T, s *Site, at, text string) (n int) {
	t.Helper()
	z := html.NewTokenizer(strings.NewReader(text))
	for z.Next() != html.ErrorToken {
		tok := z.Token()
		for _, a := range tok.Attr {
			if a.Key != "href" && a.Key != "src" && a.Key != "action" {
				continue
			}
			n++
			u, err := url.Parse(a.Val)
			if err != nil {
				t.Errorf("%s: %q: %v", at, a.Val, err)
				continue
			}
			if u.Scheme != "" || u.Host != "" {
				if tok.Data != "a" && !strings.HasPrefix(a.Val, "data:image/") {
					t.Errorf("%s loads %s", at, a.Val)
				}
				continue
			}
			to := at
			if u.Path != "" {
				to = path.Join(path.Dir(at), u.Path)
			}
			if s.paths[to] == nil {
				t.Errorf("%s: the link to %s leads nowhere", at, a.Val)
			}
		}
	}
	return n
}

// What a page shows, as golden files.
func TestPages(t *testing.T) {
	s := smallSite(t, Options{URL: "https://notes.example/", Home: "/", Picture: func(n *casebook.Note) ([]byte, string, bool) {
		return []byte("<svg/>"), "the court as told", strings.Contains(n.Play, "dumps")
	}})
	for _, p := range []string{"2025-001.html", "2026-002.html", "2026-003.html", "2026-005.html", "bulletins/2026-W47.html", "feed.atom", "index.html", "rules/9-5.html", "search.html"} {
		got := body(t, s, p)
		file := filepath.Join("testdata", strings.ReplaceAll(p, "/", "_"))
		if *update {
			if err := os.MkdirAll("testdata", 0o777); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil || string(want) != got {
			t.Errorf("%s is another page (%v); if the new one is right: go test ./casebook/pages -update\n%s", p, err, got)
		}
	}
}

// A draft is nowhere, a file that could run is not put out, markup in a title
// is words.
func TestKeptBack(t *testing.T) {
	s := smallSite(t, Options{})
	if s.Has("2026-004") || !s.Has("2026-002") {
		t.Error("a draft has a page, or a note has none")
	}
	for _, p := range s.Paths() {
		text := body(t, s, p)
		for _, no := range []string{"A draft", "2026-004", "secret", "Not yet.", "<script>alert", "tip <b>"} {
			if strings.Contains(text, no) {
				t.Errorf("%s holds %q", p, no)
			}
		}
	}
	if _, ok, _ := s.Open("files/sub/notes.html"); ok {
		t.Error("a page that was attached goes out")
	}
	if f, ok, err := s.Open("files/sub/court.png"); !ok || err != nil || f.Type != "image/png" {
		t.Errorf("an attached picture: %t, %v, %q", ok, err, f.Type)
	}
	if !slices.IsSortedFunc(attachable, func(a, b struct{ end, media string }) int { return strings.Compare(a.end, b.end) }) {
		t.Error("the table of attachments is not sorted")
	}
}

func TestFeed(t *testing.T) {
	s := example(t)
	var f struct {
		XMLName xml.Name `xml:"http://www.w3.org/2005/Atom feed"`
		ID      string   `xml:"id"`
		Updated string   `xml:"updated"`
		Entries []struct {
			ID      string `xml:"id"`
			Title   string `xml:"title"`
			Updated string `xml:"updated"`
			Link    struct {
				Href string `xml:"href,attr"`
			} `xml:"link"`
		} `xml:"entry"`
	}
	if err := xml.Unmarshal([]byte(body(t, s, "feed.atom")), &f); err != nil {
		t.Fatal(err)
	}
	if len(f.Entries) != mostEntries || f.Updated != f.Entries[0].Updated {
		t.Fatalf("%d entries, updated %s", len(f.Entries), f.Updated)
	}
	ids := map[string]bool{f.ID: true}
	for i, e := range f.Entries {
		if ids[e.ID] || !strings.HasPrefix(e.ID, "urn:uuid:") || s.paths[e.Link.Href] == nil || i > 0 && e.Updated > f.Entries[i-1].Updated {
			t.Errorf("entry %d: %+v", i, e)
		}
		ids[e.ID] = true
		if _, err := time.Parse(time.RFC3339, e.Updated); err != nil {
			t.Error(err)
		}
	}
}

// A week is from Monday to Sunday, and belongs to the year of its Thursday.
func TestWeeks(t *testing.T) {
	s := smallSite(t, Options{})
	var got []string
	for _, w := range s.weeks {
		got = append(got, fmt.Sprintf("%s %s %d", w.Name, w.First, w.Count()))
	}
	want := "2026-W47 2026-11-16 3, 2026-W36 2026-08-31 1, 2026-W31 2026-07-27 1, 2025-W36 2025-09-01 1"
	if strings.Join(got, ", ") != want {
		t.Errorf("%s, want %s", strings.Join(got, ", "), want)
	}
	if d := monday(casebook.Date{Year: 2027, Month: time.January, Day: 3}); d.String() != "2026-12-28" {
		t.Errorf("3 January 2027 is in the week of %s", d)
	}
}

func TestNatural(t *testing.T) {
	in := []string{"9.10", "9.2.3", "9", "10-1", "9.2", "HL-3", "9-5", "HL-12", "9.02"}
	slices.SortStableFunc(in, natural)
	if got := strings.Join(in, " "); got != "9 9-5 9.2 9.02 9.2.3 9.10 10-1 HL-3 HL-12" {
		t.Error(got)
	}
	for in, want := range map[string]string{"9-5-5": "9-5-5", "back row": "back_row", "../x": "_._x", "Index": "_index", "": "_", "HL-3": "hl-3", "...": "_"} {
		if got := slug(in); got != want {
			t.Errorf("slug(%q) = %q, want %q", in, got, want)
		}
	}
}

// Written twice it is the same; what has gone is deleted; what is not ours is
// left alone and refused.
func TestWrite(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new", "pages")
	s := smallSite(t, Options{})
	if err := s.Write(dir); err != nil {
		t.Fatal(err)
	}
	read := func() string {
		var all bytes.Buffer
		err := fs.WalkDir(os.DirFS(dir), ".", func(p string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			b, err := os.ReadFile(filepath.Join(dir, p))
			fmt.Fprintf(&all, "%s\n%s\n", p, b)
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
		return all.String()
	}
	first := read()
	if err := smallSite(t, Options{}).Write(dir); err != nil || read() != first {
		t.Errorf("written again it differs: %v", err)
	}
	if err := os.WriteFile(filepath.Join(dir, "CNAME"), []byte("notes.example"), 0o666); err != nil {
		t.Fatal(err)
	}
	b, _ := casebook.Load(fstest.MapFS{"2026-003.md": small["2026-003.md"]}, casebook.LoadOptions{})
	if err := New(b, nil, Options{}).Write(dir); err != nil {
		t.Fatal(err)
	}
	if text := read(); strings.Contains(text, "2026-002") || !strings.Contains(text, "2026-003.html") || !strings.Contains(text, "notes.example") {
		t.Errorf("after a note has gone:\n%s", text)
	}
	other := t.TempDir()
	if err := os.WriteFile(filepath.Join(other, "mine"), nil, 0o666); err != nil {
		t.Fatal(err)
	}
	if err := s.Write(other); !errors.Is(err, ErrForeign) {
		t.Errorf("a folder of somebody else's: %v", err)
	}
}

func TestServe(t *testing.T) {
	s := smallSite(t, Options{})
	for p, want := range map[string]int{"/": 200, "/2026-002.html": 200, "/rules/": 200, "/2026-004.html": 404, "/../go.mod": 404, "/files/sub/notes.html": 404} {
		w := httptest.NewRecorder()
		s.ServeHTTP(w, &http.Request{Method: http.MethodGet, URL: &url.URL{Path: p}})
		if w.Code != want {
			t.Errorf("%s: %d, want %d", p, w.Code, want)
		}
	}
	w := httptest.NewRecorder()
	s.ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/files/sub/court.png", nil))
	if w.Code != 200 || !strings.HasPrefix(w.Header().Get("Content-Security-Policy"), "sandbox") {
		t.Errorf("an attachment: %d %v", w.Code, w.Header())
	}
}

// many is a book of n notes, made of the example ones.
func many(b *testing.B, n int) *casebook.Book {
	book, _ := casebook.Load(demo.FS(), casebook.LoadOptions{})
	from := book.Notes()
	var notes []*casebook.Note
	for i := range n {
		c := *from[i%len(from)]
		c.ID = fmt.Sprintf("%d-%05d", 2024+i%3, i)
		c.Path, c.Supersedes, c.Attachments = c.ID+".md", nil, nil
		notes = append(notes, &c)
	}
	return casebook.NewBook(notes, nil)
}

// BenchmarkNote makes one note's page, its play proven.
func BenchmarkNote(b *testing.B) {
	s := New(many(b, 1000), nil, Options{On: on})
	for i := 0; b.Loop(); i++ {
		if _, _, err := s.Open(s.notes[i%len(s.notes)].ID + ".html"); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkExport writes the pages of 10,000 notes.
func BenchmarkExport(b *testing.B) {
	book := many(b, 10_000)
	for b.Loop() {
		if err := New(book, nil, Options{On: on}).Write(filepath.Join(b.TempDir(), "pages")); err != nil {
			b.Fatal(err)
		}
	}
}
