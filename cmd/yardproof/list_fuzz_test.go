package main

import (
	"slices"
	"strings"
	"testing"
)

// FuzzParts takes any bytes for a list of paths: none is empty, and ended by
// NULs they come back as they were given.
func FuzzParts(f *testing.F) {
	f.Add([]byte("a\r\nb\n\nc"))
	f.Add([]byte("a\nb\x00c"))
	f.Fuzz(func(t *testing.T, b []byte) {
		paths := parts(b)
		if slices.Contains(paths, "") {
			t.Fatal("an empty path")
		}
		if len(paths) > 0 && !slices.Equal(parts([]byte(strings.Join(paths, "\x00")+"\x00")), paths) {
			t.Fatalf("%q is another list when it is written with NULs", paths)
		}
	})
}
