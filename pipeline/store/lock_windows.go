package store

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// nonBlocking is not needed where there are no named pipes among the files.
const nonBlocking = 0

// lockFile locks a file for one process or for several, without waiting.
func lockFile(file *os.File, alone bool) error {
	how := uint32(windows.LOCKFILE_FAIL_IMMEDIATELY)
	if alone {
		how |= windows.LOCKFILE_EXCLUSIVE_LOCK
	}
	err := windows.LockFileEx(windows.Handle(file.Fd()), how, 0, 1, 0, new(windows.Overlapped))
	switch {
	case errors.Is(err, windows.ERROR_LOCK_VIOLATION), errors.Is(err, windows.ERROR_IO_PENDING):
		return errBusy
	case errors.Is(err, windows.ERROR_NOT_SUPPORTED), errors.Is(err, windows.ERROR_INVALID_FUNCTION):
		return errNoLocks
	}
	return err
}
