package index

import (
	"context"
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"unicode/utf8"

	"example.org/netpost/casebook"
	"example.org/netpost/engine/code"
)

// note is the text of a note's file. Extra is further front matter, a line each.
func note(id, title, body string, extra ...string) string {
	front := []string{"id: " + id, "title: " + title}
	for _, want := range []string{"codes: [scholastic]", "season: 2025-26", "status: published", "issued: 2025-09-01"} {
		key, _, _ := strings.Cut(want, ":")
		if !slices.ContainsFunc(extra, func(s string) bool { return strings.HasPrefix(s, key+":") }) {
			front = append(front, want)
		}
	}
	return "---\n" + strings.Join(append(front, extra...), "\n") + "\n---\n" + body + "\n"
}

// folderOf makes a folder of notes, each file named for its note's id.
func folderOf(notes ...string) fstest.MapFS {
	out := fstest.MapFS{}
	for _, n := range notes {
		out[fileName(n)] = &fstest.MapFile{Data: []byte(n)}
	}
	return out
}

func fileName(note string) string {
	_, rest, _ := strings.Cut(note, "id: ")
	id, _, _ := strings.Cut(rest, "\n")
	return id + ".md"
}

func load(t testing.TB, notes fs.FS) *casebook.Book {
	t.Helper()
	b, findings := casebook.Load(notes, casebook.LoadOptions{})
	for _, f := range findings {
		t.Error(f)
	}
	return b
}

func memory(t testing.TB, notes ...string) *Index {
	t.Helper()
	x, err := Memory(t.Context(), load(t, folderOf(notes...)))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { x.Close() })
	return x
}

// ids searches and gives the ids found, best first.
func ids(t testing.TB, x *Index, q Query) []string {
	t.Helper()
	hits, err := x.Search(t.Context(), q)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, h := range hits {
		out = append(out, h.ID)
	}
	return out
}

func TestFilters(t *testing.T) {
	x := memory(t,
		note("2025-001", "Pancake saves", "A hand flat on the floor."),
		note("2025-002", "Pancake saves in college", "A hand flat on the floor.", "codes: [collegiate]"),
		note("2026-001", "Pancake saves again", "A hand flat on the floor.", "season: 2026-27", "issued: 2026-09-01", "codes: [scholastic, collegiate]"),
		note("2025-003", "Pancake draft", "A hand flat on the floor.", "status: draft"),
		note("2025-004", "Pancake taken back", "A hand flat on the floor.", "status: withdrawn"),
		note("2025-005", "Pancake for one month", "A hand flat on the floor.", "expires: 2025-10-01"),
	)
	for _, test := range []struct {
		what string
		q    Query
		want []string
	}{
		{"in force", Query{}, []string{"2025-001", "2025-002", "2025-005", "2026-001"}},
		{"one code", Query{Code: code.Collegiate}, []string{"2025-002", "2026-001"}},
		{"another code", Query{Code: code.Club}, nil},
		{"an earlier season", Query{Season: 2025}, []string{"2025-001", "2025-002", "2025-005"}},
		{"before them all", Query{Season: 2024}, nil},
		{"on a day", Query{On: casebook.Date{Year: 2025, Month: 12, Day: 1}}, []string{"2025-001", "2025-002"}},
		{"all", Query{All: true}, []string{"2025-001", "2025-002", "2025-003", "2025-004", "2025-005", "2026-001"}},
	} {
		test.q.Words, test.q.Limit = "pancake", 10
		got := ids(t, x, test.q)
		slices.Sort(got)
		if !slices.Equal(got, test.want) {
			t.Errorf("%s: %v, want %v", test.what, got, test.want)
		}
	}
	if got := ids(t, x, Query{Words: "pancake", Season: 2026, Code: code.Collegiate, Limit: 1}); !slices.Equal(got, []string{"2026-001"}) {
		t.Errorf("the season's own note is not preferred: %v", got)
	}
	if got := ids(t, x, Query{Words: "pancake"}); len(got) != DefaultLimit {
		t.Errorf("%d hits without a limit, want %d", len(got), DefaultLimit)
	}
}

func TestTies(t *testing.T) {
	var notes []string
	for i := range 30 {
		notes = append(notes, note(fmt.Sprintf("2025-%03d", 30-i), "Pancake saves", "The same words."))
	}
	for range 3 { // each build numbers its documents in another order
		got := ids(t, memory(t, notes...), Query{Words: "pancake", Limit: 5})
		if want := []string{"2025-001", "2025-002", "2025-003", "2025-004", "2025-005"}; !slices.Equal(got, want) {
			t.Fatalf("%v, want %v", got, want)
		}
	}
}

func TestSuccessors(t *testing.T) {
	x := memory(t,
		note("2023-001", "Old pancake", "A hand flat on the floor.", "season: 2023-24", "issued: 2023-09-01", "status: superseded"),
		note("2024-001", "Middle", "Nothing of the kind.", "season: 2024-25", "issued: 2024-09-01", "status: superseded", "supersedes: [2023-001]"),
		note("2025-001", "New", "Something else.", "supersedes: [2024-001]"),
		note("2026-001", "Not yet", "A draft.", "status: draft", "season: 2026-27", "supersedes: [2025-001]"),
		note("2022-001", "Lone pancake", "Replaced by a note that was taken back.", "season: 2022-23", "issued: 2022-09-01", "status: superseded"),
		note("2022-002", "Taken back", "No.", "season: 2022-23", "issued: 2022-09-02", "status: withdrawn", "supersedes: [2022-001]"),
	)
	hits, err := x.Search(t.Context(), Query{Words: "pancake"})
	if err != nil {
		t.Fatal(err)
	}
	if len(hits) != 1 || hits[0].ID != "2025-001" || !slices.Equal(hits[0].Replaces, []string{"2023-001"}) {
		t.Fatalf("an old note leads to %+v, want its last successor 2025-001 alone", hits)
	}
	if !slices.Contains(hits[0].Why, "replaces 2023-001") {
		t.Errorf("the reasons do not say that the note replaces the one found: %q", hits[0].Why)
	}
	for season, want := range map[code.Season]string{2023: "2023-001", 2024: "2024-001", 2025: "2025-001", 2026: "2025-001"} {
		if got := ids(t, x, Query{Words: "hand flat on the floor", Season: season, Limit: 1}); !slices.Equal(got, []string{want}) {
			t.Errorf("asked about %s: %v, want %s, which was in force", season, got, want)
		}
	}
	got := ids(t, x, Query{Words: "pancake", All: true})
	slices.Sort(got)
	if !slices.Equal(got, []string{"2022-001", "2023-001"}) {
		t.Errorf("all: %v, want the superseded notes themselves", got)
	}
}

func TestRules(t *testing.T) {
	x := memory(t,
		note("2025-001", "First", "Words.", `rules: ["9-2-3"]`),
		note("2025-002", "Second", "Words.", `rules: ["9-20-1"]`),
		note("2025-003", "Third", "Words.", `rules: ["9-2"]`),
		note("2025-004", "Fourth", "Words.", `rules: ["10-4-1b"]`),
	)
	for _, test := range []struct {
		words string
		want  []string
	}{
		{"rule 9.2.3", []string{"2025-001", "2025-003"}},
		{"9-20", []string{"2025-002"}},
		{"10.4.1(b)", []string{"2025-004"}},
		{"10-4", []string{"2025-004"}},
		{"9", []string{"2025-001", "2025-002", "2025-003"}},
	} {
		got := ids(t, x, Query{Words: test.words})
		if test.words == "9" {
			slices.Sort(got)
		}
		if !slices.Equal(got, test.want) {
			t.Errorf("%s: %v, want %v", test.words, got, test.want)
		}
	}
	hits, err := x.Search(t.Context(), Query{Rules: []string{"9.2"}})
	if err != nil || len(hits) != 2 || !slices.Equal(hits[0].Why, []string{"rule 9-2"}) && !slices.Equal(hits[0].Why, []string{"rule 9-2-3"}) {
		t.Errorf("by rule 9.2: %+v, %v", hits, err)
	}
}

func TestSnippet(t *testing.T) {
	long := strings.Repeat("Nothing of note is said in this sentence. ", 20)
	x := memory(t, note("2025-001", "Saves", long+"The pancaké *save* counts if the <b>hand</b> is flat. "+long))
	hits, err := x.Search(t.Context(), Query{Words: "is a save with the hand flat fine?"})
	if err != nil || len(hits) != 1 {
		t.Fatalf("%v, %v", hits, err)
	}
	s := hits[0].Snippet
	if len(s.Text) > longestSnippet+2*len("…") || !utf8.ValidString(s.Text) {
		t.Errorf("%d bytes: %q", len(s.Text), s.Text)
	}
	got := s.Mark("[", "]", strings.ToUpper)
	for _, want := range []string{"[SAVE]", "[HAND]", "[FLAT]", "…"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %s in %q", want, got)
		}
	}
	if strings.Contains(got, "[IS]") || strings.Contains(s.Text, "*") {
		t.Errorf("common words or markup stand out in %q", got)
	}
}

// Any text is a question: nothing a person types fails or is read as a query language.
func FuzzSearch(f *testing.F) {
	for _, s := range []string{"", "9.2:", `"unclosed`, "~", "/re[gx/", "foul -keeper", "+a +b", "*", "\xff\xfe", "a^b~2", "9-4-1b", strings.Repeat("setter ", 500), "ON", "é ß ǅ 漢字", "\u2028…"} {
		f.Add(s)
	}
	x, err := Memory(context.Background(), load(f, folderOf(
		note("2025-001", "Setter above the net", "A *back-row* setter é reaches.", `rules: ["9-5-5"]`),
		note("2025-002", "Pancake", "A hand flat on the floor."))))
	if err != nil {
		f.Fatal(err)
	}
	f.Cleanup(func() { x.Close() })
	f.Fuzz(func(t *testing.T, words string) {
		hits, err := x.Search(context.Background(), Query{Words: words})
		if err != nil {
			t.Fatalf("%q: %v", words, err)
		}
		for _, h := range hits {
			if len(h.Why) == 0 {
				t.Errorf("%q finds %s and says no reason", words, h.ID)
			}
			last := 0
			for _, m := range h.Snippet.Marks {
				if m[0] < last || m[1] <= m[0] || m[1] > len(h.Snippet.Text) {
					t.Fatalf("%q: bad mark %v in %q", words, m, h.Snippet.Text)
				}
				last = m[1]
			}
			if !utf8.ValidString(h.Snippet.Text) {
				t.Errorf("%q: the snippet cuts a letter: %q", words, h.Snippet.Text)
			}
		}
	})
}

func TestClosed(t *testing.T) {
	x := memory(t, note("2025-001", "Pancake", "Words."))
	x.Close()
	if hits, err := x.Search(t.Context(), Query{Words: "pancake"}); err == nil {
		t.Errorf("a closed index finds %v", hits)
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := memory(t, note("2025-001", "Pancake", "Words.")).Search(ctx, Query{Words: "pancake"}); err == nil {
		t.Error("a search whose time is over gives no error")
	}
}
