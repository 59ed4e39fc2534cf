package store

import "path/filepath"

// Identity names a file that exists: every path that leads to it, through whatever
// links, gives the same identity.
func Identity(path string) string {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	if absolute, err := filepath.Abs(path); err == nil {
		path = absolute
	}
	return path
}

// Identities are those of several files.
func Identities(paths []string) map[string]bool {
	all := map[string]bool{}
	for _, p := range paths {
		all[Identity(p)] = true
	}
	return all
}
