package slack

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
)

func testAdapter(t testing.TB) *Adapter {
	t.Helper()
	a, err := New(Options{BotToken: "xoxb-1", AppToken: "xapp-1"})
	if err != nil {
		t.Fatal(err)
	}
	a.self.Store(&self{"T0CREW", "U0NETPOST"})
	return a
}

// Each payload gives the event that is written down beside it.
func TestDecode(t *testing.T) {
	files, err := filepath.Glob("testdata/decode/*.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("no payloads: %v", err)
	}
	a := testAdapter(t)
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".json"), func(t *testing.T) {
			b, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			var p struct {
				Type    string          `json:"type"`
				Payload json.RawMessage `json:"payload"`
			}
			if err := json.Unmarshal(b, &p); err != nil {
				t.Fatal(err)
			}
			in, err := a.decode(p.Type, p.Payload)
			got := ""
			switch {
			case errors.Is(err, errDrop):
				got = "dropped\n"
			case err != nil:
				got = "error: " + err.Error() + "\n"
			default:
				got = fmt.Sprintf("%T\n%+v\nroute %+v\n", in.event, in.event, in.route)
			}
			bottest.Golden(t, "decode/"+strings.TrimSuffix(filepath.Base(file), ".json")+".txt", got)
		})
	}
}

// What is delivered again has the same name, and nothing else has.
func TestDelivery(t *testing.T) {
	a := testAdapter(t)
	name := func(typ, payload string) string {
		t.Helper()
		in, err := a.decode(typ, []byte(payload))
		if err != nil {
			t.Fatal(err)
		}
		return bot.MetaOf(in.event).Delivery
	}
	mention := `{"type":"event_callback","team_id":"T1","event_id":"%s","event":{"type":"%s","user":"U1","text":"x","ts":"%s","channel":"C1","channel_type":"im"}}`
	first := name("events_api", fmt.Sprintf(mention, "Ev1", "app_mention", "1.1"))
	if first != name("events_api", fmt.Sprintf(mention, "Ev2", "message", "1.1")) {
		t.Error("a message that comes as two events has two names")
	}
	if first == name("events_api", fmt.Sprintf(mention, "Ev1", "app_mention", "1.2")) {
		t.Error("two messages have one name")
	}
	command := `{"user_id":"U1","channel_id":"C1","text":"%s","trigger_id":"%s"}`
	if name("slash_commands", fmt.Sprintf(command, "x", "t1")) == name("slash_commands", fmt.Sprintf(command, "x", "t2")) {
		t.Error("the same words given twice have one name")
	}
	if name("slash_commands", fmt.Sprintf(command, "x", "")) == name("slash_commands", fmt.Sprintf(command, "y", "")) {
		t.Error("without a trigger, all have one name")
	}
}

func TestSaid(t *testing.T) {
	for _, test := range []struct{ in, want string }{
		{"<@U0NETPOST> ball &lt; net &amp; down &gt;", "ball < net & down >"},
		{"<@U0NETPOST|netpost>", ""},
		{"ask <@U0BO> or <@U0ANA|ana> in <#C0TALK|talk> or <#C1>", "ask @U0BO or @ana in #talk or #C1"},
		{"<!here> <!subteam^S1|@refs> <!date^1^{date}|today>", "@here @refs @today"},
		{"see <https://notes.example/1|the note> and <https://notes.example/2>", "see the note and https://notes.example/2"},
		{"&amp;lt;b&amp;gt; stays", "&lt;b&gt; stays"},
		{"<> odd", "<> odd"},
	} {
		if got := said(test.in, "U0NETPOST"); got != test.want {
			t.Errorf("said(%q) = %q, want %q", test.in, got, test.want)
		}
	}
}

// Whatever comes in, decoding ends in an event or an error.
func FuzzDecode(f *testing.F) {
	files, _ := filepath.Glob("testdata/decode/*.json")
	for _, file := range files {
		b, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		var p struct {
			Type    string          `json:"type"`
			Payload json.RawMessage `json:"payload"`
		}
		if err := json.Unmarshal(b, &p); err != nil {
			f.Fatal(err)
		}
		f.Add(p.Type, []byte(p.Payload))
	}
	a := testAdapter(f)
	f.Fuzz(func(t *testing.T, typ string, payload []byte) {
		in, err := a.decode(typ, payload)
		if (err == nil) != (in.event != nil) {
			t.Fatalf("event %v and error %v", in.event, err)
		}
		if err == nil && bot.MetaOf(in.event).Delivery == "" {
			t.Fatal("an event without a name")
		}
	})
}

// People whom the words mention come with the event, but for the bot.
func TestNamed(t *testing.T) {
	a := testAdapter(t)
	a.self.Store(&self{user: "U0NETPOST"})
	in, err := a.decode("events_api", []byte(`{"type":"event_callback","team_id":"T1","event":{"type":"app_mention","user":"U1","channel":"C1","ts":"1.1",
		"text":"<@U0NETPOST> erase <@U0BO|bo> Bo, <#C1|talk> <!here> <@U0CY>"}}`))
	if err != nil {
		t.Fatal(err)
	}
	want := []bot.Person{{Platform: Platform, ID: "U0BO"}, {Platform: Platform, ID: "U0CY"}}
	if got := in.event.(bot.Mention).Named; !slices.Equal(got, want) {
		t.Errorf("named are %v, want %v", got, want)
	}
	in, err = a.decode("slash_commands", []byte(`{"user_id":"U1","channel_id":"C1","trigger_id":"t","text":"erase @bo"}`))
	if err != nil || in.event.(bot.Command).Named != nil {
		t.Errorf("named are %v of words without a mention, %v", in.event, err)
	}
}
