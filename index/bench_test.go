package index

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/netpost/casebook"
	"example.org/netpost/casebook/casetest"
	"example.org/netpost/engine/code"
)

// benchNotes is how many notes the benchmarks are about: more than any association has.
const benchNotes = 10_000

func benchBook(b *testing.B) *casebook.Book {
	b.Helper()
	book, findings := casetest.Book(casetest.Options{Notes: benchNotes})
	if len(findings) > 0 {
		b.Fatal(findings[0])
	}
	return book
}

// benchIndex builds an index on disk once for a benchmark.
func benchIndex(b *testing.B) string {
	b.Helper()
	dir := b.TempDir()
	if err := Build(b.Context(), dir, benchBook(b), "bench"); err != nil {
		b.Fatal(err)
	}
	return dir
}

// BenchmarkBuild builds an index of 10,000 notes on disk, reading and deciding their plays.
func BenchmarkBuild(b *testing.B) {
	book := benchBook(b)
	for b.Loop() {
		dir := b.TempDir()
		if err := Build(b.Context(), dir, book, "bench"); err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(folderSize(b, dir))/(1<<20), "MB")
	}
}

// BenchmarkMemory builds an index of 10,000 notes in memory.
func BenchmarkMemory(b *testing.B) {
	book := benchBook(b)
	for b.Loop() {
		x, err := Memory(b.Context(), book)
		if err != nil {
			b.Fatal(err)
		}
		x.Close()
	}
}

// BenchmarkOpen opens an index of 10,000 notes on disk.
func BenchmarkOpen(b *testing.B) {
	dir := benchIndex(b)
	for b.Loop() {
		x, err := Open(dir)
		if err != nil {
			b.Fatal(err)
		}
		x.Close()
	}
}

// BenchmarkSearch searches 10,000 notes with the plays and plain questions of the quality
// test, already read and ruled on, and gives the median and the 99th percentile.
func BenchmarkSearch(b *testing.B) {
	x, err := Open(benchIndex(b))
	if err != nil {
		b.Fatal(err)
	}
	defer x.Close()
	tuned, heldOut := searches(b)
	var queries []Query
	for _, c := range slices.Concat(tuned, heldOut) {
		queries = append(queries, Question{Words: c.ask, Code: c.code}.Query())
	}
	var took []time.Duration
	for i := 0; b.Loop(); i++ {
		start := time.Now()
		if _, err := x.Search(b.Context(), queries[i%len(queries)]); err != nil {
			b.Fatal(err)
		}
		took = append(took, time.Since(start))
	}
	slices.Sort(took)
	b.ReportMetric(float64(took[len(took)/2].Microseconds())/1000, "median-ms")
	b.ReportMetric(float64(took[len(took)*99/100].Microseconds())/1000, "p99-ms")
}

// BenchmarkQuestion reads and rules on the questions, as is done before a search.
func BenchmarkQuestion(b *testing.B) {
	tuned, heldOut := searches(b)
	all := slices.Concat(tuned, heldOut)
	for i := 0; b.Loop(); i++ {
		c := all[i%len(all)]
		Question{Words: c.ask, Code: c.code}.Query()
	}
}

// BenchmarkChange takes one changed note of 10,000 into an index in memory.
func BenchmarkChange(b *testing.B) {
	book := benchBook(b)
	x, err := Memory(b.Context(), book)
	if err != nil {
		b.Fatal(err)
	}
	defer x.Close()
	id := book.Notes()[benchNotes/2].ID
	for b.Loop() {
		if err := x.change(book, Change{Updated: []string{id}}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkResident opens an index of 10,000 notes on disk in a process of its own, asks it
// one question, and gives that process's resident memory.
func BenchmarkResident(b *testing.B) {
	if runtime.GOOS != "linux" {
		b.Skip("resident memory is read from the proc file system")
	}
	dir := benchIndex(b)
	exe, err := os.Executable()
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		out, err := askAlone(b.Context(), exe, dir)
		if err != nil {
			b.Fatal(err)
		}
		var kb int
		if _, err := fmt.Sscan(out, &kb); err != nil {
			b.Fatalf("%q: %v", out, err)
		}
		b.ReportMetric(float64(kb)/1024, "RSS-MB")
	}
}

// residentVar makes a run of this test binary ask one question and say its peak of resident
// memory in kilobytes.
const residentVar = "NETPOST_TEST_ASK_ALONE"

func TestMain(m *testing.M) {
	if dir := os.Getenv(residentVar); dir != "" {
		if err := ask(dir); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	os.Exit(m.Run())
}

func askAlone(ctx context.Context, exe, dir string) (string, error) {
	c := exec.CommandContext(ctx, exe)
	c.Env = append(os.Environ(), residentVar+"="+dir)
	out, err := c.CombinedOutput()
	return string(out), err
}

func ask(dir string) error {
	x, err := Open(dir)
	if err != nil {
		return err
	}
	defer x.Close()
	q := Question{Words: "back-row setter above the net and a blocker touch the ball in the plane", Code: code.Scholastic}.Query()
	hits, err := x.Search(context.Background(), q)
	if err != nil {
		return err
	}
	if len(hits) == 0 {
		return fmt.Errorf("nothing found in %s", dir)
	}
	status, err := os.ReadFile("/proc/self/status")
	if err != nil {
		return err
	}
	for _, line := range strings.Split(string(status), "\n") {
		if kb, ok := strings.CutPrefix(line, "VmHWM:"); ok {
			fmt.Println(strings.Fields(kb)[0])
		}
	}
	return nil
}

// folderSize is the size of all files below a folder.
func folderSize(b *testing.B, dir string) (n int64) {
	b.Helper()
	err := filepath.Walk(dir, func(_ string, info os.FileInfo, err error) error {
		if err == nil && !info.IsDir() {
			n += info.Size()
		}
		return err
	})
	if err != nil {
		b.Fatal(err)
	}
	return n
}
