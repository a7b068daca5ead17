package sqlite

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/netpost/bot/store"
)

// Erase is part of [store.AuditWriter].
func (t *tx) Erase(p store.Person, names ...string) (e store.Erased, err error) {
	if err := valid("erasing", check{!p.IsZero(), "somebody"}, people(p)); err != nil {
		return e, err
	}
	them := person(p)

	// What must be told is read before it is gone.
	e.Notes, err = list(t, word, `SELECT DISTINCT note FROM drafts WHERE association = ?1 AND state = 'published'
		AND (by = ?2 OR question IN (SELECT id FROM questions WHERE association = ?1 AND asker = ?2)) ORDER BY note`, them)
	if err != nil {
		return store.Erased{}, err
	}
	e.Quotes, err = list(t, word, `SELECT text FROM questions WHERE association = ?1 AND asker = ?2 AND text <> ''
		UNION SELECT words FROM calls WHERE association = ?1 AND by = ?2 AND words <> ''
		UNION SELECT text FROM replies WHERE association = ?1 AND by = ?2 AND text <> '' ORDER BY 1`, them)
	if err != nil {
		return store.Erased{}, err
	}

	// The order matters: what hangs on a question is counted only where the
	// question is not theirs, and drafts are found through the question.
	for _, s := range []struct {
		n     *int
		query string
	}{
		{&e.Drafts, `DELETE FROM drafts WHERE association = ?1 AND (by = ?2 OR question IN (SELECT id FROM questions WHERE association = ?1 AND asker = ?2))`},
		{&e.Posts, `DELETE FROM posts WHERE association = ?1 AND (recipient = ?2 OR question IN (SELECT id FROM questions WHERE association = ?1 AND asker = ?2))`},
		{&e.Questions, `DELETE FROM questions WHERE association = ?1 AND asker = ?2`},
		{nil, `DELETE FROM given WHERE association = ?1 AND view <> '' AND (question, view) IN (SELECT question, id FROM views WHERE association = ?1 AND by = ?2)`},
		{&e.Views, `DELETE FROM views WHERE association = ?1 AND by = ?2`},
		{&e.Votes, `DELETE FROM votes WHERE association = ?1 AND by = ?2`},
		{nil, `UPDATE polls SET by = '' WHERE association = ?1 AND by = ?2`},
		{&e.Given, `UPDATE given SET by = '' WHERE association = ?1 AND by = ?2`},
		{nil, `UPDATE given SET undone_by = '' WHERE association = ?1 AND undone_by = ?2`},
		{&e.Calls, `DELETE FROM calls WHERE association = ?1 AND by = ?2`},
		{nil, `UPDATE calls SET claimer = '', lapses = 0 WHERE association = ?1 AND claimer = ?2`},
		{&e.Replies, `DELETE FROM replies WHERE association = ?1 AND by = ?2 AND delivered = 0`},
		{&e.Replies, `UPDATE replies SET by = '', text = '' WHERE association = ?1 AND by = ?2`},
		{nil, `UPDATE posts SET by = '' WHERE association = ?1 AND by = ?2`},
		{nil, `UPDATE bulletins SET by = '' WHERE association = ?1 AND by = ?2`},
		{&e.Entries, `DELETE FROM audit WHERE association = ?1 AND (who = ?2 OR about = ?2)`},
	} {
		n, err := t.exec(s.query, them)
		if err != nil {
			return store.Erased{}, err
		}
		if s.n != nil {
			*s.n += n
		}
	}
	if e.Mentions, err = t.mentions(append([]string{p.ID}, names...)); err != nil {
		return store.Erased{}, err
	}
	return e, nil
}

// texts is every text that people wrote, by kind and id.
const texts = `SELECT 'question', id, text FROM questions WHERE association = ?1
	UNION ALL SELECT 'question', question, value FROM given WHERE association = ?1
	UNION ALL SELECT 'view', question, name FROM views WHERE association = ?1
	UNION ALL SELECT 'call', id, words FROM calls WHERE association = ?1
	UNION ALL SELECT 'call', id, about FROM calls WHERE association = ?1
	UNION ALL SELECT 'reply', id, text FROM replies WHERE association = ?1
	UNION ALL SELECT 'draft', id, text FROM drafts WHERE association = ?1
	UNION ALL SELECT 'post', key, CAST(coalesce(body, '') AS TEXT) FROM posts WHERE association = ?1
	UNION ALL SELECT 'bulletin', id, title || char(10) || text FROM bulletins WHERE association = ?1
	UNION ALL SELECT 'audit', object, details FROM audit WHERE association = ?1
	ORDER BY 1, 2, 3`

// mentions finds the texts that hold one of the names as a word.
func (t *tx) mentions(names []string) ([]store.Mention, error) {
	all, err := list(t, func(s scan) (m store.Mention, err error) {
		err = s(&m.In, &m.ID, &m.Text)
		if at, n, found := find(m.Text, names); found {
			m.Text = around(m.Text, at, n)
		} else {
			m.In = ""
		}
		return m, err
	}, texts)
	return slices.DeleteFunc(all, func(m store.Mention) bool { return m.In == "" }), err
}

// find finds the first of the names that stands in a text as a word, in
// whatever case.
func find(text string, names []string) (at, n int, found bool) {
	for _, name := range names {
		name = strings.TrimSpace(name)
		if name == "" {
			continue
		}
		for i := range text {
			n, ok := foldPrefix(text[i:], name)
			if !ok {
				continue
			}
			before, _ := utf8.DecodeLastRuneInString(text[:i])
			after, _ := utf8.DecodeRuneInString(text[i+n:])
			if !letter(before) && !letter(after) {
				return i, n, true
			}
		}
	}
	return 0, 0, false
}

func letter(r rune) bool { return r != utf8.RuneError && (unicode.IsLetter(r) || unicode.IsDigit(r)) }

// foldPrefix reports whether a text opens with a name, letter by letter in
// whatever case, and in how many of its bytes.
func foldPrefix(text, name string) (int, bool) {
	n := 0
	for _, r := range name {
		c, size := utf8.DecodeRuneInString(text[n:])
		if size == 0 || unicode.ToLower(unicode.ToUpper(c)) != unicode.ToLower(unicode.ToUpper(r)) {
			return 0, false
		}
		n += size
	}
	return n, true
}

// margin is how many bytes a mention shows on either side of the name.
const margin = 60

// around cuts a text to what stands around a place in it.
func around(text string, at, n int) string {
	from, to := max(0, at-margin), min(len(text), at+n+margin)
	for from > 0 && !utf8.RuneStart(text[from]) {
		from--
	}
	for to < len(text) && !utf8.RuneStart(text[to]) {
		to++
	}
	s := text[from:to]
	if from > 0 {
		s = "…" + s
	}
	if to < len(text) {
		s += "…"
	}
	return s
}
