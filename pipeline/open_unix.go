//go:build unix

package pipeline

import "syscall"

// nonBlocking keeps the opening of a named pipe from waiting.
const nonBlocking = syscall.O_NONBLOCK
