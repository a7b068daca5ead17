package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/play"
)

// sides settles whose act it is and what the sides go by.
func (r *deadReader) sides() {
	own := sideRef{}
	for i, t := range r.toks {
		if t.form != "<side>" {
			continue
		}
		r.used[i] = true
		if t.side.fam != relative && !t.official() && (own.fam == noFamily || i <= r.m.at) {
			own = t.side
		}
		if t.side == opp && i > r.m.at && r.m.kind == deadball.CoachOnCourt {
			r.tell(deadball.OwnSide, play.No)
		}
	}
	r.name(own)
}

// name gives the act the names of the side whose it is, and of the other.
func (r *deadReader) name(own sideRef) {
	pairs := map[family][2]string{usThem: {"us", "them"}, serveRec: {"serving", "receiving"}, homeAway: {"home", "visitors"}, colours: r.s.colourNames()}
	r.own = own
	if own.fam == letters && own.n == 1 {
		r.act.By = play.B
	}
	if n, ok := pairs[own.fam]; ok {
		r.act.Names[play.A], r.act.Names[play.B] = nameList(n[own.n]), nameList(n[1-own.n])
	}
}

func nameList(s string) []string {
	if s == "" {
		return nil
	}
	return []string{s}
}

// whose compares the side that a token is said of with the side whose act it
// is: the side named last before it in its clause. Same is also said where no
// side is named.
type whose int

const (
	whoseSame whose = iota
	whoseOther
	whoseUnknown
)

func (r *deadReader) whose(at int) whose {
	for i := at; i >= 0 && r.in[i] == r.in[at]; i-- {
		t := r.toks[i]
		switch {
		case t.form != "<side>" || t.side == own || t.official():
			continue
		case t.side == them && r.own.fam != usThem && r.one(): // a pronoun of the one side named
			continue
		case t.side == r.own:
			return whoseSame
		case t.side == opp, t.side.fam == r.own.fam:
			return whoseOther
		}
		return whoseUnknown
	}
	return whoseSame
}

// them is "they", which may be a pronoun of a side that goes by another name.
var them = sideRef{usThem, 1}

// official reports whether a name of a side is the crew's own: my whistle.
func (t token) official() bool { return strings.EqualFold(t.raw, "my") }

// one reports whether the text names one side alone, pronouns apart.
func (r *deadReader) one() bool {
	for _, t := range r.toks {
		if t.form == "<side>" && !t.official() && t.side != them && t.side != own && t.side != r.own {
			return false
		}
	}
	return true
}

// teams are the facts of what a team has had: said of the other team they mean
// nothing for the act.
var teams = []play.FactID{deadball.CardBefore, deadball.ChargedDelay, deadball.DelayBefore, deadball.DelaySet, deadball.ImproperBefore, deadball.Substituted,
	deadball.SubstitutionsLeft, deadball.TeamWarned, deadball.TimeOutsLeft}

func (r *deadReader) has(f play.FactID) bool { return slices.Contains(r.row.Facts, f) }

// tell tells a fact that the act can have and that was not told yet.
func (r *deadReader) tell(f play.FactID, v play.Value) {
	if r.has(f) && r.act.Get(play.Key{Fact: f}) == play.Unknown {
		r.act = r.act.With(f, v)
	}
}

// facts tells the facts that the words state. What two phrases tell
// differently is not told, and their words stay unread.
func (r *deadReader) facts() {
	told := map[play.FactID]play.Value{}
	at := map[play.FactID][]sign{}
	for i, g := range r.signs {
		f, v, ok := strings.Cut(g.says, "=")
		if doubt, is := strings.CutSuffix(g.says, "?"); is && r.has(play.FactID(doubt)) {
			r.act = r.act.WithVoid(play.FactID(doubt))
			r.use(g)
			continue
		}
		id := play.FactID(f)
		if ok && slices.Contains(deadPassed, passed{r.m.kind, id}) {
			r.use(g)
			continue
		}
		if !ok || !r.has(id) {
			continue
		}
		if w := r.whose(g.to - 1); w != whoseSame && slices.Contains(teams, id) {
			if w == whoseOther {
				r.use(g)
			}
			continue
		}
		value := play.Value(v)
		if n := r.negation(i); n >= 0 {
			fact, _ := deadball.FactByID(id)
			if value = other(fact, value); value == play.Unknown {
				continue
			}
			r.use(r.signs[n])
		}
		if was, is := told[id]; is && was != value {
			if id == deadball.Found && (was == deadball.AfterContact || value == deadball.AfterContact) && was != deadball.BeforeServe && value != deadball.BeforeServe {
				told[id] = deadball.AfterContact // authorised, then served
				r.use(g)
				continue
			}
			told[id] = play.Unknown
			for _, o := range append(at[id], g) {
				r.unuse(o)
			}
			continue
		}
		told[id] = value
		at[id] = append(at[id], g)
		r.use(g)
	}
	for _, f := range deadball.Facts() {
		if v := told[f.ID]; v != play.Unknown {
			r.tell(f.ID, v)
		}
	}
}

// negation is the sign right before a sign that denies it, or -1.
func (r *deadReader) negation(i int) int {
	for j := i - 1; j >= 0; j-- {
		if r.signs[j].to == r.signs[i].from && r.signs[j].says == "not" {
			return j
		}
		if r.signs[j].from < r.signs[i].from {
			break
		}
	}
	return -1
}
