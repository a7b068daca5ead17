package command

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"example.org/netpost/engine/answer"
)

const jousts = "ball in plane, both front row, fourth contact?"

func TestBatchOrderAndBadLines(t *testing.T) {
	var in strings.Builder
	in.WriteString("\ufeff")
	const n = 300
	for i := range n {
		switch i % 10 {
		case 3:
			fmt.Fprintf(&in, `{"id":"q-%d","text":"%s","code":"college"}`+"\r\n", i, jousts)
		case 5:
			fmt.Fprintf(&in, "  \n{\"id\":\"q-%d\",\"text\":\"\"}\n", i)
		default:
			fmt.Fprintf(&in, `{"id":"q-%d","text":"%s"}`+"\n", i, jousts)
		}
	}
	out, errs, status := run(in.String(), "ask", "--batch")
	if status != 0 || errs != "" {
		t.Fatalf("status %d, %s", status, errs)
	}
	lines := strings.Split(strings.TrimSuffix(out, "\n"), "\n")
	if len(lines) != n {
		t.Fatalf("%d answers to %d lines", len(lines), n)
	}
	for i, l := range lines {
		var a struct {
			ID, Kind string
			Error    *answer.Problem
		}
		if err := json.Unmarshal([]byte(l), &a); err != nil {
			t.Fatal(err)
		}
		if a.ID != fmt.Sprintf("q-%d", i) {
			t.Fatalf("answer %d is to %s", i, a.ID)
		}
		if bad := i%10 == 3 || i%10 == 5; bad != (a.Error != nil) {
			t.Errorf("line %d: error %+v", i, a.Error)
		}
	}
}

// A line that is no question answers with an object of just id, kind and
// error, and says where and how to mend it.
func TestBatchErrors(t *testing.T) {
	for _, test := range []struct{ line, id, where, what string }{
		{`{"id":"q","text":"x"`, "null", "line 1: line", "not JSON"},
		{`nonsense`, "null", "line 1: line", "not JSON"},
		{`["text"]`, "null", "line 1: line", "not an object"},
		{`{"id":"q","text":"x"} {}`, `"q"`, "line 1: line", "more after"},
		{`{"id":"q","txt":"x"}`, `"q"`, "line 1: line", "txt"},
		{`{"id":7,"text":"x"}`, "null", "line 1: id", "number"},
		{`{"id":"q","text":["x"]}`, `"q"`, "line 1: text", "array"},
		{`{"id":"q","text":"x","given":"row@p1=front"}`, `"q"`, "line 1: given", "list"},
		{`{"id":"q","text":"x","given":["row"]}`, `"q"`, `line 1: given "row"`, "no value"},
		{`{"id":"q","text":"x","code":"college"}`, `"q"`, "line 1: code", "college"},
		{`{"id":"q","text":"x","edition":"soon"}`, `"q"`, "line 1: season", "soon"},
		{`{"id":"q","text":"` + strings.Repeat("noise ", 1700) + `"}`, `"q"`, "line 1: question", "bytes long"},
		{`{"id":"q"}`, `"q"`, "line 1: question", "empty"},
		{"{\"id\":\"q\",\"text\":\"\xff\"}", "null", "line 1: line", "UTF-8"},
		{`{"id":"q","text":"` + strings.Repeat("x", maxLine) + `"}`, "null", "line 1: line", "longer than"},
	} {
		out, errs, status := run(test.line+"\n"+`{"id":"next","text":"`+jousts+`"}`, "ask", "--batch")
		if status != 0 || errs != "" {
			t.Errorf("%.60s: status %d %s", test.line, status, errs)
		}
		first, second, _ := strings.Cut(out, "\n")
		var got map[string]json.RawMessage
		var p answer.Problem
		if err := json.Unmarshal([]byte(first), &got); err != nil {
			t.Fatalf("%.60s: %v in %s", test.line, err, first)
		}
		if err := json.Unmarshal(got["error"], &p); err != nil {
			t.Fatalf("%.60s: %v in %s", test.line, err, first)
		}
		if len(got) != 3 || string(got["id"]) != test.id || string(got["kind"]) != `"none"` {
			t.Errorf("%.60s: %s", test.line, first)
		}
		if p.Where != test.where || !strings.Contains(p.What+p.Mend, test.what) || p.Mend == "" {
			t.Errorf("%.60s: %+v, want where %q and what %q, and how to mend it", test.line, p, test.where, test.what)
		}
		if !strings.Contains(second, `"id":"next"`) || strings.Contains(second, `"error"`) {
			t.Errorf("%.60s: the line after it gives %s", test.line, second)
		}
	}
}

// Whoever waits for an answer before asking on is not kept waiting.
func TestBatchAnswersAtOnce(t *testing.T) {
	in, ask := io.Pipe()
	read, out := io.Pipe()
	done := make(chan error, 1)
	go func() {
		err := batch(context.Background(), in, out, answer.Options{}, nil)
		out.Close()
		done <- err
	}()
	answers := json.NewDecoder(read)
	for i := range 3 {
		fmt.Fprintf(ask, `{"id":"q-%d","text":"%s"}`+"\n", i, jousts)
		var a struct{ ID string }
		if err := answers.Decode(&a); err != nil || a.ID != fmt.Sprintf("q-%d", i) {
			t.Fatalf("answer %d: %+v %v", i, a, err)
		}
	}
	ask.Close()
	if err := <-done; err != nil {
		t.Error(err)
	}
}

type broken struct{ error }

func (b broken) Read([]byte) (int, error)  { return 0, b.error }
func (b broken) Write([]byte) (int, error) { return 0, b.error }

func TestBatchBrokenPipes(t *testing.T) {
	bad := broken{errors.New("the pipe broke")}
	if err := batch(context.Background(), bad, io.Discard, answer.Options{}, nil); err == nil {
		t.Error("an input that fails gives no error")
	}
	in := strings.Repeat(`{"text":"`+jousts+`"}`+"\n", 2000)
	if err := batch(context.Background(), strings.NewReader(in), bad, answer.Options{}, nil); err == nil {
		t.Error("an output that fails gives no error")
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if err := batch(ctx, strings.NewReader(in), io.Discard, answer.Options{}, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped: %v", err)
	}
}

func FuzzBatch(f *testing.F) {
	f.Add([]byte(`{"id":"q","text":"` + jousts + `"}`))
	f.Add([]byte("{\"id\":\"q\",\"text\":\"\xff\"}\n\n[]\n{"))
	f.Add([]byte(`{"id":"q","text":"net","given":["row@p1=front"],"edition":"2025-28"}`))
	f.Fuzz(func(t *testing.T, in []byte) {
		var out bytes.Buffer
		if err := batch(context.Background(), bytes.NewReader(in), &out, answer.Options{}, nil); err != nil {
			t.Fatal(err)
		}
		want := 0
		_ = split(bytes.NewReader(in), func(int, []byte) bool { want++; return true })
		got := bytes.Count(out.Bytes(), []byte("\n"))
		if got != want {
			t.Errorf("%d answers to %d lines", got, want)
		}
		if bytes.Contains(out.Bytes(), []byte("the program failed")) {
			t.Errorf("%s", out.Bytes())
		}
	})
}

// BenchmarkBatch asks plays as a batch does; ns/op is a play's share of the
// time on all processors.
func BenchmarkBatch(b *testing.B) {
	plays := []string{
		jousts,
		"back-row setter above the net, ball in the plane, front-row blocker contacts it at the same time",
		"hitter in the net on the follow through, ball already dead",
		"block touches the ball, same blocker plays it again, then set, then attack: four?",
		"foot over the centre line, part of it still on the line",
	}
	var in bytes.Buffer
	for i := range b.N {
		fmt.Fprintf(&in, `{"id":"q-%d","text":"%s","code":"scholastic"}`+"\n", i, plays[i%len(plays)])
	}
	b.ReportAllocs()
	b.ResetTimer()
	if err := batch(context.Background(), &in, io.Discard, answer.Options{}, nil); err != nil {
		b.Fatal(err)
	}
}

// BenchmarkAsk is one question on the command line, from words to text.
func BenchmarkAsk(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		w := World{Stdin: strings.NewReader(""), Stdout: io.Discard, Stderr: io.Discard}
		if status := Main(context.Background(), []string{"ask", jousts}, w); status != 0 {
			b.Fatalf("status %d", status)
		}
	}
}
