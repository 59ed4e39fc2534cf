package source

import (
	"strings"
	"sync"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
)

func TestPosition(t *testing.T) {
	tests := []struct {
		name   string
		text   string
		offset int
		want   Position
	}{
		{"empty file", "", 0, Position{1, 1}},
		{"first byte", "ab", 0, Position{1, 1}},
		{"end of the text", "ab", 2, Position{1, 3}},
		{"past the end", "ab", 99, Position{1, 3}},
		{"before the start", "ab", -1, Position{1, 1}},
		{"line feed itself", "ab\ncd", 2, Position{1, 3}},
		{"after a line feed", "ab\ncd", 3, Position{2, 1}},
		{"carriage return of a pair", "ab\r\ncd", 2, Position{1, 3}},
		{"line feed of a pair", "ab\r\ncd", 3, Position{1, 4}},
		{"after a pair", "ab\r\ncd", 4, Position{2, 1}},
		{"lone carriage return", "ab\rcd", 3, Position{2, 1}},
		{"two lone carriage returns", "a\r\rb", 3, Position{3, 1}},
		{"line feed before carriage return", "a\n\rb", 3, Position{3, 1}},
		{"after the last line ending", "a\n", 2, Position{2, 1}},
		{"a tab is one column", "\t\tx", 2, Position{1, 3}},
		{"two-byte character", "é\"", 2, Position{1, 2}},
		{"four-byte character", "\U0001F9F5x", 4, Position{1, 2}},
		{"inside a character", "a\U0001F9F5x", 3, Position{1, 2}},
		{"combining mark is a column of its own", "e\u0301x", 3, Position{1, 3}},
		{"byte order mark is a column", "\ufeffx", 3, Position{1, 2}},
		{"bytes that are not UTF-8", "\xff\xfex", 2, Position{1, 3}},
		{"cut-off character", "\xe2\x82x", 2, Position{1, 3}},
		{"next-line and line separator end no line", "a\u0085b\u2028c", 7, Position{1, 5}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := New("f", []byte(tt.text)).Position(tt.offset); got != tt.want {
				t.Errorf("Position(%d) of %q = %v, want %v", tt.offset, tt.text, got, tt.want)
			}
		})
	}
}

func TestLines(t *testing.T) {
	tests := []struct {
		text string
		want []string
	}{
		{"", []string{""}},
		{"a", []string{"a"}},
		{"a\n", []string{"a", ""}},
		{"a\r\nb\rc\nd", []string{"a", "b", "c", "d"}},
		{"\n\r\n\r", []string{"", "", "", ""}},
		{"né\t\n½", []string{"né\t", "½"}},
	}
	for _, tt := range tests {
		f := New("f", []byte(tt.text))
		got := []string{}
		for n := 1; n <= f.Lines(); n++ {
			got = append(got, f.Line(n))
		}
		if diff := cmp.Diff(tt.want, got); diff != "" {
			t.Errorf("lines of %q (-want +got):\n%s", tt.text, diff)
		}
		if f.Line(0) != "" || f.Line(f.Lines()+1) != "" {
			t.Errorf("lines of %q beyond both ends are not empty", tt.text)
		}
	}
}

func TestSlice(t *testing.T) {
	f := New("f", []byte("abcdef"))
	tests := []struct {
		r    Range
		want string
	}{
		{Range{1, 3}, "bc"},
		{Range{0, 6}, "abcdef"},
		{Range{4, 99}, "ef"},
		{Range{-5, 2}, "ab"},
		{At(3), ""},
		{Range{4, 2}, ""},
		{Range{99, 120}, ""},
	}
	for _, tt := range tests {
		if got := f.Slice(tt.r); got != tt.want {
			t.Errorf("Slice(%v) = %q, want %q", tt.r, got, tt.want)
		}
	}
}

// The index is built on first use, which may be in several goroutines at once;
// the race detector watches this one.
func TestConcurrentReaders(t *testing.T) {
	f := New("f", []byte(strings.Repeat("é\n", 2000)+strings.Repeat("é", 9000)))
	var readers sync.WaitGroup
	for range 8 {
		readers.Go(func() {
			if got, want := f.Position(len(f.Bytes)), (Position{2001, 9001}); got != want {
				t.Errorf("Position of the end = %v, want %v", got, want)
			}
		})
	}
	readers.Wait()
}

// obviousPosition is the slow way: conversion to runes counts a bad byte as one.
func obviousPosition(text string, offset int) Position {
	for offset > 0 && offset < len(text) && insideRune(text, offset) {
		offset--
	}
	before := text[:offset]
	if strings.HasSuffix(before, "\r") && strings.HasPrefix(text[offset:], "\n") {
		before = strings.TrimSuffix(before, "\r") + "?" // the pair has not ended yet
	}
	lines := strings.Split(strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(before), "\n")
	return Position{len(lines), len([]rune(lines[len(lines)-1])) + 1}
}

func insideRune(text string, offset int) bool {
	for start := max(0, offset-3); start < offset; start++ {
		if _, n := utf8.DecodeRuneInString(text[start:]); n > offset-start {
			return true
		}
	}
	return false
}

func FuzzPosition(f *testing.F) {
	for _, text := range []string{"", "ab\r\ncd\re\n", "é\xff\xe2\x82\U0001F9F5", strings.Repeat("½ a", 1200) + "\n" + strings.Repeat("\xf0\x9f", 900)} {
		f.Add(text, len(text)/2)
	}
	f.Fuzz(func(t *testing.T, text string, offset int) {
		file := New("f", []byte(text))
		clamped := max(0, min(offset, len(text)))
		got := file.Position(offset)
		if want := obviousPosition(text, clamped); got != want {
			t.Fatalf("Position(%d) of %q = %v, want %v", offset, text, got, want)
		}
		checkExcerpt(t, file, Range{clamped, clamped + 5}, got)
	})
}
