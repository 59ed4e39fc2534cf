package drawing

import (
	"strings"
	"unicode"
)

// Sizes of text in millimetres.
const (
	titleSize   = 4.2
	captionSize = 2.9
	sizeSize    = 2.7 // of dimensions
	leastSize   = 1.7 // that can be read
)

// width estimates how wide a line of text is.
func width(text string, size float64) float64 {
	total := 0.0
	for _, r := range text {
		total += em(r)
	}
	return total * size
}

// em is the width of a letter, from memory of the proportions of common
// sans-serif fonts.
func em(r rune) float64 {
	switch {
	case strings.ContainsRune("ijl'|.,:;! ", r):
		return 0.29
	case strings.ContainsRune("ftr()/-", r):
		return 0.36
	case strings.ContainsRune("mMwW@%", r):
		return 0.89
	case r > 0x2e7f: // ideographs and what else is as wide as high
		return 1
	case unicode.IsUpper(r):
		return 0.7
	}
	return 0.57
}

// fitted shortens text to a width.
func fitted(text string, size, room float64) string {
	if width(text, size) <= room {
		return text
	}
	runes := []rune(text)
	for len(runes) > 1 && width(string(runes)+"…", size) > room {
		runes = runes[:len(runes)-1]
	}
	return strings.TrimSpace(string(runes)) + "…"
}

// neutral takes out what is not meant to be seen: controls, and marks that
// turn the direction of what follows.
func neutral(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsControl(r):
			return ' '
		case unicode.Is(unicode.Bidi_Control, r) || r == unicode.ReplacementChar || r&0xfffe == 0xfffe:
			return -1
		}
		return r
	}, text)
}

// wrap breaks text between words into lines of a width, and shortens words
// that are longer.
func wrap(text string, size, room float64) []string {
	var lines []string
	line := ""
	for word := range strings.FieldsSeq(text) {
		longer := strings.TrimSpace(line + " " + word)
		if line != "" && width(longer, size) > room {
			lines = append(lines, line)
			longer = word
		}
		line = fitted(longer, size, room)
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
