package web

import (
	"context"
	"net/url"
	"path/filepath"
	"strings"
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/sqlite"
	"example.org/netpost/engine/code"
)

// notes is a searcher that always finds the same.
type notes struct{}

func (notes) Notes(context.Context, bot.Question) ([]bot.Note, error) {
	return []bot.Note{{ID: "2026-014", Title: "Tight save, blocker's hands on it too", URL: PagesPath + "2026-014.html"}}, nil
}

// conversation is the real one, with a store.
func conversation(t testing.TB) *bot.Bot {
	t.Helper()
	s, err := sqlite.Open(context.Background(), filepath.Join(t.TempDir(), "netpost.db"), sqlite.Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return bot.New(bot.Options{Store: s, Find: func(bot.Place) (bot.Association, bool) {
		return bot.Association{ID: "riverside", Code: code.Scholastic, Notes: notes{}}, true
	}})
}

// talking opens a channel with the real conversation behind it.
func talking(t testing.TB, b *bot.Bot) (*Web, *browser) {
	t.Helper()
	w, err := New(Options{Listener: listen(t), Past: b, Notes: notes{}, Code: string(code.Scholastic)})
	if err != nil {
		t.Fatal(err)
	}
	serve(t, w, b.Handle)
	return w, newBrowser(t, w)
}

const (
	turnsOn = "our setter tips the ball over from inside the 3m line, ball above the net"
	joust   = "ball in plane, both front row, fourth contact?"
)

// pressed is the page after a button of a page was pressed.
func (b *browser) pressed(from page, label string) page {
	b.t.Helper()
	for _, i := range read(from.body).Buttons {
		if strings.TrimSpace(i.Label) == label {
			f := forms(from.body)["/press"]
			f.Set("state", i.State)
			to := b.post("/press", f)
			if to.status != 303 {
				b.t.Fatalf("pressing %q gives %d", label, to.status)
			}
			return b.get(to.to)
		}
	}
	b.t.Fatalf("there is no button %q in\n%s", label, read(from.body).Text)
	return page{}
}

func (b *browser) asked(fields ...string) (string, page) {
	b.t.Helper()
	p := b.post("/ask", b.form(fields...))
	if p.status != 303 {
		b.t.Fatalf("asking gives %d\n%s", p.status, p.body)
	}
	return p.to, b.get(p.to)
}

func shows(t *testing.T, p page, want ...string) {
	t.Helper()
	text := strings.Join(strings.Fields(read(p.body).Text), " ")
	for _, s := range want {
		if !strings.Contains(text, s) {
			t.Errorf("%q does not show in\n%s", s, text)
		}
	}
}

func lacks(t *testing.T, p page, unwanted ...string) {
	t.Helper()
	text := strings.Join(strings.Fields(read(p.body).Text), " ")
	for _, s := range unwanted {
		if strings.Contains(text, s) {
			t.Errorf("%q shows in\n%s", s, text)
		}
	}
}

// Asked privately: the deciding fact is pressed, the ruling changes in its
// place, the codes are looked at, it is shared, and another opens its link.
func TestStory(t *testing.T) {
	b := conversation(t)
	w, ana := talking(t, b)
	at, p := ana.asked("words", turnsOn)
	shows(t, p, "You asked "+turnsOn, "It turns on this:", "back row", "Only you see this", "2026-014")
	if !strings.Contains(p.body, `href="`+PagesPath+`2026-014.html"`) {
		t.Error("the note has no link")
	}
	p = ana.pressed(p, "back row")
	shows(t, p, "Fault: back-row attack", "Told since", "You asked "+turnsOn)
	lacks(t, p, "It turns on this")
	for _, i := range read(p.body).Buttons {
		if strings.HasPrefix(i.Label, "Other codes") {
			shows(t, ana.pressed(p, i.Label), "Every code", "international")
		}
	}
	bo := newBrowser(t, w)
	if got := bo.get(at); got.status != 404 {
		t.Errorf("another sees a private question: %d", got.status)
	}
	p = ana.pressed(ana.get(at), "Share with the channel")
	shows(t, p, "Link to this question", "Fault: back-row attack")
	got := bo.get(at)
	shows(t, got, "Fault: back-row attack")

	// Another's press makes a copy of the other's own.
	bo.get("/")
	for _, i := range read(got.body).Buttons {
		if strings.HasPrefix(i.Label, "What would change") {
			shows(t, bo.pressed(got, i.Label), "Would change", "Only you see this")
		}
	}
	shows(t, ana.get("/"), turnsOn, "fault: back-row attack", "all here see it")
	shows(t, bo.get("/"), turnsOn)
}

// Asked before all: words below the answer are facts, in a form or not.
func TestStoryInWords(t *testing.T) {
	b := conversation(t)
	_, ana := talking(t, b)
	at, p := ana.asked("words", turnsOn, "open", "yes")
	shows(t, p, "It turns on this:", "Link to this question")
	to := ana.post("/say", ana.form("message", at[len("/q/"):], "words", "she was front row"))
	p = ana.get(to.to)
	if to.to != at {
		t.Errorf("words in the talk lead to %s, not to %s", to.to, at)
	}
	shows(t, p, "Play on, no fault", "You asked "+turnsOn)
	to = ana.post("/say", ana.form("message", at[len("/q/"):], "words", "xylophone"))
	shows(t, ana.get(to.to), "xylophone")

	at, p = ana.asked("words", turnsOn)
	f := forms(p.body)["/press"]
	f.Set("state", "/words/"+at[len("/q/"):])
	to = ana.post("/press", f)
	p = ana.get(to.to)
	shows(t, p, "In your own words", "What answers the question?")
	f = forms(p.body)["/submit"]
	f.Set("field-words", "back row")
	to = ana.post("/submit", f)
	if to.to != at {
		t.Errorf("the form leads to %s, not to %s", to.to, at)
	}
	shows(t, ana.get(at), "Fault: back-row attack")
}

// A form sent twice is carried out once, and leads to the same page.
func TestSentTwice(t *testing.T) {
	b := conversation(t)
	_, ana := talking(t, b)
	f := ana.form("words", joust)
	first, second := ana.post("/ask", f), ana.post("/ask", f)
	if first.to != second.to {
		t.Errorf("sent twice it leads to %s and to %s", first.to, second.to)
	}
	if n := strings.Count(ana.get("/").body, `href="/q/`); n != 1 {
		t.Errorf("it was asked %d times", n)
	}
}

// After a restart the questions are there, with their buttons; a page of
// before the restart can still be pressed.
func TestRestart(t *testing.T) {
	b := conversation(t)
	_, ana := talking(t, b)
	at, p := ana.asked("words", turnsOn)
	shared, _ := ana.asked("words", joust, "open", "yes")

	again, later := talking(t, b)
	later.base = again.origin
	u, err := url.Parse(ana.base)
	if err != nil {
		t.Fatal(err)
	}
	ua, err := url.Parse(later.base)
	if err != nil {
		t.Fatal(err)
	}
	later.Jar.SetCookies(ua, ana.Jar.Cookies(u))
	shows(t, later.get("/"), turnsOn, joust, "it depends")
	shows(t, later.pressed(p, "back row"), "Fault: back-row attack", "You asked "+turnsOn)
	shows(t, later.get(at), "Only you see this")
	shows(t, later.get(shared), "Link to this question")
	other := newBrowser(t, again)
	if got := other.get(at); got.status != 404 {
		t.Errorf("another sees a private question after a restart: %d", got.status)
	}
	shows(t, other.get(shared), "You asked "+joust)
	if got := other.get("/q/" + store.NewID()); got.status != 404 {
		t.Errorf("a question that never was: %d", got.status)
	}
}

// A name is asked about before anything is kept.
func TestHeldBack(t *testing.T) {
	b := conversation(t)
	_, ana := talking(t, b)
	_, p := ana.asked("words", "Coach Zyrianova said the "+turnsOn[len("our "):])
	shows(t, p, "Is this a person's name?")
	lacks(t, ana.get("/"), "Zyrianova")
	p = ana.pressed(p, "Leave the name out")
	lacks(t, p, "Zyrianova")
	shows(t, p, "You asked")
	lacks(t, ana.get("/"), "Zyrianova")
}
