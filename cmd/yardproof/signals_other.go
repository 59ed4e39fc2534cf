//go:build !unix

package main

import (
	"os"
	"syscall"
)

// brokenWrites are the signals of a write that failed.
func brokenWrites() []os.Signal { return []os.Signal{syscall.SIGPIPE} }
