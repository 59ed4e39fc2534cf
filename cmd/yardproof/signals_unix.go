//go:build unix

package main

import (
	"os"
	"syscall"
)

// brokenWrites are the signals of a write that failed: its reader has gone, or
// the file would grow beyond the limit set for it.
func brokenWrites() []os.Signal { return []os.Signal{syscall.SIGPIPE, syscall.SIGXFSZ} }
