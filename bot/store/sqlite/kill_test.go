//go:build unix

package sqlite

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/netpost/bot/store"
)

// The tests that need a process of their own start this test program again,
// with the name of what it is to do in childEnv.
const childEnv = "STORE_TEST_CHILD"

func TestMain(m *testing.M) {
	switch os.Getenv(childEnv) {
	case "":
		os.Exit(m.Run())
	case "crew":
		crewChild(os.Args[1], os.Args[2], os.Args[3])
	case "reader":
		readerChild(os.Args[1])
	}
}

func child(t *testing.T, what string, args ...string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.CommandContext(t.Context(), self, args...)
	cmd.Env = append(os.Environ(), childEnv+"="+what)
	return cmd
}

// crewChild is a bot under load. It answers deliveries, some of which it has
// seen before a kill, through a platform that is a file of the texts it was
// sent. What is acknowledged goes to standard output, one write a line. With
// die > 0 it kills itself at the die-th sending: before it for an even number,
// after it for an odd one.
func crewChild(dir, round, dieAt string) {
	fatal := func(err error) {
		if err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(3)
		}
	}
	die, err := strconv.Atoi(dieAt)
	fatal(err)
	s, err := Open(context.Background(), filepath.Join(dir, "netpost.db"), Options{})
	fatal(err)
	platform, err := os.OpenFile(filepath.Join(dir, "platform"), os.O_APPEND|os.O_WRONLY|os.O_CREATE, 0o600)
	fatal(err)
	say := func(format string, args ...any) {
		_, err := os.Stdout.WriteString(fmt.Sprintf(format, args...) + "\n")
		fatal(err)
	}
	var mu sync.Mutex
	sendings := 0
	send := func(key string) {
		mu.Lock()
		sendings++
		n := sendings
		mu.Unlock()
		fatal(s.Write(context.Background(), riverside, func(w store.Writer) error { return w.Mark(key, noon) }))
		say("marked %s", key)
		if n == die && die%2 == 0 {
			kill(os.Getpid())
		}
		_, err := platform.WriteString(key + "\n")
		fatal(err)
		if n == die && die%2 == 1 {
			kill(os.Getpid())
		}
		fatal(s.Write(context.Background(), riverside, func(w store.Writer) error { return w.Sent(key, "m", noon) }))
		say("sent %s", key)
	}

	// What was left marked is in doubt; what was left queued goes out now.
	var left []store.Post
	fatal(s.Write(context.Background(), riverside, func(w store.Writer) (err error) {
		if _, err = w.Resume(noon); err == nil {
			left, err = w.Posts(store.Queued)
		}
		return err
	}))
	for _, p := range left {
		send(p.Key)
	}
	for g := range 3 {
		go func() {
			r := rand.New(rand.NewPCG(uint64(g), 1))
			for i := 0; ; i++ {
				// One delivery in three comes again, from any round before.
				id := fmt.Sprintf("%s.%d.%d", round, g, i)
				if n, _ := strconv.Atoi(round); r.IntN(3) == 0 {
					id = fmt.Sprintf("%d.%d.%d", r.IntN(n+1), g, r.IntN(i+1))
				}
				first := false
				fatal(s.Write(context.Background(), riverside, func(w store.Writer) (err error) {
					if first, err = w.Deliver("delivery/"+id, noon, noon.Add(time.Hour)); err != nil || !first {
						return err
					}
					if err := w.Ask(store.Question{ID: id, Text: "fourth contact?", Asked: noon}); err != nil {
						return err
					}
					_, err = w.Queue(store.Post{Key: "answer/" + id, Question: id, Queued: noon})
					return err
				}))
				if first {
					say("kept %s", id)
					send("answer/" + id)
				}
			}
		}()
	}
	select {}
}

// Killed at random moments under load, and at the worst ones on purpose,
// nothing acknowledged is lost, and nothing is sent twice.
func TestKill(t *testing.T) {
	dir := t.TempDir()
	random := rand.New(rand.NewPCG(uint64(time.Now().UnixNano()), 0)) // another moment each run
	acked := map[string][]string{}
	for round := range 10 {
		die := 0
		if round%2 == 1 {
			die = 1 + random.IntN(12)
		}
		cmd := child(t, "crew", dir, strconv.Itoa(round), strconv.Itoa(die))
		var stderr bytes.Buffer
		cmd.Stderr = &stderr
		out, err := cmd.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		lines := bufio.NewReader(out)
		line, err := lines.ReadString('\n') // at work
		if err != nil && die == 0 {
			t.Fatalf("round %d: %v: %s", round, err, stderr.String())
		}
		if die == 0 {
			time.AfterFunc(time.Duration(random.IntN(120))*time.Millisecond, func() { cmd.Process.Kill() })
		}
		rest, err := io.ReadAll(lines)
		if err != nil {
			t.Fatal(err)
		}
		cmd.Wait() // killed
		if stderr.Len() > 0 {
			t.Fatalf("round %d: %s", round, stderr.String())
		}
		for l := range strings.Lines(line + string(rest)) {
			what, id, _ := strings.Cut(strings.TrimSuffix(l, "\n"), " ")
			acked[what] = append(acked[what], id)
		}
	}

	s := open(t, dir)
	defer s.Close()
	if err := s.Check(t.Context()); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(filepath.Join(dir, "platform"))
	if err != nil {
		t.Fatal(err)
	}
	sent := strings.Fields(string(text))
	for _, key := range repeated(sent) {
		t.Errorf("%s was sent twice", key)
	}
	for _, id := range repeated(acked["kept"]) {
		t.Errorf("delivery %s was answered twice", id)
	}
	states := map[store.PostState]int{}
	err = s.Write(t.Context(), riverside, func(w store.Writer) error {
		if _, err := w.Resume(noon); err != nil {
			return err
		}
		for _, id := range acked["kept"] {
			if _, err := w.Question(id); err != nil {
				t.Errorf("question %s: %v", id, err)
			}
			if first, err := w.Deliver("delivery/"+id, noon, noon.Add(time.Hour)); first || err != nil {
				t.Errorf("delivery %s: new %t, %v", id, first, err)
			}
		}
		for _, key := range acked["sent"] {
			if p, err := w.Post(key); err != nil || p.State != store.Sent {
				t.Errorf("post %s is %s, %v", key, p.State, err)
			}
		}
		all, err := w.Posts()
		for _, p := range all {
			states[p.State]++
			out := slices.Contains(sent, p.Key)
			if out && p.State != store.Sent && p.State != store.Doubt || !out && p.State == store.Sent {
				t.Errorf("post %s is %s, and it is %t that it went out", p.Key, p.State, out)
			}
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(acked["sent"]) < 10 || states[store.Doubt] < 3 {
		t.Errorf("the test tested too little: %d acknowledged as sent, states %v", len(acked["sent"]), states)
	}
	t.Logf("%d questions kept, %d posts sent, states %v", len(acked["kept"]), len(sent), states)
}

// repeated lists what is in a list more than once.
func repeated(all []string) (twice []string) {
	all = slices.Sorted(slices.Values(all))
	for i := 1; i < len(all); i++ {
		if all[i] == all[i-1] {
			twice = append(twice, all[i])
		}
	}
	return slices.Compact(twice)
}

func kill(pid int) {
	p, err := os.FindProcess(pid)
	if err == nil {
		err = p.Kill()
	}
	if err != nil {
		panic(err)
	}
	select {}
}
