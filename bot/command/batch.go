package command

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"runtime"
	"unicode/utf8"

	"example.org/netpost/bot"
	"example.org/netpost/engine/answer"
)

// maxLine is the longest line of a batch that is read, in bytes. A longer one
// is passed over and answered with an error.
const maxLine = 1 << 16

// question is one line of a batch.
type question struct {
	ID      string   `json:"id"`
	Text    string   `json:"text"`
	Code    string   `json:"code"`
	Edition string   `json:"edition"`
	Given   []string `json:"given"`
}

// failure answers a line that no question could be read from.
type failure struct {
	ID    answer.Maybe    `json:"id"`
	Kind  answer.Kind     `json:"kind"`
	Error *answer.Problem `json:"error"`
}

// job is one line on its way: its answer comes through done.
type job struct {
	number int
	line   []byte // nil: too long
	done   chan []byte
}

// batch answers lines as they come, several at a time, in their order. The
// error is that of reading or writing; a bad line is answered and the rest go
// on.
func batch(ctx context.Context, in io.Reader, out io.Writer, o answer.Options, s bot.Searcher) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	workers := runtime.GOMAXPROCS(0)
	jobs := make(chan job)
	order := make(chan job, 64*workers)
	for range workers {
		go func() {
			for j := range jobs {
				j.done <- j.answer(ctx, o, s)
			}
		}()
	}
	var readErr error
	go func() {
		defer close(order)
		defer close(jobs)
		readErr = split(in, func(n int, line []byte) bool {
			j := job{n, line, make(chan []byte, 1)}
			select {
			case order <- j:
			case <-ctx.Done():
				return false
			}
			select {
			case jobs <- j:
			case <-ctx.Done():
				return false
			}
			return true
		})
	}()
	w := bufio.NewWriterSize(out, 1<<16)
	for j := range order {
		var line []byte
		select {
		case line = <-j.done:
		case <-ctx.Done():
			return ctx.Err()
		}
		if _, err := w.Write(line); err != nil {
			return fmt.Errorf("writing answers: %w", err)
		}
		if len(order) == 0 { // whoever waits for an answer before asking on gets it
			if err := w.Flush(); err != nil {
				return fmt.Errorf("writing answers: %w", err)
			}
		}
	}
	if ctx.Err() != nil {
		return ctx.Err()
	}
	if readErr != nil {
		return fmt.Errorf("reading questions: %w", readErr)
	}
	return w.Flush()
}

// split gives each line that is not blank, numbered from 1, nil for one that
// is longer than maxLine. It stops when give says so.
func split(in io.Reader, give func(n int, line []byte) bool) error {
	r := bufio.NewReaderSize(in, maxLine)
	for n := 1; ; n++ {
		line, err := r.ReadSlice('\n')
		long := false
		for errors.Is(err, bufio.ErrBufferFull) {
			long = true
			_, err = r.ReadSlice('\n')
		}
		switch {
		case long:
			line = nil
		case n == 1:
			line = bytes.TrimPrefix(line, []byte("\ufeff"))
			fallthrough
		default:
			line = bytes.Clone(bytes.TrimSpace(line))
		}
		if (long || len(line) > 0) && !give(n, line) {
			return nil
		}
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
	}
}

// answer is the line of JSON that answers a job. A failure of the program
// itself is one line's trouble, not the batch's.
func (j job) answer(ctx context.Context, o answer.Options, s bot.Searcher) (out []byte) {
	id := ""
	defer func() {
		if p := recover(); p != nil {
			out = j.failed(id, &answer.Problem{Where: j.where("question"), What: fmt.Sprintf("the program failed on it: %v", p), Mend: "report it with this line"})
		}
	}()
	q, problem := j.read()
	id = q.ID
	if problem == nil {
		o, problem = q.options(o)
	}
	if problem != nil {
		problem.Where = j.where(problem.Where)
		return j.failed(id, problem)
	}
	a := answer.Ask(q.Text, o)
	if s != nil && a.Error == nil {
		found, err := s.Notes(ctx, asked(q.Text, o))
		a = noted(a, found, err)
	}
	if a.Error != nil {
		a.Error.Where = j.where(a.Error.Where)
		return j.failed(id, a.Error)
	}
	a.ID = answer.Maybe(id)
	return line(a)
}

// where is the place of a problem in the batch.
func (j job) where(what string) string { return fmt.Sprintf("line %d: %s", j.number, what) }

func (j job) failed(id string, p *answer.Problem) []byte {
	return line(failure{answer.Maybe(id), answer.None, p})
}

func line(v any) []byte {
	var b bytes.Buffer
	if err := encode(&b, v); err != nil {
		panic(err) // our own types; cannot fail
	}
	return b.Bytes()
}

// read reads a question. Where that fails it still gives the id, if it can.
func (j job) read() (question, *answer.Problem) {
	var q question
	const mend = `write one object a line: {"id":"q-1","text":"..."}, with code, edition and given if they matter`
	switch {
	case j.line == nil:
		return q, &answer.Problem{Where: "line", What: fmt.Sprintf("it is longer than %d bytes", maxLine), Mend: "tell one play in a few sentences"}
	case !utf8.Valid(j.line):
		return q, &answer.Problem{Where: "line", What: "it is not UTF-8 text", Mend: "send it as UTF-8"}
	}
	d := json.NewDecoder(bytes.NewReader(j.line))
	d.DisallowUnknownFields()
	err := d.Decode(&q)
	if err == nil {
		if _, more := d.Token(); more != io.EOF {
			return q, &answer.Problem{Where: "line", What: "there is more after the object", Mend: mend}
		}
		return q, nil
	}
	var known struct {
		ID string `json:"id"`
	}
	_ = json.Unmarshal(j.line, &known) // the id alone, for the error to carry
	p := &answer.Problem{Where: "line", What: err.Error(), Mend: mend}
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	switch {
	case errors.As(err, &syntax), errors.Is(err, io.ErrUnexpectedEOF):
		p.What = "it is not JSON"
	case errors.As(err, &kind) && kind.Field != "":
		p.Where, p.What = kind.Field, "it is a "+kind.Value+", not "+want(kind.Field)
	case errors.As(err, &kind):
		p.What = "it is a JSON " + kind.Value + ", not an object"
	}
	return question{ID: known.ID}, p
}

func want(field string) string {
	if field == "given" {
		return `a list like ["row@p1=front"]`
	}
	return "text"
}

// options are those of the whole batch, with what the line says for itself.
func (q question) options(o answer.Options) (answer.Options, *answer.Problem) {
	own, err := options(q.Code, q.Edition, q.Given)
	if err != nil {
		var p *answer.Problem
		if !errors.As(err, &p) {
			p = &answer.Problem{Where: "line", What: err.Error()}
		}
		return o, p
	}
	if own.Code != "" {
		o.Code = own.Code
	}
	if own.Season != 0 {
		o.Season = own.Season
	}
	o.Given = own.Given
	return o, nil
}
