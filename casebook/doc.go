// Package casebook holds an association's interpretations: a folder of notes
// in Markdown, one file a note, each with strict YAML front matter.
//
//	---
//	id: 2026-014
//	title: Setter's tight save, blocker's hands on it too
//	codes: [scholastic]
//	season: 2026-27
//	status: published
//	issued: 2026-11-15
//	expires: 2027-06-30
//	supersedes: [2025-031]
//	rules: ["9-5-5"]
//	topics: [back row, block]
//	play: A's back-row setter reaches above the net, ball in plane, B front-row blocker contacts it at the same time
//	ruling: {outcome: fault, fault: back-row-block, against: A}
//	attachments: [images/tight-save.png]
//	---
//	The association's own words, in Markdown.
//
// The file is named for its id: 2026-014.md, or 2026-014-tight-save.md. The
// keys id, title, codes, season and status must be there, and issued once a
// note has been published. A play comes with a ruling. A note that rules
// otherwise than the book says so in departs, with its reason, and one that was
// taken back says in withdrawn on which day. Rule numbers
// are quoted, because YAML would read 9.20 as 9.2.
//
// Beside the notes, book.yaml may hold the association's own book: its
// adoptions, a value for a parameter of a code, and its own rule numbers.
//
// Load reads a folder and loses nothing that can be read: every file that can't
// be is a Finding. Check proves the notes against the engine and each other.
// Fix mends what a machine can mend.
package casebook
