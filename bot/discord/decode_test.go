package discord

import (
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

// Payloads of the shapes that Discord sends become events, or an error that a
// person can be told.
func TestDecode(t *testing.T) {
	files, err := filepath.Glob("testdata/payload/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal("no payloads", err)
	}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		in, err := decode(data, "7700")
		bottest.Golden(t, strings.TrimSuffix(strings.TrimPrefix(f, "testdata/"), ".json")+".txt",
			fmt.Sprintf("%T %+v\n%+v\n%v\n", in.event, in.event, in.route, err))
	}
}

// Whatever comes in, decoding ends, and gives an event or an error.
func FuzzDecode(f *testing.F) {
	files, _ := filepath.Glob("testdata/payload/*.json")
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add([]byte(`{"type":2,"id":"1","token":"t","data":null}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		in, err := decode(data, "7700")
		if (in.event == nil) == (err == nil) {
			t.Errorf("event %v and error %v", in.event, err)
		}
		var u *unknown
		if errors.As(err, &u) && (in.route.id == "" || in.route.token == "") {
			t.Error("there is no way to tell the person")
		}
	})
}

// People whom the words mention come with the event, but for the bot.
func TestNamed(t *testing.T) {
	in, err := decode([]byte(`{"type":2,"id":"1","token":"t","channel_id":"50","user":{"id":"11"},"data":{"name":"netpost","type":1,
		"options":[{"name":"erase","type":1,"options":[{"name":"person","type":3,"value":"<@!77> <@12> Bo, <@&900> <#50> <@13>"}]}]}}`), "77")
	if err != nil {
		t.Fatal(err)
	}
	want := []bot.Person{{Platform: Platform, ID: "12"}, {Platform: Platform, ID: "13"}}
	if got := in.event.(bot.Command).Named; !slices.Equal(got, want) {
		t.Errorf("named are %v, want %v", got, want)
	}
}
