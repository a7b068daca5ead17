package bot

// Reply is what comes of an event. The set is closed; its members are Say,
// Update, Form, Choices and Nothing. A handler never returns nil.
type Reply interface{ reply() }

// Message is what is shown in one place: a document, the page of it to show,
// and pictures.
type Message struct {
	Doc Doc
	// More leads to the rest where the document does not fit: the state of the
	// button to page n is MoreState(More, n). Empty: the document was made to
	// fit anywhere, or is cut with a mark.
	More string
	Page int // of Pages, from 0
	// About is the id of the question that the message answers; empty: of none.
	// A platform that keeps pages can show it again by that (see Bot.Recall).
	About string
	// Pictures stand below the document. What they show is in the words too.
	Pictures []Picture
	// Drawn is the state of a button that shows the pictures alone, for where
	// they can't stand below the document; empty: there is none.
	Drawn string
}

// Picture is one image. A file of another type is offered in the same way where
// a platform can; the document holds its words too.
type Picture struct {
	Name string // of the file, such as court.png
	Type string // its media type
	Alt  string // what it shows, for those who can't see it; never empty
	Data []byte
	// Make makes the data where there is none: see Made.
	Make func() ([]byte, error)
}

// Made are the pictures with their data, those left out that failed or have
// none; failed, if any, is why. To make one takes a while: an adapter does so
// once the event is acknowledged, and without it the words must do.
func Made(ps []Picture) (made []Picture, failed error) {
	for _, p := range ps {
		if len(p.Data) == 0 && p.Make != nil {
			data, err := p.Make()
			if err != nil {
				failed = err
				continue
			}
			p.Data, p.Make = data, nil
		}
		if len(p.Data) > 0 {
			made = append(made, p)
		}
	}
	return made, failed
}

// Say is a new message.
type Say struct {
	Message
	// Private: only the person of the event may see it. Where a platform
	// can't do that in the place, it goes as a direct message, never in public.
	Private bool
	// InThread puts it in a thread: the one that the event is in, else one
	// begun on the message On, else on that of a Mention or ThreadReply. Where
	// there is no message to begin it on, it goes to the place itself.
	InThread bool
	On       string // the platform's id of a message in the place; empty: the event's own
	// Ref comes back in a Posted once it is known what became of the message.
	// Empty: nobody wants to know.
	Ref string
	// Edits are earlier messages of ours in the same place that change with
	// it. One that is gone is no error.
	Edits []Edit
}

// Edit puts a new text in place of an earlier message of ours.
type Edit struct {
	ID string // the platform's id of the message
	Message
}

// Update puts a message in place of the one that was pressed or whose form was
// sent off. Where there is none, or the platform refuses, it is said anew and
// privately.
type Update struct {
	Message
	Ref string // as in Say
}

// Form asks for words. It is only ever the reply to a Command, Shortcut or
// Press for which Defer says AckNone.
type Form struct {
	State  string // comes back in Submit; at most MaxState bytes
	Title  string // at most 24 letters
	Send   string // the label of its button, at most 24 letters
	Intro  string // a line above the fields; may be left out where there is no room
	Fields []Input
}

// Input is one field of a form.
type Input struct {
	Name  string // unique in the form
	Label string // at most 45 letters
	Value string // filled in beforehand
	Hint  string // shown while it is empty, at most 100 letters
	Lines bool   // more than one line
	Must  bool   // may not be left empty
	Max   int    // the most letters; 0: as many as the platform takes
}

// Choices are completions, at most MaxChoices.
type Choices struct{ Items []Choice }

// Choice is one completion.
type Choice struct {
	Label string // at most 100 letters
	Value string // at most 100 letters
}

// MaxChoices is how many completions a reply holds at most.
const MaxChoices = 25

// Nothing is no reply: the event is acknowledged and that is all.
type Nothing struct{}

func (Say) reply()     {}
func (Update) reply()  {}
func (Form) reply()    {}
func (Choices) reply() {}
func (Nothing) reply() {}
