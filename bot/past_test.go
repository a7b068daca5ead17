package bot_test

import (
	"errors"
	"testing"

	"example.org/netpost/bot"
)

// What was asked in a place is listed and shown again to those who may see it.
func TestPast(t *testing.T) {
	d := newDesk(t)
	ana, bo := d.meta("ana", "riverside"), d.meta("bo", "riverside")
	ask := func(m bot.Meta, words string) string {
		t.Helper()
		s, ok := d.Handle(t.Context(), bot.Command{Meta: m, Text: words}).(bot.Say)
		if !ok || s.About == "" {
			t.Fatalf("%q is answered by %#v", words, s)
		}
		return s.About
	}
	secret := ask(ana, openPlay)
	open := ask(d.meta("ana", "riverside"), "public ball in plane, both front row, fourth contact?")
	elsewhere := ask(d.meta("ana", "hillside"), openPlay)

	list := func(m bot.Meta) (ids []string) {
		t.Helper()
		all, err := d.Past(t.Context(), m.Who, m.Where, 10)
		if err != nil {
			t.Fatal(err)
		}
		for _, a := range all {
			ids = append(ids, a.ID)
			if a.Text == "" || a.Ruling != "it depends" || a.Mine != (m.Who.ID == "ana") || a.Open != (a.ID == open) {
				t.Errorf("%s sees %+v", m.Who.ID, a)
			}
		}
		return ids
	}
	if got := list(ana); len(got) != 2 || got[0] != open || got[1] != secret {
		t.Errorf("ana asked %q", got)
	}
	if got := list(bo); len(got) != 1 || got[0] != open {
		t.Errorf("bo sees %q", got)
	}
	for _, test := range []struct {
		m    bot.Meta
		id   string
		want bool
	}{{ana, secret, true}, {bo, secret, false}, {ana, open, true}, {bo, open, true}, {ana, elsewhere, false}, {ana, "nothing", false}} {
		r, ok := d.Recall(t.Context(), test.m.Who, test.m.Where, test.id)
		if ok != test.want || ok && (r.About != test.id || r.Text == "" || r.Open != (test.id == open)) {
			t.Errorf("%s recalls %s: %t, %+v", test.m.Who.ID, test.id, ok, r)
		}
	}
	other := ana.Where
	other.Channel = "elsewhere"
	if _, ok := d.Recall(t.Context(), ana.Who, other, secret); ok {
		t.Error("a question is recalled in another channel")
	}
	d.store.read = errors.New("the disk is gone")
	if _, err := d.Past(t.Context(), ana.Who, ana.Where, 10); err == nil {
		t.Error("a store that fails gives no error")
	}
	if _, ok := d.Recall(t.Context(), ana.Who, ana.Where, open); ok {
		t.Error("a store that fails shows a question")
	}
}
