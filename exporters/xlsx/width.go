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
	switch {
	case strings.ContainsRune("ijl'|", r):
		return 0.4
	case strings.ContainsRune("Ift .,:;!/[]", r):
		return 0.5
	case strings.ContainsRune("r()-\"", r):
		return 0.65
	case strings.ContainsRune("ckJsvxyz", r):
		return 0.9
	case strings.ContainsRune("mMwWGOQ@%", r):
		return 1.5
	case unicode.IsUpper(r):
		return 1.25
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

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
