package index

import (
	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/analysis/analyzer/custom"
	"github.com/blevesearch/bleve/v2/analysis/lang/en"
	"github.com/blevesearch/bleve/v2/analysis/token/hierarchy"
	"github.com/blevesearch/bleve/v2/analysis/token/lowercase"
	"github.com/blevesearch/bleve/v2/analysis/token/porter"
	"github.com/blevesearch/bleve/v2/analysis/token/stop"
	"github.com/blevesearch/bleve/v2/analysis/tokenizer/single"
	"github.com/blevesearch/bleve/v2/analysis/tokenizer/unicode"
	"github.com/blevesearch/bleve/v2/analysis/tokenmap"
	"github.com/blevesearch/bleve/v2/mapping"
)

// The analyzers.
const (
	// ruling reads words: split at word borders, lower case, possessives off, Porter
	// stems ("blocks", "blocked" and "blocking" are one word). The stock English analyzer
	// would also drop "not", "before", "after", "under", "off", "out", "over", "same",
	// "no": those words carry rulings, so our stop list is articles and forms of "be" alone.
	ruling = "ruling"
	// rulePath reads one rule number, already normalised, and emits it and all that it is
	// part of: 9.2.3 gives 9, 9.2 and 9.2.3, so that a term query for 9.2 finds 9.2.3 but
	// never 9.20, which a prefix query would.
	rulePath = "rule-path"
	// exact takes a value as it stands: codes, statuses, signature terms, lexicon groups.
	exact = "keyword"
)

const (
	articles     = "articles"
	articlesStop = "stop-articles"
	ruleParts    = "rule-parts"
)

// unread are the only words that the index drops: they never tell two rulings apart.
var unread = []any{"a", "am", "an", "are", "be", "been", "is", "the", "was", "were"}

// The fields of a document.
const (
	fieldHead     = "head"     // title, topics and play: what the note is about
	fieldText     = "text"     // the association's own words, without markup
	fieldConcepts = "concepts" // lexicon groups that head or text mention
	fieldSign     = "sign"     // the signature of play and ruling
	fieldRules    = "rules"    // rule numbers, normalised
	fieldCodes    = "codes"    // the codes it is about
	fieldSeason   = "season"   // first year of its season
	fieldStatus   = "status"   // as written in the note
	fieldSigns    = "signs"    // the signature once more, in one text; stored, never searched
	fieldRecord   = "record"   // all that a hit shows, as JSON; stored, never searched
)

// newMapping is the mapping as code. A change here changes the stamp, and with it every
// index on disk is rebuilt at its next use.
func newMapping() (*mapping.IndexMappingImpl, error) {
	m := bleve.NewIndexMapping()
	// BM25 levels off with repetition: a note that says "setter" ten times is not ten
	// times as much about setters.
	m.ScoringModel = "bm25"
	steps := []func() error{
		func() error {
			return m.AddCustomTokenMap(articles, map[string]any{"type": tokenmap.Name, "tokens": unread})
		},
		func() error {
			return m.AddCustomTokenFilter(articlesStop, map[string]any{"type": stop.Name, "stop_token_map": articles})
		},
		func() error {
			// Without max as a float64 the filter asks for a slice of the largest int
			// there is and ends the process.
			return m.AddCustomTokenFilter(ruleParts, map[string]any{"type": hierarchy.Name, "delimiter": ".", "max": 8.0})
		},
		func() error {
			return m.AddCustomAnalyzer(ruling, map[string]any{"type": custom.Name, "tokenizer": unicode.Name,
				"token_filters": []string{en.PossessiveName, lowercase.Name, articlesStop, porter.Name}})
		},
		func() error {
			return m.AddCustomAnalyzer(rulePath, map[string]any{"type": custom.Name, "tokenizer": single.Name,
				"token_filters": []string{lowercase.Name, ruleParts}})
		},
	}
	for _, step := range steps {
		if err := step(); err != nil {
			return nil, err
		}
	}
	// Nothing is indexed that is not listed: a new field of a note is a decision.
	d := bleve.NewDocumentStaticMapping()
	d.AddFieldMappingsAt(fieldHead, term(ruling))
	d.AddFieldMappingsAt(fieldText, term(ruling))
	d.AddFieldMappingsAt(fieldConcepts, term(exact))
	d.AddFieldMappingsAt(fieldSign, term(exact))
	d.AddFieldMappingsAt(fieldRules, term(rulePath))
	d.AddFieldMappingsAt(fieldCodes, term(exact))
	d.AddFieldMappingsAt(fieldStatus, term(exact))
	season := bleve.NewNumericFieldMapping()
	season.IncludeInAll, season.DocValues = false, false
	d.AddFieldMappingsAt(fieldSeason, season)
	stored := term(exact)
	stored.Index, stored.Store = false, true
	d.AddFieldMappingsAt(fieldSigns, stored)
	d.AddFieldMappingsAt(fieldRecord, stored)
	m.DefaultMapping = d
	return m, m.Validate()
}

// term maps a field that is searched and not stored. The places of words are left out: a
// hit's excerpt is cut and marked from its record, and phrases are found through the lexicon.
func term(analyzer string) *mapping.FieldMapping {
	f := bleve.NewTextFieldMapping()
	f.Analyzer = analyzer
	f.Store, f.IncludeInAll, f.IncludeTermVectors, f.DocValues = false, false, false, false
	return f
}
