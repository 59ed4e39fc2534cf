package main

import (
	"slices"
	"testing"
)

func TestParts(t *testing.T) {
	for text, want := range map[string][]string{
		"":                {},
		"\n\n":            {},
		"\x00":            {},
		"a\nb":            {"a", "b"},
		"a\r\nb\r\n":      {"a", "b"},
		"a\n\nb\n":        {"a", "b"},
		" a b \n":         {" a b "},
		"a\x00b\x00":      {"a", "b"},
		"a\nb\x00c\r\x00": {"a\nb", "c\r"},
		"a\x00b":          {"a", "b"},
	} {
		if got := parts([]byte(text)); !slices.Equal(got, want) {
			t.Errorf("%q: %q, wanted %q", text, got, want)
		}
	}
}
