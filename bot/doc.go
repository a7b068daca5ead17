// Package bot is the conversation: what a crew is told and how it is laid out.
//
// A message is one Doc: a short list of blocks that knows nothing of any
// platform. Ruling lays an answer out as a Doc; each target has one printer.
// The printer for plain text and terminals is Print.
//
//	doc := bot.Ruling(answer.Ask(words, answer.Options{}))
//	err := bot.Print(os.Stdout, doc, bot.TextOptions{})
package bot

// Doc is one message. The zero value is an empty message.
type Doc struct {
	// Tone is the tone of the whole message, for targets that mark one.
	Tone   Tone
	Blocks []Block
}

// Tone says what sort of news a message or heading brings. It carries no
// meaning that the words do not: a target may leave it out.
type Tone uint8

// The tones. The zero value is plain.
const (
	Plain Tone = iota
	Good       // no fault
	Bad        // a fault
	Again      // the rally or the serve is played again
	Open       // it turns on a fact
	Care       // people come first
)

// Block is one part of a message. The set is closed; its members are Heading,
// Para, List, Quote, Fields, Tree, Buttons, Link and Aside. A printer handles
// every one and panics on anything else.
type Block interface{ block() }

// Heading leads a message or a part of it: one line, never empty.
type Heading struct {
	Text string
	Tone Tone
}

// Para is one paragraph.
type Para struct{ Text Text }

// List is a list of short items.
type List struct{ Items []Text }

// Quote is somebody's own words or the text of a rule.
type Quote struct{ Text Text }

// Fields are labelled lines, the label said once for all lines of a field.
type Fields struct{ Items []Field }

// Field is a label with its lines; a field with no lines is not printed.
type Field struct {
	Label string
	Lines []Text
}

// Tree is a small tree of questions under one label.
type Tree struct {
	Label string
	Root  Node
}

// Node is one question of a tree with what follows from each answer.
type Node struct {
	Ask  string
	Kids []Kid
}

// Kid is one answer: either the Next question, or Then, what it comes to.
type Kid struct {
	When string
	Then string
	Next *Node
}

// Buttons offer answers to press. A target without buttons shows the state,
// which can be typed instead.
type Buttons struct {
	Label string
	Items []Button
}

// Button is one answer. State comes back when it is pressed and fits in 100
// bytes.
type Button struct {
	Label string
	State string
}

// Link points to more. URL may be empty; then the label stands alone.
type Link struct {
	Label string
	URL   string
}

// Aside is small print.
type Aside struct{ Text Text }

func (Heading) block() {}
func (Para) block()    {}
func (List) block()    {}
func (Quote) block()   {}
func (Fields) block()  {}
func (Tree) block()    {}
func (Buttons) block() {}
func (Link) block()    {}
func (Aside) block()   {}

// Text is a run of spans that read as one line of prose.
type Text []Span

// Span is a piece of text in one style.
type Span struct {
	Text  string
	Style Style
}

// Style is how a span stands out. It carries no meaning that the words do not.
type Style uint8

// The styles. The zero value is ordinary text.
const (
	Ordinary Style = iota
	Strong
	Faint
)

// Line is text in the ordinary style.
func Line(s string) Text { return Text{{Text: s}} }

// String is the text without its styles.
func (t Text) String() string {
	n := 0
	for _, s := range t {
		n += len(s.Text)
	}
	b := make([]byte, 0, n)
	for _, s := range t {
		b = append(b, s.Text...)
	}
	return string(b)
}
