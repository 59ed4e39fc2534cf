package check_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// oddWords are what templates make of one thing, of none, and of a value that
// is not there.
var oddWords = regexp.MustCompile(`(?m)(?:^|[^0-9/. ] )1 (?:are|were|have|give|take|make|come|hold|leave|[a-z]{3,}(?: [a-z]+)?s (?:are|give|take|make|come|hold|leave|of|for|at|to)) ` +
	`|one of nothing|none of ;|%!|<nil>|  [a-z]+ of "" `)

// TestWords reads everything that the fixtures and the broken plans make the
// rules say.
func TestWords(t *testing.T) {
	wants, err := filepath.Glob(filepath.Join(fixtures, "*", "*", "*.want"))
	if err != nil || len(wants) < 100 {
		t.Fatalf("%d files of what is said: %v", len(wants), err)
	}
	for _, name := range append(wants, "../../testdata/broken/expected.txt", "CHECKS.md") {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, odd := range oddWords.FindAllString(string(text), -1) {
			t.Errorf("%s: %q", name, strings.TrimSpace(odd))
		}
	}
}

// TestOddWords keeps the search able to find what was said once.
func TestOddWords(t *testing.T) {
	for text, odd := range map[string]bool{
		"tell the maker that 1 are left over":         true,
		"tell the maker that 1 is left over":          false,
		"add it to \"sizes\", or name one of nothing": true,
		"the pattern prints 1 strips for it":          true,
		"the pattern prints 1 strip for it":           false,
		"21 strips are needed; 1/4 in, 1 1/2 yd":      false,
	} {
		if oddWords.MatchString(text) != odd {
			t.Errorf("%q: odd is not %v", text, odd)
		}
	}
}
