package discord

import (
	"encoding/json"
	"flag"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/discord/discordfake"
	"example.org/netpost/bot/wire"
)

var _ = flag.Bool("update", false, "rewrite the expected texts in testdata")

// wireOf is a message as it goes out.
func wireOf(t testing.TB, m outgoing) string {
	t.Helper()
	var b strings.Builder
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(m); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestRender(t *testing.T) {
	for name, m := range map[string]bot.Message{
		"everything": {Doc: bottest.Everything()},
		"short":      {Doc: sorry("I don't know this button.", "Ask the question again.")},
		"empty":      {},
		"pictures": {Doc: sorry("See the court.", "Six players."), Pictures: []bot.Picture{
			{Name: "../court 1.png", Type: "image/png", Alt: "Six players\nin their places", Data: []byte("x")},
			{Name: "", Type: "image/png", Alt: "empty"},
			{Name: "big.png", Type: "image/png", Alt: "too large", Data: make([]byte, maxPicture+1)}}},
	} {
		out := wireOf(t, render(m))
		bottest.Golden(t, "render/"+name+".json", out)
		if p := discordfake.Check([]byte(out)); p != nil {
			t.Errorf("%s: %v", name, p)
		}
	}
}

func TestForm(t *testing.T) {
	f := bot.Form{State: "/tell/q", Title: "In your own words", Send: "Rule on it", Intro: "One more fact", Fields: []bot.Input{
		{Name: "words", Label: strings.Repeat("What answers the question? ", 3), Lines: true, Must: true, Max: 500},
		{Name: "code", Label: "Code", Value: "club", Hint: "@everyone: one of four"}}}
	b, err := json.MarshalIndent(form(f), "", " ")
	if err != nil {
		t.Fatal(err)
	}
	bottest.Golden(t, "render/form.json", string(b)+"\n")
	if p := discordfake.CheckForm(b); p != nil {
		t.Error(p)
	}
}

// nasty is what somebody writes to be heard by all, or to break the page.
const nasty = "@everyone @HERE <@12> <@!12> <@&900> <#50> </ask:1> <t:1:R> <a:x:1> *bold* __under__ _slanted_ ~~struck~~ `code` ```block``` ||hidden|| " +
	"# head > quoted - list 1. one [good](https://bad.example) <https://bad.example> https://auto.example :skull: \x1b[31m \u202edne \u200b row_of_three 5*3*2 \\* \\"

// Nothing in anybody's words is markup, wherever they stand, and all that was
// written is read.
func TestHostileWords(t *testing.T) {
	for _, words := range append(strings.Fields(nasty), nasty, "# a", "-# a", "> a", ">>> a", "- a", "+ a", "12. a", "3) a", "  - a", "**", "a**", "_", "\\", "[", "](") {
		for _, style := range []bot.Style{bot.Ordinary, bot.Strong, bot.Faint} {
			span := bot.Text{{Text: words, Style: style}}
			m := render(bot.Message{Doc: bot.Doc{Blocks: []bot.Block{bot.Para{Text: span}, bot.List{Items: []bot.Text{span}}}}})
			got := discordfake.Read(wireOf(t, m))
			want := strings.Join(strings.Fields(wire.Clean(words)), " ")
			if n := strings.Count(strings.Join(strings.Fields(got), " "), want); n != 2 || strings.Contains(got, "⟪") {
				t.Errorf("%q in style %d is read as %q", words, style, got)
			}
		}
	}
}

// No message is over a limit, and no word of it is lost over its pages.
func FuzzRender(f *testing.F) {
	f.Add(nasty, 3, true)
	f.Add("word ", 1500, false)
	f.Add(strings.Repeat("😀", 200), 40, true)
	f.Add("", 1, true)
	f.Fuzz(func(t *testing.T, words string, times int, more bool) {
		if !utf8.ValidString(words) || times < 0 || times > 3000 || len(words)*times > 20_000 {
			return // too long to be quick, or no text: JSON has none either
		}
		long := strings.Repeat(words, times)
		d := bot.Doc{Blocks: []bot.Block{bot.Heading{Text: "head " + words}, bot.Para{Text: bot.Line(long)}, bot.Fields{Items: []bot.Field{{Label: words, Lines: []bot.Text{bot.Line(words)}}}},
			bot.Aside{Text: bot.Line(words)}, bot.Buttons{Label: words, Items: []bot.Button{{Label: words, State: "/a"}, {Label: long, State: "/b"}}}, bot.Link{Label: words, URL: words}}}
		m := bot.Message{Doc: d}
		if more {
			m.More = "/more/q"
		}
		for m.Page = range min(len(bot.Pages(m, fits)), 4) {
			if p := discordfake.Check([]byte(wireOf(t, render(m)))); p != nil {
				t.Errorf("page %d: %v", m.Page, p)
			}
		}
	})
}

func TestChoices(t *testing.T) {
	var c bot.Choices
	for range 30 {
		c.Items = append(c.Items, bot.Choice{Label: strings.Repeat("l", 200), Value: "v"})
	}
	c.Items = append([]bot.Choice{{Label: "long", Value: strings.Repeat("v", 101)}, {Label: "", Value: "v"}}, c.Items...)
	got := choices(c)
	if len(got) != bot.MaxChoices || wire.Size(got[0].Name) > maxChoice || got[0].Value != "v" {
		t.Errorf("%d choices: %+v", len(got), got[0])
	}
	if choices(bot.Choices{}) == nil {
		t.Error("no completions are null")
	}
}

// The table of codes is sorted and unique, and each row does something.
func TestCodes(t *testing.T) {
	if !slices.IsSortedFunc(codes, func(a, b code) int { return a.code - b.code }) {
		t.Error("not sorted by code")
	}
	for i, c := range codes {
		if i > 0 && codes[i-1].code == c.code {
			t.Errorf("%d is there twice", c.code)
		}
		if c.does == 0 {
			t.Errorf("%d means nothing", c.code)
		}
		if got, r := row(&refusal{code: c.code}); got == nil || r != c {
			t.Errorf("%d is not found", c.code)
		}
	}
	for c, mends := range closes {
		if c < 4000 || c > 4999 || mends == "" {
			t.Errorf("%d: %q", c, mends)
		}
	}
}

// What is registered is derived from the conversation's table, and printed for
// a person to read.
func TestManifest(t *testing.T) {
	bottest.Golden(t, "commands.json", Manifest())
	if !same(commands(), commands()) || same(commands(), commands()[:1]) {
		t.Error("the commands are not compared")
	}
	if got := Invite("8800"); got != "https://discord.com/oauth2/authorize?client_id=8800&permissions=309237697536&scope=applications.commands+bot" {
		t.Error(got)
	}
}

// Names of persons stay, the bot's own goes.
func TestSaid(t *testing.T) {
	for text, want := range map[string]string{
		"<@7700> joust?":         "joust?",
		"<@!12> and <@13>":       "@Bo and @13",
		"<#50> <:ace:1> <a:b:2>": "#50 :ace: :b:",
		"</netpost ask:1> x":     "/netpost ask x",
		"a < b > c <@x> <12>":    "a < b > c <@x> <12>",
		"at <t:1700000000:R>!":   "at !",
	} {
		if got := said(text, "7700", map[string]string{"12": "Bo"}); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// No error that is bottest.Log has a token in it, or an address that works without
// one.
func TestScrub(t *testing.T) {
	for _, in := range []string{
		"Post https://discord.com/api/v9/interactions/1/aW50ZXJhY3Rpb24/callback: EOF",
		"webhooks/8800/aW50ZXJhY3Rpb24 failed",
		"bad token MTIzNDU2Nzg5MDEyMzQ1Njc4.GabcdE.abcdefghijklmnopqrstuvwxyz12",
	} {
		got := scrub(errFor(in))
		if strings.Contains(got, "aW50ZXJ") || strings.Contains(got, "GabcdE") {
			t.Errorf("%q", got)
		}
	}
}

type errFor string

func (e errFor) Error() string { return string(e) }
