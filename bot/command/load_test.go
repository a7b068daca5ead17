package command

import (
	"context"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/netpost/bot/discord/discordfake"
	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/sqlite"
)

// loadRate is how many questions a second both platforms together ask.
const loadRate = 200

// loadPlays are asked in turn: plays that are settled, that turn on a fact, and
// words that are no play.
var loadPlays = []string{
	"ball in plane, both front row, fourth contact?",
	"our setter tips the ball over from inside the 3m line, ball above the net",
	"setter back row, above the net, tips it over",
	"a blocker touches the ball twice, then the setter sets it",
	"how many time-outs are there in a set",
	"receiving left front stands behind the left back at service contact, overlap?",
	"joust above the net, the ball lands out on their side",
	"what time is the match tomorrow",
}

// BenchmarkLoad has the whole program serve both platforms at once, with its
// store, its notes and its pictures, and asks a question an iteration. It
// reports how long the slowest in a hundred took to be acknowledged, how many
// were lost (not acknowledged, not answered, or not in the store at the end),
// and the heap and the memory of the process after the first second and after
// the last. Half a minute of it:
//
//	go test ./bot/command -run '^$' -bench Load -benchtime 6000x
func BenchmarkLoad(b *testing.B) {
	for _, way := range []struct{ name, slack, discord string }{{"outwards", "socket", "gateway"}, {"http", "http", "http"}} {
		b.Run(way.name, func(b *testing.B) { load(b, way.slack, way.discord) })
	}
}

func load(b *testing.B, onSlack, onDiscord string) {
	s, d, vars, api := platforms(b)
	dir := b.TempDir()
	kept := filepath.Join(dir, "netpost.db")
	listen := free(b)
	settings := strings.Replace(set(onSlack, onDiscord, d.PublicKey(), casebookOf(b), "127.0.0.1:0"), "listen: 127.0.0.1:0", "listen: "+listen, 1)
	p := begin(b, "store: "+kept+"\nindex: "+filepath.Join(dir, "index")+"\n"+settings, vars, api)
	if onSlack == "http" {
		s.PostTo("http://" + listen + "/slack")
		d.Endpoint = "http://" + listen + "/discord"
		until(b, "the address for requests", func() bool {
			r, err := http.Get(d.Endpoint)
			if err == nil {
				r.Body.Close()
			}
			return err == nil && r.StatusCode == http.StatusMethodNotAllowed
		})
	} else {
		until(b, "both platforms", func() bool { return s.Connections() > 0 && d.Connected(time.Second) })
	}

	var mu sync.Mutex
	var acks []time.Duration
	unacknowledged := 0
	asked := func(after time.Duration, ok bool) {
		mu.Lock()
		defer mu.Unlock()
		if acks = append(acks, after); !ok {
			unacknowledged++
		}
	}
	onD := map[int]*discordfake.Interaction{}
	ask := func(i int) {
		play := fmt.Sprintf("%s (%d)", loadPlays[i/2%len(loadPlays)], i)
		if i%2 == 0 {
			got := s.Person(fmt.Sprintf("U0P%d", i%40)).Command(talk, play)
			asked(got.Ack.After, got.Err == nil)
			return
		}
		got := d.Slash(discordfake.Person{ID: fmt.Sprint(500 + i%40), Name: "somebody"}, chat, "ask", map[string]string{"play": play})
		after, ok := got.Answered(5 * time.Second)
		asked(after, ok)
		mu.Lock()
		onD[i] = got
		mu.Unlock()
	}
	// run asks questions at the rate, and waits until all are acknowledged.
	run := func(from, to int) time.Duration {
		began := time.Now()
		var all sync.WaitGroup
		for i := from; i < to; i++ {
			time.Sleep(time.Until(began.Add(time.Duration(i-from) * time.Second / loadRate)))
			all.Go(func() { ask(i) })
		}
		all.Wait()
		return time.Since(began)
	}
	// answered waits until so many questions have an answer, and gives how many
	// have none in time.
	answered := func(n int) (missing int) {
		for end := time.Now().Add(patience); ; time.Sleep(50 * time.Millisecond) {
			got := map[string]bool{}
			for _, h := range s.History() {
				if !strings.Contains(h.Text, "One moment") && h.File == nil && h.View == nil {
					got[h.TS] = true
				}
			}
			have := len(got)
			mu.Lock()
			for _, i := range onD {
				if i.Message() != nil {
					have++
				}
			}
			mu.Unlock()
			if have >= n || time.Now().After(end) {
				return n - have
			}
		}
	}
	memory := func() (heap, resident float64) {
		s.Clear()
		d.Clear()
		clear(onD)
		debug.FreeOSMemory()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return float64(m.HeapAlloc) / (1 << 20), residentMB()
	}

	lost := 0
	warm := loadRate
	run(0, warm)
	lost += answered(warm)
	heap0, resident0 := memory()
	acks = nil
	b.ResetTimer()
	took := run(warm, warm+b.N)
	b.StopTimer()
	lost += answered(b.N) + unacknowledged
	slices.Sort(acks)
	heap1, resident1 := memory()
	b.ReportMetric(ms(acks[len(acks)*99/100]), "p99-ms")
	b.ReportMetric(ms(acks[len(acks)-1]), "max-ms")
	b.ReportMetric(float64(b.N)/took.Seconds(), "questions/s")
	b.ReportMetric(heap0, "heap-start-MB")
	b.ReportMetric(heap1, "heap-end-MB")
	b.ReportMetric(resident0, "rss-start-MB")
	b.ReportMetric(resident1, "rss-end-MB")
	if status := p.stop(); status != ok {
		b.Fatalf("status %d\n%s", status, p.log.String())
	}
	lost += warm + b.N - keptQuestions(b, kept)
	b.ReportMetric(float64(lost), "lost")
	if lost != 0 {
		b.Errorf("%d were lost\n%s", lost, p.log.String()[:min(len(p.log.String()), 4000)])
	}
}

func ms(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }

// residentMB is the memory of the process, with that of the fakes in it; 0
// where the system does not tell.
func residentMB() float64 {
	text, err := os.ReadFile("/proc/self/statm")
	if err != nil {
		return 0
	}
	var size, pages int
	if _, err := fmt.Sscan(string(text), &size, &pages); err != nil {
		return 0
	}
	return float64(pages*os.Getpagesize()) / (1 << 20)
}

// keptQuestions counts the questions in a store.
func keptQuestions(b *testing.B, file string) int {
	b.Helper()
	st, err := sqlite.Open(context.Background(), file, sqlite.Options{})
	if err != nil {
		b.Fatal(err)
	}
	defer st.Close()
	n := 0
	for _, a := range []string{"riverside", "hillside"} {
		err := st.Read(context.Background(), a, func(r store.Reader) error {
			all, err := r.Questions(store.Span{})
			n += len(all)
			return err
		})
		if err != nil {
			b.Fatal(err)
		}
	}
	return n
}
