package command

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.org/netpost/bot/discord/discordfake"
	"example.org/netpost/bot/slack/slackfake"
)

// examined is what doctor says of settings, with the paths and addresses of
// this run named: DIR, NOTES, FREE.
func examined(t *testing.T, settings string, vars, api map[string]string) (report string, status int) {
	t.Helper()
	dir := t.TempDir()
	file := filepath.Join(dir, "netpost.yaml")
	if err := os.WriteFile(file, []byte(settings), 0o600); err != nil {
		t.Fatal(err)
	}
	var out, errs buffer
	status = Main(t.Context(), []string{"doctor", "--config", file}, World{Stdin: strings.NewReader(""), Stdout: &out, Stderr: &errs, Env: env(vars), api: api})
	if errs.String() != "" {
		t.Errorf("errors: %s", errs.String())
	}
	for _, v := range vars {
		if strings.Contains(out.String(), v) {
			t.Errorf("the secret %q is in the report:\n%s", v, out.String())
		}
	}
	report = strings.ReplaceAll(out.String(), dir, "DIR")
	return loopback.ReplaceAllString(report, "ADDRESS"), status
}

var loopback = regexp.MustCompile(`127\.0\.0\.1:\d+`)

func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata/doctor", name+".report")
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("the report differs; if that is right: go test ./bot/command -update\n%s", diff(string(want), got))
	}
}

func set(mode, discord, publicKey, notes, metrics string) string {
	return `
metrics: "` + metrics + `"
listen: 127.0.0.1:0
discord: {mode: ` + discord + `, application: "112233445566778899", public_key: ` + publicKey + `}
associations:
  - id: riverside
    code: scholastic
    casebook: ` + notes + `
    slack: {workspace: ` + slackfake.Team + `, mode: ` + mode + `}
  - id: hillside
    discord: {guild: "` + guild + `"}
`
}

// A set-up that is right is found so, before serving and beside it.
func TestDoctorGood(t *testing.T) {
	s, d, vars, api := platforms(t)
	notes := casebookOf(t)
	report, status := examined(t, set("socket", "gateway", d.PublicKey(), notes, free(t)), vars, api)
	golden(t, "before", strings.ReplaceAll(report, notes, "NOTES"))
	if status != ok {
		t.Errorf("status %d", status)
	}
	p := begin(t, set("socket", "gateway", d.PublicKey(), notes, "127.0.0.1:0"), vars, api)
	watch := p.logged(`health and metrics" address=(\S+)`)
	if !d.Connected(patience) || !s.Wait(patience, func() bool { return s.Connections() > 0 }) {
		t.Fatalf("not connected:\n%s", p.log.String())
	}
	report, status = examined(t, set("socket", "gateway", d.PublicKey(), notes, watch), vars, api)
	golden(t, "beside", strings.ReplaceAll(report, notes, "NOTES"))
	if status != ok {
		t.Errorf("status %d", status)
	}
	report, _ = examined(t, set("http", "http", d.PublicKey(), notes, "off"), vars, api)
	golden(t, "http", strings.ReplaceAll(report, notes, "NOTES"))
}

// What a platform refuses is told with the way to mend it, and each thing once.
func TestDoctorRefused(t *testing.T) {
	notes := casebookOf(t)
	for _, test := range []struct {
		name  string
		spoil func(*slackfake.Server, *discordfake.Server, map[string]string) (settings string)
	}{
		{"scopes", func(s *slackfake.Server, d *discordfake.Server, _ map[string]string) string {
			s.SetScopes("chat:write,commands,im:history,im:write")
			return set("socket", "gateway", d.PublicKey(), notes, "off")
		}},
		{"groups", func(s *slackfake.Server, d *discordfake.Server, _ map[string]string) string {
			return strings.ReplaceAll(set("socket", "gateway", d.PublicKey(), notes, "off"), "mode: socket", "mode: socket, mentor_groups: [crew-mentors]")
		}},
		{"handles", func(s *slackfake.Server, d *discordfake.Server, _ map[string]string) string {
			s.SetScopes(slackfake.AllScopes + "," + slackfake.GroupScope)
			s.Group("S0MENTORS", "crew-mentors", "U0ANA")
			return strings.ReplaceAll(set("socket", "gateway", d.PublicKey(), notes, "off"), "mode: socket", "mode: socket, mentor_groups: [crew-mentors, mentors]")
		}},
		{"tokens", func(s *slackfake.Server, d *discordfake.Server, vars map[string]string) string {
			s.Refuse("auth.test", "token_revoked", 10)
			d.Refuse(discordfake.Refusal{Status: 401})
			return set("socket", "gateway", d.PublicKey(), notes, "off")
		}},
		{"kinds", func(s *slackfake.Server, d *discordfake.Server, vars map[string]string) string {
			vars["NETPOST_SLACK_BOT_TOKEN"], vars["NETPOST_SLACK_APP_TOKEN"] = slackfake.AppToken, slackfake.BotToken
			return set("socket", "gateway", d.PublicKey(), notes, "off")
		}},
		{"workspace", func(_ *slackfake.Server, d *discordfake.Server, _ map[string]string) string {
			return strings.ReplaceAll(set("socket", "gateway", d.PublicKey(), notes, "off"), slackfake.Team, "T0OTHER")
		}},
	} {
		t.Run(test.name, func(t *testing.T) {
			s, d, vars, api := platforms(t)
			report, status := examined(t, test.spoil(s, d, vars), vars, api)
			golden(t, test.name, strings.ReplaceAll(report, notes, "NOTES"))
			if status != found {
				t.Errorf("status %d", status)
			}
		})
	}
}

// A store that is no store, and one that can't be written, are found; the
// doctor leaves no store behind where there was none.
func TestDoctorStore(t *testing.T) {
	dir := t.TempDir()
	bad := filepath.Join(dir, "bad.db")
	if err := os.WriteFile(bad, []byte(strings.Repeat("this is no store. ", 400)), 0o600); err != nil {
		t.Fatal(err)
	}
	report, status := examined(t, "metrics: off\nstore: "+bad+"\n", nil, nil)
	if status != found || !strings.Contains(report, "DIR/netpost.yaml: store: ") {
		t.Errorf("a file that is no store: status %d\n%s", status, report)
	}
	report, status = examined(t, "metrics: off\nstore: "+filepath.Join(bad, "netpost.db")+"\n", nil, nil)
	if status != found || !strings.Contains(report, "store: ") {
		t.Errorf("a store in a file: status %d\n%s", status, report)
	}
	fresh := filepath.Join(dir, "new", "netpost.db")
	report, status = examined(t, "metrics: off\nstore: "+fresh+"\n", nil, nil)
	if status != ok || !strings.Contains(report, "is not there yet; serve makes it") {
		t.Errorf("no store yet: status %d\n%s", status, report)
	}
	if left, _ := filepath.Glob(filepath.Join(dir, "*")); len(left) != 1 {
		t.Errorf("left behind: %q", left)
	}
}

// An address that another program has is found.
func TestDoctorAddress(t *testing.T) {
	_, _, vars, api := platforms(t)
	s := slackfake.New() // any program that answers
	defer s.Close()
	taken := strings.TrimSuffix(strings.TrimPrefix(s.APIURL(), "http://"), "/api/")
	report, status := examined(t, "metrics: "+taken+"\n", vars, api)
	if status != found || !strings.Contains(report, "metrics: another program answers at ADDRESS; end it, or name another address") {
		t.Errorf("status %d\n%s", status, report)
	}
}
