package command

import (
	"bytes"
	"context"
	_ "embed"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	keyboard "github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// shots is a folder for screenshots, for people to look at:
// go test ./bot/command -run Browser -shots FOLDER
var shots = flag.String("shots", "", "write screenshots of the pages into this folder")

// checker is the accessibility checker, which runs in the page.
//
//go:embed testdata/axe/axe.min.js
var checker string

// The sizes of a window on a desk and on a phone.
const (
	deskWidth, deskHeight   = 1280, 900
	phoneWidth, phoneHeight = 390, 844
)

// browsers are the names of the program that these tests drive, best first.
var browsers = []string{"chromium", "chromium-headless-shell", "chromium-browser"}

// window is a page in a real browser.
type window struct {
	t    *testing.T
	ctx  context.Context
	base string
}

// local serves with nothing configured, and gives the address that it prints.
func local(t *testing.T) string {
	t.Helper()
	t.Chdir(t.TempDir())
	in, keep := io.Pipe()
	ctx, cancel := context.WithCancel(context.Background())
	var out, errs buffer
	ended := make(chan int, 1)
	go func() {
		ended <- Main(ctx, []string{"serve"}, World{Stdin: in, Stdout: &out, Stderr: &errs, Env: env(nil)})
	}()
	t.Cleanup(func() {
		cancel()
		keep.Close()
		if status := <-ended; status != ok || errs.String() != "" {
			t.Errorf("serving ended with %d\n%s", status, errs.String())
		}
	})
	re := regexp.MustCompile(`http://127\.0\.0\.1:\d+/`)
	until(t, "the address", func() bool { return re.MatchString(out.String()) })
	return strings.TrimSuffix(re.FindString(out.String()), "/")
}

// open opens a browser window of a size.
func open(t *testing.T, base string) *window {
	t.Helper()
	if testing.Short() {
		t.Skip("a browser takes long to start") // right: whoever runs with -short asked for the quick tests only; all others run it
	}
	program := ""
	for _, b := range browsers {
		if p, err := exec.LookPath(b); err == nil && program == "" {
			program = p
		}
	}
	if program == "" {
		t.Skipf("no browser to drive: none of %s is installed (Debian's package chromium has one)", strings.Join(browsers, ", "))
	}
	o := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(program), chromedp.UserDataDir(t.TempDir()),
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-gpu", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-dev-shm-usage", true), // a container's is small
		// A page that was kept whole comes back without the events that the driver waits for.
		chromedp.Flag("disable-features", "Translate,BlinkGenPropertyTrees,BackForwardCache"))
	if os.Geteuid() == 0 {
		o = append(o, chromedp.NoSandbox) // its sandbox does not start as root
	}
	ctx, stop := chromedp.NewExecAllocator(context.Background(), o...)
	t.Cleanup(stop)
	ctx, stop = chromedp.NewContext(ctx)
	t.Cleanup(stop)
	ctx, stop = context.WithTimeout(ctx, 5*time.Minute)
	t.Cleanup(stop)
	w := &window{t, ctx, base}
	if err := chromedp.Do(ctx); err != nil { // the browser ends with the context that started it
		t.Fatal(err)
	}
	w.do(chromedp.EmulateViewport(deskWidth, deskHeight))
	return w
}

// do takes steps in the page.
func (w *window) do(steps ...chromedp.Action[chromedp.Void]) {
	w.t.Helper()
	ctx, stop := context.WithTimeout(w.ctx, 2*patience)
	defer stop()
	if err := chromedp.Do(ctx, steps...); err != nil {
		ctx, stop := context.WithTimeout(w.ctx, patience)
		defer stop()
		text, _ := chromedp.Run(ctx, chromedp.Text("body"))
		w.t.Fatalf("%v, on the page\n%s", err, text)
	}
}

// back goes back to the page before, until it shows what is selected.
func (w *window) back(until string) {
	w.t.Helper()
	w.do(chromedp.NavigateBack(), chromedp.WaitVisible(until))
}

// visit opens a page.
func (w *window) visit(path string) {
	w.t.Helper()
	w.do(chromedp.Navigate(w.base+path), chromedp.WaitVisible("main"))
}

// enter presses the Enter key as a keyboard does: one event, of which the page
// may keep the browser from making a new line.
func (w *window) enter() {
	w.t.Helper()
	w.do(func(ctx context.Context, t *chromedp.Target) (chromedp.Void, error) {
		key := keyboard.DispatchKeyEventParams{Type: "keyDown", Key: "Enter", Code: "Enter", Text: "\r", WindowsVirtualKeyCode: 13}
		_, err := cdp.Call(ctx, t, keyboard.DispatchKeyEvent, key)
		return chromedp.Void{}, err
	})
}

// fill puts a text into a field.
func (w *window) fill(field, text string) {
	w.t.Helper()
	eval[string](w, fmt.Sprintf(`document.querySelector(%q).value = %q`, field, text))
}

// text is what is read of the page.
func (w *window) text() string {
	w.t.Helper()
	s, err := chromedp.Run(w.ctx, chromedp.Text("body"))
	if err != nil {
		w.t.Fatal(err)
	}
	return strings.Join(strings.Fields(s), " ")
}

// shows waits until the page reads as wanted.
func (w *window) shows(want ...string) {
	w.t.Helper()
	for _, s := range want {
		until(w.t, fmt.Sprintf("%q on the page", s), func() bool {
			text, err := chromedp.Run(w.ctx, chromedp.Text("body"))
			return err == nil && strings.Contains(strings.Join(strings.Fields(text), " "), s)
		})
	}
}

// eval runs script in the page.
func eval[T any](w *window, script string) T {
	w.t.Helper()
	v, err := chromedp.Run(w.ctx, chromedp.Evaluate[T](script))
	if err != nil {
		w.t.Fatalf("%s: %v", script, err)
	}
	return v
}

// press presses the button or link with a label.
func (w *window) press(label string) {
	w.t.Helper()
	mark := fmt.Sprintf(`(() => { const b = [...document.querySelectorAll('button, a')].find((b) => b.textContent.trim().startsWith(%q)); if (b) b.id = 'to-press'; return !!b })()`, label)
	if !eval[bool](w, mark) {
		w.t.Fatalf("there is nothing to press that says %q on\n%s", label, w.text())
	}
	w.do(chromedp.Click("#to-press"))
}

// shot keeps a screenshot at the widths of a desk and of a phone, where there
// is a folder for them.
func (w *window) shot(name string) {
	w.t.Helper()
	for _, size := range []struct {
		name          string
		width, height int64
	}{{"desk", deskWidth, deskHeight}, {"phone", phoneWidth, phoneHeight}} {
		w.do(chromedp.EmulateViewport(size.width, size.height))
		if wide := eval[int](w, `document.documentElement.scrollWidth`); int64(wide) > size.width {
			w.t.Errorf("%s is %d wide on a %s of %d", name, wide, size.name, size.width)
		}
		if *shots == "" {
			continue
		}
		png, err := chromedp.Run(w.ctx, chromedp.FullScreenshot(100))
		if err == nil {
			err = os.WriteFile(filepath.Join(*shots, name+"-"+size.name+".png"), png, 0o666)
		}
		if err != nil {
			w.t.Error(err)
		}
	}
	w.do(chromedp.EmulateViewport(deskWidth, deskHeight))
}

// accessible fails the test where the checker finds something serious in the
// page, in the light and in the dark scheme.
func (w *window) accessible(where string) {
	w.t.Helper()
	w.alone(where)
	eval[string](w, checker+"; 'loaded'")
	for _, scheme := range []string{"light", "dark"} {
		w.scheme(scheme)
		w.check(where + ", " + scheme)
	}
	w.scheme("")
}

// scheme has the browser prefer a scheme of colours; empty: none.
func (w *window) scheme(name string) {
	w.t.Helper()
	w.do(func(ctx context.Context, t *chromedp.Target) (chromedp.Void, error) {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{
			{Name: "prefers-color-scheme", Value: name}, {Name: "prefers-reduced-motion", Value: "reduce"}, // colours that change by and by are neither
		}})
		return chromedp.Void{}, err
	})
}

// printed has the browser show the page as on paper.
func (w *window) printed() {
	w.t.Helper()
	w.do(func(ctx context.Context, t *chromedp.Target) (chromedp.Void, error) {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
		return chromedp.Void{}, err
	})
}

// alone fails the test where the page loaded anything from elsewhere.
func (w *window) alone(where string) {
	w.t.Helper()
	for _, url := range eval[[]string](w, `performance.getEntriesByType('resource').map((e) => e.name)`) {
		if !strings.HasPrefix(url, w.base+"/") && !strings.HasPrefix(url, "data:") {
			w.t.Errorf("%s loads %s", where, url)
		}
	}
}

// check runs the accessibility checker in the page as it is.
func (w *window) check(where string) {
	w.t.Helper()
	out, err := chromedp.Run(w.ctx, chromedp.Evaluate[string](
		`axe.run(document).then((r) => JSON.stringify(r.violations.map((v) => ({ id: v.id, impact: v.impact, help: v.help, nodes: v.nodes.map((n) => n.html + ' ' + n.failureSummary) }))))`, chromedp.EvalAwaitPromise))
	if err != nil {
		w.t.Fatal(err)
	}
	var found []struct {
		ID, Impact, Help string
		Nodes            []string
	}
	if err := json.Unmarshal([]byte(out), &found); err != nil {
		w.t.Fatal(err)
	}
	for _, f := range found {
		if f.Impact == "serious" || f.Impact == "critical" {
			w.t.Errorf("%s: %s (%s): %s\n%s", where, f.ID, f.Impact, f.Help, strings.Join(f.Nodes, "\n"))
		} else {
			w.t.Logf("%s: %s (%s): %s\n%s", where, f.ID, f.Impact, f.Help, bytes.TrimSpace([]byte(strings.Join(f.Nodes, "\n"))))
		}
	}
}
