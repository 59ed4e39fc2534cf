//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package store

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// nonBlocking keeps the opening of a named pipe from waiting.
const nonBlocking = unix.O_NONBLOCK

// lockFile locks a file for one process or for several, without waiting.
func lockFile(file *os.File, alone bool) error {
	how := unix.LOCK_SH
	if alone {
		how = unix.LOCK_EX
	}
	for {
		err := unix.Flock(int(file.Fd()), how|unix.LOCK_NB)
		switch {
		case errors.Is(err, unix.EINTR):
		case errors.Is(err, unix.EWOULDBLOCK):
			return errBusy
		case errors.Is(err, unix.ENOLCK), errors.Is(err, unix.ENOSYS), errors.Is(err, unix.ENOTSUP), errors.Is(err, unix.EOPNOTSUPP):
			return errNoLocks
		default:
			return err
		}
	}
}
