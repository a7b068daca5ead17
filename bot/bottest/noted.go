package bottest

import (
	"maps"
)

// noted is what was seen at a time, with how often.
type noted map[string]int

func notedOf(all []Seen) noted {
	n := noted{}
	for _, s := range all {
		n[s.Message+"\x00"+plain(s.Text)]++
	}
	return n
}

// since is what was seen beside that.
func (n noted) since(all []Seen) []Seen {
	left := maps.Clone(n)
	var out []Seen
	for _, s := range all {
		k := s.Message + "\x00" + plain(s.Text)
		if left[k]--; left[k] < 0 {
			out = append(out, s)
		}
	}
	return out
}

// firsts counts the new messages, not their changes, that have the words.
func firsts(all []Seen, words string) int {
	n := 0
	for _, s := range all {
		if !s.Changed && s.Form == nil && reads(words)(s) {
			n++
		}
	}
	return n
}
