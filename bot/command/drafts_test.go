package command

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/sqlite"
)

// A draft that passes every check is published into the folder, once; one that
// does not is refused with what is wrong, and stays.
func TestDrafts(t *testing.T) {
	dir := t.TempDir()
	notes := filepath.Join(dir, "notes")
	file := filepath.Join(dir, "netpost.yaml")
	if err := os.Mkdir(notes, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte("associations: [{id: riverside, casebook: "+notes+"}]\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	s, err := sqlite.Open(t.Context(), filepath.Join(dir, "netpost.db"), sqlite.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	text := func(id, ruling string) string {
		return "---\nid: " + id + "\ntitle: A foot across\ncodes: [scholastic]\nseason: 2025-26\nstatus: draft\n" +
			"play: A's middle lands with the whole foot across the centre line, nobody near her\nruling: " + ruling + "\n---\nA word on it.\n"
	}
	at := time.Date(2026, 11, 23, 7, 0, 0, 0, time.UTC)
	err = s.Write(t.Context(), "riverside", func(w store.Writer) error {
		for _, d := range []store.Draft{
			{ID: "d1", Text: text("2026-001", "{outcome: fault, fault: centre-line, against: A}")},
			{ID: "d2", Text: text("2026-002", "{outcome: play-on}")},
			{ID: "d3", Text: text("2026-003", "{outcome: play-on}")},
		} {
			d.By, d.At, d.State = store.Person{Platform: "slack", ID: "UKIM"}, at, store.Drafted
			if err := w.SaveDraft(d); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	out, errs, status := run("", "drafts", "--config", file, "--publish", "d1", "--drop", "d3")
	if status != ok || errs != "" || !strings.Contains(out, "d1 is published as 2026-001-a-foot-across.md") || !strings.Contains(out, "d3 is dropped") || !strings.Contains(out, "d2  2026-11-23  2026-002 A foot across") {
		t.Errorf("status %d: %s%s", status, out, errs)
	}
	if text, err := os.ReadFile(filepath.Join(notes, "2026-001-a-foot-across.md")); err != nil || !strings.Contains(string(text), "status: published\n") {
		t.Errorf("%v: %s", err, text)
	}
	if out, errs, status := run("", "check", notes); status != ok {
		t.Errorf("the folder is not right after it: %s%s", out, errs)
	}
	for _, bad := range [][2]string{{"d1", "published already"}, {"d2", "the note rules play-on"}, {"d3", "dropped already"}, {"d9", "no draft"}} {
		if _, errs, status := run("", "drafts", "--config", file, "--publish", bad[0]); status != wrong || !strings.Contains(errs, bad[1]) {
			t.Errorf("%s: status %d: %s", bad[0], status, errs)
		}
	}
	if _, errs, status := run("", "drafts", "--config", file, "--drop", "d1"); status != wrong || !strings.Contains(errs, "published already") {
		t.Errorf("a published one is dropped: status %d: %s", status, errs)
	}
	if all, _ := os.ReadDir(notes); len(all) != 1 {
		t.Errorf("%d files in the folder", len(all))
	}
}
