//go:build !(darwin || dragonfly || freebsd || linux || netbsd || openbsd || windows)

package store

import "os"

// nonBlocking is not known for this system.
const nonBlocking = 0

// lockFile knows no lock that this system has.
func lockFile(*os.File, bool) error { return errNoLocks }
