package main_test

import (
	"bytes"
	"errors"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"
)

// The import policy. Imports run one way:
//
//	std < engine < casebook < index
//	engine, casebook < bot < adapters
//	config alone, main above all
//
// Only files that are built into a program count: tests may import what they like.

const module = "example.org/netpost"

// A ban says which packages must not import which, and why.
//
// A package of ours is named by its folder: "engine" is that one package, "engine/..." also
// all below it, "..." all of ours, "." the main package. "std:os/..." names packages of the standard
// library, "outside" all that is neither ours nor of the standard library, and a
// pattern whose first element has a dot, such as "github.com/x/y/...", one part of that.
type ban struct {
	from   []string // no package of these,
	except []string // leaving these out,
	to     []string // may import any of these,
	but    []string // leaving these out,
	why    string   // because
}

var bans = []ban{
	// The five parts.
	{
		from: []string{"engine/..."},
		to:   []string{"..."}, but: []string{"engine/..."},
		why: "the rules of the game know nothing of one association, one channel or one configuration",
	}, {
		from: []string{"engine/..."}, except: []string{"engine/court/raster/..."},
		to:  []string{"outside"},
		why: "a ruling must be the same in ten years: the engine stands on the standard library alone",
	}, {
		from: []string{"engine/..."},
		to:   []string{"std:crypto/rand", "std:log/...", "std:math/rand/...", "std:net", "std:net/http/...", "std:os/..."},
		why:  "same words in, same bytes out: the engine does no I/O and draws no random number",
	}, {
		from: []string{"engine/..."}, except: []string{"engine/court/raster/..."},
		to:  []string{"engine/court/raster/..."},
		why: "the one package with outside imports must not reach the rest of the engine through the back door",
	}, {
		from: []string{"casebook/..."},
		to:   []string{"index/...", "bot/...", "config/...", "."},
		why:  "notes are read and checked from files alone, without a search index, a channel or settings",
	}, {
		from: []string{"index/..."},
		to:   []string{"bot/...", "config/...", "."},
		why:  "search is told which notes and which folder; who asks and from where is not its business",
	}, {
		from: []string{"config/..."},
		to:   []string{"..."}, but: []string{"config/..."},
		why: "settings are plain values: the command line hands them down, so any part can be tested without them",
	}, {
		from: []string{"bot/..."}, except: []string{"bot/command/..."},
		to:  []string{"index/..."},
		why: "the conversation declares the searcher it needs and is handed one, so it can be tested without an index",
	}, {
		from: []string{"bot/..."}, except: []string{"bot/command/..."},
		to:  []string{"config/..."},
		why: "settings are plain values: the command line hands them down to the conversation and its adapters",
	},

	// The adapters and the command line.
	{
		from:   []string{"bot/..."},
		except: []string{"bot/command/...", "bot/discord/...", "bot/slack/...", "bot/term/...", "bot/web/..."},
		to:     []string{"bot/discord/...", "bot/slack/...", "bot/term/...", "bot/web/..."},
		why:    "the conversation does not ask which platform it is on",
	}, {
		from: []string{"bot/discord/..."},
		to:   []string{"bot/slack/...", "bot/term/...", "bot/web/..."},
		why:  "an adapter that leans on another can't be taken out alone",
	}, {
		from: []string{"bot/slack/..."},
		to:   []string{"bot/discord/...", "bot/term/...", "bot/web/..."},
		why:  "an adapter that leans on another can't be taken out alone",
	}, {
		from: []string{"bot/term/..."},
		to:   []string{"bot/discord/...", "bot/slack/...", "bot/web/..."},
		why:  "an adapter that leans on another can't be taken out alone",
	}, {
		from: []string{"bot/web/..."},
		to:   []string{"bot/discord/...", "bot/slack/...", "bot/term/..."},
		why:  "an adapter that leans on another can't be taken out alone",
	}, {
		from: []string{"..."}, except: []string{"bot/discord/...", "bot/slack/...", "bot/wire/..."},
		to:  []string{"bot/wire/..."},
		why: "what chat platforms have in common is theirs: the conversation and the command line know nothing of rates and deliveries",
	}, {
		from: []string{"bot/wire/..."},
		to:   []string{"...", "outside"}, but: []string{"bot", "bot/wire/..."},
		why: "what the adapters share must not bring more of the program into each of them",
	}, {
		from: []string{"..."}, except: []string{".", "bot/command/..."},
		to:  []string{"bot/command/...", "."},
		why: "the command line wires everything together: what it imports can't import it",
	}, {
		from: []string{"."},
		to:   []string{"...", "outside"}, but: []string{"bot/command"},
		why: "main.go hands the command line on and does nothing else",
	},

	// What comes from outside, each behind one door.
	{
		from: []string{"..."}, except: []string{"index/..."},
		to:  []string{"github.com/blevesearch/..."},
		why: "the search library can be exchanged as long as one package knows it",
	}, {
		from: []string{"..."}, except: []string{"bot/slack/..."},
		to:  []string{"github.com/slack-go/slack/..."},
		why: "a platform's own types stay in its adapter",
	}, {
		from: []string{"..."}, except: []string{"bot/discord/..."},
		to:  []string{"github.com/bwmarrin/discordgo/..."},
		why: "a platform's own types stay in its adapter",
	}, {
		from: []string{"..."}, except: []string{"bot/store/..."},
		to:  []string{"modernc.org/sqlite/..."},
		why: "what lasts is written and read in one place, so that nothing acknowledged is lost",
	}, {
		from: []string{"..."}, except: []string{"bot/metrics/..."},
		to:  []string{"github.com/prometheus/..."},
		why: "what is counted wraps the conversation from outside: nothing that answers knows who counts, or how",
	}, {
		from: []string{"bot/..."}, except: []string{"bot/command/...", "bot/metrics/..."},
		to:  []string{"bot/metrics/..."},
		why: "what is counted wraps the conversation from outside: nothing that answers knows who counts, or how",
	}, {
		from: []string{"bot/slack/..."},
		to:   []string{"outside"}, but: []string{"github.com/slack-go/slack/..."},
		why: "an adapter decodes, renders and runs: it needs its platform's client and nothing more",
	}, {
		from: []string{"bot/discord/..."},
		to:   []string{"outside"}, but: []string{"github.com/bwmarrin/discordgo/..."},
		why: "an adapter decodes, renders and runs: it needs its platform's client and nothing more",
	}, {
		from: []string{"bot/term/...", "bot/web/..."},
		to:   []string{"outside"},
		why:  "the local adapters work wherever the program does, so they stand on the standard library",
	}, {
		from: []string{"..."},
		to:   []string{"std:C"},
		why:  "the program is one static file, built without a C compiler",
	},
}

// later are the folders and libraries that bans name before they are there, so
// that they are guarded from their first line on. The list only shrinks.
var later = map[string]string{}

// forbids reports whether the ban keeps the package in folder pkg from importing imp.
func (b ban) forbids(pkg, imp string) bool {
	return matchAny(b.from, "", pkg) && !matchAny(b.except, "", pkg) &&
		names(b.to, imp) && !names(b.but, imp)
}

// names reports whether one of the patterns names the import path imp.
func names(patterns []string, imp string) bool {
	first, _, _ := strings.Cut(imp, "/")
	switch {
	case imp == module:
		return matchAny(patterns, "", ".")
	case strings.HasPrefix(imp, module+"/"):
		return matchAny(patterns, "", strings.TrimPrefix(imp, module+"/"))
	case strings.Contains(first, "."):
		return slices.Contains(patterns, "outside") ||
			slices.ContainsFunc(patterns, func(p string) bool { return isOutside(p) && match(p, imp) })
	default:
		return matchAny(patterns, "std:", imp)
	}
}

// matchAny reports whether one of the patterns, all that begin with prefix and after it, matches name.
func matchAny(patterns []string, prefix, name string) bool {
	return slices.ContainsFunc(patterns, func(p string) bool {
		p, ok := strings.CutPrefix(p, prefix)
		return ok && match(p, name)
	})
}

func match(pattern, name string) bool {
	if pattern == "..." {
		return true
	}
	if root, ok := strings.CutSuffix(pattern, "/..."); ok {
		return name == root || strings.HasPrefix(name, root+"/")
	}
	return name == pattern
}

// isOutside reports whether a pattern names a part of what is neither ours nor of the standard library.
func isOutside(pattern string) bool {
	first, _, _ := strings.Cut(pattern, "/")
	return strings.Contains(strings.Trim(first, "."), ".")
}

// An imported is one import declaration of the program.
type imported struct {
	pkg, imp string // folder of the importing package, path of the imported one
	at       string // file:line
}

// imports reads every import of every file that can be built into a program, whatever its build tags.
func imports(t *testing.T) (all []imported, folders map[string]bool) {
	t.Helper()
	folders = map[string]bool{}
	fset := token.NewFileSet()
	err := filepath.WalkDir(".", func(file string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name := d.Name()
		if d.IsDir() {
			if file != "." && (strings.HasPrefix(name, ".") || strings.HasPrefix(name, "_") || name == "testdata") {
				return fs.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return nil
		}
		f, err := parser.ParseFile(fset, file, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		pkg := path.Dir(filepath.ToSlash(file))
		folders[pkg] = true
		for _, spec := range f.Imports {
			imp, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			all = append(all, imported{pkg, imp, fset.Position(spec.Pos()).String()})
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all, folders
}

func TestImports(t *testing.T) {
	all, _ := imports(t)
	for _, i := range all {
		for _, b := range bans {
			if b.forbids(i.pkg, i.imp) {
				t.Errorf("%s: package %s must not import %s: %s", i.at, i.pkg, i.imp, b.why)
			}
		}
	}
}

// Every row is alive: it gives a reason, the folders that it names exist and the outside libraries that it
// names are in use. A folder moved without its bans would go unguarded.
func TestBans(t *testing.T) {
	all, folders := imports(t)
	exists := func(pattern string) bool {
		for f := range folders {
			if match(pattern, f) {
				return true
			}
		}
		return false
	}
	told := map[string]bool{}
	for p := range later {
		if exists(p) || isOutside(p) && slices.ContainsFunc(all, func(i imported) bool { return match(p, i.imp) }) {
			t.Errorf("%s is there now: strike it from the list of what is still to come", p)
		}
	}
	for i, b := range bans {
		if b.why == "" || len(b.from) == 0 || len(b.to) == 0 {
			t.Errorf("ban %d: from, to and why are needed: %+v", i, b)
		}
		for _, p := range slices.Concat(b.from, b.except, b.to, b.but) {
			if _, wait := later[p]; wait || told[p] || p == "outside" || strings.HasPrefix(p, "std:") {
				continue
			}
			told[p] = true
			if !isOutside(p) && !exists(p) {
				t.Errorf("bans name %s, where no package is: mend or strike it (%s)", p, b.why)
			}
			if isOutside(p) && !slices.ContainsFunc(all, func(i imported) bool { return match(p, i.imp) }) {
				t.Errorf("bans name %s, which nothing imports: mend or strike it (%s)", p, b.why)
			}
		}
		for j, c := range bans[:i] {
			if slices.Equal(b.from, c.from) && slices.Equal(b.to, c.to) {
				t.Errorf("bans %d and %d are from and to the same: make them one", j, i)
			}
		}
	}
}

// The table says what the picture at the head of this file says.
func TestForbids(t *testing.T) {
	const ours = module + "/"
	for _, test := range []struct {
		pkg, imp string
		want     bool
	}{
		{"engine/rules", "sort", false},
		{"engine/rules", "index/suffixarray", false},
		{"engine/rules", ours + "engine/code", false},
		{"engine/rules", ours + "casebook", true},
		{"engine/rules", ours + "config", true},
		{"engine/rules", module, true},
		{"engine/rules", "golang.org/x/text/cases", true},
		{"engine/notation", "os", true},
		{"engine/notation", "math/rand/v2", true},
		{"engine/notation", "net/url", false},
		{"engine", ours + "engine/court/raster", true},
		{"engine/court", ours + "engine/court/raster", true},
		{"engine/court/raster", ours + "engine/court", false},
		{"engine/court/raster", "golang.org/x/image/vector", false},
		{"engine/court/raster", ours + "casebook", true},
		{"engine/court/rasterize", "golang.org/x/image/vector", true},
		{"casebook", ours + "engine", false},
		{"casebook", "go.yaml.in/yaml/v3", false},
		{"casebook/demo", ours + "casebook", false},
		{"casebook", ours + "index", true},
		{"casebook", ours + "bot", true},
		{"casebook", ours + "config", true},
		{"casebook", "github.com/blevesearch/bleve/v2", true},
		{"index", "github.com/blevesearch/bleve/v2/mapping", false},
		{"index", ours + "casebook", false},
		{"index", ours + "bot", true},
		{"index", ours + "config", true},
		{"config", "go.yaml.in/yaml/v3", false},
		{"config", ours + "engine/code", true},
		{"bot", ours + "engine/notation", false},
		{"bot", ours + "casebook", false},
		{"bot", ours + "index", true},
		{"bot", ours + "config", true},
		{"bot", ours + "bot/slack", true},
		{"bot/store", ours + "bot/term", true},
		{"bot/store", "modernc.org/sqlite", false},
		{"bot/store", ours + "bot", false},
		{"bot", "modernc.org/sqlite", true},
		{"bot/slack", "github.com/slack-go/slack/socketmode", false},
		{"bot/slack", ours + "bot", false},
		{"bot/slack", ours + "bot/discord", true},
		{"bot/slack", "github.com/bwmarrin/discordgo", true},
		{"bot/slack", ours + "index", true},
		{"bot/slack", "github.com/yuin/goldmark", true},
		{"bot/discord", "github.com/bwmarrin/discordgo", false},
		{"bot/discord", "github.com/slack-go/slack", true},
		{"bot/discord", ours + "bot/web", true},
		{"bot/web", "net/http", false},
		{"bot/web", ours + "bot/term", true},
		{"bot/web", "github.com/slack-go/slack", true},
		{"bot/term", ours + "bot/slack", true},
		{"bot/web", ours + "bot/command", true},
		{"engine", ours + "bot/command", true},
		{"bot/command", ours + "index", false},
		{"bot/command", ours + "config", false},
		{"bot/command", ours + "bot/slack", false},
		{"bot/command", "github.com/slack-go/slack", true},
		{"bot/metrics", "github.com/prometheus/client_golang/prometheus", false},
		{"bot/command", ours + "bot/metrics", false},
		{"bot/command", "github.com/prometheus/client_golang/prometheus", true},
		{"bot/slack", ours + "bot/metrics", true},
		{".", ours + "bot/command", false},
		{".", "os", false},
		{".", ours + "bot", true},
		{"bot/store", "C", true},
	} {
		got := slices.ContainsFunc(bans, func(b ban) bool { return b.forbids(test.pkg, test.imp) })
		if got != test.want {
			t.Errorf("%s importing %s: forbidden = %t, want %t", test.pkg, test.imp, got, test.want)
		}
	}
}

// What the top level holds, besides dot-files. Everything else has its place in one of the five parts.
var topLevel = []string{
	"DEVELOPERS.md", "Dockerfile", "LICENSE", "README.md", "bot", "casebook", "config", "engine",
	"go.mod", "go.sum", "index", "main.go", "main_test.go",
}

// An unwelcome is something that no file and no file name may hold.
type unwelcome struct {
	what string
	re   *regexp.Regexp
	mend string
}

var unwelcomes = []unwelcome{{
	what: "a path of somebody's machine",
	re:   regexp.MustCompile(`(?:^|[^\w.)}~*/-])/(?:root|tmp|work)\b`),
	mend: "use a relative path, or a temporary folder that the system names",
}, {
	what: "the initials of a rule-making body that we do not speak for",
	re:   regexp.MustCompile(`(?i)\bN[A-Z]HS\b`),
	mend: `write "scholastic" or "US high-school rules book"`,
}}

// files lists, sorted, the files of the repository: those that git tracks or would add, or where git can't tell, all.
func files(t *testing.T) []string {
	t.Helper()
	var all []string
	if out, err := exec.Command("git", "ls-files", "-z", "--cached", "--others", "--exclude-standard").Output(); err == nil {
		all = strings.FieldsFunc(string(out), func(r rune) bool { return r == 0 })
	} else {
		err := filepath.WalkDir(".", func(file string, d fs.DirEntry, err error) error {
			if err == nil && d.IsDir() && d.Name() == ".git" {
				return fs.SkipDir
			}
			if err == nil && !d.IsDir() {
				all = append(all, filepath.ToSlash(file))
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

func TestTopLevel(t *testing.T) {
	strange := map[string]bool{}
	for _, file := range files(t) {
		top, _, _ := strings.Cut(file, "/")
		if !strings.HasPrefix(top, ".") && !slices.Contains(topLevel, top) && !strange[top] {
			strange[top] = true
			t.Errorf("%s: not a name for the top level: move it into the part that it belongs to", top)
		}
	}
}

func TestUnwelcome(t *testing.T) {
	read := 0
	for _, file := range files(t) {
		for _, u := range unwelcomes {
			if u.re.MatchString(file) {
				t.Errorf("%s: the name holds %s: %s", file, u.what, u.mend)
			}
		}
		text, err := os.ReadFile(file)
		if errors.Is(err, fs.ErrNotExist) || file == "go.sum" { // removed but not yet committed; random letters
			continue
		}
		if err != nil {
			t.Error(err)
			continue
		}
		if bytes.IndexByte(text, 0) >= 0 || !utf8.Valid(text) { // a picture or the like
			continue
		}
		read++
		for n, line := range bytes.Split(text, []byte("\n")) {
			for _, u := range unwelcomes {
				if found := u.re.Find(line); found != nil {
					t.Errorf("%s:%d: %q is %s: %s", file, n+1, found, u.what, u.mend)
				}
			}
		}
	}
	if read == 0 {
		t.Error("no file was read: is this the top of the repository?")
	}
}

func TestUnwelcomePatterns(t *testing.T) {
	body := "N" + "A" + "HS" // any letter in the middle will do
	for _, test := range []struct {
		text string
		want bool
	}{
		{"cd /" + "work/main", true},
		{"/" + "tmp/x", true},
		{`"/` + `root/go"`, true},
		{"HOME=/" + "root", true},
		{"date >/" + "tmp/log", true},
		{"the " + body + " book", true},
		{strings.ToLower(body) + ".example", true},
		{"./" + "work/x", false},
		{"$HOME/tmp", false},
		{"${dir}/tmp", false},
		{"https://example.org/" + "work/1", false},
		{"teamwork/tmp", false},
		{"/workers", false},
		{"NHS, months, tenths, " + body + "A", false},
	} {
		got := slices.ContainsFunc(unwelcomes, func(u unwelcome) bool { return u.re.MatchString(test.text) })
		if got != test.want {
			t.Errorf("%q: unwelcome = %t, want %t", test.text, got, test.want)
		}
	}
}
