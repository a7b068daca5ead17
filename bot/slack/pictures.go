package slack

import (
	"bytes"
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"sync"
	"time"

	slackapi "github.com/slack-go/slack"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// Slack shows an image in a message of its own: it stands in the thread below
// the message that it belongs to, and there is none that only one person sees,
// but in a direct message. So what is private gets a button in place of the
// image, which brings it there.

// pictureLabel is that button.
const pictureLabel = "Picture"

// files are the images that stand under messages, by message.
type files struct {
	mu sync.Mutex
	of map[string][]file
}

// file is an image that is out: Slack's id of it, and its key in shown.
type file struct{ id, key string }

// mostFiles is how many messages are remembered; of others, an image that was
// replaced stays in the thread.
const mostFiles = 1 << 12

// swap notes the images under a message, and gives those that were there.
func (f *files) swap(message string, now []file) (before []file) {
	f.mu.Lock()
	defer f.mu.Unlock()
	before = f.of[message]
	if f.of == nil || len(f.of) >= mostFiles {
		f.of = map[string][]file{}
	}
	f.of[message] = now
	return before
}

// offered is a private message with a button for its pictures, in place of
// them.
func offered(m bot.Message) bot.Message {
	if len(m.Pictures) == 0 || m.Drawn == "" {
		return m
	}
	button := bot.Buttons{Items: []bot.Button{{Label: pictureLabel, State: m.Drawn}}}
	m.Doc.Blocks = append(m.Doc.Blocks[:len(m.Doc.Blocks):len(m.Doc.Blocks)], button)
	m.Pictures = nil
	return m
}

// made are the pictures with their data.
func (a *Adapter) made(ps []bot.Picture) []bot.Picture {
	out, err := bot.Made(ps)
	if err != nil {
		a.log.Warn("slack: a picture was not made; the message says what it shows", "cause", err)
	}
	return out
}

// pictures put images below a message, in its thread, in place of those that
// were put there for it before. Those that are there already stay. An error is
// logged: the message is out, and says what they show.
func (a *Adapter) pictures(ctx context.Context, under bot.Sent, ps []bot.Picture) (err error) {
	if len(ps) == 0 {
		return nil
	}
	var now []file
	for _, p := range a.made(ps) {
		sum := sha256.Sum256(p.Data)
		key := under.Channel + "/" + under.Thread + "/" + hex.EncodeToString(sum[:])
		if !a.shown.First(key, time.Now()) {
			return nil // nothing has changed, as there is one picture at most
		}
		id := ""
		err = a.call(ctx, "files.upload "+under.Channel, func(ctx context.Context) error {
			f, err := a.api.UploadFileContext(ctx, slackapi.UploadFileParameters{
				Reader: bytes.NewReader(p.Data), FileSize: len(p.Data), // exact, or Slack refuses
				Filename: cmp.Or(wire.Clip(wire.Line(p.Name), maxTitle), "picture"), Title: wire.Clip(wire.Line(p.Alt), maxTitle), AltTxt: wire.Clip(wire.Line(p.Alt), maxAlt),
				Channel: under.Channel, ThreadTimestamp: under.Thread,
			})
			if err == nil && f != nil {
				id = f.ID
			}
			return err
		})
		if err != nil {
			a.shown.Forget(key)
			a.log.Error("slack: a picture is not out; the message says what it shows", "cause", failure("the picture", err))
			continue
		}
		now = append(now, file{id, key})
	}
	if len(now) == 0 {
		if err == nil {
			err = errNoPicture
		}
		return err
	}
	if under.Message == "" {
		return err // in a direct message, of its own
	}
	for _, old := range a.files.swap(under.Channel+"/"+under.Message, now) {
		a.shown.Forget(old.key)
		err := a.call(ctx, "files.delete", func(ctx context.Context) error { return a.api.DeleteFileContext(ctx, old.id) })
		if r, _ := refused(err); err != nil && r.code != "file_not_found" && r.code != "file_deleted" {
			a.log.Warn("slack: a picture that was replaced stays in its thread", "cause", scrub(err))
		}
	}
	return err
}

// errNoPicture: none could be made.
var errNoPicture = errors.New("the picture was not drawn")

// picturesTo puts pictures into the direct message with a person.
func (a *Adapter) picturesTo(ctx context.Context, who string, ps []bot.Picture) error {
	channel, err := a.room(ctx, who)
	if err != nil {
		a.log.Error("slack: a picture is not out; the message says what it shows", "cause", failure("the picture", err))
		return err
	}
	return a.pictures(ctx, bot.Sent{Place: bot.Place{Platform: Platform, Channel: channel}}, ps)
}

// brought is a private message that says where its pictures are: they are put
// into the direct message with the person first.
func (a *Adapter) brought(ctx context.Context, who string, m bot.Message) bot.Message {
	if len(m.Pictures) == 0 {
		return m
	}
	words := "The picture is in the direct message with me."
	if err := a.picturesTo(ctx, who, m.Pictures); err != nil {
		words = "The picture could not be sent. If it stays so, tell whoever runs netpost."
	}
	m.Doc.Blocks = append(m.Doc.Blocks[:len(m.Doc.Blocks):len(m.Doc.Blocks)], bot.Aside{Text: bot.Line(words)})
	m.Pictures = nil
	return m
}
