package text

import (
	"strings"
	"unicode/utf8"
)

// Fold breaks a line of a report where a terminal of so many columns would,
// into rows that can each be drawn alone: a colour that goes on over a break is
// ended before it and begun again after it. A width of 0 or less breaks nothing.
func Fold(line string, width int) []string {
	if width <= 0 {
		return []string{line}
	}
	var rows []string
	var row strings.Builder
	ink, taken := "", 0
	for line != "" {
		if n := escapeLen(line); n > 0 {
			ink = line[:n]
			if ink == reset {
				ink = ""
			}
			row.WriteString(line[:n])
			line = line[n:]
			continue
		}
		r, n := utf8.DecodeRuneInString(line)
		cells := cellsOf(r)
		if taken+cells > width && taken > 0 {
			if ink != "" {
				row.WriteString(reset)
			}
			rows = append(rows, row.String())
			row.Reset()
			row.WriteString(ink)
			taken = 0
		}
		row.WriteString(line[:n])
		line, taken = line[n:], taken+cells
	}
	return append(rows, row.String())
}

// reset ends every colour (ECMA-48, SGR 0).
const reset = "\x1b[0m"

// escapeLen is the length of the control sequence that a text begins with
// (ECMA-48, section 5.4), 0 if it begins with none.
func escapeLen(text string) int {
	if !strings.HasPrefix(text, "\x1b[") {
		return 0
	}
	for i := 2; i < len(text); i++ {
		if 0x40 <= text[i] && text[i] <= 0x7e {
			return i + 1
		}
	}
	return len(text)
}
