package casebook

import (
	"path"
	"slices"
	"strings"

	"example.org/netpost/engine/code"

	"go.yaml.in/yaml/v3"
)

// Field is one field of a note's front matter.
type Field struct {
	Key      string
	Doc      string
	Required bool

	read func(r *reader, n *yaml.Node)
}

// fields is the table, in the order in which a note's fields are written.
var fields = []Field{
	{"id", "Year and number, such as 2026-014. Unique in the book; the file is named for it.", true,
		func(r *reader, n *yaml.Node) { r.note.ID = r.id("id", n) }},
	{"title", "One line of plain text.", true,
		func(r *reader, n *yaml.Node) { r.note.Title = r.text("title", n) }},
	{"codes", "The codes it is about: " + codeWords() + ".", true,
		func(r *reader, n *yaml.Node) { r.note.Codes = r.codes("codes", n) }},
	{"season", "The season it was written for, such as 2026-27, or the first season of a cycle, such as 2025-28.", true,
		func(r *reader, n *yaml.Node) { r.note.Season = r.season("season", n) }},
	{"status", "Where it stands: " + statusWords() + ".", true,
		func(r *reader, n *yaml.Node) { r.note.Status = r.status("status", n) }},
	{"issued", "The day it was published. A draft has none.", false,
		func(r *reader, n *yaml.Node) { r.note.Issued = r.date("issued", n) }},
	{"expires", "The last day it is in force. Left out: until it is replaced or withdrawn.", false,
		func(r *reader, n *yaml.Node) { r.note.Expires = r.date("expires", n) }},
	{"withdrawn", "The day it was taken back, for the bulletin. Only a withdrawn note has one.", false,
		func(r *reader, n *yaml.Node) { r.note.Withdrawn = r.date("withdrawn", n) }},
	{"supersedes", "Ids of the notes that it replaces.", false,
		func(r *reader, n *yaml.Node) { r.note.Supersedes = r.list("supersedes", n, (*reader).id) }},
	{"rules", "Rule numbers, quoted, of its codes or of the association's own book.", false,
		func(r *reader, n *yaml.Node) { r.note.Rules = r.list("rules", n, (*reader).text) }},
	{"topics", "Lower-case words to find it by.", false,
		func(r *reader, n *yaml.Node) { r.note.Topics = r.list("topics", n, (*reader).topic) }},
	{"play", "A play in words, as a crew would ask it. It comes with a ruling.", false,
		func(r *reader, n *yaml.Node) { r.note.Play = r.text("play", n) }},
	{"ruling", "What is ruled on the play: outcome, and fault, replay, against or measure; measure alone for a request; answer for what is looked up.", false,
		func(r *reader, n *yaml.Node) { r.ruling(n) }},
	{"departs", "The reason why it rules otherwise than the book. Left out: it rules as the book does.", false,
		func(r *reader, n *yaml.Node) { r.note.Departs = r.text("departs", n) }},
	{"attachments", "Files that belong to it, by path relative to the note's own file.", false,
		func(r *reader, n *yaml.Node) { r.note.Attachments = r.list("attachments", n, (*reader).file) }},
}

// rulingFields is the table of the fields of a ruling, in their order.
var rulingFields = []Field{
	{"outcome", "What it comes to: " + strings.Join(outcomes, ", ") + ". Left out where only measures follow, or an answer.", false,
		func(r *reader, n *yaml.Node) { r.note.Ruling.Outcome = r.outcome("ruling.outcome", n) }},
	{"fault", "The fault's id, with the outcome fault.", false,
		func(r *reader, n *yaml.Node) { r.note.Ruling.Fault = r.text("ruling.fault", n) }},
	{"replay", "Why it is replayed, with the outcome replay.", false,
		func(r *reader, n *yaml.Node) { r.note.Ruling.Replay = r.text("ruling.replay", n) }},
	{"against", "A name of the side at fault, as in the play.", false,
		func(r *reader, n *yaml.Node) { r.note.Ruling.Against = r.text("ruling.against", n) }},
	{"measure", "Ids of administrative measures, all applying together.", false,
		func(r *reader, n *yaml.Node) { r.note.Ruling.Measure = r.list("ruling.measure", n, (*reader).text) }},
	{"answer", "Of a look-up: what its answer begins with, such as 18, yes or no; in quotes.", false,
		func(r *reader, n *yaml.Node) { r.note.Ruling.Answer = r.text("ruling.answer", n) }},
}

// Fields lists the fields of a note in the order in which they are written.
func Fields() []Field { return slices.Clone(fields) }

// RulingFields lists the fields of a note's ruling in their order.
func RulingFields() []Field { return slices.Clone(rulingFields) }

// outcomes are what a note can rule. A note whose play turns on a fact that it
// leaves open says depends.
var outcomes = []string{"play-on", "fault", "replay", "re-serve", "depends"}

func codeWords() string {
	var ids []string
	for _, c := range code.All() {
		ids = append(ids, string(c))
	}
	return strings.Join(ids, ", ")
}

// file is the path of an attachment, made relative to the folder's root.
func (r *reader) file(field string, n *yaml.Node) string {
	s := r.text(field, n)
	if s == "" {
		return ""
	}
	to, ok := inside(r.path, s)
	if !ok {
		r.report(field, n, quote(s)+" is not a path inside the folder", "put the file beside the note, and write its path relative to the note, with / between folders", fix{})
	}
	return to
}

// inside resolves a relative path written in a note's file. It is false for
// one that leads out of the folder, is absolute or has a scheme.
func inside(note, rel string) (string, bool) {
	if rel == "" || strings.HasPrefix(rel, "/") || strings.ContainsAny(rel, "\\:\x00") {
		return "", false
	}
	to := path.Join(path.Dir(note), rel)
	if to == ".." || strings.HasPrefix(to, "../") {
		return "", false
	}
	return to, true
}
