package notation

import (
	"fmt"
	"slices"
	"strings"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/lookup"
	"example.org/netpost/engine/play"
)

// Read reads a question as officials type it: the terse slash form or a whole
// story. What it did not understand is in Unread; nothing is guessed. The
// error is for a text with no words, or longer than MaxText.
func Read(text string) (Reading, error) { return read(text, false) }

// read reads a question; ungated, it tries every area, whatever its gate says.
func read(text string, ungated bool) (Reading, error) {
	if strings.TrimSpace(text) == "" {
		return Reading{}, fmt.Errorf("text: it is empty; tell the play in words, at most %d bytes", MaxText)
	}
	if len(text) > MaxText {
		return Reading{}, fmt.Errorf("text: %d bytes long; shorten it to at most %d bytes", len(text), MaxText)
	}
	r := Reading{Text: text}
	if p, ok := readPrint(text); ok {
		r.Rally = p
		return r, nil
	}
	if q, ok := lookup.ReadPrint(text); ok {
		r.Other, r.Topic = q, "facts"
		return r, nil
	}
	if p, area, ok := inPrint(text); ok {
		r.Other, r.Topic = p, area
		return r, nil
	}
	ts := tokens(text)
	r.Corrected = correct(ts)
	s := newScene(ts)
	s.ungated = ungated
	s.run()
	r.Calls, r.Wanted, r.Evidence, r.Caution = s.calls, s.wanted, s.evidence, s.cautious()
	r.Code = code.Code(s.code)
	if s.season != "" {
		r.Season, _ = code.ParseSeason(s.season)
	}
	r.Ago = s.ago
	if r.Game = s.otherGame(); r.Game != "" {
		return r, nil
	}
	r.Topic = s.topic()
	h, area, found := s.inArea(r.Topic == "")
	if !found || !h.sure {
		if p, left, ok := s.readService(); ok {
			r.Rally, r.Unread, r.Topic = p, left, ""
			return r, nil
		}
		if p, left, ok := s.readGround(); ok {
			r.Rally, r.Unread, r.Topic = p, left, ""
			return r, nil
		}
	}
	if found {
		r.Other, r.Topic = h.subject, area
		r.Unread, r.More = s.left(h), h.more
		return r, nil
	}
	if r.Topic == "" {
		r.Rally = fought(s.finish())
		if r.Rally != nil && r.Rally.Check() != nil {
			// Somebody acts of whom the words name no side: nothing is ruled on.
			r.Rally = nil
			for i := range s.atoms {
				s.atoms[i].used = false
			}
		}
	}
	r.Unread = s.weighty(r.Rally, s.unread(r.Rally == nil))
	r.More = s.questions(text)
	return r, nil
}

// topic is the other area that the text is about: the one most of its words
// are of, when hardly anything in it is a play of the ball.
func (s *scene) topic() string {
	if len(s.topics) == 0 {
		return ""
	}
	acts, about := 0, len(s.topics)
	aside := 0
	for i, a := range s.atoms {
		if a.class == cTopic && s.bystander(i) {
			aside++
		}
	}
	about -= max(aside, s.asides)
	for _, e := range s.evs {
		switch e.Kind {
		case play.Contact, play.NetTouch, play.Line, play.Reach, play.Bump, play.Strike, play.Cross:
			acts++
		}
	}
	if acts > about || acts > 2 || about <= 0 {
		return ""
	}
	best, most := "", 0
	for _, t := range s.topics {
		n := 0
		for _, u := range s.topics {
			if u == t {
				n++
			}
		}
		if n > most {
			best, most = t, n
		}
	}
	return best
}

// finish makes the play of the scene; nil when nothing happened in it.
func (s *scene) finish() *play.Rally {
	s.firstOfWall()
	s.dropAttempts()
	if n := len(s.evs) - 1; n > 0 && s.evs[n].Kind == play.Land && s.evs[n].soft && s.evs[n].facts[play.Lands] == play.Unknown {
		if e := &s.evs[n-1]; e.Kind == play.Strike && s.evs[n].Team != play.NoTeam && s.evs[n].Team == e.Team {
			e.set(play.Completes, play.No)
		} else if e.Kind == play.Strike && s.evs[n].Team != play.NoTeam && e.Team != play.NoTeam {
			e.set(play.Completes, play.Yes) // it comes down on the other side
		}
		s.evs = s.evs[:n] // on its way down when the story ends
	}
	if !slices.ContainsFunc(s.evs, func(h happening) bool { return h.Kind != play.Serve }) {
		return nil
	}
	if len(s.evs) == 1 && s.evs[0].Kind == play.Cross && !s.told() {
		return nil
	}
	s.ownBall()
	s.sameTwice()
	s.serveTeam()
	s.firstNumber()
	p := &play.Rally{Asked: s.asked}
	ids := make([]string, len(s.people))
	for i := range s.evs {
		h := &s.evs[i]
		h.ID = fmt.Sprintf("e%d", i+1)
		if h.who >= 0 {
			if ids[h.who] == "" {
				ids[h.who] = fmt.Sprintf("p%d", len(p.Players)+1)
				pl := s.people[h.who].Player
				pl.ID = ids[h.who]
				p.Players = append(p.Players, pl)
			}
			h.Player = ids[h.who]
		}
		p.Events = append(p.Events, h.Event)
	}
	var set factSetter
	set.p = p
	for _, f := range factTable {
		if v, ok := s.open[f.ID]; ok && f.About == play.OfSetting {
			set.tell(play.Key{Fact: f.ID}, v)
		}
		if s.voids[f.ID] {
			set.void(play.Key{Fact: f.ID})
		}
		for i := range s.evs {
			h := &s.evs[i]
			k := play.Key{Fact: f.ID, Of: h.ID}
			if v, ok := h.facts[f.ID]; ok && slices.Contains(f.Kinds, h.Kind) {
				set.tell(k, v)
			} else if h.voids[f.ID] && slices.Contains(f.Kinds, h.Kind) {
				set.void(k)
			}
		}
	}
	for i, q := range s.people {
		if ids[i] == "" {
			continue
		}
		if q.row != play.Unknown {
			set.tell(play.Key{Fact: play.Row, Of: ids[i]}, q.row)
		}
		if q.libero != play.Unknown {
			set.tell(play.Key{Fact: play.IsLibero, Of: ids[i]}, q.libero)
		}
		if q.void {
			set.void(play.Key{Fact: play.Row, Of: ids[i]})
		}
	}
	for i := 1; i < len(s.evs); i++ {
		k := play.Key{Fact: play.Order, Of: p.Pair(i - 1)}
		a, b := s.evs[i-1], s.evs[i]
		opposed := a.Kind == play.Contact && b.Kind == play.Contact && a.Team != b.Team
		switch {
		case b.link != play.Unknown:
			set.tell(k, b.link)
		case b.split || s.pairAsked && opposed:
			set.void(k)
		}
	}
	p = set.p
	if _, told := s.open[play.Has]; s.neutral && !told && !s.opposite() && s.lastActor() == play.B {
		p = p.Swap()
	}
	s.name(p)
	return p
}

// factSetter gathers told facts into a play.
type factSetter struct{ p *play.Rally }

func (f *factSetter) tell(k play.Key, v play.Value) { f.p = f.p.With(k, v) }
func (f *factSetter) void(k play.Key)               { f.p = f.p.WithVoid(k) }

func (s *scene) told() bool { return len(s.open) > 0 }

// lastActor is the side of the act in question: the last thing that anybody
// did.
func (s *scene) lastActor() play.Team {
	for i := len(s.evs) - 1; i >= 0; i-- {
		if !s.evs[i].Ball() && s.evs[i].Team != play.NoTeam {
			return s.evs[i].Team
		}
	}
	return play.NoTeam
}

// dropAttempts takes out the attempts to block of those who touched the ball.
func (s *scene) dropAttempts() {
	touched := map[int]bool{}
	for _, e := range s.evs {
		if e.Kind == play.Contact {
			touched[e.who] = true
		}
	}
	for i := 0; i < len(s.evs); i++ {
		e := s.evs[i]
		if e.Kind != play.Attempt || !touched[e.who] {
			continue
		}
		for j := range s.evs {
			f := &s.evs[j]
			if f.Kind != play.Contact || f.who != e.who {
				continue
			}
			if j > 0 && f.Action == play.Touch && j > i && s.evs[j-1].Kind == play.Contact && s.evs[j-1].Team != f.Team && s.evs[j-1].Action.Attacking() {
				f.Action = play.Block // who went up to block and was then hit
			}
			if v, ok := e.facts[play.ReachHeight]; ok {
				if _, told := f.facts[play.ReachHeight]; !told {
					f.facts[play.ReachHeight] = v
				}
			}
		}
		s.evs = slices.Delete(s.evs, i, i+1)
		if i < len(s.evs) && i == 0 {
			s.evs[0].link = play.Unknown
		}
		i--
	}
}

// serveTeam settles who served: the side told, else the one opposite to the
// first who then acts.
func (s *scene) serveTeam() {
	for i := range s.evs {
		e := &s.evs[i]
		if e.Kind != play.Serve {
			continue
		}
		for j := i + 1; j < len(s.evs) && e.Team == play.NoTeam; j++ {
			if f := s.evs[j]; !f.Ball() && f.Team != play.NoTeam {
				e.Team = f.Team.Other()
			}
		}
		if e.Team == play.NoTeam {
			e.Team = play.A
			for _, f := range s.evs[i+1:] {
				if f.Ball() && f.Team != play.NoTeam && s.primary == usThem {
					s.lost = append(s.lost, whoServed) // "drops on our side" does not tell
				}
			}
		}
		s.open[play.Serving] = play.Value(e.Team.String())
	}
}

// firstNumber takes the number of the first contact for what it says of the
// opening.
func (s *scene) firstNumber() {
	for i := range s.evs {
		e := &s.evs[i]
		if e.Kind == play.Serve {
			return
		}
		if e.Kind != play.Contact {
			continue
		}
		if e.Number > 0 && e.Number <= 4 {
			if _, told := s.open[play.Used]; !told {
				s.open[play.Used] = []play.Value{play.Zero, play.N1, play.N2, play.N3}[e.Number-1]
				s.open[play.Has] = play.Value(e.Team.String())
			}
			e.Number = 0
		}
		return
	}
}

// name gives the sides their names: the asker's own, then those that the play
// proves.
func (s *scene) name(p *play.Rally) {
	put := func(t play.Team, n string) {
		if n != "" && !slices.Contains(p.Names[t], n) {
			p.Names[t] = append(p.Names[t], n)
		}
	}
	pairs := map[family][2]string{letters: {"A", "B"}, usThem: {"us", "them"}, serveRec: {"serving", "receiving"}, homeAway: {"home", "visitors"}, colours: s.colourNames()}
	if s.neutral {
		put(play.A, "A")
		put(play.B, "B")
	}
	if n, ok := pairs[s.primary]; ok {
		put(s.first[s.primary], n[0])
		put(s.first[s.primary].Other(), n[1])
	}
	if first, ok := s.first[usThem]; ok && s.primary != usThem {
		put(first, "us")
		put(first.Other(), "them")
	}
	if v := p.Get(play.Key{Fact: play.Serving}); v != play.Unknown {
		t := play.A
		if v == play.ValueB {
			t = play.B
		}
		put(t, "serving")
		put(t.Other(), "receiving")
	}
	attack, block := map[play.Team]bool{}, map[play.Team]bool{}
	for _, e := range p.Events {
		pl, _ := p.Player(e.Player)
		switch {
		case e.Action.Attacking() || pl.Role == play.Hitter:
			attack[e.Team] = true
		case e.Action == play.Block || pl.Role == play.Blocker || e.Kind == play.Attempt:
			block[e.Team] = true
		}
	}
	for _, t := range []play.Team{play.A, play.B} {
		o := t.Other()
		if attack[t] && !attack[o] && !block[t] || !attack[o] && block[o] && !block[t] {
			put(t, "attackers")
			put(o, "blockers")
		}
	}
}

// colourNames are the two names that the text gives its teams.
func (s *scene) colourNames() (out [2]string) {
	for _, t := range s.toks {
		if t.side.fam == colours && out[t.side.n] == "" {
			out[t.side.n], _, _ = strings.Cut(strings.ToLower(strings.Fields(t.raw)[0]), "'")
		}
	}
	if out[0] != "" && out[1] == "" {
		out[1] = "B" // nothing names the others
	}
	return out
}

// firstOfWall makes the first of those who block together the one who touched
// the ball, where nothing else is told of it.
func (s *scene) firstOfWall() {
	first := -1
	for i, e := range s.evs {
		if e.wall && first < 0 {
			first = i
		}
		if first >= 0 && (e.Kind == play.Contact && e.Team == s.evs[first].Team || s.missed) {
			return
		}
	}
	if first >= 0 {
		s.evs[first].Kind, s.evs[first].Action = play.Contact, play.Block
	}
}
