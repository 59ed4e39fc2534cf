package main

import (
	"context"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"
)

func main() {
	// These must come back as errors of the write, to be told and to leave
	// nothing half done, rather than end the program.
	signal.Ignore(brokenWrites()...)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	context.AfterFunc(ctx, stop) // a second interrupt ends the program at once
	sparePauses()
	os.Exit(run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// A run is short and holds little, so that memory is collected less often than
// it is by default: a quarter of an export's time was that. Above the limit,
// which a line of a thousand plans comes near to, it is collected as ever.
const (
	collectPercent = 400
	memoryLimit    = 384 << 20 // bytes
)

// sparePauses sets how memory is collected, where the environment does not.
func sparePauses() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(collectPercent)
	}
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(memoryLimit)
	}
}
