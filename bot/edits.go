package bot

import (
	"strings"

	"example.org/netpost/bot/store"
)

// A board is a message of ours that stays where it is and changes with what it
// shows: a call in the mentors' channel, two views, a play that is ruled on
// together. It is a post; a change of it is a post too, of kind edit, whose key
// is the board's behind a slash and an id of its own. To change a message again
// does no harm, so an edit in doubt is done again by itself.

// refresh queues a change of a board, where it is out and is not the message
// that changes in place anyway.
func (t *turn) refresh(w store.Writer, board string) error {
	p, err := w.Post(board)
	if store.CodeOf(err) == store.NotFound {
		return nil
	}
	if err != nil || p.State != store.Sent || p.Message == "" || t.inPlace && p.Message == t.message {
		return err
	}
	return t.queue(w, store.Post{Key: "edit/" + t.NewID() + "/" + board, Question: p.Question, Where: p.Where, To: p.To})
}

// composeEdit makes a board anew, to be put in its place.
func (t *turn) composeEdit(p store.Post) (Target, Message, error) {
	_, rest, _ := strings.Cut(p.Key, "/")
	_, key, _ := strings.Cut(rest, "/")
	var board store.Post
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		board, err = r.Post(key)
		return err
	})
	if err != nil {
		return Target{}, Message{}, err
	}
	k, ok := postKindOf(key)
	if !ok || k.edit {
		return Target{}, Message{}, errToken
	}
	to, m, err := k.compose(t, board)
	to.Edit = board.Message
	return to, m, err
}

// redo puts edits in doubt back to be done, and leaves the other posts in doubt
// out.
func (t *turn) redo(posts []store.Post) (queued []store.Post, err error) {
	for _, p := range posts {
		if p.State == store.Doubt {
			if k, ok := postKindOf(p.Key); !ok || !k.edit {
				continue
			}
			err := t.Store.Write(t.ctx, t.assoc.ID, func(w store.Writer) error {
				return w.Failed(p.Key, "interrupted", true, t.Now())
			})
			if err != nil {
				return nil, err
			}
			p.State = store.Queued
		}
		queued = append(queued, p)
	}
	return queued, nil
}
