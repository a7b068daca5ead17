package bot

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/netpost/bot/store"
)

// mostPosts is how many posts are listed at once: each has buttons of its own.
const mostPosts = 5

// Waiting reports whether a post waits for a person: it may be out or not, or
// it is known not to be and nobody heard of it.
func Waiting(p store.Post) bool {
	k, ok := postKindOf(p.Key)
	return p.State == store.Doubt && !k.edit || p.State == store.Failed && ok && !k.told
}

// DescribePost says in words what a post is, where it goes and how it stands.
// It tells nothing of who asked or what.
func DescribePost(p store.Post) string {
	what := "a post of a kind that I don't know"
	if k, ok := postKindOf(p.Key); ok {
		what = k.what
	}
	if _, id, _ := strings.Cut(p.Key, "/"); p.Question == "" && id != "" {
		name, _, _ := strings.Cut(id, "/")
		what += " " + name
	}
	where := " in a direct message"
	if p.To.IsZero() && p.Where.Channel != "" {
		where = " in channel " + p.Where.Channel
	}
	s := upper(what) + where + " on " + p.Where.Platform
	at := p.Changed.UTC().Format("2006-01-02 15:04") + " UTC"
	switch p.State {
	case store.Doubt:
		return s + " may have been posted (" + at + "). Look there before you send it again."
	case store.Failed:
		return s + " was not posted (" + at + "): " + Clip(p.Why, 200)
	}
	return s + " is " + string(p.State) + " (" + at + ")"
}

// posts lists what waits for a person.
func (t *turn) posts() Reply {
	m, err := t.listPosts("")
	if err != nil {
		return t.trouble(err, "The posts could not be looked up.")
	}
	return Say{Message: m, Private: true, InThread: t.Where.Thread != ""}
}

// waitingPosts are those that the person may decide about.
func (t *turn) waitingPosts() ([]store.Post, error) {
	var all []store.Post
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		all, err = r.Posts(store.Doubt, store.Failed)
		return err
	})
	return slices.DeleteFunc(all, func(p store.Post) bool {
		k, ok := postKindOf(p.Key)
		return !Waiting(p) || ok && t.role < k.role
	}), err
}

func (t *turn) listPosts(done string) (Message, error) {
	all, err := t.waitingPosts()
	if err != nil {
		return Message{}, err
	}
	var d Doc
	if done != "" {
		d.Blocks = append(d.Blocks, Para{Line(done)})
	}
	if len(all) == 0 {
		d.Blocks = append(d.Blocks, Heading{"No post waits for you", Plain}, Para{Line("What went out is out, and nothing is in doubt.")})
		return Message{Doc: d}, nil
	}
	d.Blocks = append(d.Blocks, Heading{fmt.Sprintf("%s for a decision", many(len(all), "post waits", "posts wait")), Plain})
	for i, p := range all[:min(len(all), mostPosts)] {
		d.Blocks = append(d.Blocks, Para{Line(fmt.Sprintf("%d. %s", i+1, DescribePost(p)))})
		b := Buttons{Label: fmt.Sprintf("Post %d: resend?", i+1)}
		b.add(fmt.Sprintf("Send %d again", i+1), "post", p.Key, "resend")
		b.add(fmt.Sprintf("Drop %d", i+1), "post", p.Key, "drop")
		d.Blocks = append(d.Blocks, b)
	}
	if n := len(all) - mostPosts; n > 0 {
		d.Blocks = append(d.Blocks, Aside{Line(fmt.Sprintf("And %d more, once these are decided.", n))})
	}
	return Message{Doc: d}, nil
}

// decide does what a person decided about a post.
func (t *turn) decide(key, what string) Reply {
	k, ok := postKindOf(key)
	if !ok {
		return t.tell("I don't know posts of this kind.", "They may be of another version of netpost.")
	}
	if t.role < k.role {
		return t.refuse(k.role)
	}
	err := t.write(func(w store.Writer) error {
		return DecidePost(w, key, what == "resend", t.Who.Person, t.Now())
	})
	done := "Dropped: it stays as it is."
	if what == "resend" {
		done = "It is on its way again."
		t.soon()
	}
	switch {
	case err == errSeen:
		return Nothing{}
	case store.CodeOf(err) == store.Closed, store.CodeOf(err) == store.NotFound:
		done = "Somebody has decided about that one already."
	case err != nil:
		return t.trouble(err, "Your decision could not be kept; nothing has changed.")
	}
	m, err := t.listPosts(done)
	if err != nil {
		return t.trouble(err, done+" The others could not be looked up.")
	}
	return Update{Message: m}
}

// DecidePost carries out a person's word on a post that waits: it is queued to
// be sent again, or dropped. The audit trail has it.
func DecidePost(w store.Writer, key string, resend bool, by Person, now time.Time) error {
	did, step := "drop", w.Skip
	if resend {
		did, step = "resend", w.Resend
	}
	if err := step(key, by, now); err != nil {
		return err
	}
	return w.Log(store.Entry{At: now, Who: by, Did: did, To: key})
}

// many is a number with its noun.
func many(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}
