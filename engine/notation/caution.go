package notation

import (
	"slices"
	"strings"
	"sync"
)

// ails are words of somebody's health that need no other word beside them,
// but for a denial. Sorted.
var ails = []string{"ambulance", "asthma", "bleed", "bleeding", "blood", "concussed", "concussion", "cramping", "dislocate", "dislocated",
	"dizziness", "dizzy", "fainted", "fainting", "faints", "hurt", "hyperventilate", "hyperventilating", "injure", "injured", "injures", "injuries", "injury",
	"lightheaded", "limping", "nosebleed", "seizure", "sprain", "sprained", "stretcher", "unconscious", "vomit", "vomiting", "writhing"}

// ailments are turns of speech for the same. Sorted.
var ailments = []string{"bloody hand", "bloody knee", "bloody lip", "bloody nose", "broken ankle", "broken finger", "broken nose", "broken wrist",
	"can not breathe", "chest pain", "clutch ankle", "clutch knee", "clutching her head", "cry in pain", "crying in pain", "from heat", "head injury",
	"heat exhaustion", "heat illness", "heat stroke", "in pain", "knocked out cold", "knocked unconscious", "light headed", "lying on floor", "not breathing",
	"out cold", "overcome by heat", "pass out", "passed out", "pull hamstring", "roll ankle", "rolled ankle", "roll her ankle", "rolled her ankle", "stay down hurt", "throwing up",
	"trouble breathing", "turn ankle", "twist ankle", "twist her knee", "twisted ankle", "twisted her ankle", "twisted knee"}

// blows are what a head can take. Sorted.
var blows = []string{"bang", "catch", "clip", "clobber", "crack", "drill", "elbow", "hit", "kick", "knee", "knock", "nail", "peg", "plunk", "punch",
	"slam", "smack", "smash", "smoke", "strike", "whack"}

// skull are the parts of the head. Sorted.
var skull = []string{"eye", "face", "forehead", "head", "jaw", "mouth", "neck", "nose", "temple", "throat"}

// crashes say that somebody runs into somebody or something. Sorted.
var crashes = []string{"collide", "collision", "crash", "slam", "smash"}

// solid are people, and what is hard, that somebody can run into. Sorted.
var solid = []string{"bench", "bleacher", "blocker", "chair", "coach", "defender", "each", "fan", "floor", "girl", "hitter", "kid", "libero", "middle", "official",
	"opponent", "other", "outside", "partner", "player", "pole", "post", "r1", "r2", "ref", "referee", "setter", "spectator", "stand", "stanchion", "table", "teammate", "wall"}

// struck are what comes to a head: "a shot to the face".
var struck = []string{"ball", "blow", "elbow", "knee", "one", "shot"}

// runs are the verbs of which only "into" makes a crash.
var runs = []string{"bump", "ran", "run"}

// netParts are the net and what holds it.
var netParts = []string{"cable", "net", "pole", "post", "standard", "stanchion"}

// cautionStarts are the words at which a caution can be found: every list that
// cautious looks for at a word is in them.
var cautionStarts = sync.OnceValue(func() map[string]bool {
	out := wordSet("faint collapse heat", strings.Join(ails, " "), strings.Join(blows, " "), strings.Join(struck, " "),
		strings.Join(crashes, " "), strings.Join(runs, " "), strings.Join(netParts, " "))
	for _, p := range ailments {
		w, _, _ := strings.Cut(p, " ")
		out[w] = true
	}
	return out
})

// mayCaution reports whether a caution can be found at a word: most words are
// none of those.
func (s *scene) mayCaution(i int) bool {
	return slices.ContainsFunc(s.wordsOf(i), func(w string) bool { return cautionStarts()[w] })
}

// denials take an ailment back.
var denials = []string{"avoid", "neither", "never", "no", "nobody", "none", "not", "un", "without"}

// cautious reports whether the words tell of somebody who may be hurt, or of
// equipment that may hurt: by what they mean together, never by the trade's own
// hard words ("kill", "hit", "dead ball").
func (s *scene) cautious() bool {
	for i := range s.toks {
		t := &s.toks[i]
		switch {
		case t.mark != 0 || !s.mayCaution(i) || s.denied(i):
		case s.isOneOf(i, ails), s.phraseOf(i, ailments) && t.form != "not":
			return true
		case s.isOneOf(i, []string{"faint"}) && !s.near(i+1, 1, []string{"brush", "click", "contact", "graze", "noise", "sound", "tick", "tip", "touch"}):
			return true
		case s.blowToHead(i), s.crash(i), s.netDown(i):
			return true
		case s.isOneOf(i, []string{"collapse"}) && s.preceded(i, 2, append([]string{"she", "he"}, solid...)):
			return true
		case t.form == "heat" && s.preceded(i, 1, []string{"in", "of"}) && !s.near(i+1, 2, []string{"moment", "battle", "match", "rally"}):
			return true
		}
	}
	return false
}

func (s *scene) isOneOf(i int, words []string) bool {
	t := &s.toks[i]
	return slices.ContainsFunc(words, func(w string) bool { return isForm(t, w) })
}

func (s *scene) phraseOf(i int, phrases []string) bool {
	return slices.ContainsFunc(phrases, func(p string) bool {
		w, _, _ := strings.Cut(p, " ")
		return isForm(&s.toks[i], w) && s.says(i, strings.Fields(p))
	})
}

// near reports whether one of the words is among the next n tokens from i on,
// in the same clause.
func (s *scene) near(i, n int, words []string) bool {
	for ; i < len(s.toks) && n > 0 && s.toks[i].mark == 0; i++ {
		if s.isOneOf(i, words) {
			return true
		}
		n--
	}
	return false
}

// preceded reports whether one of the words is among the n tokens before i, in
// the same clause.
func (s *scene) preceded(i, n int, words []string) bool {
	for i--; i >= 0 && n > 0 && s.toks[i].mark == 0; i-- {
		if s.isOneOf(i, words) {
			return true
		}
		n--
	}
	return false
}

// denied reports whether the words just before say that it did not happen.
func (s *scene) denied(i int) bool { return s.preceded(i, 2, denials) }

// blowToHead reports whether a head takes a blow: "nailed in the face", "hits
// her head on the floor", "elbow to the head". A ball that is headed, hands
// above a head and a ball that misses one are none.
func (s *scene) blowToHead(i int) bool {
	if s.isOneOf(i, struck) && s.says(i+1, []string{"to"}) && s.near(i+2, 3, skull) {
		return true
	}
	if !s.isOneOf(i, blows) || s.preceded(i, 3, []string{"hand", "hands", "misses", "miss"}) {
		return false
	}
	for j := i + 1; j < len(s.toks) && j <= i+8 && s.toks[j].mark == 0; j++ {
		switch t := s.toks[j]; {
		case s.isOneOf(j, []string{"above", "behind", "over", "past", "with", "off", "miss"}):
			return false
		case !s.isOneOf(j, skull):
		case s.preceded(j, 4, []string{"in"}) && j > i, j == i+1 && t.form != "face", s.preceded(j, 1, []string{"her", "his"}) && j <= i+2:
			return true
		}
	}
	return false
}

// crash reports whether people run into one another, or into something hard;
// not hands or a ball that meet a ball.
func (s *scene) crash(i int) bool {
	ball := []string{"ball", "balls", "hand", "hands", "tape"}
	switch {
	case s.isOneOf(i, runs) && s.says(i+1, []string{"into"}), s.says(i, []string{"bump", "heads"}):
		return s.says(i+1, []string{"heads"}) || s.near(i+2, 2, []string{"bench", "bleacher", "chair", "pole", "post", "table", "wall", "stanchion"})
	case !s.isOneOf(i, crashes), s.preceded(i, 3, ball):
		return false
	case s.isOneOf(i, []string{"collide", "collision"}):
		for j := i + 1; j < len(s.toks) && j <= i+5 && s.toks[j].mark == 0; j++ {
			if s.isOneOf(j, ball) && s.preceded(j, 1, []string{"with", "into"}) {
				return false
			}
		}
		return true
	}
	return s.says(i+1, []string{"into"}) && s.near(i+2, 3, solid)
}

// netDown reports whether the net, or what holds it, comes down.
func (s *scene) netDown(i int) bool {
	if !s.isOneOf(i, netParts) || s.preceded(i, 1, []string{
		"against", "at", "brush", "by", "contact", "down", "hit", "in", "into", "near", "of", "off", "on", "onto", "over", "past", "strike", "through", "to", "touch", "toward", "under", "with"}) {
		return false
	}
	j := i + 1
	if j < len(s.toks) && s.toks[j].form == "cable" {
		j++
	}
	return j < len(s.toks) && s.toks[j].mark == 0 && (s.isOneOf(j, []string{"collapse", "snap", "topple", "fall", "fell", "break", "broke"}) || s.phraseOf(j, []string{"come down", "came down", "go down", "tip over", "is down", "give way"}))
}
