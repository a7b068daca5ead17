package casebook

import (
	"slices"
	"strings"

	"example.org/netpost/engine/code"

	"go.yaml.in/yaml/v3"
)

// BookFile is the name of the association's own book in the folder.
const BookFile = "book.yaml"

// Association is the association's own book: who it is, what it adopted, and
// its own rule numbers. It is read from BookFile:
//
//	name: Harbour Lakes Officials' Association
//	handbook: Harbour Lakes handbook
//	rules:
//	  - {number: HL-1, title: Ground rules for low ceilings}
//	adoptions:
//	  - param: timeouts.length
//	    code: scholastic
//	    value: 75
//	    rule: HL-3
//	    since: 2025-26
//	    reason: Adopted by the board for the home gyms.
type Association struct {
	Name      string
	Handbook  string // what its book is called when it is cited
	Rules     []OwnRule
	Adoptions []Adoption
}

// OwnRule is one rule of the association's own book.
type OwnRule struct {
	Number string // begins with letters, so that no code has it: HL-3
	Title  string
}

// Adoption is one value that the association adopted, from a season on.
type Adoption struct {
	code.Overlay
	Since code.Season // zero: in every season
}

// Overlays are the adoptions in force in a season, for code.Book.With. Season
// zero is the newest.
func (a *Association) Overlays(s code.Season) []code.Overlay {
	if a == nil {
		return nil
	}
	var out []code.Overlay
	for _, ad := range a.Adoptions {
		if s == 0 || ad.Since <= s {
			out = append(out, ad.Overlay)
		}
	}
	return out
}

// Owns reports whether a rule number is one of the association's own.
func (a *Association) Owns(number string) bool {
	return a != nil && slices.ContainsFunc(a.Rules, func(r OwnRule) bool { return r.Number == number })
}

// associationFields is the table of the fields of BookFile, in their order.
var associationFields = []Field{
	{"name", "The association's name.", true,
		func(r *reader, n *yaml.Node) { r.assoc.Name = r.text("name", n) }},
	{"handbook", "What its own book is called when it is cited.", false,
		func(r *reader, n *yaml.Node) { r.assoc.Handbook = r.text("handbook", n) }},
	{"rules", "Its own rules, each with number and title.", false, (*reader).ownRules},
	{"adoptions", "What it adopted, each with param, code, value or rule, reason and, if it began later, since.", false, (*reader).adoptions},
}

// ParseAssociation reads the text of a BookFile. It is nil when there are
// findings.
func ParseAssociation(path, text string) (*Association, []Finding) {
	r := &reader{path: path, assoc: &Association{}, check: checkBook}
	var err error
	r.front, err = parseFront(text, 0, len(text))
	if err != nil {
		f := frontFinding(path, text, err)
		f.Check = checkBook
		return nil, []Finding{f}
	}
	r.mapping("", r.front.root, associationFields)
	if len(r.found) > 0 {
		sortFindings(r.found)
		return nil, r.found
	}
	return r.assoc, nil
}

// members reads a list of mappings; each gets the index in its field's path.
func (r *reader) members(field string, n *yaml.Node, each func(prefix string, m *yaml.Node)) {
	if n.Kind != yaml.SequenceNode {
		r.report(field, n, "this must be a list, not a "+kindWord(n), "begin each member with a dash", fix{})
		return
	}
	for i, m := range n.Content {
		sub := indexed(field, i)
		if m.Kind != yaml.MappingNode {
			r.report(sub, m, "this must be a set of fields, not a "+kindWord(m), "write each as key: value", fix{})
			continue
		}
		each(sub+".", m)
	}
}

var ownForm = whenUsed(`^[A-Z][A-Za-z]*-?\d+([.-]\d+)*[a-z]?$`)

func (r *reader) ownRules(n *yaml.Node) {
	r.members("rules", n, func(prefix string, m *yaml.Node) {
		var own OwnRule
		r.mapping(prefix, m, []Field{
			{"number", "Letters and a number, such as HL-3.", true, func(r *reader, n *yaml.Node) {
				own.Number = r.text(prefix+"number", n)
				switch {
				case own.Number == "":
				case !ownForm().MatchString(own.Number):
					r.report(prefix+"number", n, quote(own.Number)+" is not a number of your own", "begin it with letters, such as HL-3, so that no code has it too", fix{})
				case r.assoc.Owns(own.Number):
					r.report(prefix+"number", n, own.Number+" stands twice", "give each rule a number of its own", fix{})
				}
			}},
			{"title", "One line.", true, func(r *reader, n *yaml.Node) { own.Title = r.text(prefix+"title", n) }},
		})
		r.assoc.Rules = append(r.assoc.Rules, own)
	})
}

func (r *reader) adoptions(n *yaml.Node) {
	r.members("adoptions", n, func(prefix string, m *yaml.Node) {
		var a Adoption
		before := len(r.found)
		r.mapping(prefix, m, []Field{
			{"param", "A parameter of the codes.", true, func(r *reader, n *yaml.Node) {
				a.Param = code.Param(r.text(prefix+"param", n))
			}},
			{"code", "The code it is for. Left out: every code.", false, func(r *reader, n *yaml.Node) {
				a.Code = code.Code(r.code(prefix+"code", n))
			}},
			{"value", "The value adopted.", false, func(r *reader, n *yaml.Node) {
				if n.Kind == yaml.ScalarNode { // a number needs no quotes here
					a.Value = n.Value
				} else {
					r.report(prefix+"value", n, "this must be a single value, not a "+kindWord(n), "write the value's id or number", fix{})
				}
			}},
			{"rule", "The number in its own book.", false, func(r *reader, n *yaml.Node) {
				a.Rule = r.text(prefix+"rule", n)
			}},
			{"since", "The first season it is in force.", false, func(r *reader, n *yaml.Node) {
				a.Since = r.season(prefix+"since", n)
			}},
			{"reason", "Why, or by what decision.", true, func(r *reader, n *yaml.Node) {
				a.Reason = r.text(prefix+"reason", n)
			}},
		})
		if len(r.found) > before {
			return
		}
		if err := try(a.Overlay); err != nil {
			r.report(strings.TrimSuffix(prefix, "."), m, strings.TrimPrefix(err.Error(), "overlay 1: "), "mend the adoption", fix{})
			return
		}
		r.assoc.Adoptions = append(r.assoc.Adoptions, a)
	})
}

// try lays one overlay over the newest book that it can be for.
func try(o code.Overlay) error {
	c := o.Code
	if c == "" {
		c = code.All()[0]
	}
	b, err := code.Open(c, 0)
	if err != nil {
		return err
	}
	_, err = b.With(o)
	return err
}
