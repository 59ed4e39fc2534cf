package jsontree

import (
	"fmt"
	"strconv"
	"strings"
)

// clipped is how much of the file's own text a message repeats.
const clipped = 40

// clip shortens text for a message, at a code point.
func clip(s string) string {
	n := 0
	for i := range s {
		if n++; n > clipped {
			return s[:i] + "..."
		}
	}
	return s
}

// quote is text of the file in quotation marks, shortened, and with what
// cannot be printed escaped.
func quote(s string) string { return strconv.Quote(clip(s)) }

// seenFrom says where an earlier place is to a reader who looks at a later one.
func (p *parser) seenFrom(here, there int) string {
	a, b := p.file.Position(here), p.file.Position(there)
	if a.Line == b.Line {
		return fmt.Sprintf("on the same line, at column %d", b.Column)
	}
	return fmt.Sprintf("on line %d", b.Line)
}

// place is a line and column in words.
func (p *parser) place(offset int) string {
	at := p.file.Position(offset)
	return fmt.Sprintf("line %d, column %d", at.Line, at.Column)
}

func (p *parser) line(offset int) int { return p.file.Position(offset).Line }

// thousands writes a count with commas, as in 250,000.
func thousands(n int) string {
	s := strconv.Itoa(n)
	for at := len(s) - 3; at > 0; at -= 3 {
		s = s[:at] + "," + s[at:]
	}
	return s
}

// size writes a number of bytes, in MiB where that is exact.
func size(n int) string {
	if n >= 1<<20 && n%(1<<20) == 0 {
		return fmt.Sprintf("%d MiB (%s bytes)", n>>20, thousands(n))
	}
	return thousands(n) + " bytes"
}

// bracket names an object or array by the bracket that opens it.
func bracket(open byte) string {
	if open == '{' {
		return "object"
	}
	return "array"
}

// closer is the bracket that closes what an opening one began.
func closer(open byte) byte {
	if open == '{' {
		return '}'
	}
	return ']'
}

// firstWord is the letters, digits and other marks at the start of s that
// belong together: what somebody typed without quotation marks.
func firstWord(s string) string {
	end := strings.IndexFunc(s, func(r rune) bool { return strings.ContainsRune(" \t\r\n,:;[]{}\"'()", r) })
	if end < 0 {
		return s
	}
	return s[:end]
}
