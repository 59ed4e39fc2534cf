package text

import (
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

// cellsOf is how many terminal cells a code point takes (Unicode Standard
// Annex 11, East Asian Width; marks that combine take none).
func cellsOf(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf) {
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

func cellsIn(text string) int {
	n := 0
	for _, r := range text {
		n += cellsOf(r)
	}
	return n
}

// wrap breaks a sentence between words into lines of at most room cells; a
// longer word gets a line of its own. A room of 0 breaks nothing.
func wrap(sentence string, room int) []string {
	if room <= 0 {
		return []string{sentence}
	}
	lines := []string{}
	current := ""
	for word := range strings.FieldsSeq(sentence) {
		switch {
		case current == "":
			current = word
		case cellsIn(current)+1+cellsIn(word) <= room:
			current += " " + word
		default:
			lines, current = append(lines, current), word
		}
	}
	return append(lines, current)
}
