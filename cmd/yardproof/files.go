package main

import "path/filepath"

// identity is the same for every path of one file that exists, through
// whatever links it is reached.
func identity(path string) string {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	if absolute, err := filepath.Abs(path); err == nil {
		path = absolute
	}
	return path
}

func identities(paths []string) map[string]bool {
	all := map[string]bool{}
	for _, p := range paths {
		all[identity(p)] = true
	}
	return all
}
