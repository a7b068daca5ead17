package index

import (
	"slices"
	"strings"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/search/query"

	"example.org/netpost/casebook"
	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
)

// DefaultLimit is how many hits a search gives when the query names no limit: what fits
// under a ruling.
const DefaultLimit = 3

// Query is what to look for. Any field may be its zero value; an empty query finds nothing.
type Query struct {
	// Words are the asker's own. Rule numbers in them count as Rules. They are never read
	// as a query language: any text will do.
	Words string
	// Reading is what the notation made of the words: the play, what is asked about it.
	// A decision's subject stands in for a play that it lacks.
	Reading notation.Reading
	// Decisions are how the engine ruled on the play, under each code that was asked for.
	Decisions []engine.Decision
	// Rules are rule numbers in any book's way of writing, found with all that is part
	// of them.
	Rules []string

	// Code keeps only notes about one code; empty keeps all.
	Code code.Code
	// Season is the season asked about: notes written for a later one are left out, the
	// season's own are preferred, and a note counts as superseded only if its successor
	// was there by then. Zero asks about now: all notes, successors first.
	Season code.Season
	// On leaves out notes that have expired by that day, or were issued after it. Zero
	// leaves dates out of it.
	On casebook.Date
	// All looks through drafts and withdrawn notes too, and gives superseded notes as
	// they are.
	All bool
	// Limit is how many hits to give, DefaultLimit for zero.
	Limit int
}

// weights of the signs in a search, by class. What decides a play outweighs what merely
// happens in it.
var weights = map[string]float64{
	signAsked:   0.3,
	signEvent:   0.3,
	signFact:    0.5,
	signFault:   1.0,
	signMay:     0.3,
	signMeasure: 1.0,
	signOutcome: 0.3,
	signRaised:  0.6,
	signThen:    0.4,
	signTopic:   0.8,
	signTurns:   0.4,
	signWho:     0.4,
	signWhose:   0.5,
}

// weights of everything else.
const (
	weightHead      = 1.0  // a word in title, topics or play
	weightText      = 0.5  // a word in the body
	weightConcept   = 1.2  // a lexicon group
	weightRule      = 2.5  // the rule asked for, or part of it
	weightParent    = 0.5  // the rule that it is part of
	weightCited     = 0.5  // a rule that the decision rests on, or part of it
	weightPlay      = 1.0  // a play that is the same in all, beside the words that match best
	weightPart      = 0.5  // times that, of a play that was not read whole
	weightOtherwise = 0.3  // taken from a play, for a fact that is told otherwise
	weightLittle    = 2.0  // added to what two plays tell together: little that is the same is not alike
	weightSeason    = 0.05 // a note of the very season asked about
)

// maxWords bounds the distinct words that are looked up; a long story repeats itself.
const maxWords = 48

// asked is a query taken apart: what it looks for, in the index's own terms.
type asked struct {
	Query
	stems    []string // of the words, once each, in order
	concepts []string // lexicon groups that the words mention
	signs    []sign
	rules    []string // normalised: named in the query or in its words
	cited    []string // normalised: the decision rests on them
	common   map[string]bool
}

// take takes a query apart.
func (l *lexicon) take(q Query) asked {
	a := asked{Query: q, common: l.common}
	if a.Limit <= 0 {
		a.Limit = DefaultLimit
	}
	a.Words = strings.ToValidUTF8(q.Words, " ")
	for _, s := range l.stems(a.Words) {
		if len(a.stems) == maxWords {
			break
		}
		if !slices.Contains(a.stems, s) {
			a.stems = append(a.stems, s)
		}
	}
	a.concepts = l.concepts(a.Words)
	for _, d := range q.Decisions {
		for _, r := range rulesOf(d) {
			if !slices.Contains(a.cited, r) {
				a.cited = append(a.cited, r)
			}
		}
	}
	a.signs = signature(q.Reading, q.Decisions...)
	for _, r := range append(rulesIn(a.Words), q.Rules...) {
		if r = NormalRule(r); r != "" && !slices.Contains(a.rules, r) {
			a.rules = append(a.rules, r)
		}
	}
	return a
}

// How many documents a search looks at for the terms of a field, a document counting once
// for each. A small casebook is searched for all of them.
const (
	budgetHead     = 3000
	budgetText     = 3000
	budgetConcepts = 2000
	budgetSigns    = 2000
)

// rarest chooses among terms of a field those that stand in the fewest documents, within a
// budget.
type rarest func(field string, terms []string, budget uint64) []string

// byWords builds the search for words, lexicon groups and rule numbers; nil when there are
// none. Any of the clauses may match and each adds its weight; the filters take no part in
// the score.
func (a asked) byWords(rarest rarest) query.Query {
	var c clauses
	var stems []string
	for _, s := range a.stems {
		if !a.common[s] {
			stems = append(stems, s)
		}
	}
	if len(stems) == 0 {
		stems = a.stems
	}
	for _, s := range rarest(fieldHead, stems, budgetHead) {
		c.add(fieldHead, s, weightHead)
	}
	for _, s := range rarest(fieldText, stems, budgetText) {
		c.add(fieldText, s, weightText)
	}
	for _, s := range rarest(fieldConcepts, a.concepts, budgetConcepts) {
		c.add(fieldConcepts, s, weightConcept)
	}
	for _, r := range a.rules {
		for i, p := range parents(r) {
			w := weightParent
			if i == 0 {
				w = weightRule
			}
			c.add(fieldRules, p, w)
		}
	}
	return a.search(c)
}

// byPlay builds the search for the play and its ruling; nil when there are none. It only
// finds notes to compare the play with, so the signs that few notes have will do.
func (a asked) byPlay(rarest rarest) query.Query {
	var c clauses
	var signs []string
	for _, s := range a.signs {
		signs = append(signs, string(s))
	}
	for _, s := range rarest(fieldSign, signs, budgetSigns) {
		c.add(fieldSign, s, weights[sign(s).class()])
	}
	for _, r := range a.cited {
		c.add(fieldRules, r, weightCited)
	}
	return a.search(c)
}

// clauses are terms any of which may match.
type clauses []query.Query

func (c *clauses) add(field, term string, boost float64) {
	q := bleve.NewTermQuery(term)
	q.SetField(field)
	q.SetBoost(boost)
	*c = append(*c, q)
}

// search is the search for any of the clauses among the notes that may be shown.
func (a asked) search(c clauses) query.Query {
	if len(c) == 0 {
		return nil
	}
	b := bleve.NewBooleanQuery()
	b.AddMust(bleve.NewDisjunctionQuery(c...))
	b.AddFilter(a.filter())
	return b
}

// filter keeps the notes that may be shown at all.
func (a asked) filter() query.Query {
	var keep []query.Query
	if a.Code != "" {
		q := bleve.NewTermQuery(string(a.Code))
		q.SetField(fieldCodes)
		keep = append(keep, q)
	}
	if !a.All {
		var either []query.Query
		for _, s := range []casebook.Status{casebook.Published, casebook.Superseded} {
			q := bleve.NewTermQuery(s.String())
			q.SetField(fieldStatus)
			either = append(either, q)
		}
		keep = append(keep, bleve.NewDisjunctionQuery(either...))
	}
	if a.Season != 0 {
		keep = append(keep, seasonQuery(0, a.Season))
	}
	if len(keep) == 0 {
		return bleve.NewMatchAllQuery()
	}
	return bleve.NewConjunctionQuery(keep...)
}

// seasonQuery finds notes of the seasons from first to last, both included.
func seasonQuery(first, last code.Season) *query.NumericRangeQuery {
	lo, hi, yes := float64(first), float64(last), true
	q := bleve.NewNumericRangeInclusiveQuery(&lo, &hi, &yes, &yes)
	q.SetField(fieldSeason)
	return q
}
