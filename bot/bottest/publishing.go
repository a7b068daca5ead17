package bottest

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/casebook"
	"example.org/netpost/engine/code"
)

// Publishing proves that a bulletin is previewed to a publisher alone, posted
// once in a channel of the platform, and, killed at any step between, never
// posted a second time by itself.
func Publishing(t *testing.T, h Harness) {
	t.Run("preview and post", func(t *testing.T) { previewed(t, h) })
	t.Run("killed", func(t *testing.T) { killed(t, h) })
}

// press is an association with a note in every week, and its bulletins.
type press struct {
	program
	sched bot.Schedule
}

// pressed connects a press to the platform.
func pressed(t *testing.T, h Harness) (*press, Platform, bot.Sender) {
	t.Helper()
	pr := &press{program: newProgram(t, time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC))}
	pr.association = func() bot.Association {
		return bot.Association{
			ID: "riverside", Name: "Riverside Officials", Book: weekly, BulletinTo: []bot.Place{pr.place}, Bulletin: pr.sched,
			Grants: []bot.Grant{{Role: bot.Publisher, To: at.Who.ID}},
		}
	}
	p, send := pr.onPlatform(t, h)
	return pr, p, send
}

// weekly has a note issued in each of many weeks.
func weekly() (*casebook.Book, error) {
	var notes []*casebook.Note
	day := time.Date(2025, 1, 1, 0, 0, 0, 0, time.UTC)
	for i := range 120 {
		notes = append(notes, &casebook.Note{
			ID: fmt.Sprintf("2026-%03d", i+1), Title: fmt.Sprintf("<!everyone> The note of week %d", i), Codes: []code.Code{code.Scholastic}, Season: 2026,
			Status: casebook.Published, Issued: casebook.DateOf(day.AddDate(0, 0, 7*i)),
		})
	}
	return casebook.NewBook(notes, nil), nil
}

// posts counts the messages for all that hold the bulletin of a week.
func posts(p Platform, week string) int {
	n := 0
	for _, s := range p.Seen() {
		if s.To == "" && !s.Changed && strings.Contains(plain(s.Text), "bulletin "+week) {
			n++
		}
	}
	return n
}

// previewed is the way of a publisher, and of others who try it.
func previewed(t *testing.T, h Harness) {
	pr, p, send := pressed(t, h)
	pr.start(t, pr.store, send)
	p.Do(bot.Command{Meta: at, Name: "bulletin", Text: "2026-W47"})
	preview := awaits(t, "the preview", p, reads("bulletin 2026-W47"))
	if preview.To != at.Who.ID || !reads("nothing is posted yet")(preview) {
		t.Errorf("the preview is seen by %q:\n%s", preview.To, preview.Text)
	}
	pr.bot.Tick(t.Context())
	if n := posts(p, "2026-W47"); n != 0 {
		t.Errorf("%d posts before anybody pressed", n)
	}
	p.Do(pressing(preview, "To "+pr.place.Channel+" on "+pr.place.Platform))
	after := awaits(t, "the preview to change", p, func(s Seen) bool { return s.Message == preview.Message && reads("on its way to 1 channel")(s) })
	if reads("Post it")(after) {
		t.Errorf("it can be posted twice:\n%s", after.Text)
	}
	pr.bot.Tick(t.Context())
	until(t, "the bulletin", p, func() bool { return posts(p, "2026-W47") == 1 })
	pr.start(t, pr.store, send)
	pr.bot.Tick(t.Context())
	pr.bot.Tick(t.Context())
	if n := posts(p, "2026-W47"); n != 1 {
		t.Errorf("it was posted %d times", n)
	}
	p.Do(bot.Command{Meta: at, Name: "bulletin", Text: "2019-W01"})
	if s := awaits(t, "an empty bulletin", p, reads("there is none to post")); len(s.Buttons) > 0 {
		t.Errorf("an empty bulletin can be posted: %+v", s.Buttons)
	}
	other := at
	other.Who.ID = "UBOB1"
	p.Do(bot.Command{Meta: other, Name: "bulletin", Text: "2026-W47"})
	if s := awaits(t, "a refusal", p, reads("That is for a publisher")); s.To != other.Who.ID {
		t.Errorf("the refusal is seen by %q", s.To)
	}
	fine(t, p)
}

// killed posts a bulletin over and over, by hand and by schedule, and has the
// program end at each step of the way.
func killed(t *testing.T, h Harness) {
	pr, p, send := pressed(t, h)
	week := bot.WeekOf(time.Date(2026, 11, 16, 0, 0, 0, 0, time.UTC))
	delivery := 0
	meta := func() bot.Meta {
		delivery++
		m := at
		m.Delivery, m.Where = fmt.Sprint("k", delivery), pr.place
		m.Who.Platform = pr.place.Platform
		return m
	}
	button := func(r bot.Reply, label string) (bot.Press, bool) {
		b, ok := buttonOf(r, label)
		return bot.Press{Meta: meta(), Message: "m", Private: true, State: b.State}, ok
	}
	ask := func(name, words string) bot.Reply {
		return pr.bot.Handle(t.Context(), bot.Command{Meta: meta(), Name: name, Text: words})
	}
	for _, scheduled := range []bool{false, true} {
		steps, doubts := 0, 0
		for dead := true; dead; steps++ {
			week = week.Before()
			k := &killer{Store: pr.store, send: send, left: steps}
			pr.sched = bot.Schedule{}
			if scheduled {
				// Its moment has come an hour ago: on the Monday after.
				pr.now = week.Last().Time().AddDate(0, 0, 1).Add(8 * time.Hour)
				pr.sched = bot.Schedule{On: true, Day: time.Monday, At: 7 * time.Hour}
			}
			pr.start(t, pr.store, nil)
			press, ok := button(ask("bulletin", week.String()), "To "+pr.place.Channel)
			if !ok {
				t.Fatalf("the bulletin %s can't be posted", week)
			}
			pr.start(t, k, k.Send)
			dead = dies(func() {
				if !scheduled {
					pr.bot.Handle(t.Context(), press)
				}
				pr.bot.Tick(t.Context())
			})

			pr.start(t, pr.store, send)
			pr.bot.Tick(t.Context())
			pr.bot.Tick(t.Context())
			n := posts(p, week.String())
			if n > 1 {
				t.Fatalf("scheduled %t, killed at step %d: posted %d times by itself", scheduled, steps, n)
			}
			resend, doubt := button(ask("posts", ""), "Send 1 again")
			drop, _ := button(ask("posts", ""), "Drop 1")
			switch {
			case doubt && n == 1:
				doubts++
				pr.bot.Handle(t.Context(), drop)
			case doubt:
				doubts++
				pr.bot.Handle(t.Context(), resend)
			case n == 0 && scheduled:
				t.Fatalf("killed at step %d: neither posted nor listed", steps)
			case n == 0:
				// The press was lost with the program, and is made again.
				if press, ok = button(ask("bulletin", week.String()), "To "+pr.place.Channel); !ok {
					t.Fatalf("killed at step %d: neither posted nor listed, and it can't be posted", steps)
				}
				pr.bot.Handle(t.Context(), press)
			}
			pr.bot.Tick(t.Context())
			until(t, "the bulletin", p, func() bool { return posts(p, week.String()) > 0 })
			if n := posts(p, week.String()); n != 1 {
				t.Fatalf("scheduled %t, killed at step %d: posted %d times in all", scheduled, steps, n)
			}
			if _, doubt := button(ask("posts", ""), "Send 1 again"); doubt {
				t.Fatalf("killed at step %d: listed still", steps)
			}
		}
		// The writes of the press or the schedule, the mark, the message itself
		// and the note that it is out.
		if steps < 8 || doubts < 3 {
			t.Errorf("scheduled %t: %d steps, %d of them in doubt", scheduled, steps, doubts)
		}
	}
	fine(t, p)
}
