package slack_test

import (
	"fmt"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/slack/slackfake"
)

// BenchmarkLoad asks 200 questions a second, b.N of them, and reports how soon
// they are acknowledged and that each is answered. Half a minute of it:
//
//	go test ./bot/slack -run '^$' -bench Load -benchtime 6000x
func BenchmarkLoad(b *testing.B) {
	for _, mode := range []string{socketMode, httpMode} {
		b.Run(mode, func(b *testing.B) {
			const rate = 200 // a second
			s := workspace(b)
			c := start(b, s, mode, bottest.Echo)
			people := make([]*slackfake.Person, 20)
			for i := range people {
				people[i] = c.Person(fmt.Sprintf("U0P%d", i))
			}
			var mu sync.Mutex
			var acks []time.Duration
			lost := 0
			var all sync.WaitGroup
			b.ResetTimer()
			began := time.Now()
			for i := range b.N {
				time.Sleep(time.Until(began.Add(time.Duration(i) * time.Second / rate)))
				all.Go(func() {
					d := people[i%len(people)].Command(talk, fmt.Sprintf("question %d", i))
					mu.Lock()
					defer mu.Unlock()
					acks = append(acks, d.Ack.After)
					if d.Err != nil {
						lost++
					}
				})
			}
			all.Wait()
			took := time.Since(began)
			answered := map[string]bool{}
			count := func() bool {
				for _, h := range c.History()[len(answered):] {
					answered[h.TS+h.Text] = strings.HasPrefix(h.Text, "question")
				}
				return len(answered) >= b.N
			}
			c.Wait(wait, count)
			b.StopTimer()
			slices.Sort(acks)
			b.ReportMetric(float64(acks[len(acks)*99/100].Microseconds())/1000, "p99-ms")
			b.ReportMetric(float64(b.N)/took.Seconds(), "questions/s")
			b.ReportMetric(float64(b.N-len(answered)+lost), "lost")
			var m runtime.MemStats
			runtime.GC()
			runtime.ReadMemStats(&m)
			b.ReportMetric(float64(m.HeapAlloc)/(1<<20), "heap-MB")
			if len(answered) != b.N || lost > 0 {
				b.Errorf("%d questions, %d answers, %d not acknowledged", b.N, len(answered), lost)
			}
		})
	}
}
