package bottest

import (
	"context"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
)

// killer ends the program at one of the steps that it counts: before or after
// a write, before or after a message goes out.
type killer struct {
	store.Store
	send bot.Sender
	left int // steps until the end
}

type death struct{}

func (k *killer) step() {
	if k.left--; k.left < 0 {
		panic(death{})
	}
}

func (k *killer) Write(ctx context.Context, a string, fn func(store.Writer) error) error {
	k.step()
	err := k.Store.Write(ctx, a, fn)
	k.step()
	return err
}

func (k *killer) Send(ctx context.Context, a string, to bot.Target, m bot.Message) (bot.Sent, error) {
	k.step()
	sent, err := k.send(ctx, a, to, m)
	k.step()
	return sent, err
}

// dies runs fn and reports whether the program was killed in it.
func dies(fn func()) (dead bool) {
	defer func() {
		if p := recover(); p != nil {
			if _, dead = p.(death); !dead {
				panic(p)
			}
		}
	}()
	fn()
	return false
}
