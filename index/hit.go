package index

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"example.org/netpost/casebook"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/play"
)

// Hit is one note found.
type Hit struct {
	ID      string
	Title   string
	Path    string // of the note's file, slash-separated from the casebook's root
	Codes   []code.Code
	Season  code.Season
	Status  casebook.Status
	Issued  casebook.Date
	Expires casebook.Date
	Rules   []string // as the note writes them
	Topics  []string
	Play    string
	Ruling  casebook.Ruling
	Departs string // why the note rules otherwise than the book, empty when it does not

	// Why says in clauses why the note was chosen, the strongest reason first: the same
	// fault, the same deciding fact, a rule number, words.
	Why []string
	// Snippet is the part of the note that answers the words best.
	Snippet Snippet
	// Replaces are the ids of superseded notes that were found and led here.
	Replaces []string
	// Score orders the hits of one search and means nothing beyond it.
	Score float64
}

// collector turns matches into hits: a superseded note gives way to its successor, and a
// note that is reached twice is one hit with the better score.
type collector struct {
	asked asked
	index *Index
	found []found
	at    map[string]int // place in found, by id
}

// found is a record on its way to become a hit.
type found struct {
	record
	score    float64
	replaces []string
}

func (c *collector) collect(ctx context.Context, m candidate) error {
	rec, err := recordOf(m.match)
	if err != nil {
		return err
	}
	var replaces []string
	if rec.Status == casebook.Superseded && !c.asked.All {
		replaces = []string{rec.ID}
		rec, err = c.successor(ctx, rec)
		if err != nil {
			return err
		}
		if rec.ID == replaces[0] {
			replaces = nil // it was still in force in the season asked about
		}
	}
	if rec.ID == "" || !c.current(rec) {
		return nil
	}
	if i, ok := c.at[rec.ID]; ok {
		c.found[i].score = max(c.found[i].score, m.score)
		c.found[i].replaces = append(c.found[i].replaces, replaces...)
		return nil
	}
	c.at[rec.ID] = len(c.found)
	c.found = append(c.found, found{rec, m.score, replaces})
	return nil
}

// successor is the note that stood in place of a superseded one in the season asked about:
// the last of the chain that was there by then and is about the code asked for. The empty
// record: it was replaced, and nothing that may be shown is left of the chain.
func (c *collector) successor(ctx context.Context, old record) (record, error) {
	last, replaced := old, false
	for _, id := range old.Successors {
		next, ok, err := c.index.byID(ctx, id)
		if err != nil {
			return record{}, err
		}
		if !ok || c.asked.Season != 0 && next.Season > c.asked.Season {
			continue
		}
		replaced = true
		if c.asked.Code == "" || slices.Contains(next.Codes, c.asked.Code) {
			last = next
		}
	}
	switch {
	case last.Status == casebook.Published, c.asked.Season != 0 && (last.ID != old.ID || !replaced):
		return last, nil
	}
	return record{}, nil
}

// current reports whether a note is in force on the day asked about.
func (c *collector) current(r record) bool {
	on := c.asked.On
	if on.IsZero() {
		return true
	}
	return (r.Expires.IsZero() || !r.Expires.Before(on)) && (r.Issued.IsZero() || !on.Before(r.Issued))
}

// hits lists what was collected, best first, equal ones by id.
func (c *collector) hits() []Hit {
	slices.SortStableFunc(c.found, func(a, b found) int {
		return cmp.Or(cmp.Compare(b.score, a.score), strings.Compare(a.ID, b.ID))
	})
	var out []Hit
	for _, f := range c.found {
		if len(out) == c.asked.Limit {
			break
		}
		slices.Sort(f.replaces)
		out = append(out, Hit{
			ID: f.ID, Title: f.Title, Path: f.Path, Codes: f.Codes, Season: f.Season, Status: f.Status,
			Issued: f.Issued, Expires: f.Expires, Rules: f.Rules, Topics: f.Topics, Play: f.Play,
			Ruling: f.Ruling, Departs: f.Departs,
			Why:      c.why(f),
			Snippet:  c.index.lexicon.snippet(f.record, c.asked),
			Replaces: slices.Compact(f.replaces),
			Score:    f.score,
		})
	}
	return out
}

// mostWords is how many of the matching words a reason names.
const mostWords = 4

// why lists the reasons for a hit, the strongest first.
func (c *collector) why(f found) []string {
	var out []string
	shared := func(class string) []string {
		var vs []string
		for _, s := range c.asked.signs {
			if _, ok := slices.BinarySearch(f.Sign, s); ok && s.class() == class {
				vs = append(vs, s.value())
			}
		}
		return vs
	}
	spaced := func(ids []string) string { return strings.ReplaceAll(strings.Join(ids, ", "), "-", " ") }
	if vs := shared(signFault); len(vs) > 0 {
		out = append(out, "same fault: "+spaced(vs))
	} else if vs := shared(signRaised); len(vs) > 0 {
		out = append(out, "same call in question: "+spaced(vs))
	} else if vs := shared(signMay); len(vs) > 0 {
		out = append(out, "the fault it may be: "+spaced(vs))
	}
	if vs := shared(signMeasure); len(vs) > 0 {
		out = append(out, "same measure: "+spaced(vs))
	}
	if vs := shared(signTurns); len(vs) > 0 {
		out = append(out, "turns on the same: "+strings.Join(factNames(vs), ", "))
	}
	if r := sharedRules(c.asked, f.Rules); len(r) > 0 {
		out = append(out, "rule "+strings.Join(r, ", "))
	}
	if w := c.index.lexicon.shared(c.asked, f.record); len(w) > 0 {
		out = append(out, "words: "+strings.Join(w, ", "))
	}
	if len(out) == 0 {
		if vs := shared(signEvent); len(vs) > 0 {
			out = append(out, "a like play")
		} else {
			out = append(out, "small words in common") // none that would stand out
		}
	}
	if len(f.replaces) > 0 {
		out = append(out, "replaces "+strings.Join(f.replaces, ", "))
	}
	return out
}

// factNames says facts in the words of their ids, in the order given.
func factNames(ids []string) []string {
	var out []string
	for _, id := range ids {
		name := strings.ReplaceAll(id, "-", " ")
		if _, ok := judge.FactByID(play.FactID(id)); ok {
			out = append(out, name)
		}
	}
	return out
}

// sharedRules lists, as the note writes them, its rules that are asked for or cited, or
// part of what is, and those that what is cited is part of.
func sharedRules(a asked, written []string) []string {
	var out []string
	for _, w := range written {
		n := NormalRule(w)
		if n == "" {
			continue
		}
		for _, r := range slices.Concat(a.rules, a.cited) {
			if within(n, r) || within(r, n) {
				out = append(out, w)
				break
			}
		}
	}
	return out
}

// within reports whether a rule is another or part of it.
func within(r, whole string) bool { return r == whole || strings.HasPrefix(r, whole+".") }
