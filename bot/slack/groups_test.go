package slack_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/slack"
	"example.org/netpost/bot/slack/slackfake"
)

// grouped is a workspace with user groups, whose scope the bot has.
func grouped(t testing.TB) *slackfake.Server {
	s := workspace(t)
	s.SetScopes(slackfake.AllScopes + "," + slackfake.GroupScope)
	s.Group("S0MENTORS", "crew-mentors", "U0ANA")
	s.Group("S0PUBLISH", "publishers", "U0ANA", "U0BO")
	s.Group("S0OTHER", "others", "U0BO")
	return s
}

// rolesOf gives a command and returns the roles that it came with.
func (c *crew) rolesOf(r *bottest.Recorder, who string) []string {
	c.t.Helper()
	n := len(bottest.Of[bot.Command](r))
	c.fine(c.Person(who).Command(talk, "who am I?"))
	if !c.Wait(wait, func() bool { return len(bottest.Of[bot.Command](r)) > n }) {
		c.t.Fatalf("no command\n%s", c.log)
	}
	return bottest.Of[bot.Command](r)[n].Who.Roles
}

// Whoever is in a user group that a role is given to comes with it, as the
// settings write it; no other group is asked for.
func TestUserGroups(t *testing.T) {
	for _, mode := range []string{socketMode, httpMode} {
		t.Run(mode, func(t *testing.T) {
			var r bottest.Recorder
			c := startWith(t, grouped(t), mode, r.Handle, func(o *slack.Options) {
				o.Groups = []string{"@Crew-Mentors", "S0PUBLISH", "S0PUBLISH", "publishers"}
			})
			if got := c.rolesOf(&r, "U0ANA"); !slices.Equal(got, []string{"@Crew-Mentors", "S0PUBLISH", "publishers"}) {
				t.Errorf("ana is %q", got)
			}
			if got := c.rolesOf(&r, "U0BO"); !slices.Equal(got, []string{"S0PUBLISH", "publishers"}) {
				t.Errorf("bo is %q", got)
			}
			if got := c.rolesOf(&r, "U0CY"); len(got) != 0 {
				t.Errorf("cy is %q", got)
			}
			if n := len(c.Calls("usergroups.list")); n != 1 {
				t.Errorf("asked for the groups %d times", n)
			}
			if n := len(c.Calls("usergroups.users.list")); n != 3 {
				t.Errorf("asked %d times who is in a group, want once for each wanted name", n)
			}
		})
	}
}

// Without groups in the settings, nothing is asked and no scope is missed.
func TestNoUserGroups(t *testing.T) {
	var r bottest.Recorder
	c := start(t, workspace(t), socketMode, r.Handle)
	if got := c.rolesOf(&r, "U0ANA"); got != nil {
		t.Errorf("roles %q", got)
	}
	if n := len(c.Calls("usergroups.list")); n != 0 || strings.Contains(c.log.String(), slackfake.GroupScope) {
		t.Errorf("asked %d times\n%s", n, c.log)
	}
}

// Where the scope is missing or a group is not there, people go without the
// role, are answered all the same, and it is said once how to mend it.
func TestUserGroupTrouble(t *testing.T) {
	for _, test := range []struct {
		name, group, want string
		spoil             func(*slackfake.Server)
	}{
		{"no scope", "crew-mentors", "lacks the scope usergroups:read", func(s *slackfake.Server) { s.SetScopes(slackfake.AllScopes) }},
		{"no such group", "referees", `no user group "referees": write the handle of one that it has, such as @crew-mentors`, nil},
		{"revoked", "crew-mentors", "the token was revoked: install the app again", func(s *slackfake.Server) { s.Refuse("usergroups.list", "token_revoked", 9) }},
		{"trouble of Slack's own", "crew-mentors", "nobody gets a role by one", func(s *slackfake.Server) { s.Status("usergroups.users.list", 503, 9) }},
	} {
		t.Run(test.name, func(t *testing.T) {
			s := grouped(t)
			if test.spoil != nil {
				test.spoil(s)
			}
			var r bottest.Recorder
			c := startWith(t, s, socketMode, r.Handle, func(o *slack.Options) { o.Groups = []string{test.group} })
			for range 2 {
				if got := c.rolesOf(&r, "U0ANA"); len(got) != 0 {
					t.Errorf("roles %q", got)
				}
			}
			c.says(c.last(c.Person("U0ANA"), talk, slackfake.Message{}), "who am I?")
			log := strings.ReplaceAll(c.log.String(), `\"`, `"`)
			if strings.Count(log, test.want) == 0 || strings.Count(log, "slack: it is not known") > 1 {
				t.Errorf("the log, want %q once:\n%s", test.want, log)
			}
			w, err := c.adapter.Check(t.Context())
			if all := strings.Join(w, "\n"); err != nil || !strings.Contains(all, test.want) || strings.Count(all, slackfake.GroupScope) > 1 {
				t.Errorf("Check: %q, %v; want %q", w, err, test.want)
			}
		})
	}
}

// A slow answer about the groups holds an event up for a moment and no more.
func TestUserGroupsSlow(t *testing.T) {
	s := grouped(t)
	s.Slow("usergroups.list", 3*time.Second, 1)
	var r bottest.Recorder
	c := startWith(t, s, socketMode, r.Handle, func(o *slack.Options) { o.Groups = []string{"publishers"} })
	if got := c.rolesOf(&r, "U0ANA"); len(got) != 0 {
		t.Errorf("roles %q", got)
	}
	if !c.Wait(wait, func() bool { return len(c.Calls("usergroups.users.list")) == 1 }) {
		t.Fatal("the groups never came")
	}
	if !c.Wait(wait, func() bool { return len(c.rolesOf(&r, "U0ANA")) == 1 }) {
		t.Error("the role never came")
	}
}
