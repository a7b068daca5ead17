package config

import (
	"flag"
	"fmt"
	"log/slog"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"go.yaml.in/yaml/v3"

	"example.org/netpost/engine/code"
)

var update = flag.Bool("update", false, "write testdata/bad/*.txt and testdata/reference.txt again")

// none is an environment with nothing in it.
func none(string) string { return "" }

func env(vars map[string]string) func(string) string { return func(k string) string { return vars[k] } }

func load(t *testing.T, file string, env func(string) string) Config {
	t.Helper()
	c, found := Load(file, env)
	for _, f := range found {
		t.Errorf("%s", f)
	}
	return c
}

// write makes a file of settings, and returns its name.
func write(t *testing.T, name, text string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}

func TestDefaults(t *testing.T) {
	want := Config{
		Store: "netpost.db", Index: "netpost.index", Log: slog.LevelInfo,
		Listen: "127.0.0.1:8080", Metrics: "127.0.0.1:9090", Web: "127.0.0.1:8081",
		Retention: 400 * 24 * time.Hour, Claim: 4 * time.Hour, Nudge: 24 * time.Hour,
		Local: "local", Discord: Discord{Mode: "gateway"},
		Associations: []Association{{ID: "local", Bulletin: Bulletin{Time: 7 * time.Hour, Zone: time.UTC}, Slack: Slack{Mode: "socket"}}},
	}
	got := load(t, "", none)
	clearVariables(&got)
	if !reflect.DeepEqual(got, want) {
		t.Errorf("without a file:\n got %+v\nwant %+v", got, want)
	}
	if found := got.Secrets(); len(found) > 0 {
		t.Errorf("secrets are missing without a file: %v", found)
	}
	for _, a := range []string{got.Listen, got.Metrics, got.Web} {
		if !Loopback(a) {
			t.Errorf("the default address %s is open to others", a)
		}
	}
	for _, text := range []string{"", "# nothing\n", "{}\n", "---\n"} {
		file := write(t, "netpost.yaml", text)
		c := load(t, file, none)
		clearVariables(&c)
		dir := filepath.Dir(file)
		want := want
		want.File, want.Store, want.Index = file, filepath.Join(dir, "netpost.db"), filepath.Join(dir, "netpost.index")
		if !reflect.DeepEqual(c, want) {
			t.Errorf("with a file of %q:\n got %+v\nwant %+v", text, c, want)
		}
	}
}

// clearVariables takes out which variables the secrets may come from.
func clearVariables(c *Config) {
	c.Discord.Token.env, c.WebToken.env = "", ""
	for i := range c.Associations {
		s := &c.Associations[i].Slack
		s.AppToken.env, s.BotToken.env, s.SigningSecret.env = "", "", ""
	}
}

func TestFull(t *testing.T) {
	chicago, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	got := load(t, "testdata/full.yaml", none)
	// The files are not there, which is told only where secrets are needed.
	var told []string
	for _, f := range got.Secrets() {
		told = append(told, f.String())
	}
	want := []string{
		"testdata/full.yaml:52: web_token_file: testdata/secrets/web: there is no such file; name a file that this program can read",
		"testdata/full.yaml:38: associations[0].slack.bot_token_file: testdata/secrets/bot: there is no such file; name a file that this program can read",
		"testdata/full.yaml:39: associations[0].slack.signing_secret_file: testdata/secrets/signing: there is no such file; name a file that this program can read",
		"testdata/full.yaml:17: discord.token_file: testdata/secrets/discord: there is no such file; name a file that this program can read",
	}
	if !slices.Equal(told, want) {
		t.Errorf("secrets:\n%s\nwant\n%s", strings.Join(told, "\n"), strings.Join(want, "\n"))
	}
	got.WebToken = Secret{}
	got.Discord.Token, got.Associations[0].Slack.AppToken, got.Associations[0].Slack.BotToken, got.Associations[0].Slack.SigningSecret = Secret{}, Secret{}, Secret{}, Secret{}
	clearVariables(&got)
	midnight := Bulletin{Time: 7 * time.Hour, Zone: time.UTC}
	all := Config{
		File: "testdata/full.yaml", Store: "testdata/kept/store.db", Index: "testdata/kept/index", Log: slog.LevelDebug,
		Listen: "[::1]:8000", Web: "localhost:8001", WebURL: "https://netpost.example",
		Retention: 30 * 24 * time.Hour, Claim: 150 * time.Minute, Nudge: 48 * time.Hour, Local: "hillside",
		Discord: Discord{Mode: "http", Application: "112233445566778899", PublicKey: "00112233445566778899aabbccddeeff00112233445566778899aabbccddeeff"},
		Associations: []Association{{
			ID: "riverside", Name: "Riverside Crew", Casebook: "testdata/notes", Code: "scholastic", Season: "2026-27", Private: true,
			Bulletin: Bulletin{Day: "sunday", Time: 19*time.Hour + 30*time.Minute, Zone: chicago},
			Slack: Slack{
				Workspace: "T0RIVER", Mode: "http",
				Channels:   Channels{Ask: []string{"C0ASK", "C0TALK"}, Mentors: "C0MENTORS", Bulletin: []string{"C0TALK"}},
				Mentors:    People{Groups: []string{"S0MENTORS", "crew-mentors", "@refs.west"}, Users: []string{"U0ONE"}},
				Publishers: People{Groups: []string{"S0PUBLISH"}, Users: []string{"U0TWO", "W0THREE"}},
			},
		}, {
			ID: "hillside", Pages: "https://notes.example/hillside/", Bulletin: midnight, Slack: Slack{Mode: "socket"},
			Guild: Guild{
				ID:         "223344556677889900",
				Channels:   Channels{Ask: []string{"323344556677889901"}, Mentors: "323344556677889902", Bulletin: []string{"323344556677889903"}},
				Mentors:    People{Groups: []string{"423344556677889904"}, Users: []string{"523344556677889905"}},
				Publishers: People{Groups: []string{"423344556677889906"}, Users: []string{"523344556677889907"}},
			},
		}},
	}
	if !reflect.DeepEqual(got, all) {
		t.Errorf("got  %+v\nwant %+v", got, all)
	}
	if a, ok := got.Association("hillside"); !ok || a.Guild.ID != "223344556677889900" {
		t.Errorf("hillside: %+v, %t", a, ok)
	}
	if _, ok := got.Association("seaside"); ok {
		t.Error("there is a seaside")
	}
}

// Every key is sorted, unique, documented, in testdata/full.yaml, and of use:
// without it the settings are others.
func TestKeys(t *testing.T) {
	text, err := os.ReadFile("testdata/full.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if !slices.IsSortedFunc(keys, func(a, b key) int { return strings.Compare(a.path, b.path) }) {
		t.Error("the table of keys is not sorted")
	}
	dir := t.TempDir() // with the secrets that the file names
	if err := os.Mkdir(filepath.Join(dir, "secrets"), 0o700); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"app", "bot", "discord", "signing", "web"} {
		if err := os.WriteFile(filepath.Join(dir, "secrets", name), []byte("is-"+name), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	file := filepath.Join(dir, "netpost.yaml")
	read := func(text []byte) string {
		if err := os.WriteFile(file, text, 0o600); err != nil {
			t.Fatal(err)
		}
		c, found := Load(file, none)
		var b strings.Builder
		fmt.Fprintf(&b, "%+v %v %v", c, found, c.Discord.Token.Reveal()+c.WebToken.Reveal())
		for _, a := range c.Associations {
			fmt.Fprint(&b, a.Slack.AppToken.Reveal(), a.Slack.BotToken.Reveal(), a.Slack.SigningSecret.Reveal())
		}
		return b.String()
	}
	full := read(text)
	seen := map[string]bool{}
	for _, k := range keys {
		if seen[k.path] {
			t.Errorf("%s: twice", k.path)
		}
		seen[k.path] = true
		if k.doc == "" || strings.HasSuffix(k.doc, ".") {
			t.Errorf("%s: the doc is %q, want words without a full stop", k.path, k.doc)
		}
		if (k.at == nil) != (k.kind.name == "section") {
			t.Errorf("%s: a section or a value?", k.path)
		}
		without, n := drop(t, text, k.path)
		if n == 0 {
			t.Errorf("%s: not in testdata/full.yaml", k.path)
		} else if read(without) == full {
			t.Errorf("%s: it changes nothing", k.path)
		}
	}
}

// drop takes a key out of a file, wherever it stands.
func drop(t *testing.T, text []byte, path string) ([]byte, int) {
	t.Helper()
	var doc yaml.Node
	if err := yaml.Unmarshal(text, &doc); err != nil {
		t.Fatal(err)
	}
	n := 0
	var walk func(m *yaml.Node, at string)
	walk = func(m *yaml.Node, at string) {
		switch m.Kind {
		case yaml.SequenceNode:
			for _, e := range m.Content {
				walk(e, at+"[]")
			}
		case yaml.MappingNode:
			for i := 0; i < len(m.Content); {
				p := strings.TrimPrefix(at+"."+m.Content[i].Value, ".")
				if p == path {
					m.Content = slices.Delete(m.Content, i, i+2)
					n++
					continue
				}
				walk(m.Content[i+1], p)
				i += 2
			}
		}
	}
	walk(doc.Content[0], "")
	out, err := yaml.Marshal(&doc)
	if err != nil {
		t.Fatal(err)
	}
	return out, n
}

func TestReference(t *testing.T) { golden(t, "testdata/reference.txt", Reference()) }

func golden(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil || string(want) != got {
		t.Errorf("%s (%v):\n got:\n%s\nwant:\n%s\nif it is right: go test ./config -update", file, err, got, want)
	}
}

func TestFindings(t *testing.T) {
	files, err := filepath.Glob("testdata/bad/*.yaml")
	if err != nil || len(files) < 5 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	for _, file := range files {
		_, found := Load(file, none)
		var b strings.Builder
		for _, f := range found {
			if f.Line == 0 || f.What == "" || f.Mend == "" {
				t.Errorf("%s: %+v: it must say where, what, and how to mend it", file, f)
			}
			fmt.Fprintln(&b, f)
		}
		if strings.Contains(b.String(), "xoxb-1") || strings.Contains(b.String(), "xapp-1") || strings.Contains(b.String(), "aVeryLong") {
			t.Errorf("%s: a token shows in\n%s", file, b.String())
		}
		golden(t, strings.TrimSuffix(file, ".yaml")+".txt", b.String())
	}
}

func TestNoFile(t *testing.T) {
	dir := t.TempDir()
	for file, want := range map[string]string{
		filepath.Join(dir, "gone.yaml"): "there is no such file",
		dir:                             "the file can't be read",
		write(t, "large.yaml", strings.Repeat("# large\n", 200000)): "too large",
	} {
		_, found := Load(file, none)
		if len(found) != 1 || !strings.Contains(found[0].What, want) || found[0].Path != file || found[0].Mend == "" {
			t.Errorf("%s: %v, want one finding: %s", file, found, want)
		}
	}
}

func TestCodes(t *testing.T) {
	var want []string
	for _, c := range code.All() {
		want = append(want, string(c))
	}
	if !slices.Equal(codes, want) {
		t.Errorf("codes %v, the engine has %v", codes, want)
	}
}

func TestLoopback(t *testing.T) {
	for address, want := range map[string]bool{
		"127.0.0.1:80": true, "[::1]:80": true, "localhost:80": true, "127.9.9.9:80": true,
		"0.0.0.0:80": false, ":80": false, "[::]:80": false, "example.org:80": false, "10.0.0.1:80": false, "": false,
	} {
		if got := Loopback(address); got != want {
			t.Errorf("%q: loopback = %t", address, got)
		}
	}
}

// Whatever is in the file, reading it ends, and ends the same way twice.
func FuzzLoad(f *testing.F) {
	files, _ := filepath.Glob("testdata/bad/*.yaml")
	for _, file := range append(files, "testdata/full.yaml") {
		text, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	dir := f.TempDir()
	f.Fuzz(func(t *testing.T, text []byte) {
		file := filepath.Join(dir, "netpost.yaml")
		if err := os.WriteFile(file, text, 0o600); err != nil {
			t.Fatal(err)
		}
		c, found := Load(file, none)
		_, again := Load(file, none)
		if !reflect.DeepEqual(found, again) {
			t.Errorf("found %v, then %v", found, again)
		}
		if len(c.Associations) == 0 {
			t.Error("there is no association")
		}
		for _, f := range found {
			if f.What == "" || f.Mend == "" {
				t.Errorf("%+v", f)
			}
		}
	})
}
