package words

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"yardproof/pipeline/diag"
)

// Name is the name of a file for a line that a person or a CI service reads:
// as it is, or quoted as Go and C quote strings where it holds what ends a line,
// moves a cursor, turns the direction of writing, is no UTF-8, or is taken for
// a workflow command, which begins a line with two colons or, in an older form,
// holds "##[" anywhere.
func Name(name string) string {
	plain := utf8.ValidString(name) && strings.TrimSpace(name) == name &&
		!strings.HasPrefix(name, "::") && !strings.HasPrefix(name, `"`) && !strings.Contains(name, "##[") &&
		!strings.ContainsFunc(name, func(r rune) bool { return !unicode.IsPrint(r) })
	if plain {
		return name
	}
	return strings.ReplaceAll(strconv.Quote(name), "##[", `#\x23[`)
}

// Line is a text, such as an error that names files, as one line that no
// terminal or CI service obeys.
func Line(text string) string {
	text = OneLine(text)
	if trimmed := strings.TrimLeftFunc(text, unicode.IsSpace); strings.HasPrefix(trimmed, "::") {
		text = strings.Replace(text, "::", ": :", 1)
	}
	return text
}

// Where is "file:line:column", or as much of it as there is.
func Where(at diag.Place) string {
	at.File, at.Cell = Name(at.File), OneLine(at.Cell)
	return at.String()
}

// JSON escapes in a JSON text the characters that the standard lets stand in a
// string and a terminal obeys all the same.
func JSON(text []byte) []byte {
	if !bytes.ContainsFunc(text, obeyed) {
		return text
	}
	var b bytes.Buffer
	for _, r := range string(text) {
		if obeyed(r) {
			fmt.Fprintf(&b, `\u%04x`, r)
		} else {
			b.WriteRune(r)
		}
	}
	return b.Bytes()
}

// obeyed tells of a character that only ever stands in a string. All of them
// are below U+10000.
func obeyed(r rune) bool {
	return r >= 0x7f && unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r)
}
