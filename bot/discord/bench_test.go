package discord_test

import (
	"context"
	"runtime"
	"slices"
	"sync"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/discord/discordfake"
)

// rate is how many questions a second the benchmark asks. Half a minute of it
// is -benchtime=6000x.
const rate = 200

// BenchmarkQuestions asks at a steady rate, one question an iteration, and
// reports how long the slowest in a hundred took to be acknowledged. None may
// be lost.
func BenchmarkQuestions(b *testing.B) {
	for _, mode := range []string{gatewayMode, httpMode} {
		b.Run(mode, func(b *testing.B) {
			c := start(b, server(b), mode, conversation(b, nil))
			c.message(c.Slash(ana, crewChannel, "ask", play(half)))
			heap := func() float64 {
				runtime.GC()
				var m runtime.MemStats
				runtime.ReadMemStats(&m)
				return float64(m.HeapAlloc) / (1 << 20)
			}
			before := heap()
			asked := make([]*discordfake.Interaction, b.N)
			var wg sync.WaitGroup
			tick := time.NewTicker(time.Second / rate)
			defer tick.Stop()
			b.ResetTimer()
			begun := time.Now()
			for i := range b.N {
				<-tick.C
				wg.Add(1)
				go func() {
					defer wg.Done()
					asked[i] = c.Slash(ana, crewChannel, "ask", play(half))
				}()
			}
			wg.Wait()
			took := time.Since(begun)
			var times []time.Duration
			for _, i := range asked {
				t, ok := i.Answered(5 * time.Second)
				if !ok || i.Message() == nil {
					b.Fatalf("a question was lost\n%s", c.log)
				}
				times = append(times, t)
			}
			b.StopTimer()
			slices.Sort(times)
			b.ReportMetric(float64(times[len(times)*99/100].Microseconds())/1000, "p99-ms")
			b.ReportMetric(float64(times[len(times)-1].Microseconds())/1000, "max-ms")
			b.ReportMetric(float64(b.N)/took.Seconds(), "questions/s")
			c.Clear()
			asked = nil
			b.ReportMetric(heap()-before, "heap-MB")
		})
	}
}

// BenchmarkPost lays out a ruling and posts it.
func BenchmarkPost(b *testing.B) {
	h := conversation(b, nil)
	say, ok := h(context.Background(), bot.Command{Meta: bot.Meta{Delivery: "1", Who: bot.Who{Person: bot.Person{Platform: "discord", ID: "1"}},
		Where: bot.Place{Platform: "discord", Channel: "1"}}, Name: "ask", Text: half}).(bot.Say)
	if !ok {
		b.Fatal("no answer")
	}
	c := start(b, server(b), gatewayMode, bottest.Echo)
	for b.Loop() {
		if _, err := c.adapter.Post(context.Background(), bot.Target{Place: bot.Place{Channel: "50"}}, say.Message); err != nil {
			b.Fatal(err)
		}
	}
}
