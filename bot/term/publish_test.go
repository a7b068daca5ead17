package term

import (
	"testing"

	"example.org/netpost/bot/bottest"
)

func TestPublishing(t *testing.T) { bottest.Publishing(t, bottest.Harness{Start: start}) }

func TestLife(t *testing.T) { bottest.Story(t, bottest.Harness{Start: start}) }
