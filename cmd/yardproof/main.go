package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"
)

func main() {
	// These must come back as errors of the write, to be told and to leave
	// nothing half done, rather than end the program.
	signal.Ignore(brokenWrites()...)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	context.AfterFunc(ctx, stop) // a second interrupt ends the program at once
	os.Exit(run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
