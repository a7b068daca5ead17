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
	signFault:   2.0,
	signMeasure: 2.0,
	signOutcome: 0.5,
	signRaised:  1.0,
	signThen:    0.6,
	signTopic:   1.0,
	signTurns:   1.0,
	signWho:     0.4,
	signWhose:   0.8,
}

// weights of everything else.
const (
	weightHead    = 1.0 // a word in title, topics or play
	weightText    = 0.5 // a word in the body
	weightConcept = 0.8 // a lexicon group
	weightRule    = 2.5 // the rule asked for, or part of it
	weightParent  = 0.5 // the rule that it is part of
	weightSeason  = 0.3 // the season asked about
	maxWords      = 48  // distinct words looked up; a long story repeats itself
)

// asked is a query taken apart: what it looks for, in the index's own terms.
type asked struct {
	Query
	stems    []string // of the words, once each, in order
	concepts []string // lexicon groups that the words mention
	signs    []sign
	rules    []string // normalised: named in the query or in its words
	cited    []string // normalised: the decision rests on them
}

// take takes a query apart.
func (l *lexicon) take(q Query) asked {
	a := asked{Query: q}
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

// empty reports whether there is nothing to look for.
func (a asked) empty() bool {
	return len(a.stems) == 0 && len(a.signs) == 0 && len(a.rules) == 0 && len(a.cited) == 0
}

// query builds the search: any of the clauses may match, each adds its weight, and the
// filters take no part in the score.
func (a asked) query() query.Query {
	var should []query.Query
	clause := func(field, term string, boost float64) {
		q := bleve.NewTermQuery(term)
		q.SetField(field)
		q.SetBoost(boost)
		should = append(should, q)
	}
	for _, s := range a.stems {
		clause(fieldHead, s, weightHead)
		clause(fieldText, s, weightText)
	}
	for _, c := range a.concepts {
		clause(fieldConcepts, c, weightConcept)
	}
	for _, s := range a.signs {
		clause(fieldSign, string(s), weights[s.class()])
	}
	for _, r := range slices.Concat(a.rules, a.cited) {
		for i, p := range parents(r) {
			w := weightParent
			if i == 0 {
				w = weightRule
			}
			clause(fieldRules, p, w)
		}
	}
	b := bleve.NewBooleanQuery()
	b.AddMust(bleve.NewDisjunctionQuery(should...))
	if a.Season != 0 {
		same := seasonQuery(a.Season, a.Season)
		same.SetBoost(weightSeason)
		b.AddShould(same)
	}
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
