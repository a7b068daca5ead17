package casebook

import (
	"slices"
)

// The ids of the checks. They stand in findings and stay the same.
const (
	checkAttachment    = "attachment"
	checkBook          = "book"
	checkContradiction = "contradiction"
	checkDeparts       = "departs"
	checkExpired       = "expired"
	checkField         = "field"
	checkFieldOrder    = "field-order"
	checkFile          = "file"
	checkFileName      = "file-name"
	checkFront         = "front-matter"
	checkHTML          = "html"
	checkIssued        = "issued"
	checkLink          = "link"
	checkNext          = "next-season"
	checkPlay          = "play"
	checkRule          = "rule"
	checkRuling        = "ruling"
	checkSeason        = "season"
	checkStatus        = "status"
	checkSupersedes    = "supersedes"
	checkUnique        = "unique"
	checkWhitespace    = "whitespace"
)

// check is one row of the table of checks: note and book are what runs it, on
// each note or once; a check with neither is made while reading or by another
// one's function, which by names.
type check struct {
	id   string
	doc  string
	by   string
	note func(c *checker, n *Note) []Finding
	book func(c *checker) []Finding
}

// checks is the table, sorted by id. It is filled in at start because the
// functions in it name its ids.
var checks []check

func init() {
	checks = []check{
		{checkAttachment, "Every attachment is a file of the folder.", "", checkAttachments, nil},
		{checkBook, "The association's own book, " + BookFile + ", reads, and its adoptions are values that the codes can have.", "load", nil, nil},
		{checkContradiction, "No two notes in force for one code rule differently on plays that can be the same play.", "", nil, checkContradictions},
		{checkDeparts, "A note that says it departs from the book does depart.", "engine", nil, nil},
		{checkExpired, "No note that has expired is still published.", "", checkExpiry, nil},
		{checkField, "Every field of the front matter is known, of the right kind, and stands there where it must.", "load", nil, nil},
		{checkFieldOrder, "The fields stand in the order of the manual.", "", checkOrder, nil},
		{checkFile, "Every file can be read: it is inside the folder, of a sensible size, and UTF-8 text.", "load", nil, nil},
		{checkFileName, "A note's file is named for its id.", "", checkName, nil},
		{checkFront, "A note opens with front matter in plain YAML: no key twice, no anchors, aliases or tags.", "load", nil, nil},
		{checkHTML, "The text is Markdown without HTML.", checkLink, nil, nil},
		{checkIssued, "A note that has been published has a day of issue, a draft has none.", "", checkIssue, nil},
		{checkLink, "Every link and image of the text leads to a file of the folder, to a heading of the note, or to the web.", "", checkBody, nil},
		{checkNext, "With a next season given: its tables neither overturn a note in force nor change what it cites.", "", nil, checkNextHeld},
		{checkPlay, "The engine reads the play whole.", "engine", nil, nil},
		{checkRule, "Every rule number is written as the code writes it, and stands in its tables or in the association's own book.", "", checkRules, nil},
		{checkRuling, "The engine rules on the play as the note does, under each of its codes in its season, unless the note departs.", "engine", nil, nil},
		{checkSeason, "The note's season is held for each of its codes.", "engine", nil, nil},
		{checkStatus, "A note that a published one supersedes says so in its status, and one that says so is superseded.", "", checkStatuses, nil},
		{checkSupersedes, "A note supersedes earlier notes of the book, and none in a circle.", "", checkChain, checkCircles},
		{checkUnique, "No two notes have one id.", "load", nil, nil},
		{checkWhitespace, "No stray blanks at the ends of lines, no carriage returns, and a line end at the end of the file.", "", checkBlanks, nil},
	}
}

// Checks lists the ids of the checks with what each of them holds to be right,
// sorted by id.
func Checks() [][2]string {
	var out [][2]string
	for _, c := range checks {
		out = append(out, [2]string{c.id, c.doc})
	}
	return out
}

func checkAttachments(c *checker, n *Note) []Finding {
	var out []Finding
	for i, p := range n.Attachments {
		dir, ok := c.book.files[p]
		switch {
		case !ok:
			out = append(out, n.finding(checkAttachment, indexed("attachments", i), "there is no file "+p, "put it there, or mend the path; it is relative to the note"))
		case dir:
			out = append(out, n.finding(checkAttachment, indexed("attachments", i), p+" is a folder", "name the files in it"))
		}
	}
	return out
}

func checkExpiry(c *checker, n *Note) []Finding {
	if n.Status != Published || c.options.Today.IsZero() || !n.expired(c.options.Today) {
		return nil
	}
	return []Finding{n.finding(checkExpired, "expires", "the note expired on "+n.Expires.String()+" and is still published", "withdraw it, supersede it or give it a later day")}
}

func checkIssue(_ *checker, n *Note) []Finding {
	switch {
	case n.Status == Draft && !n.Issued.IsZero():
		return []Finding{n.finding(checkIssued, "issued", "a draft has not been issued", "take the day out, or publish it")}
	case n.Status != Draft && n.Issued.IsZero():
		return []Finding{n.finding(checkIssued, "status", "a note that is "+n.Status.String()+" needs its day of issue", "add issued: year-month-day")}
	}
	return nil
}

// checkStatuses holds a note's status against the notes that supersede it.
func checkStatuses(c *checker, n *Note) []Finding {
	var by *Note // the published note, or one that was, that supersedes it
	draft := false
	for _, s := range c.book.successors[n.ID] {
		switch s.Status {
		case Draft:
			draft = true
		case Published, Superseded:
			by = s
		case Withdrawn:
		default:
			panic("casebook: a note without a status")
		}
	}
	switch {
	case by != nil && n.Status == Published:
		f := n.finding(checkStatus, "status", "it is superseded by "+by.ID+" and still published", "write superseded")
		f.fix = n.front.rewrite(n.front.find("status"), Superseded.String())
		f.Fixable = !f.fix.none()
		f.Related = []Place{{by.Path, by.front.line(by.front.find("supersedes")), "supersedes it"}}
		return []Finding{f}
	case by != nil && n.Status == Draft:
		return []Finding{n.finding(checkStatus, "status", "it is superseded by "+by.ID+" but was never published", "delete the draft, or take it out of "+by.ID)}
	case by == nil && n.Status == Superseded && draft:
		return []Finding{n.finding(checkStatus, "status", "what supersedes it is only a draft", "publish the draft, or keep this one published until then")}
	case by == nil && n.Status == Superseded && len(c.book.broken) == 0:
		return []Finding{n.finding(checkStatus, "status", "nothing supersedes it", "list its id under supersedes in the note that does, or write withdrawn")}
	}
	return nil
}

// checkChain holds what a note supersedes against the book.
func checkChain(c *checker, n *Note) []Finding {
	var out []Finding
	for i, id := range n.Supersedes {
		field := indexed("supersedes", i)
		old := c.book.byID[id]
		switch {
		case id == n.ID:
			out = append(out, n.finding(checkSupersedes, field, "the note supersedes itself", "name the earlier note"))
		case old == nil && !c.book.claimed[id]:
			out = append(out, n.finding(checkSupersedes, field, "there is no note "+id, "mend the id; a published note is never deleted, only superseded or withdrawn"))
		case old == nil: // its own file has a finding
		case n.Status != Draft && later(old, n) && !old.Issued.IsZero():
			f := n.finding(checkSupersedes, field, id+" is the later note", "mend the id or the day of issue")
			f.Related = []Place{{old.Path, old.front.line(old.front.find("issued")), "issued " + old.Issued.String()}}
			out = append(out, f)
		}
	}
	return out
}

// checkCircles reports each circle of supersession once, on its first note.
func checkCircles(c *checker) []Finding {
	var out []Finding
	done := map[string]bool{}
	for _, n := range c.book.notes {
		if circle := c.circle(n, nil, done); circle != nil {
			first := slices.Index(circle, slices.Min(circle))
			circle = append(circle[first:], circle[:first]...)
			way := circle[0]
			for _, id := range append(circle[1:], circle[0]) {
				way += " → " + id
			}
			out = append(out, c.book.byID[circle[0]].finding(checkSupersedes, "supersedes", "notes supersede each other in a circle: "+way, "take the earliest note's supersedes out"))
		}
	}
	return out
}

// circle follows what a note supersedes, and gives the ids of a circle.
func (c *checker) circle(n *Note, way []string, done map[string]bool) []string {
	if i := slices.Index(way, n.ID); i >= 0 {
		return slices.Clone(way[i:])
	}
	if done[n.ID] {
		return nil
	}
	way = append(way, n.ID)
	for _, id := range n.Supersedes {
		if next := c.book.byID[id]; next != nil && id != n.ID {
			if found := c.circle(next, way, done); found != nil {
				done[n.ID] = true
				return found
			}
		}
	}
	done[n.ID] = true
	return nil
}
