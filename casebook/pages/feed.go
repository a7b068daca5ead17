package pages

import (
	"bytes"
	"crypto/sha256"
	"encoding/xml"
	"fmt"
	"time"

	"example.org/netpost/casebook"
)

// mostEntries is how many notes the feed holds.
const mostEntries = 50

// The parts of an Atom feed (RFC 4287).
type (
	atomFeed struct {
		XMLName xml.Name    `xml:"http://www.w3.org/2005/Atom feed"`
		Base    string      `xml:"xml:base,attr,omitempty"`
		Title   string      `xml:"title"`
		ID      string      `xml:"id"`
		Updated string      `xml:"updated"`
		Links   []atomLink  `xml:"link"`
		Author  atomAuthor  `xml:"author"`
		Entries []atomEntry `xml:"entry"`
	}
	atomAuthor struct {
		Name string `xml:"name"`
	}
	atomLink struct {
		Rel  string `xml:"rel,attr,omitempty"`
		Type string `xml:"type,attr,omitempty"`
		Href string `xml:"href,attr"`
	}
	atomEntry struct {
		Title      string         `xml:"title"`
		ID         string         `xml:"id"`
		Updated    string         `xml:"updated"`
		Links      []atomLink     `xml:"link"`
		Categories []atomCategory `xml:"category"`
		Content    atomText       `xml:"content"`
	}
	atomCategory struct {
		Term string `xml:"term,attr"`
	}
	atomText struct {
		Type string `xml:"type,attr"`
		Text string `xml:",chardata"`
	}
)

// feed tells of the notes that are in force, newest first.
func (s *Site) feed() (File, error) {
	name := s.Name
	if name == "" {
		name = "Case notes"
	}
	f := atomFeed{Base: s.URL, Title: name + ": case notes", ID: s.urn(""), Updated: epoch.Format(time.RFC3339), Author: atomAuthor{name},
		Links: []atomLink{{Type: "text/html", Href: s.URL + "index.html"}}}
	if s.URL != "" {
		f.Links = append(f.Links, atomLink{"self", "application/atom+xml", s.URL + "feed.atom"})
	}
	for _, n := range s.notes {
		if n.Status != casebook.Published || s.expired(n) || !s.On.IsZero() && s.On.Before(n.Issued) {
			continue
		}
		if len(f.Entries) == mostEntries {
			break
		}
		e := atomEntry{Title: n.ID + " " + n.Title, ID: s.urn(n.ID), Updated: n.Issued.Time().Format(time.RFC3339),
			Links: []atomLink{{"alternate", "text/html", s.URL + n.ID + ".html"}}, Content: atomText{"html", n.HTML(s.address)}}
		if w := n.Ruling.Words(); w != "" {
			e.Content.Text = "<p>" + xmlText(w) + "</p>" + e.Content.Text
		}
		for _, c := range n.Codes {
			e.Categories = append(e.Categories, atomCategory{string(c)})
		}
		f.Entries = append(f.Entries, e)
		if len(f.Entries) == 1 {
			f.Updated = e.Updated
		}
	}
	b, err := xml.MarshalIndent(f, "", " ")
	if err != nil {
		return File{}, fmt.Errorf("the feed can't be made: %w", err)
	}
	return File{"application/atom+xml; charset=utf-8", append([]byte(xml.Header), append(b, '\n')...)}, nil
}

func xmlText(s string) string {
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(s)) // a buffer has no errors
	return b.String()
}

// urn names a note for readers of feeds, wherever the pages are put.
func (s *Site) urn(id string) string {
	h := sha256.Sum256([]byte("netpost case note\n" + s.Name + "\n" + id))
	h[6], h[8] = h[6]&0x0f|0x80, h[8]&0x3f|0x80 // version 8, the variant of RFC 9562
	return fmt.Sprintf("urn:uuid:%x-%x-%x-%x-%x", h[0:4], h[4:6], h[6:8], h[8:10], h[10:16])
}
