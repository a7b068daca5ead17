package notation

import (
	"slices"

	"example.org/netpost/engine/play"
)

// serveWeight are words that tell how, when and from where a serve is hit;
// groundWeight tell of a player's footing. Of a text that only the reader of
// rallies took, they were not read.
var (
	serveWeight  = wordSet("arm baseline carry chest double endline fist foot forearm hand hash head heel knee palm sec second throw toe toss twice")
	groundWeight = wordSet("air airborne foot midair row surface")
	struckWeight = wordSet("<lj> antenna backboard beam bench bleacher cable camera ceiling chair coach curtain fan hoop light official parent pole post r1 r2 rafter ref referee rim scorer spectator stand table umpire wall")
	groundPlace  = wordSet("barrier bench bleacher chair fence rail seat stage table wall")
)

// weighty adds to the words not read those of weight that the reader of rallies
// passes over: what is told of the serve itself beside the word for it, and of
// the feet of somebody who plays the ball at a bench or in the bleachers.
func (s *scene) weighty(p *play.Rally, us []Unread) []Unread {
	if p == nil {
		return us
	}
	if twiceOver(p) {
		us = append(us, Unread{Word: whoNext, Open: true})
	}
	place, plays := false, slices.ContainsFunc(p.Events, func(e play.Event) bool { return e.Kind == play.Contact })
	for i := range s.toks {
		place = place || s.rooted(i, groundPlace)
	}
	add := func(i int) {
		w := s.toks[i].raw
		for j := range us {
			if us[j].Word == w {
				us[j].Scenery = false
			}
		}
		if !slices.ContainsFunc(us, func(u Unread) bool { return u.Word == w }) {
			us = append(us, Unread{Word: w})
		}
	}
	for i, t := range s.toks {
		switch {
		case t.mark != 0:
		case s.rooted(i, serveWeight) && s.servedIn(i):
			add(i)
		case s.rooted(i, struckWeight) && s.strays(i, us):
			add(i)
			for j := range us {
				us[j].Stray = false // the word before it can be what the ball did
			}
		case place && plays && s.rooted(i, groundWeight):
			add(i)
		}
	}
	return us
}

// twiceOver reports whether a served ball goes over the net twice with nobody
// touching it between: one of the ways was only expected, or denied.
func twiceOver(p *play.Rally) bool {
	n := 0
	for _, e := range p.Events {
		switch e.Kind {
		case play.Serve:
			n = 1
		case play.Contact:
			return false
		case play.Cross:
			if n > 0 {
				n++
			}
		}
	}
	return n > 2
}

// strays reports whether a word nobody knows stands before one in its clause:
// "smoked the R2", "pegs a parent".
func (s *scene) strays(i int, us []Unread) bool {
	for j := i - 1; j >= 0 && s.toks[j].mark == 0; j-- {
		if slices.ContainsFunc(us, func(u Unread) bool { return u.Word == s.toks[j].raw && !u.Scenery }) {
			return true
		}
	}
	return false
}

// rooted reports whether a word or what it is a form of is among some.
func (s *scene) rooted(i int, words map[string]bool) bool {
	return s.toks[i].mark == 0 && slices.ContainsFunc(s.rootsOf(i), func(w string) bool { return words[w] })
}

var servingWords = wordSet("serve server service")

// servedIn reports whether the clause of a word tells of the server or the
// serve, as its subject or its verb.
func (s *scene) servedIn(i int) bool {
	for j := i - 1; j >= 0 && s.toks[j].mark == 0; j-- {
		if s.toks[j].form == "receive" || s.toks[j].form == "off" {
			return false // "receives the serve with both hands"
		}
		if s.rooted(j, servingWords) {
			return j == 0 || !receives[s.toks[j-1].base] && !receives[s.toks[j-1].form]
		}
	}
	return false
}

// receives are the verbs whose object a served ball is.
var receives = wordSet("attack block dig pass passes play receive receives return returns set take takes touch touches")
