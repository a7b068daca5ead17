package casebook

import (
	"strings"
	"testing"
	"testing/fstest"

	"example.org/netpost/engine/code"
)

// book loads notes given as id and the fields to change.
func book(t *testing.T, notes ...[2]string) *Book {
	t.Helper()
	folder := fstest.MapFS{}
	for _, n := range notes {
		text := valid(n[0])
		for line := range strings.SplitSeq(n[1], "\n") {
			key, _, ok := strings.Cut(line, ":")
			if !ok {
				continue
			}
			if i := strings.Index(text, "\n"+key+":"); i >= 0 {
				end := i + 1 + strings.IndexByte(text[i+1:], '\n')
				text = text[:i+1] + line + text[end:]
			} else {
				text = strings.Replace(text, "\n---\n", "\n"+line+"\n---\n", 1)
			}
		}
		folder[n[0]+".md"] = &fstest.MapFile{Data: []byte(text)}
	}
	b, found := Load(folder, LoadOptions{})
	if len(found) > 0 {
		t.Fatal(found)
	}
	return b
}

func ids(notes []*Note) string {
	var s []string
	for _, n := range notes {
		s = append(s, n.ID)
	}
	return strings.Join(s, " ")
}

func TestLive(t *testing.T) {
	b := book(t,
		[2]string{"2024-001", "season: 2024-25\nissued: 2024-09-01"},
		[2]string{"2024-002", "season: 2024-25\nissued: 2024-09-01\nexpires: 2025-06-30"},
		[2]string{"2024-003", "season: 2024-25\nissued: 2024-09-01\nexpires: 2025-07-01"},
		[2]string{"2025-001", "season: 2025-26\nissued: 2025-09-01\ncodes: [club, collegiate]"},
		[2]string{"2025-002", "season: 2025-26\nissued: 2025-09-01\nstatus: withdrawn"},
		[2]string{"2026-001", ""},
	)
	for _, c := range []struct {
		code   code.Code
		season code.Season
		want   string
	}{
		{code.Scholastic, 2023, ""},
		{code.Scholastic, 2024, "2024-001 2024-002 2024-003"},
		{code.Scholastic, 2025, "2024-001 2024-003"},
		{code.Scholastic, 2026, "2024-001 2026-001"},
		{code.Club, 2026, "2025-001"},
		{"", 2025, "2024-001 2024-003 2025-001"},
		{"", 0, "2024-001 2024-002 2024-003 2025-001 2026-001"},
	} {
		if got := ids(b.Live(c.code, c.season)); got != c.want {
			t.Errorf("Live(%q, %v) = %s, want %s", c.code, c.season, got, c.want)
		}
	}
	n := b.Note("2024-002")
	for day, want := range map[string]bool{"2024-08-31": false, "2024-09-01": true, "2025-06-30": true, "2025-07-01": false} {
		d, err := ParseDate(day)
		if err != nil {
			t.Fatal(err)
		}
		if n.Live(d) != want {
			t.Errorf("Live(%s) = %v", day, !want)
		}
	}
}

func TestSuccessor(t *testing.T) {
	b := book(t,
		[2]string{"2024-001", "status: superseded"},
		[2]string{"2024-002", "status: superseded\nsupersedes: [2024-001]"},
		[2]string{"2024-003", "supersedes: [2024-002]"},
		[2]string{"2024-004", "status: superseded"},
		[2]string{"2024-005", "status: draft\nsupersedes: [2024-004]"},
		[2]string{"2024-006", "status: superseded\nsupersedes: [2024-007]"},
		[2]string{"2024-007", "status: superseded\nsupersedes: [2024-006]"},
		[2]string{"2024-008", "status: superseded"},
		[2]string{"2024-009", "status: withdrawn\nsupersedes: [2024-008]"},
		[2]string{"2024-010", "status: superseded"},
		[2]string{"2024-011", "issued: 2026-11-03\nsupersedes: [2024-010]"},
		[2]string{"2024-012", "issued: 2026-11-02\nsupersedes: [2024-010]"},
	)
	for id, want := range map[string]string{
		"2024-001": "2024-003", "2024-002": "2024-003", "2024-003": "",
		"2024-004": "", "2024-006": "", "2024-008": "", "2024-010": "2024-011", "1999-001": "",
	} {
		got := ""
		if n := b.Successor(id); n != nil {
			got = n.ID
		}
		if got != want {
			t.Errorf("Successor(%s) = %q, want %q", id, got, want)
		}
	}
}

func TestNewBook(t *testing.T) {
	b := NewBook([]*Note{{ID: "2026-002", Path: "b.md"}, {ID: "2026-001", Path: "a.md"}, {ID: "2026-001", Path: "c.md"}}, nil)
	if ids(b.Notes()) != "2026-001 2026-002" || b.Note("2026-001").Path != "a.md" {
		t.Error("notes are sorted, and the first of an id is kept")
	}
	if b.Note("2026-003") != nil {
		t.Error("there is no such note")
	}
}

func TestOpenWithAdoptions(t *testing.T) {
	a, found := ParseAssociation(BookFile, "name: Example Officials\nadoptions:\n  - {param: timeouts.length, code: scholastic, value: 75, rule: EX-1, since: 2025-26, reason: The gyms are large.}\n")
	if len(found) > 0 {
		t.Fatal(found)
	}
	b := NewBook(nil, a)
	for season, want := range map[code.Season]string{2024: "60", 2025: "75", 0: "75"} {
		book, err := b.Open(code.Scholastic, season)
		if err != nil {
			t.Fatal(err)
		}
		if c := book.Cell("timeouts.length"); c.Value != want {
			t.Errorf("%v: %s, want %s", season, c.Value, want)
		}
	}
	if _, err := b.Open(code.Scholastic, 1999); err == nil {
		t.Error("a season that is not held opens")
	}
	if (*Association)(nil).Owns("EX-1") || (*Association)(nil).Overlays(0) != nil {
		t.Error("no association owns nothing")
	}
}

func TestDate(t *testing.T) {
	for _, s := range []string{"2026-11-15", "2024-02-29", "0001-01-01"} {
		d, err := ParseDate(s)
		if err != nil || d.String() != s {
			t.Errorf("%s reads as %s, %v", s, d, err)
		}
		var e Date
		if b, _ := d.MarshalText(); e.UnmarshalText(b) != nil || e != d {
			t.Errorf("%s does not survive its text", s)
		}
	}
	for _, s := range []string{"", "2026-2-1", "2025-02-29", "2026-11-15T00:00:00Z", "15-11-2026"} {
		if _, err := ParseDate(s); err == nil {
			t.Errorf("%q reads as a date", s)
		}
	}
	if !(Date{2026, 1, 31}).Before(Date{2026, 2, 1}) || (Date{2026, 2, 1}).Before(Date{2026, 2, 1}) || !(Date{}).IsZero() || (Date{}).String() != "" {
		t.Error("the order of days is wrong")
	}
}

func TestStatus(t *testing.T) {
	for _, s := range Statuses() {
		b, err := s.MarshalText()
		var again Status
		if err != nil || again.UnmarshalText(b) != nil || again != s {
			t.Errorf("%v does not survive its text", s)
		}
	}
	if _, err := ParseStatus("Draft"); err == nil || !strings.Contains(err.Error(), "draft, published, superseded or withdrawn") {
		t.Errorf("the error does not list the statuses: %v", err)
	}
}

func TestMarkdown(t *testing.T) {
	n := &Note{Body: "# Heading\n\nA *word*, a [link](x.md) and `code`.\nNext line.\n\n- one\n- two\n\n| a | b |\n|---|---|\n| c | d |\n\n<script>alert(1)</script>\n\n[bad](javascript:alert(1)) ![pic](p.png) <https://example.org>\n\n    kept\n"}
	want := "Heading\nA word, a link and code. Next line.\none\ntwo\na b \nc d \nbad pic https://example.org\nkept"
	if got := n.Plain(); got != want {
		t.Errorf("Plain:\n%q, want\n%q", got, want)
	}
	html := n.HTML(nil)
	for _, no := range []string{"<script", "javascript:", "alert(1)</"} {
		if strings.Contains(html, no) {
			t.Errorf("HTML holds %s:\n%s", no, html)
		}
	}
	for _, yes := range []string{"<em>word</em>", `<a href="x.md" rel="noreferrer">`, `src="p.png"`, "<table>"} {
		if !strings.Contains(html, yes) {
			t.Errorf("HTML lacks %s:\n%s", yes, html)
		}
	}
}
