package command

import (
	"context"
	"fmt"
	"sync"

	"example.org/netpost/bot"
	"example.org/netpost/bot/slack"
)

// senders are the ways to post on the platforms that are served.
type senders struct {
	mu  sync.RWMutex
	all map[string]bot.Adapter // by address
}

// address tells adapters apart: there is one for a platform, but on Slack one
// for a workspace.
func address(platform, workspace string) string {
	if platform == slack.Platform {
		return platform + "/" + workspace
	}
	return platform
}

// add makes a platform one that can be posted to.
func (s *senders) add(platform, workspace string, a bot.Adapter) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.all == nil {
		s.all = map[string]bot.Adapter{}
	}
	s.all[address(platform, workspace)] = a
}

// Send is a bot.Sender.
func (s *senders) Send(ctx context.Context, _ string, to bot.Target, m bot.Message) (bot.Sent, error) {
	s.mu.RLock()
	a := s.all[address(to.Platform, to.Workspace)]
	s.mu.RUnlock()
	if a == nil {
		return bot.Sent{}, fmt.Errorf("%w: %s is not served", bot.ErrNotSent, address(to.Platform, to.Workspace))
	}
	return a.Post(ctx, to, m)
}
