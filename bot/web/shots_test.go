package web

import (
	"flag"
	"testing"

	"example.org/netpost/bot/bottest"
)

var _ = flag.Bool("update", false, "rewrite the expected texts in testdata")

// What officials get when they do things together, as a browser gets it.
func TestShots(t *testing.T) {
	for _, s := range bottest.Shots(t) {
		p := printer{form: form{Token: "token", Delivery: "delivery", Message: "m1"}}
		p.message(s.Message)
		bottest.Golden(t, "crew/"+s.Name+".html", p.String()+"\n")
	}
}
