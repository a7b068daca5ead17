package slack

import (
	"encoding/json"
	"flag"
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/slack/slackfake"
	"example.org/netpost/bot/wire"
)

var _ = flag.Bool("update", false, "rewrite the expected texts in testdata")

// wireOf is a message as it goes out.
func wireOf(t testing.TB, r rendered) []byte {
	t.Helper()
	b, err := json.MarshalIndent(r.blocks, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestRender(t *testing.T) {
	r := render(bot.Message{Doc: bottest.Everything()})
	bottest.Golden(t, "render/everything.txt", r.text+"\n\n"+string(wireOf(t, r))+"\n")
	if p := slackfake.Check(r.text, wireOf(t, r)); p != nil {
		t.Error(p)
	}
}

// nasty is what somebody writes to be heard by all, or to break the page.
const nasty = "<!channel> <!here|x> @everyone @channel @here <@U0BO> <#C0TALK|talk> <!subteam^S1|@refs> *bold* _slanted_ ~struck~ `code` ```block``` " +
	"&lt;!channel&gt; > quoted :skull: <https://bad.example|good> \x1b[31m \u202edne \u200b https://auto.example row_of_three 5*3*2"

func TestHostile(t *testing.T) {
	d := bot.Doc{Blocks: []bot.Block{
		bot.Heading{Text: nasty, Tone: bot.Bad}, bot.Para{Text: bot.Line("> " + nasty)}, bot.Para{Text: bot.Text{{Text: nasty, Style: bot.Strong}}},
		bot.List{Items: []bot.Text{bot.Line(nasty)}}, bot.Quote{Text: bot.Line(nasty)},
		bot.Fields{Items: []bot.Field{{Label: nasty, Lines: []bot.Text{bot.Line(nasty), bot.Line(nasty)}}}},
		bot.Tree{Label: nasty, Root: bot.Node{Ask: nasty, Kids: []bot.Kid{{When: nasty, Then: nasty}}}},
		bot.Buttons{Label: nasty, Items: []bot.Button{{Label: nasty, State: "/undo/x"}}},
		bot.Link{Label: nasty, URL: "https://notes.example/a|b>c"}, bot.Link{Label: nasty, URL: "javascript:alert(1)"}, bot.Aside{Text: bot.Line(nasty)},
	}}
	r := render(bot.Message{Doc: d})
	out := wireOf(t, r)
	if p := slackfake.Check(r.text, out); p != nil {
		t.Error(p)
	}
	bottest.Golden(t, "render/hostile.txt", r.text+"\n\n"+string(out)+"\n")
}

// What is marked in a text is what we marked, and the words are all there.
func TestEscape(t *testing.T) {
	for _, test := range []struct{ in, want string }{
		{"plain words, 9.2.3!", "plain words, 9.2.3!"},
		{"a < b & c > d", "a &lt; b &amp; c &gt; d"},
		{"*bold* and ~no~ `code`", "∗bold∗ and ∼no∼ ˋcodeˋ"},
		{"_slanted_ but row_of_three", "ˍslantedˍ but row_of_three"},
		{"@here and @Everyone, not ana@here.example", "@\u200bhere and @\u200bEveryone, not ana@\u200bhere.example"},
		{":skull: at 9:30:15", ":\u200bskull: at 9:\u200b30:15"},
		{"a\nb\tc\x00d\u202ee\xff", "a b c d e?"},
	} {
		if got := escape(test.in); got != test.want {
			t.Errorf("escape(%q) = %q, want %q", test.in, got, test.want)
		}
	}
}

func TestMrkdwn(t *testing.T) {
	s := func(words string) bot.Span { return bot.Span{Text: words, Style: bot.Strong} }
	o := func(words string) bot.Span { return bot.Span{Text: words} }
	for _, test := range []struct {
		in   bot.Text
		want string
	}{
		{bot.Text{s("all of it")}, "*all of it*"},
		{bot.Text{o("against "), s("A"), o(": yes")}, "against *A*: yes"},
		{bot.Text{o("against"), s(" A "), o("yes")}, "against *A* yes"},
		{bot.Text{o("un"), s("block"), o("ed")}, "un\u200b*block*\u200bed"},
		{bot.Text{s("a"), {Text: "b", Style: bot.Faint}}, "*a*\u200b_b_"},
		{bot.Text{s("a"), s("b")}, "*ab*"},
		{bot.Text{s("  ")}, "  "},
		{bot.Text{o("> no quotation")}, "› no quotation"},
		{nil, ""},
	} {
		if got := mrkdwn(test.in); got != test.want {
			t.Errorf("mrkdwn(%v) = %q, want %q", test.in, got, test.want)
		}
	}
}

// Any document is within Slack's limits, in as many pages as it takes, and
// no word of it is lost.
func TestPages(t *testing.T) {
	var d bot.Doc
	d.Blocks = append(d.Blocks, bot.Heading{Text: strings.Repeat("long heading ", 40), Tone: bot.Care})
	n := 0
	words := func(k int) bot.Text {
		var b strings.Builder
		for range k {
			n++
			fmt.Fprintf(&b, "w%d &<> ", n)
		}
		return bot.Line(b.String())
	}
	for range 40 {
		d.Blocks = append(d.Blocks, bot.Para{Text: words(60)}, bot.Aside{Text: words(3)})
	}
	d.Blocks = append(d.Blocks, bot.Quote{Text: words(3000)})
	many := bot.Buttons{Label: "Press"}
	for i := range 60 {
		many.Items = append(many.Items, bot.Button{Label: fmt.Sprintf("button %d", i), State: fmt.Sprintf("/undo/%d", i)})
	}
	d.Blocks = append(d.Blocks, many)
	m := bot.Message{Doc: d, More: "/more/q/ruling"}
	var all strings.Builder
	for i, page := range bot.Pages(m, fits) {
		r := rendered{fallback(page), layout(page)}
		out := wireOf(t, r)
		if p := slackfake.Check(r.text, out); p != nil {
			t.Fatalf("page %d: %v", i, p)
		}
		all.Write(out)
	}
	for i := 1; i <= n; i++ {
		if !strings.Contains(all.String(), fmt.Sprintf("w%d ", i)) {
			t.Fatalf("word %d of %d is on no page", i, n)
		}
	}
	if !strings.Contains(all.String(), "/more/q/ruling/1") {
		t.Error("nothing leads to the second page")
	}
}

func TestFallback(t *testing.T) {
	if r := render(bot.Message{}); r.text == "" {
		t.Error("an empty message has no text, which Slack refuses")
	}
	long := bot.Doc{Blocks: []bot.Block{bot.Para{Text: bot.Line(strings.Repeat("<&> ", 3000))}}}
	text := fallback(long)
	if !strings.HasSuffix(text, bot.CutMark) || wire.Size(text) > 40_000 {
		t.Errorf("the text is %d long and ends in %q", wire.Size(text), text[len(text)-10:])
	}
}

func FuzzRender(f *testing.F) {
	f.Add(nasty, "label", uint16(1))
	f.Add("a*b_c:d:e", "", uint16(400))
	f.Add("𝕏🏐", "<", uint16(3000))
	f.Fuzz(func(t *testing.T, words, label string, times uint16) {
		words, label = words[:min(len(words), 300)], label[:min(len(label), 300)] // more takes long and shows nothing else
		long := strings.Repeat(words, int(times)%(1+2_000/(1+len(words)))+1)
		d := bot.Doc{Blocks: []bot.Block{
			bot.Heading{Text: words, Tone: bot.Bad}, bot.Para{Text: bot.Text{{Text: words}, {Text: long, Style: bot.Strong}, {Text: label, Style: bot.Faint}}},
			bot.Fields{Items: []bot.Field{{Label: label, Lines: []bot.Text{bot.Line(words), bot.Line(long)}}}},
			bot.Tree{Label: label, Root: bot.Node{Ask: words, Kids: []bot.Kid{{When: label, Then: long}}}},
			bot.Quote{Text: bot.Line(long)}, bot.Link{Label: long, URL: "https://notes.example/" + label},
			bot.Buttons{Label: label, Items: []bot.Button{{Label: words, State: "/undo/x"}, {Label: long, State: "/undo/y"}}},
			bot.Aside{Text: bot.Line(long)},
		}}
		m := bot.Message{Doc: d, More: "/more/q/ruling"}
		for i, page := range bot.Pages(m, fits) {
			r := rendered{fallback(page), layout(page)}
			if p := slackfake.Check(r.text, wireOf(t, r)); p != nil {
				t.Fatalf("page %d: %v", i, p)
			}
			if !utf8.ValidString(r.text) {
				t.Fatal("the text is no UTF-8")
			}
		}
	})
}

func TestView(t *testing.T) {
	f := bot.Form{State: "/tell/" + strings.Repeat("x", 90), Title: "In your own words, as many as you like", Send: "Rule on it now, and quickly, please", Intro: nasty,
		Fields: []bot.Input{
			{Name: "words", Label: nasty, Value: strings.Repeat("x", 5000), Hint: strings.Repeat("hint ", 50), Lines: true, Must: true, Max: 500},
			{Name: "code", Max: 100_000},
		}}
	v := view(f, origin{Channel: "C1", Thread: "1.1", Message: "1.2", Response: "https://hooks.example/" + strings.Repeat("x", 4000)})
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	if p := slackfake.CheckView(b); p != nil {
		t.Error(p)
	}
	if !strings.Contains(v.PrivateMetadata, `"m":"1.2"`) || strings.Contains(v.PrivateMetadata, "hooks") {
		t.Errorf("the form carries %q", v.PrivateMetadata)
	}
}
