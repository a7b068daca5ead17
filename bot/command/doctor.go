package command

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"slices"
	"strings"
	"sync"
	"time"

	"example.org/netpost/config"
)

var doctorCommand = command{
	name:    "doctor",
	summary: "look whether serving would work: settings, tokens, scopes, store, notes, index",
	help: "Each finding names the place, what is wrong and how to mend it; the exit status is then 1. It asks the " +
		"platforms themselves whether they take the tokens, posts nothing, and can run beside a netpost that serves.",
	flags: []flagRow{configFlag},
	run:   doctor,
}

// platformPatience is how long a platform may take to say what it thinks of
// the tokens.
const platformPatience = 10 * time.Second

// examination is what a doctor finds, in order.
type examination struct {
	world  *World
	config config.Config
	lines  []string
	found  int
}

// good, note and find add a line: of what is as it should be, of what is worth
// knowing, of what is to be mended.
func (x *examination) good(area, format string, args ...any) {
	x.lines = append(x.lines, "ok: "+area+": "+fmt.Sprintf(format, args...))
}

func (x *examination) note(area, format string, args ...any) {
	x.lines = append(x.lines, "note: "+area+": "+fmt.Sprintf(format, args...))
}

func (x *examination) find(fs ...config.Finding) {
	for _, f := range fs {
		x.lines = append(x.lines, f.String())
		x.found++
	}
}

// at is a finding about one field of the settings.
func (x *examination) at(field, mend, format string, args ...any) {
	x.find(config.Finding{Path: x.config.File, Field: field, What: fmt.Sprintf(format, args...), Mend: mend})
}

func doctor(ctx context.Context, w *World, in input) error {
	if len(in.words) > 0 {
		return fmt.Errorf("takes no words; %s is one too many", visible(in.words[0]))
	}
	c, found := config.Load(w.settingsFile(in), w.Env)
	x := &examination{world: w, config: c}
	if len(found) > 0 {
		x.find(found...)
		x.note("the rest", "it is looked at once the settings can be read")
	} else {
		x.settings()
		x.store(ctx)
		x.casebooks()
		x.addresses(ctx)
		x.platforms(ctx)
	}
	return x.print(ctx, w.Stdout)
}

func (x *examination) print(ctx context.Context, w io.Writer) error {
	if ctx.Err() != nil {
		return ctx.Err()
	}
	last := "nothing to mend"
	if x.found > 0 {
		last = count(x.found, "thing") + " to mend"
	}
	// A secret must not show in what somebody pastes into a question.
	_, err := io.WriteString(&curtain{w, secrets(x.config)}, strings.Join(append(x.lines, last), "\n")+"\n")
	if err == nil && x.found > 0 {
		return errFound
	}
	return err
}

// settings looks at what the file says, and at the secrets.
func (x *examination) settings() {
	c := x.config
	if c.File == "" {
		x.good("settings", "there is no file; serve talks in the terminal, with the invented example notes")
		return
	}
	var on []string
	for _, ch := range x.world.channels(c) {
		on = append(on, ch.name)
	}
	if on == nil {
		on = []string{"the terminal"}
	}
	x.good("settings", "%s reads; %s, on %s", c.File, count(len(c.Associations), "association"), strings.Join(on, ", "))
	if missing := c.Secrets(); len(missing) > 0 {
		x.find(missing...)
	} else if n := len(secrets(c)); n > 0 {
		x.good("secrets", "%s there, of the right kind by how they begin", are(n))
	}
}

func are(n int) string {
	if n == 1 {
		return "1 is"
	}
	return fmt.Sprintf("%d are", n)
}

// addresses looks whether those that serving takes are free, or taken by a
// netpost that serves.
func (x *examination) addresses(ctx context.Context) {
	c := x.config
	if c.File == "" {
		return
	}
	running := false
	if c.Metrics != "" {
		status, err := get(ctx, "http://"+c.Metrics+healthPath)
		switch {
		case err == nil && status == http.StatusOK:
			running = true
			x.good("metrics", "a netpost that is well serves at %s", c.Metrics)
		case err == nil && status == http.StatusServiceUnavailable:
			running = true
			x.at("metrics", "read there what: "+healthPath, "a netpost that is not well serves at %s", c.Metrics)
		case err == nil:
			x.at("metrics", "end it, or name another address", "another program answers at %s", c.Metrics)
		default:
			x.free("metrics", c.Metrics)
		}
	}
	overHTTP := slices.ContainsFunc(x.world.channels(c), func(ch channel) bool { return ch.paths != nil })
	switch {
	case !overHTTP:
	case running:
		x.note("listen", "%s is that of the netpost that serves", c.Listen)
	default:
		x.free("listen", c.Listen)
	}
}

func (x *examination) free(field, address string) {
	l, err := net.Listen("tcp", address)
	if err != nil {
		if e, ok := errors.AsType[*net.OpError](err); ok {
			err = e.Err
		}
		x.at(field, "end what has it, or name another address", "%s can't be taken: %v", address, err)
		return
	}
	l.Close()
	x.good(field, "%s is free", address)
}

func get(ctx context.Context, url string) (status int, err error) {
	ctx, cancel := context.WithTimeout(ctx, 2*time.Second)
	defer cancel()
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, url, nil)
	if err != nil {
		return 0, err
	}
	resp, err := http.DefaultClient.Do(r)
	if err != nil {
		return 0, err
	}
	resp.Body.Close()
	return resp.StatusCode, nil
}

// platforms asks each platform whether it would have us, all at once.
func (x *examination) platforms(ctx context.Context) {
	ctx, cancel := context.WithTimeout(ctx, platformPatience)
	defer cancel()
	all := x.world.channels(x.config)
	parts := make([]examination, len(all))
	var wg sync.WaitGroup
	for i, ch := range all {
		parts[i] = examination{world: x.world, config: x.config}
		wg.Go(func() { parts[i].platform(ctx, ch) })
	}
	wg.Wait()
	for _, p := range parts {
		x.lines = append(x.lines, p.lines...)
		x.found += p.found
	}
}

func (x *examination) platform(ctx context.Context, ch channel) {
	var l net.Listener
	if ch.paths != nil {
		l = newPipes(&net.TCPAddr{}) // nothing is received here
	}
	a, err := ch.make(nil, l)
	if err != nil {
		x.note(ch.name, "it is asked once its secrets are there")
		return
	}
	warnings, err := a.Check(ctx)
	mine := func(s string) string { return strings.TrimPrefix(s, ch.platform+": ") }
	toMend := 0
	for _, w := range warnings {
		what, mend, _ := strings.Cut(mine(w), ": ")
		if strings.HasSuffix(mend, "when serving starts") { // nothing for a person to mend
			x.note(ch.name, "%s; %s", what, mend)
			continue
		}
		toMend++
		x.at(ch.field, mend, "%s", what)
	}
	if err != nil {
		what, mend, _ := cutLast(mine(err.Error()), ": ")
		x.at(ch.field, mend, "%s", what)
		return
	}
	if t, ok := a.(interface{ Workspace() string }); ok && t.Workspace() != "" && t.Workspace() != ch.workspace {
		x.at(ch.field+".workspace", "write "+t.Workspace()+", or take the token of the other workspace",
			"the bot token is for the workspace %s, not %s", t.Workspace(), ch.workspace)
		return
	}
	if toMend == 0 {
		x.good(ch.name, "the platform takes the tokens, with all that is needed")
	}
}

func cutLast(s, sep string) (before, after string, found bool) {
	if i := strings.LastIndex(s, sep); i >= 0 {
		return s[:i], s[i+len(sep):], true
	}
	return s, "", false
}
