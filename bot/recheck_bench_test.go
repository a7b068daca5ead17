package bot_test

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/notation/playgen"
)

// oldTable is what the association had adopted when the questions of a
// benchmark were asked.
var oldTable = []code.Overlay{
	{Param: "centre.foot", Value: "legal-unless-interferes", Reason: "as it was"},
	{Param: "net.contact-rule", Value: "always", Reason: "as it was"},
}

// fillQuestions keeps n questions of so many different plays, with what they
// came to under the old table.
func fillQuestions(b *testing.B, s store.Store, n, plays int) {
	b.Helper()
	r := rand.New(rand.NewPCG(11, 12))
	type known struct {
		text string
		kept store.Answer
	}
	all := make([]known, plays)
	at := time.Date(2026, 9, 1, 0, 0, 0, 0, time.UTC)
	for i := range all {
		text := notation.Print(playgen.Rally(r, playgen.Options{Events: 1 + i%3, Names: true}))
		a := answer.Ask(text, answer.Options{Code: code.Scholastic, Overlays: oldTable})
		ruling, err := answer.Keep(a)
		if err != nil {
			b.Fatal(err)
		}
		all[i] = known{text, store.Answer{Message: "1.2", Outcome: string(a.Outcome), Ruling: ruling, At: at,
			Tags: []store.Tag{{Kind: store.Topic, Value: fmt.Sprint("topic", i%20)}}}}
	}
	for from := 0; from < n; from += 2000 {
		err := s.Write(b.Context(), "riverside", func(w store.Writer) error {
			for i := from; i < min(from+2000, n); i++ {
				k := all[i%plays]
				err := w.Ask(store.Question{
					ID: fmt.Sprintf("q%07d", i), Asker: store.Person{Platform: "slack", ID: fmt.Sprint("U", i%300)}, Asked: at.Add(time.Duration(i) * time.Second),
					Where: store.Place{Platform: "slack", Workspace: "T1", Channel: "C1"}, Text: k.text, Code: "scholastic", Answer: k.kept,
				})
				if err != nil {
					return err
				}
			}
			return nil
		})
		if err != nil {
			b.Fatal(err)
		}
	}
}

// All that is kept is ruled on again: 100,000 questions in which each play was
// asked ten times, and as many of which no two are alike.
func BenchmarkRecheck(b *testing.B) {
	const questions = 100_000
	for _, plays := range []int{questions / 10, questions} {
		b.Run(fmt.Sprintf("plays=%d", plays), func(b *testing.B) {
			s := newStore(b)
			fillQuestions(b, s, questions, plays)
			a := bot.Association{ID: "riverside", Code: code.Scholastic}
			bt := bot.New(bot.Options{Store: s, Find: func(bot.Place) (bot.Association, bool) { return a, true }})
			for b.Loop() {
				found, err := bt.Recheck(b.Context(), a, time.Time{})
				if err != nil || found.Questions != questions || found.Cut {
					b.Fatalf("%d questions, %v", found.Questions, err)
				}
				b.ReportMetric(float64(len(found.Changes)), "changes")
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/questions, "µs/question")
		})
	}
}
