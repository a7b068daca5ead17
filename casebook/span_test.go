package casebook

import (
	"strings"
	"testing"
)

func TestBetween(t *testing.T) {
	day := func(s string) Date {
		d, err := ParseDate(s)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	b := NewBook([]*Note{
		{ID: "2026-001", Status: Published, Issued: day("2026-11-15")},
		{ID: "2026-002", Status: Published, Issued: day("2026-11-16")},
		{ID: "2026-003", Status: Superseded, Issued: day("2026-11-18")},
		{ID: "2026-004", Status: Published, Issued: day("2026-11-16"), Supersedes: []string{"2026-001"}},
		{ID: "2026-005", Status: Draft},
		{ID: "2026-006", Status: Withdrawn, Issued: day("2026-01-05"), Withdrawn: day("2026-11-22")},
		{ID: "2026-007", Status: Withdrawn, Issued: day("2026-11-17"), Withdrawn: day("2026-11-23")},
		{ID: "2026-008", Status: Published, Issued: day("2026-01-05"), Expires: day("2026-11-20")},
		{ID: "2026-009", Status: Superseded, Issued: day("2026-01-05"), Expires: day("2026-11-20")},
		{ID: "2026-010", Status: Published, Issued: day("2026-11-23")},
		{ID: "2026-011", Status: Withdrawn, Issued: day("2026-01-05")},
	}, nil)
	ids := func(notes []*Note) string {
		var out []string
		for _, n := range notes {
			out = append(out, strings.TrimPrefix(n.ID, "2026-"))
		}
		return strings.Join(out, " ")
	}
	c := b.Between(day("2026-11-16"), day("2026-11-22"))
	for _, l := range []struct{ what, got, want string }{
		{"new", ids(c.New), "002 007 003"},
		{"changed", ids(c.Changed), "004"},
		{"withdrawn", ids(c.Withdrawn), "006"},
		{"expired", ids(c.Expired), "008"},
	} {
		if l.got != l.want {
			t.Errorf("%s: %q, want %q", l.what, l.got, l.want)
		}
	}
	if c.IsZero() || !b.Between(day("2026-02-02"), day("2026-02-08")).IsZero() {
		t.Error("a week in which nothing happened is not told from one in which something did")
	}
}
