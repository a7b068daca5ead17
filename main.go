// Netpost rules on volleyball plays told in words, for officials' crews.
package main

import (
	"context"
	"os"

	"example.org/netpost/bot/command"
)

func main() {
	os.Exit(command.Main(context.Background(), os.Args[1:], command.World{
		Stdin: os.Stdin, Stdout: os.Stdout, Stderr: os.Stderr, Env: os.Getenv,
	}))
}
