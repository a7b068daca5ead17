package config

import (
	"fmt"
	"log/slog"
	"net"
	"net/url"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"time"
	_ "time/tzdata" // zones are the same wherever the program runs

	"go.yaml.in/yaml/v3"
)

// A kind is what a key's values are like. Read puts a value where at points
// to; it returns what is wrong with it and how to mend it, if anything.
type kind struct {
	name  string
	list  bool
	plain bool // numbers are read as they are written
	read  func(r *reader, value string, at any) (what, mend string)
}

var section = kind{name: "section"}

var text = kind{name: "text", read: func(_ *reader, s string, at any) (string, string) {
	if strings.ContainsAny(s, "\r\n") || len(s) > 200 {
		return "the text is longer than one line", "shorten it"
	}
	*at.(*string) = s
	return "", ""
}}

var path = kind{name: "path", read: func(r *reader, s string, at any) (string, string) {
	*at.(*string) = r.resolve(s)
	return "", ""
}}

// secret is the name of a file that holds a secret. What can't be read is told
// when the secret is needed: not every command needs it.
var secret = kind{name: "secret", read: func(r *reader, s string, at any) (string, string) {
	r.files[at.(*Secret)] = r.resolve(s)
	return "", ""
}}

var boolean = kind{name: "true or false", plain: true, read: func(_ *reader, s string, at any) (string, string) {
	switch s {
	case "true", "false":
		*at.(*bool) = s == "true"
		return "", ""
	}
	return quote(s) + " is neither true nor false", "write true or false"
}}

var days = kind{name: "days", plain: true, read: func(_ *reader, s string, at any) (string, string) {
	n, err := strconv.Atoi(s)
	if err != nil || n < 0 || n > 36500 {
		return quote(s) + " is not a number of days", "write a whole number, such as 400, or 0 for ever"
	}
	*at.(*time.Duration) = time.Duration(n) * 24 * time.Hour
	return "", ""
}}

var duration = kind{name: "duration", plain: true, read: func(_ *reader, s string, at any) (string, string) {
	d, err := time.ParseDuration(s)
	if err != nil || d < time.Minute || d > 90*24*time.Hour {
		return quote(s) + " is not a time between a minute and 90 days", "write hours or minutes, such as 4h or 90m"
	}
	*at.(*time.Duration) = d
	return "", ""
}}

var clock = kind{name: "time of day", read: func(_ *reader, s string, at any) (string, string) {
	t, err := time.Parse("15:04", s)
	if err != nil || len(s) != len("15:04") {
		return quote(s) + " is not a time of day", "write hours and minutes, such as 07:00 or 19:30"
	}
	*at.(*time.Duration) = time.Duration(t.Hour())*time.Hour + time.Duration(t.Minute())*time.Minute
	return "", ""
}}

var zone = kind{name: "time zone", read: func(_ *reader, s string, at any) (string, string) {
	z, err := time.LoadLocation(s)
	if err != nil || s == "Local" || s == "" { // Local would differ from machine to machine
		return quote(s) + " is not a time zone that this machine knows", "write one such as America/Chicago or UTC"
	}
	*at.(**time.Location) = z
	return "", ""
}}

var level = kind{name: "level", read: func(_ *reader, s string, at any) (string, string) {
	for _, l := range []slog.Level{slog.LevelDebug, slog.LevelInfo, slog.LevelWarn, slog.LevelError} {
		if strings.EqualFold(l.String(), s) {
			*at.(*slog.Level) = l
			return "", ""
		}
	}
	return quote(s) + " is not a level", "write debug, info, warn or error"
}}

var address = kind{name: "address", plain: true, read: func(_ *reader, s string, at any) (string, string) {
	if s == "off" {
		*at.(*string) = ""
		return "", ""
	}
	_, port, err := net.SplitHostPort(s)
	if n, e := strconv.Atoi(port); err != nil || e != nil || n < 0 || n > 65535 {
		return quote(s) + " is not an address", "write a host and a port, such as 127.0.0.1:8080, or off"
	}
	*at.(*string) = s
	return "", ""
}}

// site is an address on the web; with folders, it may lead into one, and ends
// in a slash.
func site(folders bool) kind {
	return kind{name: "web address", read: func(_ *reader, s string, at any) (string, string) {
		u, err := url.Parse(s)
		switch {
		case err != nil || u.Scheme != "https" && u.Scheme != "http" || u.Host == "" || u.User != nil || u.RawQuery != "" || u.Fragment != "":
			return quote(s) + " is not an address on the web", "write it like https://netpost.example"
		case !folders && strings.Trim(u.Path, "/") != "":
			return quote(s) + " leads into a folder", "write the address of the site alone, like " + u.Scheme + "://" + u.Host
		case folders:
			s = strings.TrimRight(s, "/") + "/"
		default:
			s = strings.TrimRight(s, "/")
		}
		*at.(*string) = s
		return "", ""
	}}
}

func oneOf(words ...string) kind {
	return kind{name: "word", read: func(_ *reader, s string, at any) (string, string) {
		for _, w := range words {
			if s == w {
				*at.(*string) = s
				return "", ""
			}
		}
		mend := "write one of " + strings.Join(words, ", ")
		if w := nearest(s, words); w != "" {
			mend = "write " + w + ", if that is meant"
		}
		return quote(s) + " is not known here", mend
	}}
}

// A form is what an id looks like, and where a person finds it.
type form struct {
	what string
	re   func() *regexp.Regexp
	mend string
}

var (
	slug         = form{"an id", whenUsed(`^[a-z][a-z0-9-]{0,30}$`), "write small letters, digits and hyphens, such as riverside"}
	season       = form{"a season", whenUsed(`^20\d\d-\d\d$`), "write it like 2026-27"}
	snowflake    = form{"a Discord id", whenUsed(`^\d{15,20}$`), "turn on developer mode in Discord's settings and copy the id from the menu of the thing itself"}
	publicKey    = form{"a public key", whenUsed(`^[0-9a-f]{64}$`), "copy the 64 digits and letters from the application's general page"}
	slackTeam    = form{"the id of a workspace", whenUsed(`^[TE][A-Z0-9]{2,20}$`), "copy it from the address of Slack in a browser: it begins with T"}
	slackChannel = form{"the id of a channel", whenUsed(`^[CG][A-Z0-9]{2,20}$`), "copy it from the end of the channel's details: it begins with C"}
	slackGroup   = form{"the handle or id of a user group", whenUsed(`^(S[A-Z0-9]{2,20}|@?[a-z0-9][a-z0-9._-]{0,79})$`), "write its handle, in quotes where it begins with @, or copy its id from the menu of the user group: it begins with S"}
	slackUser    = form{"the id of a person", whenUsed(`^[UW][A-Z0-9]{2,20}$`), "copy it from the menu of the profile: it begins with U"}
)

// whenUsed is an expression that is made ready when the first text wants it:
// the start of the program does not wait for it.
func whenUsed(expr string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(expr) })
}

func (f form) check(s string) (what, mend string) {
	if f.re().MatchString(s) {
		return "", ""
	}
	return quote(s) + " is not " + f.what, f.mend
}

func id(f form) kind {
	return kind{name: f.what, plain: true, read: func(_ *reader, s string, at any) (string, string) {
		if what, mend := f.check(s); what != "" {
			return what, mend
		}
		if f.what == season.what { // 2026-27 and not 2026-28
			first, _ := strconv.Atoi(s[2:4])
			if last := fmt.Sprintf("%02d", (first+1)%100); s[5:] != last {
				return quote(s) + " is not a season", "write a year and the next, such as " + s[:5] + last
			}
		}
		*at.(*string) = s
		return "", ""
	}}
}

func ids(f form) kind {
	return kind{name: f.what, plain: true, list: true, read: func(_ *reader, s string, at any) (string, string) {
		if what, mend := f.check(s); what != "" {
			return what, mend
		}
		all := at.(*[]string)
		for _, o := range *all {
			if o == s {
				return quote(s) + " stands in the list twice", "take one out"
			}
		}
		*all = append(*all, s)
		return "", ""
	}}
}

// resolve makes a path of the file one from here.
func (r *reader) resolve(s string) string {
	if r.file == "" || filepath.IsAbs(s) {
		return s
	}
	return filepath.Join(filepath.Dir(r.file), s)
}

// scalar is the text of a value, or what is wrong with it.
func scalar(k kind, n *yaml.Node) (s, what, mend string) {
	switch {
	case n.Kind == yaml.AliasNode || n.Anchor != "":
		return "", "the file uses an anchor", "write the value out"
	case n.Kind != yaml.ScalarNode:
		return "", "this must be a single value, not a " + word(n), "write one value"
	case n.Tag == "!!null" || n.Value == "":
		return "", "the value is empty", "give it a value or take the line out"
	case n.Tag != "!!str" && !k.plain:
		return "", quote(n.Value) + " reads as " + strings.TrimPrefix(n.Tag, "!!") + ", not as text", "put it in quotes: " + strconv.Quote(n.Value)
	}
	return n.Value, "", ""
}

func word(n *yaml.Node) string {
	switch n.Kind {
	case yaml.MappingNode:
		return "section"
	case yaml.SequenceNode:
		return "list"
	}
	return "value"
}
