package notation

import (
	"slices"
	"testing"
)

// What somebody's health is about leads with the caution, by its meaning.
func TestCaution(t *testing.T) {
	for _, text := range []string{
		"spike hits our libero in the face, ball goes up and we play it",
		"serve nailed her own teammate in the back of the head and somehow went over",
		"our setter hits her head on the floor, ball still live",
		"elbow to the head on the block, whistle or not",
		"two players collide going for the ball, rally goes on",
		"our libero and setter collided, ball drops",
		"setter is bleeding, both her subs used",
		"setter bloody nose, no time-out left",
		"middle is dizzy after a dig, can she stay in",
		"player fainted on the bench",
		"server feels faint, can she sub out",
		"outside passed out from the heat in set 3",
		"heat exhaustion, does she get a time-out",
		"player hurt, one sub left, coach wants to play with five",
		"rally stopped for an injured A player",
		"suspected concussion, may she come back",
		"net falls on our side in the rally",
		"net cable snaps, ball in play",
		"the pole tips over while we serve",
		"hitter rolled her ankle under the net",
		"middle crashes into the post, point or replay",
		"setter ran into the bench and stayed down",
		"our middle collapses after the block",
		"libero took a ball to the face, ball stays up",
		"she is lying on the floor, they keep playing",
		"DS got kicked in the face by the blocker",
		"they bump heads, ball falls between them",
	} {
		if r, err := Read(text); err != nil || !r.Caution {
			t.Errorf("%q: no caution (%v)", text, err)
		}
	}
	for _, text := range []string{
		"kill shot off the block, dead ball, who gets the point",
		"hitter kills it, ball hits the floor",
		"ball and hands collided at the net with the ball in the plane",
		"blockers' hands collide with the ball above the net",
		"collided at the net with the ball, joust, ball falls on our side",
		"whistle, dead ball, then she hits the net",
		"serving players hold both hands above the head",
		"ball just misses her head and lands in",
		"player heads the ball over the net",
		"ball hits the net and falls on our side",
		"ball comes off the net, falls between two players",
		"nobody was hurt, does the rally count",
		"no injury, the coach wants a time-out",
		"faint touch by the blocker, line judge signals touch",
		"in the heat of the moment he yells at the ref",
		"A first pass heads into the middle of the net, B blocks it",
		"they crush it off our hands, four hits",
		"setter faces the net and dumps it over",
		"ball crashes into the antenna",
		"they smash it off the top of the block",
		"head coach asks for a time-out",
		"head ref blows the whistle",
		"setter knocks it down on their side",
		"serve hits the tape and drops in",
		"player goes over the center line, no collision",
		"hit the ball over her head",
		"ball hits the post, comes back to us",
	} {
		if r, err := Read(text); err != nil || r.Caution {
			t.Errorf("%q: a caution (%v)", text, err)
		}
	}
	for _, list := range [][]string{ails, ailments, blows, skull, crashes, solid, denials} {
		if len(slices.Compact(slices.Clone(list))) != len(list) {
			t.Errorf("a word is twice in %v", list)
		}
	}
}
