package slack

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"
	"time"

	slackapi "github.com/slack-go/slack"

	"example.org/netpost/bot"
)

// scopeGroups is what seeing who is in a user group needs, and nothing else
// does.
const scopeGroups = "usergroups:read"

// Who is in a group is asked again every few minutes. Where Slack can't be
// asked, what it told last holds for an hour: then nobody is known to be in
// one, as somebody may have been taken out.
const (
	groupsFresh = 5 * time.Minute
	groupsHold  = time.Hour
	groupsWait  = 1200 * time.Millisecond // of an event, for the first answer
)

// userGroups are the people in the user groups that roles are given to.
type userGroups struct {
	wanted []string // as the options name them: ids, or handles

	mu     sync.Mutex
	of     map[string][]string // the wanted groups of a person
	told   time.Time           // when Slack told them
	asked  time.Time           // when it was asked last
	asking chan struct{}       // closed once it has told or refused; nil: it is not being asked
	logged string              // the trouble that is in the log already
}

// refresh has Slack asked who is in the groups where it is time to. asking is
// closed once it has answered; nil: it is not being asked.
func (a *Adapter) refresh(ctx context.Context) (asking <-chan struct{}) {
	g := &a.groups
	if len(g.wanted) == 0 {
		return nil
	}
	g.mu.Lock()
	defer g.mu.Unlock()
	if now := time.Now(); now.Sub(g.asked) >= groupsFresh && g.asking == nil {
		g.asked, g.asking = now, make(chan struct{})
		go a.askGroups(context.WithoutCancel(ctx))
	}
	return g.asking
}

// roles are the groups of a person, as the options name them.
func (a *Adapter) roles(ctx context.Context, who string) []string {
	asking := a.refresh(ctx)
	of, known := a.groups.known()
	if !known && asking != nil {
		t := time.NewTimer(groupsWait)
		defer t.Stop()
		select {
		case <-asking:
		case <-t.C:
		case <-ctx.Done():
		}
		of, _ = a.groups.known()
	}
	return slices.Clone(of[who])
}

// known is what Slack told last, where that holds still.
func (g *userGroups) known() (of map[string][]string, ok bool) {
	g.mu.Lock()
	defer g.mu.Unlock()
	if g.told.IsZero() || time.Since(g.told) >= groupsHold {
		return nil, false
	}
	return g.of, true
}

// askGroups asks Slack who is in the groups.
func (a *Adapter) askGroups(ctx context.Context) {
	ctx, cancel := context.WithTimeout(ctx, carryOut)
	defer cancel()
	of, warnings, err := a.members(ctx)
	if err != nil {
		warnings = []string{groupTrouble(err)}
	}
	g := &a.groups
	g.mu.Lock()
	defer g.mu.Unlock()
	if err == nil {
		g.of, g.told = of, time.Now()
	}
	close(g.asking)
	g.asking = nil
	if all := strings.Join(warnings, "\n"); all != g.logged {
		g.logged = all
		for _, w := range warnings {
			a.log.Warn("slack: " + w)
		}
	}
}

// groupTrouble says what it means that Slack does not tell who is in a group,
// and what to do.
func groupTrouble(err error) string {
	s := "it is not known who is in the user groups, and nobody gets a role by one: " + scrub(err)
	if e, ok := errors.AsType[slackapi.SlackErrorResponse](err); ok && e.Err == "missing_scope" {
		return "the bot token lacks the scope " + scopeGroups + ": without it, nobody gets a role by being in a user group; " +
			"add it on the app's page “OAuth & Permissions” and install the app again"
	}
	if r, ok := refused(err); ok && r.mends != "" {
		s += ": " + r.mends
	}
	return s
}

// members asks who is in each wanted group. The warnings name those that there
// are not.
func (a *Adapter) members(ctx context.Context) (of map[string][]string, warnings []string, err error) {
	var all []slackapi.UserGroup
	err = a.call(ctx, "usergroups.list", func(ctx context.Context) (err error) {
		all, err = a.api.GetUserGroupsContext(ctx)
		return err
	})
	if err != nil {
		return nil, nil, err
	}
	of = map[string][]string{}
	for _, want := range a.groups.wanted {
		handle := strings.TrimPrefix(want, "@")
		i := slices.IndexFunc(all, func(g slackapi.UserGroup) bool { return g.ID == want || strings.EqualFold(g.Handle, handle) })
		if i < 0 {
			warnings = append(warnings, fmt.Sprintf("the workspace has no user group %q: write the handle of one that it has, such as %s, or its id",
				want, someHandle(all)))
			continue
		}
		var users []string
		err = a.call(ctx, "usergroups.users.list", func(ctx context.Context) (err error) {
			users, err = a.api.GetUserGroupMembersContext(ctx, all[i].ID)
			return err
		})
		if err != nil {
			return nil, nil, err
		}
		for _, u := range users {
			of[u] = append(of[u], want)
		}
	}
	return of, warnings, nil
}

// someHandle is the handle of a group that there is, as an example.
func someHandle(all []slackapi.UserGroup) string {
	handle := ""
	for _, g := range all {
		if g.Handle != "" && (handle == "" || g.Handle < handle) {
			handle = g.Handle
		}
	}
	if handle == "" {
		return "@officials (there is none yet)"
	}
	return "@" + handle
}

// changed is an event with something changed that every event has.
func changed(e bot.Event, change func(*bot.Meta)) bot.Event {
	switch e := e.(type) {
	case bot.Command:
		change(&e.Meta)
		return e
	case bot.Mention:
		change(&e.Meta)
		return e
	case bot.Shortcut:
		change(&e.Meta)
		return e
	case bot.Press:
		change(&e.Meta)
		return e
	case bot.Submit:
		change(&e.Meta)
		return e
	}
	panic(fmt.Sprintf("slack: an event that Slack has not: %T", e))
}
