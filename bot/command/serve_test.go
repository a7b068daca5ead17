package command

import (
	"bytes"
	"context"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/netpost/bot/discord/discordfake"
	"example.org/netpost/bot/slack/slackfake"
)

// patience is how long a test waits for what must come.
const patience = 20 * time.Second

// buffer is an output that is read while it is written.
type buffer struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (b *buffer) Write(p []byte) (int, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.b.Write(p)
}

func (b *buffer) String() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.b.String()
}

// until waits for a condition.
func until(t testing.TB, what string, holds func() bool) {
	t.Helper()
	for end := time.Now().Add(patience); !holds(); time.Sleep(5 * time.Millisecond) {
		if time.Now().After(end) {
			t.Fatalf("waited in vain for %s", what)
		}
	}
}

// served is a program that serves.
type served struct {
	t      testing.TB
	log    buffer
	stop   func() int // ends it, and gives its status
	config string
}

// begin has the program serve a file of settings. When the test ends it is
// stopped, must end well, and must have logged no secret.
func begin(t testing.TB, settings string, vars, api map[string]string) *served {
	t.Helper()
	if !strings.Contains(settings, "web:") {
		settings += "\nweb: off\n"
	}
	s := &served{t: t, config: filepath.Join(t.TempDir(), "netpost.yaml")}
	if err := os.WriteFile(s.config, []byte(settings), 0o600); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan int, 1)
	var out bytes.Buffer
	go func() {
		ended <- Main(ctx, []string{"serve", "--config", s.config}, World{Stdin: strings.NewReader(""), Stdout: &out, Stderr: &s.log, Env: env(vars), api: api})
	}()
	status := -1
	var once sync.Once
	s.stop = func() int {
		once.Do(func() {
			cancel()
			select {
			case status = <-ended:
			case <-time.After(2 * closing):
				t.Error("serving does not end")
			}
		})
		return status
	}
	t.Cleanup(func() {
		if status := s.stop(); status != ok {
			t.Errorf("status %d; log:\n%s", status, s.log.String())
		}
		for _, v := range vars {
			if strings.Contains(s.log.String(), v) || strings.Contains(out.String(), v) {
				t.Errorf("the secret %q is in the log:\n%s", v, s.log.String())
			}
		}
	})
	return s
}

// logged waits for a line of the log and gives what the pattern's group found.
func (s *served) logged(pattern string) string {
	s.t.Helper()
	re := regexp.MustCompile(pattern)
	until(s.t, "a line of the log like "+pattern, func() bool { return re.MatchString(s.log.String()) })
	m := re.FindStringSubmatch(s.log.String())
	return m[len(m)-1]
}

func fetch(t *testing.T, url string) (status int, body string) {
	t.Helper()
	r, err := http.Get(url)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	b, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return r.StatusCode, string(b)
}

// webAddress is where the web channel is: another one in each run.
var webAddress = regexp.MustCompile(`http://127\.0\.0\.1:\d+/`)

// With nothing configured the terminal is served, with the example notes, and
// the same script shows the same.
func TestServeTerminal(t *testing.T) {
	script, err := os.ReadFile("testdata/serve/terminal.in")
	if err != nil {
		t.Fatal(err)
	}
	golden, err := filepath.Abs("testdata/serve/terminal.screen")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir()) // the store goes where the program is run
	for range 2 {
		out, errs, status := run(string(script), "serve")
		if status != ok || errs != "" {
			t.Fatalf("status %d\n%s", status, errs)
		}
		out = webAddress.ReplaceAllString(out, "http://ADDRESS/")
		if *update {
			if err := os.WriteFile(golden, []byte(out), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if out != string(want) {
			t.Errorf("the screen shows otherwise; if that is right: go test ./bot/command -update\n%s", diff(string(want), out))
		}
	}
	if left, err := filepath.Glob("*"); err != nil || strings.Join(left, " ") != "netpost.db" {
		t.Errorf("left behind: %q, %v", left, err)
	}
}

const (
	talk = "C0TALK"
	play = "our setter tips the ball over from inside the 3m line, ball above the net"
)

var crewVars = map[string]string{
	"NETPOST_SLACK_BOT_TOKEN": slackfake.BotToken, "NETPOST_SLACK_APP_TOKEN": slackfake.AppToken,
	"NETPOST_SLACK_SIGNING_SECRET": slackfake.SigningSecret,
}

// platforms are both fakes, with the variables and addresses that lead there.
func platforms(t testing.TB) (s *slackfake.Server, d *discordfake.Server, vars, api map[string]string) {
	s, d = slackfake.New(), discordfake.New()
	t.Cleanup(s.Close)
	t.Cleanup(d.Close)
	s.Channel(talk, "U0ANA", "U0BO", slackfake.Self)
	vars = map[string]string{"NETPOST_DISCORD_TOKEN": d.Token}
	for k, v := range crewVars {
		vars[k] = v
	}
	return s, d, vars, map[string]string{"slack": s.APIURL(), "discord": d.APIURL()}
}

const guild = "223344556677889900"

var (
	ana  = discordfake.Person{ID: "111", Name: "ana"}
	chat = discordfake.Where{Guild: guild, Channel: "323344556677889901"}
)

// casebookOf makes a casebook with one note.
func casebookOf(t testing.TB) string {
	dir := t.TempDir()
	writeNote(t, dir, "A tip over the tape by a back-row setter")
	return dir
}

func writeNote(t testing.TB, dir, title string) {
	t.Helper()
	text := "---\nid: 2026-001\ntitle: " + title + "\ncodes: [scholastic]\nseason: 2025-26\nstatus: published\nissued: 2025-09-01\n" +
		"topics: [back row]\nplay: A setter back row dumps it on two, ball wholly above the net, jumped from inside the 3m line\n" +
		"ruling: {outcome: fault, fault: back-row-attack, against: A}\n---\nWhere she took off from is what counts.\n"
	if err := os.WriteFile(filepath.Join(dir, "2026-001.md"), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// Two associations on two platforms in one process: each is answered under its
// own code with its own notes; what was done is counted; nothing secret is
// logged; it ends well when told to.
func TestServePlatforms(t *testing.T) {
	for _, mode := range []string{"outwards", "http"} {
		t.Run(mode, func(t *testing.T) {
			s, d, vars, api := platforms(t)
			slackMode, discordMode, listen := "socket", "gateway", "off"
			if mode == "http" {
				slackMode, discordMode, listen = "http", "http", free(t)
				s.PostTo("http://" + listen + "/slack")
				d.Endpoint = "http://" + listen + "/discord"
			}
			p := begin(t, `
listen: "`+listen+`"
metrics: 127.0.0.1:0
discord: {mode: `+discordMode+`, application: "112233445566778899", public_key: `+d.PublicKey()+`}
associations:
  - id: riverside
    code: scholastic
    casebook: `+casebookOf(t)+`
    slack: {workspace: `+slackfake.Team+`, mode: `+slackMode+`}
  - id: hillside
    code: club
    discord: {guild: "`+guild+`"}
`, vars, api)
			watch := "http://" + p.logged(`health and metrics" address=(\S+)`)
			p.logged(`serving channel=discord|serving channel="?discord`)
			if mode == "http" {
				until(t, "the address", func() bool { c, err := net.Dial("tcp", listen); return err == nil && c.Close() == nil })
			} else if !d.Connected(patience) || !s.Wait(patience, func() bool { return s.Connections() > 0 }) {
				t.Fatalf("not connected:\n%s", p.log.String())
			}

			asker := s.Person("U0ANA")
			if a := asker.Command(talk, "public "+play); a.Err != nil {
				t.Fatal(a.Err)
			}
			m, err := asker.Last(talk, slackfake.Message{})
			if err != nil {
				t.Fatalf("%v\n%s", err, p.log.String())
			}
			if shown := m.Shown(); !strings.Contains(shown, "9-5-5") || strings.Contains(shown, "club") || !strings.Contains(shown, "2026-001") {
				t.Errorf("not under riverside's code, or without its note:\n%s", shown)
			}
			if a := asker.Press(m, "back row"); a.Err != nil {
				t.Fatal(a.Err)
			}
			if m, err = asker.Last(talk, m); err != nil || !strings.Contains(m.Shown(), "Fault: back-row attack") {
				t.Errorf("the answer was not edited: %v\n%s", err, m.Shown())
			}

			answer := d.Slash(ana, chat, "ask", map[string]string{"play": play}).Message()
			if answer == nil {
				t.Fatalf("no answer on Discord\n%s", p.log.String())
			}
			if shown := answer.Shown(); !strings.Contains(shown, "club 2026-27") || strings.Contains(shown, "2026-001") {
				t.Errorf("not under hillside's code, or with another's notes:\n%s", shown)
			}

			if status, body := fetch(t, watch+healthPath); status != 200 || body != "store: good\nnotes of riverside: 1 note, 0 findings\n" {
				t.Errorf("health: %d %s", status, body)
			}
			_, counted := fetch(t, watch+metricsPath)
			for _, line := range []string{
				`netpost_questions_total{association="riverside"} 1`, `netpost_questions_total{association="hillside"} 1`,
				`netpost_rulings_total{association="riverside",outcome="depends"} 1`, `netpost_rulings_total{association="riverside",outcome="fault"} 1`,
				`netpost_notes{association="riverside"} 1`,
			} {
				if !strings.Contains(counted, line+"\n") {
					t.Errorf("not counted: %s", line)
				}
			}
			if log := p.log.String(); strings.Contains(log, "setter") {
				t.Errorf("the words of a question are in the log:\n%s", log)
			}
			if status := p.stop(); status != ok || !strings.Contains(p.log.String(), "msg=stopped") {
				t.Errorf("status %d\n%s", status, p.log.String())
			}
			if bad := append(s.Problems(), d.Violations()...); len(bad) > 0 {
				t.Errorf("the platforms complain: %q", bad)
			}
		})
	}
}

// free finds an address that nothing has.
func free(t testing.TB) string {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	return l.Addr().String()
}

// A channel that can't go on ends the program with a sentence that says how to
// mend it; so does an address that something else has.
func TestServeFails(t *testing.T) {
	s, d, vars, api := platforms(t)
	taken, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer taken.Close()
	s.Refuse("auth.test", "token_revoked", 1000)
	d.Refuse(discordfake.Refusal{Status: 401})
	const onSlack = "associations: [{id: riverside, slack: {workspace: T0CREW}}]\n"
	for _, test := range []struct{ name, settings, want string }{
		{"slack", "metrics: off\n" + onSlack, "netpost serve: slack: Slack refuses the bot token with token_revoked: "},
		{"discord", "metrics: off\nassociations: [{id: hillside, discord: {guild: \"" + guild + "\"}}]\n", "netpost serve: discord: Discord refuses with "},
		{"metrics", "metrics: " + taken.Addr().String() + "\n" + onSlack, "netpost serve: metrics: " + taken.Addr().String() + " can't be taken: "},
		{"listen", "metrics: off\nlisten: " + taken.Addr().String() + "\nassociations: [{id: riverside, slack: {workspace: T0CREW, mode: http}}]\n",
			"netpost serve: listen: " + taken.Addr().String() + " can't be taken: "},
		{"web", "metrics: off\nweb: " + taken.Addr().String() + "\n" + onSlack, "netpost serve: web: " + taken.Addr().String() + " can't be taken: "},
		{"store", "metrics: off\nstore: " + t.TempDir() + "\n" + onSlack, "netpost serve: the store "},
	} {
		t.Run(test.name, func(t *testing.T) {
			file := filepath.Join(t.TempDir(), "netpost.yaml")
			if !strings.Contains(test.settings, "web:") {
				test.settings += "web: off\n"
			}
			if err := os.WriteFile(file, []byte(test.settings), 0o600); err != nil {
				t.Fatal(err)
			}
			var out, errs bytes.Buffer
			status := Main(t.Context(), []string{"serve", "--config", file}, World{Stdin: strings.NewReader(""), Stdout: &out, Stderr: &errs, Env: env(vars), api: api})
			last := errs.String()
			if i := strings.LastIndex(strings.TrimRight(last, "\n"), "\n"); i >= 0 {
				last = last[i+1:]
			}
			if status != wrong || !strings.HasPrefix(last, test.want) {
				t.Errorf("status %d, want %q at the end of\n%s", status, test.want, errs.String())
			}
			for _, v := range vars {
				if strings.Contains(errs.String(), v) {
					t.Errorf("the secret %q shows:\n%s", v, errs.String())
				}
			}
		})
	}
}
