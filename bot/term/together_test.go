package term

import (
	"testing"

	"example.org/netpost/bot/bottest"
)

func TestTogether(t *testing.T) { bottest.Together(t, bottest.Harness{Start: start}) }
