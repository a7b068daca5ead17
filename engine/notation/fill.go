package notation

import (
	"fmt"
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// A FillError says what of an answer was not understood, and the answers that
// the question has.
type FillError struct {
	Words   string   // the answer, or the part of it that was not understood
	Why     string   // what is wrong with it
	Ask     string   // the question
	Choices []string // its answers
}

func (e *FillError) Error() string {
	return fmt.Sprintf("%q: %s; %s Answer with one of: %s", e.Words, e.Why, e.Ask, strings.Join(e.Choices, "; "))
}

// Fill is the play with an answer to the question for the fact asked: a value's
// id, its words or a short way to say it, a yes or no where the question has
// them, or a clause such as "she was front row". Other facts that the answer
// tells are filled too, where only one thing of the play can have them. It
// A word that was misspelt is mended as Respell does. It
// fails with a *FillError, and tells nothing, where a word of the answer has
// no part in what was understood, where the answer leaves the fact open or
// contradicts itself or what was told before of another fact.
func Fill(p *play.Rally, asked play.Key, words string) (*play.Rally, error) {
	f, ok := play.FactByID(asked.Fact)
	if !ok {
		return nil, fmt.Errorf("fact %q: there is no such fact", asked.Fact)
	}
	if err := p.With(asked, f.Values[0].Value).Check(); err != nil {
		return nil, err
	}
	a := &filling{p: p, asked: asked, fact: f, keys: factsOf(p), told: map[play.Key]play.Value{}}
	if v := a.exact(words); v != play.Unknown {
		return telling(p, asked, v), nil
	}
	err := a.fill(words)
	if err == nil {
		return a.p, nil
	}
	if mended, changed := Respell(words); changed != nil {
		b := &filling{p: p, asked: asked, fact: f, keys: a.keys, told: map[play.Key]play.Value{}}
		if v := b.exact(mended); v != play.Unknown {
			return telling(p, asked, v), nil
		}
		if b.fill(mended) == nil {
			return b.p, nil
		}
	}
	return nil, err
}

// filling is one answer on its way into the play.
type filling struct {
	p     *play.Rally
	asked play.Key
	fact  play.Fact
	keys  []play.Key // all that the play can have
	told  map[play.Key]play.Value
}

func (a *filling) fail(words, why string) error {
	return &FillError{Words: words, Why: why, Ask: Question(a.p, a.asked), Choices: Choices(a.p, a.asked)}
}

// exact is the value whose id, label or clause the answer is.
func (a *filling) exact(words string) play.Value {
	words = plainly(words)
	for i, c := range a.fact.Values {
		for _, s := range []string{string(c.Value), Choices(a.p, a.asked)[i], Clause(a.p, a.asked, c.Value)} {
			if plainly(s) == words {
				return c.Value
			}
		}
	}
	return play.Unknown
}

func plainly(s string) string {
	return strings.ToLower(strings.Join(strings.Fields(strings.TrimRight(strings.ReplaceAll(s, "’", "'"), ".!? ")), " "))
}

// tell puts one fact into the play.
func (a *filling) tell(k play.Key, v play.Value) {
	a.told[k] = v
	a.p = telling(a.p, k, v)
}

// fill reads an answer clause by clause. What it cannot place is an error.
func (a *filling) fill(words string) error {
	clauses := hear(a.p, words)
	if len(clauses) == 0 {
		return a.fail(words, "there is no answer in it")
	}
	bare := 0 // a yes or no: 1, -1
	for i, us := range clauses {
		if said := openWord(us); said != "" {
			return a.fail(said, "that leaves it open")
		}
		if n := yesNoWord(us); n != 0 && i == 0 {
			if bare = n; len(us) == 1 {
				continue
			}
		}
		if err := a.clause(us); err != nil {
			return err
		}
	}
	if bare != 0 {
		v := polarValue(a.fact, bare > 0)
		switch said, ok := a.told[a.asked]; {
		case ok && v != play.Unknown && said != v:
			return a.fail(words, "it says two things")
		case v != play.Unknown:
			a.tell(a.asked, v)
		case !ok:
			return a.fail(words, "the question is not one of yes and no")
		}
	}
	if _, ok := a.told[a.asked]; !ok {
		return a.fail(words, "it does not answer the question")
	}
	return nil
}

// openWord is a word that leaves the answer open, if there is one.
func openWord(us []unit) string {
	for _, u := range us {
		switch u.form {
		case "maybe", "perhaps", "probably", "possibly", "unsure", "unknown", "dunno", "idea", "know", "sure", "guess", "unclear", "either", "or", "if":
			return u.form
		}
	}
	return ""
}

// yesNoWord is 1 or -1 where a clause opens with yes or no, and marks it used
// unless the no begins a phrase ("no contact left").
func yesNoWord(us []unit) int {
	n := 0
	switch us[0].form {
	case "yes", "y", "yeah", "yep", "yup":
		n = 1
	case "no", "n", "nope", "nah":
		n = -1
	}
	if n != 0 && len(us) > 1 {
		for _, s := range sayings() {
			if at, _ := find(us, s.units); at == 0 {
				return 0
			}
		}
	}
	if n != 0 {
		us[0].used = true
	}
	return n
}

// A claim is one value that a clause gives for a fact, before it is known of
// which thing.
type claim struct {
	fact  play.Fact
	value play.Value
	side  side
	words string
}

// clause tells what one clause of the answer says.
func (a *filling) clause(us []unit) error {
	text := spoken(us)
	if k, v := a.spoken(text); v != play.Unknown {
		return a.claimed(k, v, text)
	}
	if a.fact.About == play.OfPair {
		if v := a.order(us); v != play.Unknown {
			return a.leftovers(us, a.claimed(a.asked, v, text))
		}
	}
	claims := a.claims(us)
	if a.asked.Fact == play.Used || a.asked.Fact == play.Spent {
		claims = append(claims, a.counted(us)...)
	}
	who := a.actors(us)
	nots := 0
	for i, u := range us {
		if !u.used && (u.form == "not" || u.form == "never") {
			us[i].used = true
			nots++
		}
	}
	if err := a.leftovers(us, nil); err != nil {
		return err
	}
	switch {
	case len(claims) == 0:
		return a.fail(text, "nothing in it is an answer")
	case nots > 1 || nots == 1 && len(claims) > 1:
		return a.fail(text, "it is not plain what is denied")
	}
	for _, c := range claims {
		k, err := a.place(c, who)
		if err != nil {
			return err
		}
		v := c.value
		if v == play.Unknown {
			v = a.sideValue(k, c.side)
		}
		if nots == 1 {
			v = denied(c.fact, v)
		}
		if v == play.Unknown {
			return a.fail(c.words, "it is not plain which value that is")
		}
		if err := a.claimed(k, v, c.words); err != nil {
			return err
		}
	}
	return nil
}

// counted reads the side of "they had used two": contacts are counted of the
// side that has the ball.
func (a *filling) counted(us []unit) []claim {
	has, _ := play.FactByID(play.Has)
	for i, u := range us {
		if !u.used && (u.side == sideA || u.side == sideB) {
			us[i].used = true
			return []claim{{fact: has, side: u.side, words: u.form}}
		}
	}
	return nil
}

// claimed tells a fact, unless it was told otherwise.
func (a *filling) claimed(k play.Key, v play.Value, words string) error {
	if was, ok := a.told[k]; ok && was != v {
		return a.fail(words, "it says two things")
	}
	if was := a.p.Get(k); k != a.asked && was != play.Unknown && was != v {
		return a.fail(words, fmt.Sprintf("it was told before that %s", Clause(a.p, k, was)))
	}
	a.tell(k, v)
	return nil
}

// leftovers is an error for the first words of weight that had no part.
func (a *filling) leftovers(us []unit, err error) error {
	if err != nil {
		return err
	}
	var left []string
	for _, u := range us {
		if !u.used && !slices.Contains(weightless, u.form) {
			left = append(left, u.form)
		}
	}
	if len(left) > 0 {
		return a.fail(strings.Join(left, " "), "that was not understood")
	}
	return nil
}

// weightless are the words that an answer may have beside a phrase. Sorted.
var weightless = []string{
	"actually", "am", "at", "ball", "been", "believe", "clearly", "contact", "contacted", "definitely", "did", "had", "has",
	"have", "he", "him", "hit", "i", "is", "it", "its", "jumped", "just", "of", "off", "ok", "on", "player", "really", "say", "she",
	"so", "still", "then", "there", "think", "time", "to", "took", "touch", "touched", "used", "was", "were", "when", "with", "would",
}

func spoken(us []unit) string {
	var s []string
	for _, u := range us {
		s = append(s, u.form)
	}
	return strings.Join(s, " ")
}

// spoken finds the fact whose whole clause was said.
func (a *filling) spoken(text string) (play.Key, play.Value) {
	if strings.Count(text, " ") < 2 {
		return play.Key{}, play.Unknown // a clause has a subject and more
	}
	last := text[strings.LastIndexByte(text, ' ')+1:]
	for _, k := range a.keys {
		f, _ := play.FactByID(k.Fact)
		for _, c := range f.Values {
			s := Clause(a.p, k, c.Value)
			// Cutting into units is slow: most clauses end otherwise.
			if strings.HasSuffix(s, last) && strings.Join(units(s), " ") == text {
				return k, c.Value
			}
		}
	}
	return play.Key{}, play.Unknown
}
