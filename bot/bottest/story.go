package bottest

import (
	"slices"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/casebook"
)

// Story proves the life of a question on a platform: it is asked, turns on a
// fact, goes to a mentor who answers late, becomes a note that passes every
// check, and stands in the bulletin; and that a kill at any step of the way
// loses nothing and has nothing posted twice by itself.
func Story(t *testing.T, h Harness) {
	t.Run("in public", func(t *testing.T) { lived(t, h, false) })
	t.Run("in private", func(t *testing.T) { lived(t, h, true) })
	t.Run("killed", func(t *testing.T) { storyKilled(t, h) })
}

// storyPlay turns on a fact that it does not tell.
const storyPlay = "our setter tips the ball over from inside the 3m line, ball above the net"

// lived is the whole way, every event through the platform.
func lived(t *testing.T, h Harness, private bool) {
	l, p, _ := housed(t, h)
	before := notedOf(p.Seen()) // what is done with
	next := func(what, words string) Seen {
		t.Helper()
		var s Seen
		until(t, what, p, func() bool {
			all := before.since(p.Seen())
			i := slices.IndexFunc(all, func(s Seen) bool {
				return words == "" && s.Form != nil || words != "" && s.Form == nil && reads(words)(s)
			})
			if i >= 0 {
				s = all[i]
			}
			return i >= 0
		})
		until(t, "the deliveries of "+what, p, func() bool { return p.Unacked() == 0 })
		return s
	}
	do := func(e bot.Event) {
		before = notedOf(p.Seen())
		p.Do(e)
	}
	tick := func() {
		before = notedOf(p.Seen())
		l.bot.Tick(t.Context())
	}
	filled := func(s Seen, who, label string, values map[string]string) {
		t.Helper()
		press := presses(t, s, who, label)
		do(press)
		f := next("the form", "")
		until(t, "the press of the form", p, func() bool { return p.Unacked() == 0 })
		do(bot.Submit{Meta: press.Meta, Message: s.Message, Private: s.To != "", State: f.Form.State, Values: values})
	}

	show := bot.ShowPublic
	if private {
		show = bot.ShowPrivate
	}
	do(bot.Command{Meta: by(at.Who.ID), Name: "ask", Text: storyPlay, Args: bot.Args{Show: show}})
	asked := next("the answer", "It turns on this")
	if (asked.To != "") != private {
		t.Errorf("the answer is seen by %q", asked.To)
	}
	do(presses(t, asked, at.Who.ID, "back row"))
	settled := next("the fact told", "Fault: back-row attack")
	filled(settled, at.Who.ID, "Ask a mentor", map[string]string{"words": "is it that simple"})
	next("word of it", "A mentor was asked")
	tick()
	call := next("the call", "A question for a mentor")
	do(presses(t, call, kim, "Claim it"))
	claimed := next("the claim", "a mentor is on it")
	l.now = l.now.Add(3 * time.Hour) // later than any platform's token
	filled(claimed, kim, "Answer", map[string]string{"words": "Yes: back row, in front of the line, wholly above the net."})
	answered := next("the answer kept", "Answer otherwise")
	tick()
	late := next("the late answer", "A mentor answers")
	if want := map[bool]string{true: at.Who.ID, false: ""}[private]; late.To != want {
		t.Errorf("the late answer is seen by %q, want %q", late.To, want)
	}
	filled(answered, kim, "Draft a note from it", map[string]string{"title": "Setter tips it from inside the line"})
	if s := next("the draft", "every check passes"); s.To != kim {
		t.Errorf("the draft is seen by %q", s.To)
	}
	do(bot.Command{Meta: by(kim), Name: "drafts"})
	list := next("the drafts", "1 draft waits for a publisher")
	do(presses(t, list, kim, "Draft 1"))
	proof := next("the proof", "Publish it")
	do(presses(t, proof, kim, "Publish it"))
	next("word of it", "Published as the note 2026-001")
	if b, found := casebook.LoadDir(l.folder, casebook.LoadOptions{}); len(b.Notes()) != 1 || len(casebook.All(found, casebook.Check(b, casebook.CheckOptions{Today: casebook.DateOf(l.now)}))) > 0 {
		t.Errorf("%d notes, findings %v", len(b.Notes()), found)
	}
	do(bot.Command{Meta: by(kim), Name: "bulletin", Text: "2026-W47"})
	preview := next("the preview", "2026-001 Setter tips it from inside the line")
	if preview.To != kim {
		t.Errorf("the preview is seen by %q", preview.To)
	}
	do(presses(t, preview, kim, "To "+l.place.Channel))
	next("word of it", "on its way to 1 channel")
	tick()
	next("the bulletin", "bulletin 2026-W47")
	tick()
	for what, words := range map[string]string{"the call": "A question for a mentor", "the late answer": "A mentor answers"} {
		if n := firsts(p.Seen(), words); n != 1 {
			t.Errorf("%s is out %d times", what, n)
		}
	}
	if n := posts(p, "2026-W47"); n != 1 {
		t.Errorf("the bulletin is out %d times", n)
	}
	fine(t, p)
}
