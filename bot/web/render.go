package web

import (
	"encoding/base64"
	"fmt"
	"html"
	"net/url"
	"strconv"
	"strings"
	"unicode"

	"example.org/netpost/bot"
)

// printer writes a message as HTML. Everything that anybody wrote goes through
// text, and every address through href.
type printer struct {
	strings.Builder
	led  bool // the leading heading is out
	form form // that buttons stand in
}

// form is what a form needs to be sent: the token of the browser's forms, an
// id of its own, and the message that it is about.
type form struct {
	Token, Delivery, Message string
}

// Hidden are the form's hidden fields.
func (f form) hidden() string {
	s := ""
	for _, h := range []struct{ name, value string }{{"form", f.Token}, {"delivery", f.Delivery}, {"message", f.Message}} {
		if h.value != "" {
			s += `<input type="hidden" name="` + h.name + `" value="` + html.EscapeString(h.value) + `">`
		}
	}
	return s
}

// clean takes away what would steer a screen or turn the reading direction.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || unicode.Is(unicode.Cf, r) {
			return ' '
		}
		return r
	}, s)
}

func (p *printer) text(s string) { p.WriteString(html.EscapeString(clean(s))) }

func (p *printer) spans(t bot.Text) {
	for _, s := range t {
		switch s.Style {
		case bot.Strong:
			p.WriteString("<strong>")
			p.text(s.Text)
			p.WriteString("</strong>")
		case bot.Faint:
			p.WriteString(`<span class="faint">`)
			p.text(s.Text)
			p.WriteString("</span>")
		default:
			p.text(s.Text)
		}
	}
}

// href is an address that a link may lead to: a page of ours or of the web.
func href(s string) (string, bool) {
	u, err := url.Parse(s)
	if err != nil || s == "" {
		return "", false
	}
	if u.Scheme == "http" || u.Scheme == "https" {
		return s, u.Host != ""
	}
	return s, u.Scheme == "" && u.Host == "" && strings.HasPrefix(s, "/") && !strings.HasPrefix(s, "//")
}

// tones are the classes of headings, by tone.
var tones = map[bot.Tone]string{
	bot.Plain: "plain", bot.Good: "good", bot.Bad: "bad", bot.Again: "again", bot.Open: "open", bot.Care: "care",
}

// message writes a message: what people are told first, then what is asked of
// them, the pictures, and the rest.
func (p *printer) message(m bot.Message) {
	blocks, asked := m.Doc.Blocks, -1
	for i, b := range blocks {
		if _, ok := b.(bot.Buttons); ok && m.Doc.Tone == bot.Open {
			asked = i
			break
		}
	}
	early := func() {
		if asked >= 0 {
			p.block(blocks[asked])
		}
		p.pictures(m.Pictures)
	}
	done := false
	for i, b := range blocks {
		h, heading := b.(bot.Heading)
		if i != asked {
			p.block(b)
		}
		if heading && h.Tone != bot.Care && !done {
			early()
			done = true
		}
	}
	if !done {
		early()
	}
}

func (p *printer) pictures(all []bot.Picture) {
	for _, pic := range all {
		switch pic.Type {
		case "image/svg+xml", "image/png", "image/jpeg", "image/gif", "image/webp":
		case "text/csv":
			// To be kept, never to be looked at: a browser runs nothing of it.
			p.WriteString(`<p><a download="`)
			p.text(pic.Name)
			p.WriteString(`" href="data:` + pic.Type + `;base64,` + base64.StdEncoding.EncodeToString(pic.Data) + `">`)
			p.text(pic.Alt)
			p.WriteString(`</a></p>`)
			continue
		default:
			continue // what a browser may not show as a picture
		}
		// As the source of an image, an SVG can run nothing and load nothing.
		p.WriteString(`<figure class="picture" tabindex="0" aria-label="Picture"><img alt="`)
		p.text(pic.Alt)
		p.WriteString(`" src="data:` + pic.Type + `;base64,` + base64.StdEncoding.EncodeToString(pic.Data) + `"></figure>`)
	}
}

func (p *printer) block(b bot.Block) {
	switch b := b.(type) {
	case bot.Heading:
		p.heading(b)
	case bot.Para:
		p.in("p", "", b.Text)
	case bot.List:
		p.WriteString("<ul>")
		for _, t := range b.Items {
			p.in("li", "", t)
		}
		p.WriteString("</ul>")
	case bot.Quote:
		p.WriteString("<blockquote>")
		p.in("p", "", b.Text)
		p.WriteString("</blockquote>")
	case bot.Fields:
		p.fields(b)
	case bot.Tree:
		p.WriteString(`<dl class="fields"><div><dt>`)
		p.text(b.Label)
		p.WriteString(`</dt><dd class="tree">`)
		p.node(b.Root)
		p.WriteString("</dd></div></dl>")
	case bot.Buttons:
		p.buttons(b)
	case bot.Link:
		p.WriteString(`<p class="link">`)
		if to, ok := href(b.URL); ok {
			p.WriteString(`<a href="` + html.EscapeString(to) + `" rel="noreferrer">`)
			p.text(b.Label)
			p.WriteString("</a>")
		} else {
			p.text(strings.TrimSpace(b.Label + " " + b.URL))
		}
		p.WriteString("</p>")
	case bot.Aside:
		p.in("p", "aside", b.Text)
	default:
		panic(fmt.Sprintf("web: a block outside the closed set: %T", b))
	}
}

func (p *printer) in(element, class string, t bot.Text) {
	p.WriteString("<" + element)
	if class != "" {
		p.WriteString(` class="` + class + `"`)
	}
	p.WriteString(">")
	p.spans(t)
	p.WriteString("</" + element + ">")
}

// heading writes a heading. The first that is no caution leads the message,
// and is where the page is read from after a press.
func (p *printer) heading(h bot.Heading) {
	switch {
	case h.Tone == bot.Care:
		p.WriteString(`<p class="care" role="alert">`)
		p.text(h.Text)
		p.WriteString("</p>")
		return
	case !p.led:
		p.led = true
		p.WriteString(`<h2 class="lead ` + tones[h.Tone] + `">`)
	default:
		p.WriteString(`<h3 class="` + tones[h.Tone] + `">`)
		p.text(h.Text)
		p.WriteString("</h3>")
		return
	}
	p.text(h.Text)
	p.WriteString("</h2>")
}

func (p *printer) fields(f bot.Fields) {
	open := false
	for _, i := range f.Items {
		if len(i.Lines) == 0 {
			continue
		}
		if !open {
			p.WriteString(`<dl class="fields">`)
			open = true
		}
		p.WriteString("<div><dt>")
		p.text(i.Label)
		p.WriteString("</dt>")
		for _, l := range i.Lines {
			p.in("dd", "", l)
		}
		p.WriteString("</div>")
	}
	if open {
		p.WriteString("</dl>")
	}
}

func (p *printer) node(n bot.Node) {
	p.WriteString("<p>")
	p.text(n.Ask)
	p.WriteString("</p><ul>")
	for _, k := range n.Kids {
		p.WriteString("<li>")
		p.text(k.When + ": ")
		if k.Next != nil {
			p.node(*k.Next)
		} else {
			p.WriteString("<strong>")
			p.text(k.Then)
			p.WriteString("</strong>")
		}
		p.WriteString("</li>")
	}
	p.WriteString("</ul>")
}

// buttons writes a group of buttons as a form of its own.
func (p *printer) buttons(b bot.Buttons) {
	if len(b.Items) == 0 {
		return
	}
	p.WriteString(`<form class="press" method="post" action="/press"><fieldset><legend>`)
	p.text(b.Label)
	p.WriteString("</legend>" + p.form.hidden())
	for _, i := range b.Items {
		p.WriteString(`<button name="state" value="` + html.EscapeString(i.State) + `">`)
		p.text(i.Label)
		p.WriteString("</button>")
	}
	p.WriteString("</fieldset></form>")
}

// input writes one field of a form.
func (p *printer) input(n int, in bot.Input) {
	id := "field" + strconv.Itoa(n)
	attrs := ` id="` + id + `" name="` + html.EscapeString(fieldPrefix+in.Name) + `"`
	if in.Must {
		attrs += " required"
	}
	if in.Max > 0 {
		attrs += ` maxlength="` + strconv.Itoa(in.Max) + `"`
	}
	p.WriteString(`<label for="` + id + `">`)
	p.text(in.Label)
	p.WriteString("</label>")
	if in.Hint != "" {
		attrs += ` aria-describedby="` + id + `hint"`
		p.WriteString(`<p class="aside" id="` + id + `hint">`)
		p.text(in.Hint)
		p.WriteString("</p>")
	}
	if in.Lines {
		p.WriteString("<textarea rows=\"3\"" + attrs + ">")
		p.WriteString(html.EscapeString(in.Value))
		p.WriteString("</textarea>")
		return
	}
	p.WriteString("<input" + attrs + ` value="` + html.EscapeString(in.Value) + `">`)
}
