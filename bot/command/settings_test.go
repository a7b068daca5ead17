package command

import (
	"log/slog"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/metrics"
	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/sqlite"
	"example.org/netpost/config"
)

const twoCrews = `
metrics: off
retention_days: 30
local: hillside
associations:
  - id: riverside
    name: Riverside Crew
    code: scholastic
    season: 2025-26
    private: true
    slack: {workspace: T0RIVER, channels: [C0ASK], mentor_users: [U0ONE], publisher_users: [U0TWO]}
  - id: hillside
    discord: {guild: "223344556677889900", mentor_roles: ["423344556677889904"]}
`

func settingsOf(t *testing.T, text string) config.Config {
	t.Helper()
	file := filepath.Join(t.TempDir(), "netpost.yaml")
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	c, found := config.Load(file, env(nil))
	if len(found) > 0 {
		t.Fatal(found)
	}
	return c
}

// The settings that the README shows are such that the program reads.
func TestReadmeSettings(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	parts := strings.Split(string(text), "```yaml\n")
	if len(parts) < 4 {
		t.Fatalf("the README shows %d files of settings", len(parts)-1)
	}
	for _, p := range parts[1:] {
		block, _, _ := strings.Cut(p, "```")
		settingsOf(t, strings.TrimRight(block, " "))
	}
}

// Every place belongs to one association or to none, and nobody has a role on
// a platform that is not theirs.
func TestFinder(t *testing.T) {
	find := finder(settingsOf(t, twoCrews), func(string) *library { return nil })
	for _, test := range []struct{ platform, workspace, want string }{
		{"slack", "T0RIVER", "riverside"},
		{"slack", "T0OTHER", ""},
		{"slack", "", ""},
		{"discord", "223344556677889900", "hillside"},
		{"discord", "", "hillside"}, // a direct message: there is one crew on Discord
		{"discord", "T0RIVER", ""},
		{"term", "local", "hillside"},
		{"pager", "T0RIVER", ""},
	} {
		a, ok := find(bot.Place{Platform: test.platform, Workspace: test.workspace})
		if ok != (test.want != "") || a.ID != test.want {
			t.Errorf("%s %q: %q, want %q", test.platform, test.workspace, a.ID, test.want)
		}
	}
	a, _ := find(bot.Place{Platform: "slack", Workspace: "T0RIVER"})
	if a.Name != "Riverside Crew" || a.Code != "scholastic" || a.Season.String() != "2025-26" || !a.Private || strings.Join(a.Channels, " ") != "C0ASK" {
		t.Errorf("the association is %+v", a)
	}
	role := func(platform, workspace, who string, roles ...string) bot.Role {
		p := bot.Place{Platform: platform, Workspace: workspace}
		a, _ := find(p)
		return a.RoleOf(bot.Who{Person: bot.Person{Platform: platform, ID: who}, Roles: roles}, p)
	}
	for _, test := range []struct {
		got, want bot.Role
	}{
		{role("slack", "T0RIVER", "U0ONE"), bot.Mentor},
		{role("slack", "T0RIVER", "U0TWO"), bot.Publisher},
		{role("slack", "T0RIVER", "U0THREE", "mentor"), bot.Anyone},
		{role("discord", "223344556677889900", "1", "423344556677889904"), bot.Mentor},
		{role("discord", "223344556677889900", "U0TWO"), bot.Anyone},
		{role("term", "local", "me"), bot.Anyone},
		{role("term", "local", "me", "publisher"), bot.Publisher},
	} {
		if test.got != test.want {
			t.Errorf("the role is %s, want %s", test.got, test.want)
		}
	}
	three := twoCrews + "  - {id: lakeside, discord: {guild: \"223344556677889911\"}}\n"
	if _, ok := finder(settingsOf(t, three), func(string) *library { return nil })(bot.Place{Platform: "discord"}); ok {
		t.Error("with two crews on Discord a direct message is taken for one of them")
	}
}

// What is too old goes, in every association, also one that is not in the
// settings any more; what was being sent when the program was killed waits for
// a person.
func TestKeep(t *testing.T) {
	s, err := sqlite.Open(t.Context(), filepath.Join(t.TempDir(), "netpost.db"), sqlite.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	now := time.Date(2026, 11, 24, 12, 0, 0, 0, time.UTC)
	for _, id := range []string{"riverside", "gone"} {
		err := s.Write(t.Context(), id, func(w store.Writer) error {
			for _, days := range []int{40, 20} {
				at := now.AddDate(0, 0, -days)
				q := store.Question{ID: store.NewID(), Asker: store.Person{Platform: "slack", ID: "U0ANA"}, Where: store.Place{Platform: "slack"}, Text: "a play", Asked: at}
				if err := w.Ask(q); err != nil {
					return err
				}
			}
			if _, err := w.Queue(store.Post{Key: "p", Where: store.Place{Platform: "slack"}, Body: []byte("x"), Queued: now}); err != nil {
				return err
			}
			return w.Mark("p", now)
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	var log buffer
	c := settingsOf(t, twoCrews)
	p := &service{config: c, store: s, metrics: metrics.New(), log: slog.New(slog.NewTextHandler(&log, nil))}
	if err := p.resume(t.Context(), now); err != nil {
		t.Fatal(err)
	}
	if err := p.purge(t.Context(), now); err != nil {
		t.Fatal(err)
	}
	for _, id := range []string{"riverside", "gone"} {
		err := s.Read(t.Context(), id, func(r store.Reader) error {
			left, err := r.Questions(store.Span{})
			if err != nil || len(left) != 1 || !left[0].Asked.Equal(now.AddDate(0, 0, -20)) {
				t.Errorf("%s: %d questions left, %v", id, len(left), err)
			}
			doubt, err := r.Posts(store.Doubt)
			if err != nil || len(doubt) != 1 {
				t.Errorf("%s: %d posts in doubt, %v", id, len(doubt), err)
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if !strings.Contains(log.String(), "posts may be out or not") || strings.Contains(log.String(), "U0ANA") {
		t.Errorf("the log:\n%s", log.String())
	}
	p.config.Retention = 0 // for ever
	if err := p.purge(t.Context(), now.AddDate(50, 0, 0)); err != nil {
		t.Fatal(err)
	}
	err = s.Read(t.Context(), "riverside", func(r store.Reader) error {
		if left, err := r.Questions(store.Span{}); err != nil || len(left) != 1 {
			t.Errorf("kept for ever: %d questions left, %v", len(left), err)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// A secret that somebody logs by mistake does not show, whatever form the log
// gives it.
func TestCurtain(t *testing.T) {
	var c config.Config
	c.Discord.Token = config.NewSecret("abc.def-123")
	c.Associations = []config.Association{{Slack: config.Slack{BotToken: config.NewSecret("xoxb-77"), AppToken: config.NewSecret("xapp-88"), SigningSecret: config.NewSecret("99ff")}}}
	var out buffer
	log := newLog(&out, slog.LevelInfo, c, metrics.New())
	log.Info("token abc.def-123", "url", "https://hooks.example/xoxb-77?x", "nested", slog.GroupValue(slog.String("a", "xapp-88")), "cause", os.ErrNotExist)
	log.With("secret", "99ff").Error("again xoxb-77 xoxb-77")
	log.Debug("below the level")
	for _, s := range []string{"abc.def", "xoxb", "xapp", "99ff", "below"} {
		if strings.Contains(out.String(), s) {
			t.Errorf("%s shows in\n%s", s, out.String())
		}
	}
	if n := strings.Count(out.String(), "(secret)"); n != 6 {
		t.Errorf("%d of 6 places are marked:\n%s", n, out.String())
	}
}

// The command line works under the settings, and flags win over them.
func TestSettingsOnCommandLine(t *testing.T) {
	notes := casebookOf(t)
	book := "name: Hillside\nadoptions:\n  - {param: hits.second-double, code: club, value: fault, rule: HS-1, reason: for the test}\nrules:\n  - {number: HS-1, title: Own rule}\n"
	if err := os.WriteFile(filepath.Join(notes, "book.yaml"), []byte(book), 0o644); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "netpost.yaml")
	if err := os.WriteFile(file, []byte("associations: [{id: hillside, code: scholastic, season: 2025-26, casebook: "+notes+"}]\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	has := func(out string, want ...string) {
		t.Helper()
		for _, w := range want {
			if !strings.Contains(out, w) {
				t.Errorf("no %q in\n%s", w, out)
			}
		}
	}
	const tip = "our back-row setter tips the ball over from inside the 3m line, ball above the net"
	out, errs, status := run("", "ask", "--config", file, tip)
	if status != ok || errs != "" {
		t.Fatalf("status %d\n%s", status, errs)
	}
	has(out, "9-5-5 scholastic 2025-26", "2026-001 A tip over the tape")
	out, _, _ = run("", "ask", "--config", file, "--code", "club", "--season", "2026-27", tip)
	has(out, "club 2026-27")
	out, _, _ = run(`{"text":"`+tip+`"}`+"\n", "ask", "--config", file, "--batch")
	has(out, `"code":"scholastic","edition":"2025-26"`, `"notes":[]`)
	out, _, _ = run(`{"text":"`+tip+`"}`+"\n", "ask", "--config", file, "--batch", "--notes")
	has(out, `"notes":[{"id":"2026-001"`)
	out, _, _ = run("", "search", "--config", file, "--season", "2026-27", "setter")
	has(out, "2026-001 A tip over the tape")
	out, errs, status = run("", "check", "--config", file, "--today", "2026-11-24")
	if !strings.Contains(out, "1 note") {
		t.Errorf("status %d\n%s%s", status, out, errs)
	}
	if _, err := os.Stat(filepath.Join(filepath.Dir(file), "netpost.index", "hillside")); err != nil {
		t.Errorf("the index is not where the settings say: %v", err)
	}
	bad := filepath.Join(t.TempDir(), "bad.yaml")
	if err := os.WriteFile(bad, []byte("cod: club\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"ask", "search", "check"} {
		var out, errs buffer
		args := []string{name}
		if name != "check" {
			args = append(args, "x")
		}
		status := Main(t.Context(), args, World{Stdin: strings.NewReader(""), Stdout: &out, Stderr: &errs, Env: env(map[string]string{"NETPOST_CONFIG": bad})})
		if status != wrong || !strings.Contains(errs.String(), bad+":1: cod: there is no such key") {
			t.Errorf("%s with bad settings: status %d\n%s", name, status, errs.String())
		}
	}
	// The file of the current folder is read without being named.
	t.Chdir(filepath.Dir(file))
	out, _, _ = run("", "ask", tip)
	has(out, "9-5-5 scholastic 2025-26")
}
