package notation

import (
	"slices"
	"strings"
	"sync"

	"example.org/netpost/engine/play"
)

// An answer is a short way to say one value of a fact, understood only where
// that fact was asked for: "behind" says nothing by itself. The words of the
// fact table and the values' ids need no row. "{side}" is any word for a side;
// a row without a value takes it from that side.
type answer struct {
	fact  play.FactID
	value play.Value
	words string // ways to say it, parted by "|"
}

// answers is sorted by fact, then by the order of its values.
var answers = []answer{
	{play.Aids, play.Yes, "helped|helps|it helped"},
	{play.Aids, play.No, "no help"},
	{play.Attempts, play.One, "one action|one attempt|same action|one motion"},
	{play.Attempts, play.Two, "two actions|two attempts|separate|separate actions|two separate|two separate attempts"},
	{play.Ball, play.Live, "in play"},
	{play.BodyPart, play.Foot, "feet|shoe|heel|toe"},
	{play.BodyPart, play.Hand, "hands|finger|fingers|palm"},
	{play.BodyPart, play.OtherPart, "knee|hip|elbow|leg|arm|head|shoulder|bottom"},
	{play.Cause, play.ByPlayer, "moved into it|swung into it|own movement"},
	{play.Cause, play.ByBall, "ball drove it|ball drove the net|ball pushed the net|ball drove the net into her|ball drove the net into him"},
	{play.Cause, play.ByHair, "ponytail|loose hair|only hair"},
	{play.Certain, play.Yes, "certain|already over|already decided"},
	{play.Certain, play.No, "still open|not over"},
	{play.Completes, play.Yes, "crossed|crosses|it crossed|went over|goes over|came over|crossed the net"},
	{play.Completes, play.No, "stayed|stays|did not cross|does not cross|stayed on own side"},
	{play.CouldPlay, play.Yes, "could|could have|could have played it|playable"},
	{play.CouldPlay, play.No, "nobody could|nobody could have|nobody could have played it|nobody there|not playable"},
	{play.ErrorWhistle, play.Yes, "mistake|inadvertent|by mistake"},
	{play.ErrorWhistle, play.No, "right call|no mistake"},
	{play.Extent, play.Partly, "part of it|some of it|not wholly|not completely|not all of it|still on the line|on the line|above the line"},
	{play.Extent, play.WhollyOver, "completely|entirely|all of it|wholly over|completely over|completely beyond"},
	{play.Fingers, play.Yes, "fingers|overhand|with fingers|finger action|finger pads"},
	{play.Fingers, play.No, "forearms|forearm|fist|underhand|one hand|platform"},
	{play.Has, "", "{side}|{side} ball|{side} had it|{side} played it|{side} had the ball|{side} had last played it"},
	{play.Hazard, play.Yes, "dangerous|danger|hazard|unsafe"},
	{play.Hazard, play.No, "safe|no danger|harmless"},
	{play.Height, play.Above, "above|wholly above|completely above|entirely above|all above|ball wholly above|whole ball above|higher"},
	{play.Height, play.NotAbove, "below|not above|partly below|partly above|partially above|not wholly above|not completely above|not entirely above|not all above|below net height|lower"},
	{play.High, play.Yes, "higher|above 15 feet|more than 15 feet|over 15 feet"},
	{play.High, play.No, "lower|below 15 feet|less than 15 feet|under 15 feet"},
	{play.Hinders, play.Yes, "hindered|interfered|in the way|got in the way|interference"},
	{play.Hinders, play.No, "no interference|nobody hindered|out of the way"},
	{play.Holding, play.Yes, "still holding|holding|held on"},
	{play.Holding, play.No, "let go|released|no longer holding"},
	{play.How, play.Between, "between|between the antennas|inside the antennas|inside"},
	{play.How, play.OutsideAnt, "outside the antennas|over the antenna|outside"},
	{play.Inside, play.Yes, "inside"},
	{play.Lands, play.In, "good|inside|on the line|touched the line|clipped the line"},
	{play.Lands, play.Out, "outside|out of bounds|wide|long"},
	{play.IsLibero, play.Yes, "acting libero"},
	{play.Manner, play.Clean, "clean|legal|one touch|fine"},
	{play.Manner, play.Double, "double|doubled|double hit|double touch|two touches|more than one touch|hit it twice|touched it twice"},
	{play.Manner, play.Held, "caught|held|thrown|lift|lifted|carry|carried|threw it|caught it"},
	{play.Order, play.Before, "in that order"},
	{play.Order, play.Same, "same time|same moment|together|simultaneous|simultaneously|at once"},
	{play.Part, play.PartNet, "between the antennas|inside the antennas|tape|top tape|bottom of the net"},
	{play.Part, play.PartOutside, "outside the antennas|outside the antenna|outside|cable|rope"},
	{play.Place, "", "{side} side|wholly {side} side|wholly on {side} side|completely on {side} side|entirely on {side} side|all on {side} side|ball on {side} side|on {side} side"},
	{play.Place, play.Own, "own"},
	{play.Place, play.Plane, "in the plane|breaking the plane|partly over|partly in the plane|on the plane"},
	{play.Playing, play.Yes, "playing the ball|playing it|in the action"},
	{play.Playing, play.No, "not playing the ball|away from the ball|walking away|turned away|done playing"},
	{play.PursuitSpace, play.Yes, "allowed|pursuit allowed"},
	{play.ReachHeight, play.Above, "above|reached above|reaching above|higher"},
	{play.ReachHeight, play.Below, "below|not above|not reaching above|did not reach above|lower"},
	{play.Row, play.Front, "front|in the front|in the front row|position 2|position 3|position 4"},
	{play.Row, play.Back, "back|in the back|in the back row|position 1|position 5|position 6"},
	{play.Seen, play.Yes, "seen|saw it|somebody saw it|one of us saw it|r1 saw it|r2 saw it"},
	{play.Seen, play.No, "unseen|nobody saw it|nobody|nobody saw"},
	{play.Serving, "", "{side}|{side} served|{side} was serving|{side} were serving|{side} serve"},
	{play.Side, "", "{side}|{side} side|{side} court|on {side} court|over {side} side|above {side} side"},
	{play.Spent, play.Yes, "three used|all used|all three|all three used"},
	{play.Spent, play.No, "contacts left|one left|some left"},
	{play.Struck, play.Ceiling, "ceiling|roof|rafters|beam|light"},
	{play.Struck, play.Antenna, "antenna"},
	{play.Struck, play.LowObject, "basket|backboard|hoop|low obstruction|basketball hoop"},
	{play.Struck, play.Posts, "post|cable|pole"},
	{play.Struck, play.Official, "referee|ref|line judge|scorer"},
	{play.Struck, play.Bystander, "person|coach|spectator|fan|parent|sub"},
	{play.Struck, play.OtherThing, "object|bag|cart|ball cart|another ball|chair"},
	{play.Struck, play.NetBand, "tape"},
	{play.TakeOff, play.InFront, "in front|in front of the line|in front of the attack line|in front of the 10 foot line|on the line|touching the line|touched the line|foot on the line"},
	{play.TakeOff, play.Behind, "behind|behind the line|behind the attack line|behind the 10 foot line|behind the 3 meter line|both feet behind"},
	{play.Together, play.Yes, "same block|together|close|beside"},
	{play.Together, play.No, "apart|not close|separate"},
	{play.Used, play.Zero, "none|zero|nothing"},
	{play.Used, play.N1, "one|one used|one contact|one touch"},
	{play.Used, play.N2, "two|two used|two contacts|two touches"},
	{play.Used, play.N3, "three|three used|three contacts|three touches|all three"},
	{play.What, play.Teammate, "teammate|another player"},
	{play.What, play.Structure, "structure|post|chair|bench|table|stand|pole|padding"},
	{play.Where, play.OnCourt, "court|on the court|in the court"},
	{play.Where, play.OffCourt, "outside|off the court|free zone|in the free zone"},
	{play.Wholly, play.Yes, "all the way|fully|entirely|all of it"},
	{play.Wholly, play.No, "not yet|not fully|partly|not all the way|not all of it"},
}

// polar are the facts whose question can be answered with yes, though their
// values are others, with what yes means.
var polar = []struct {
	fact play.FactID
	yes  play.Value
}{
	{play.Ball, play.Live},
	{play.Extent, play.Partly},
	{play.Height, play.Above},
	{play.ReachHeight, play.Above},
}

// polarValue is what a bare yes or no says of a fact, Unknown if its question
// is none of yes and no.
func polarValue(f play.Fact, yes bool) play.Value {
	v := play.Unknown
	if f.Has(play.Yes) && f.Has(play.No) {
		v = play.Yes
	}
	for _, q := range polar {
		if q.fact == f.ID {
			v = q.yes
		}
	}
	if v == play.Unknown || yes {
		return v
	}
	return other(f, v)
}

// other is the other value of a fact that has two.
func other(f play.Fact, v play.Value) play.Value {
	if len(f.Values) != 2 {
		return play.Unknown
	}
	if f.Values[0].Value == v {
		return f.Values[1].Value
	}
	return f.Values[0].Value
}

// denied is what "not" before a value says: the other of two, where the other
// follows. That a ball was not below the net leaves it in doubt.
func denied(f play.Fact, v play.Value) play.Value {
	switch {
	case f.ID == play.Height && v == play.NotAbove, f.ID == play.ReachHeight && v == play.Below, f.ID == play.Extent && v == play.Partly:
		return play.Unknown
	}
	return other(f, v)
}

// A saying is one phrase for one value of a fact, as units.
type saying struct {
	fact  play.FactID
	value play.Value // empty: the side in the phrase says it
	units []string
	alone bool // understood also where another fact was asked for
}

// sayings are all phrases for all facts, the longest first; among equally
// long ones in the order of the tables.
var sayings = sync.OnceValue(func() []saying {
	var out []saying
	add := func(f play.FactID, v play.Value, words string, alone bool) {
		if strings.Contains(words, "{") && !strings.Contains(words, "{side}") {
			words = strings.NewReplacer("{own}", "{side}", "{opp}", "{side}", "{A}", "{side}", "{B}", "{side}").Replace(words)
			v = ""
		}
		u := units(words)
		for _, s := range out {
			if s.fact == f && slices.Equal(s.units, u) {
				return
			}
		}
		out = append(out, saying{f, v, u, alone && len(u) > 1})
	}
	for _, f := range play.Facts() {
		for _, c := range f.Values {
			add(f.ID, c.Value, c.Words, !isObject(f.ID) && f.About != play.OfPair)
		}
	}
	for _, a := range answers {
		for words := range strings.SplitSeq(a.words, "|") {
			add(a.fact, a.value, words, false)
			// What "above" is above of may be said or not.
			if strings.HasSuffix(words, "above") || strings.HasSuffix(words, "below") {
				for _, top := range []string{" net", " tape", " top of net"} {
					add(a.fact, a.value, words+top, false)
				}
			}
		}
	}
	for _, f := range play.Facts() {
		for _, c := range f.Values {
			if !f.Sided && f.ID != play.Order && c.Value != play.Yes && c.Value != play.No {
				add(f.ID, c.Value, strings.ReplaceAll(string(c.Value), "-", " "), false)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b saying) int { return len(b.units) - len(a.units) })
	return out
})

// units cuts the words of a phrase as heard cuts an answer.
func units(words string) []string {
	var out []string
	for w := range strings.FieldsSeq(words) {
		if strings.HasPrefix(w, "{") {
			out = append(out, w)
			continue
		}
		for _, s := range split(w) {
			more, _ := expand(s.raw)
			for _, m := range more {
				if article(m) == 0 {
					out = append(out, m)
				}
			}
		}
	}
	return out
}
