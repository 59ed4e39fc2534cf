package xlsx

import (
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

// unitSize is the size in points of the default font, whose digits are the
// unit of a column's width.
const unitSize = 11.0

// textWidth estimates the width of text in units of a column's width.
func textWidth(text string, bold bool) float64 {
	total := 0.0
	for _, r := range text {
		total += runeWidth(r)
	}
	total *= fontSize / unitSize
	if bold {
		total *= 1.07
	}
	return total
}

// runeWidth is in digits of the same size, from memory of the proportions of
// common sans-serif fonts.
func runeWidth(r rune) float64 {
	if r < unicode.MaxASCII {
		return asciiWidths[r]
	}
	if unicode.IsUpper(r) {
		return 1.25
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

// asciiWidths are the widths of the characters of ASCII. Nothing writes to it.
var asciiWidths = func() (widths [unicode.MaxASCII]float64) {
	for r := range widths {
		widths[r] = 1
		if unicode.IsUpper(rune(r)) {
			widths[r] = 1.25
		}
	}
	for _, c := range []struct {
		characters string
		width      float64
	}{{"mMwWGOQ@%", 1.5}, {"ckJsvxyz", 0.9}, {"r()-\"", 0.65}, {"Ift .,:;!/[]", 0.5}, {"ijl'|", 0.4}} {
		for _, r := range c.characters {
			widths[r] = c.width
		}
	}
	return widths
}()

// linesOf is how many lines text takes when it is wrapped between words.
func linesOf(text string, room float64, bold bool) int {
	lines := 0
	for paragraph := range strings.SplitSeq(text, "\n") {
		lines++
		used := 0.0
		for word := range strings.FieldsSeq(paragraph) {
			w := textWidth(word, bold)
			if used > 0 && used+w > room {
				lines++
				used = 0
			}
			lines += int(w / max(room, 1)) // a long word is broken
			used += w + textWidth(" ", bold)
		}
	}
	return max(lines, 1)
}
