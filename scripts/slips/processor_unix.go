//go:build unix

package main

import (
	"syscall"
	"time"
)

// processor is what this process has had of all processors so far.
func processor() time.Duration {
	var use syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &use) != nil {
		return 0
	}
	return time.Duration(use.Utime.Nano() + use.Stime.Nano())
}
