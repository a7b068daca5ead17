package store

import (
	"context"
	"time"
)

// Store keeps the rows of every association. It is safe for use by many
// goroutines. Errors are *[Error] but for those of a context or of the
// caller's own function, which come back as they are.
type Store interface {
	// Read shows one association's rows as they stood at one moment.
	// Writes go on meanwhile.
	Read(ctx context.Context, association string, fn func(Reader) error) error

	// Write changes one association's rows, all of fn's changes or none: none
	// when fn returns an error or panics. Writes run one at a time, so keep
	// fn short and do no network in it, and never call the store in it.
	// When Write returns nil the changes last.
	Write(ctx context.Context, association string, fn func(Writer) error) error

	// Associations lists, sorted, the associations that were written to.
	Associations(ctx context.Context) ([]string, error)

	// Check reads the whole store and says what is wrong with it, if anything.
	Check(ctx context.Context) error

	// Scrub takes what was deleted out of the files that the store keeps
	// beside its main one. Call it after a purge or after erasing a person.
	Scrub(ctx context.Context) error

	// Close waits for the running transactions and lets go of the store.
	Close() error
}

// Reader reads one association's rows within one transaction; it is of no use
// after it. A single row that is not there is an error with code [NotFound];
// a list of nothing is empty.
type Reader interface {
	QuestionReader
	MentorReader
	PollReader
	PostReader
	AuditReader
}

// Writer changes one association's rows within one transaction; it is of no
// use after it. It sees its own changes. A new row under an id that is taken
// is an error with code [Exists], and one about a row that is not there
// [NotFound].
type Writer interface {
	Reader
	QuestionWriter
	MentorWriter
	PollWriter
	PostWriter
	AuditWriter
}

// QuestionReader reads questions and what hangs on them.
type QuestionReader interface {
	Question(id string) (Question, error)
	// Questions lists the questions asked in a span.
	Questions(Span) ([]Question, error)
	// QuestionsAfter lists, at most so many, the questions that come after one
	// by time and id, for whoever goes through all of them in turns. The zero
	// time and no id: from the first on.
	QuestionsAfter(asked time.Time, id string, most int) ([]Question, error)
	// Given lists the facts given to a question that still stand, of every view.
	Given(question string) ([]Given, error)
	// History lists all facts given to a question, those taken back too.
	History(question string) ([]Given, error)
	Views(question string) ([]View, error)
	// Thread finds the question that a thread is about.
	Thread(Place) (Thread, error)
	// Threads lists the threads of a question.
	Threads(question string) ([]Thread, error)
	// Button finds what a press means.
	Button(id string) (Button, error)
	// Tally counts the questions of a span by one kind of tag, most asked
	// first, leaving out what fewer than atLeast different people asked. What
	// is disputed counts by fact, whatever event it is of.
	Tally(kind TagKind, in Span, atLeast int) ([]Count, error)
}

// QuestionWriter changes questions and what hangs on them.
type QuestionWriter interface {
	// Deliver reports whether a delivery is new, and marks it as seen until
	// expires. Marked in the transaction that keeps the question, it is
	// answered once and never lost.
	Deliver(key string, now, expires time.Time) (first bool, err error)
	// Ask keeps a new question.
	Ask(Question) error
	// Answer replaces what is known of a question's answer.
	Answer(question string, a Answer) error
	// Give adds a fact to a question, on top of what was given before.
	Give(Given) error
	// Undo takes back the fact given last of those that still stand in one
	// view ("" for the question itself), and returns it. Nothing left to
	// take back is [NotFound].
	Undo(question, view string, by Person, at time.Time) (Given, error)
	// SeeAs adds a view of a question.
	SeeAs(View) error
	// HandIn hands a view in, in private or not, or changes which of the two;
	// when it was handed in first stays.
	HandIn(question, view string, private bool, at time.Time) error
	// NameInView says what the person of a view agrees to be called; empty: not
	// at all.
	NameInView(question, view, name string) error
	// SetThread says which question a thread is about; the last word counts.
	SetThread(Thread) error
	// KeepButton keeps what a press means, where that is too long for the
	// button itself. The same button kept again is no error.
	KeepButton(Button) error
}

// MentorReader reads the mentors' queue and what comes of it.
type MentorReader interface {
	Call(id string) (Call, error)
	// Calls lists the calls for a mentor that are in one of the states at a
	// time; all of them where no state is named.
	Calls(now time.Time, states ...CallState) ([]Call, error)
	// CallsOn lists the calls about a question.
	CallsOn(question string) ([]Call, error)
	// FindReply finds an answer by its id.
	FindReply(id string) (Reply, error)
	// Replies lists the answers to a call.
	Replies(call string) ([]Reply, error)
	// Undelivered lists the answers that did not reach their asker yet.
	Undelivered() ([]Reply, error)
	Draft(id string) (Draft, error)
	// Drafts lists the drafts that are in one of the states; all of them
	// where no state is named.
	Drafts(states ...DraftState) ([]Draft, error)
}

// MentorWriter changes the mentors' queue and what comes of it.
type MentorWriter interface {
	// CallMentor puts a question in the mentors' queue.
	CallMentor(Call) error
	// Claim takes a call for a mentor until a time. A call that another
	// holds is [Taken], a closed one [Closed]; who holds it may claim on.
	Claim(call string, by Person, now, until time.Time) error
	// Release gives a claim back; only who holds it can, others get [Taken].
	Release(call string, by Person, now time.Time) error
	// Nudge marks that mentors were reminded of a call. It reports false
	// when they had been already: a call is nudged once.
	Nudge(call string, now time.Time) (first bool, err error)
	// Reply answers a call. More than one mentor may.
	Reply(Reply) error
	// Delivered marks that an answer reached its asker.
	Delivered(reply string, at time.Time) error
	// CloseCall takes a call off the queue.
	CloseCall(call string, at time.Time) error
	// SaveDraft keeps a draft note, in place of its last version.
	SaveDraft(Draft) error
}

// PollReader reads what a crew rules on together.
type PollReader interface {
	Poll(question string) (Poll, error)
	// Polls lists the polls that are open.
	Polls() ([]Poll, error)
	// Counts counts the votes of a poll, most first, then by call and team.
	Counts(question string) ([]VoteCount, error)
	// Agreement counts the closed polls by season and channel, the newest
	// season first. One that fewer than atLeast members voted in is left out.
	Agreement(atLeast int) ([]Agreement, error)
}

// PollWriter changes what a crew rules on together.
type PollWriter interface {
	// OpenPoll puts a question to a crew.
	OpenPoll(Poll) error
	// Vote keeps a member's call, in place of the one made before. A poll that
	// is closed is [Closed].
	Vote(Vote) error
	// ClosePoll ends a poll. Its votes are counted, those that agree with the
	// ruling apart, and forgotten. Closed again, it is [Closed].
	ClosePoll(question string, at time.Time, agrees func(call, team string) bool) error
}

// PostReader reads what goes out.
type PostReader interface {
	Post(key string) (Post, error)
	// Posts lists the posts in one of the states; all where none is named.
	Posts(states ...PostState) ([]Post, error)
	Bulletin(id string) (Bulletin, error)
	Bulletins() ([]Bulletin, error)
}

// PostWriter moves what goes out from state to state. A step that a post's
// state does not allow is [Closed], and changes nothing.
type PostWriter interface {
	// Queue puts a new post up to be sent. It reports false, and changes
	// nothing, when a post of that key was queued before, whatever came of it.
	Queue(Post) (first bool, err error)
	// Mark says that a queued post is about to be sent. Only what was marked
	// may be sent, after the write that marked it has returned.
	Mark(key string, at time.Time) error
	// Sent says that a marked post is out, or one in doubt after all; message
	// is the platform's id of it.
	Sent(key, message string, at time.Time) error
	// Failed says that a post marked or in doubt is known not to be out, and
	// why. With again it goes back to be sent, else it waits for a person.
	Failed(key, why string, again bool, at time.Time) error
	// Unsure says that it is not known whether a marked post is out, and why:
	// it is in doubt, and waits for a person.
	Unsure(key, why string, at time.Time) error
	// Resume puts every marked post in doubt: call it once at start, before
	// anything is sent. It returns how many there are.
	Resume(at time.Time) (int, error)
	// Resend is a person's word that a post in doubt or failed is to be sent
	// again; Skip that it is not, or that one still queued is not to be sent.
	Resend(key string, by Person, at time.Time) error
	Skip(key string, by Person, at time.Time) error
	// KeepBulletin keeps a bulletin as it was made. It is the association's
	// own publication: neither retention nor erasing a person takes it away.
	KeepBulletin(Bulletin) error
}

// AuditReader reads the audit trail.
type AuditReader interface {
	// Trail lists the entries of a span.
	Trail(Span) ([]Entry, error)
}

// AuditWriter writes the audit trail and deletes.
type AuditWriter interface {
	// Log adds an entry to the audit trail.
	Log(Entry) error
	// Purge deletes what is older than a time: questions with all that hangs
	// on them, whatever state that is in, drafts not touched since, audit
	// entries, the text of other posts (their keys stay, so that nothing is
	// posted again; what waits to be sent is skipped), and the deliveries that
	// have expired by now. Bulletins stay.
	Purge(before, now time.Time) (Deleted, error)
	// Erase deletes a person: their questions with all that hangs on them,
	// their views, votes, calls, answers and drafts, and the audit entries by
	// or about them. Facts that they gave to others' questions stay without
	// their name, as rulings rest on them; answers that reached their asker
	// stay empty and without a name, so that nobody is called again. What was
	// published or what others wrote about them (by id, or by one of the names
	// they go by) is left alone and listed, for a person to look at.
	Erase(p Person, names ...string) (Erased, error)
}

// Span is from a time to just before another. A zero time is no bound; the
// zero value is always.
type Span struct{ From, To time.Time }
