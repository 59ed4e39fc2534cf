package jsontree

import (
	"fmt"
	"strings"

	"yardproof/schema/source"
)

// badWord reports a value that is typed without quotation marks and is no
// number, true, false or null.
func (p *parser) badWord(at int) {
	word := p.oddText(at)
	place := source.Range{Start: at, End: at + len(word)}
	message, hint := fmt.Sprintf("%s is not a JSON value", quoteRaw(clip(word))), "put text in double quotation marks"
	switch lower := strings.ToLower(word); {
	case place.End == len(p.text) && isStart(word):
		message, hint = fmt.Sprintf("the file ends in the middle of %s", word), "write the rest of the file"
	case lower == "true" || lower == "false" || lower == "null":
		hint = "write " + lower
	case lower == "nan" || strings.TrimLeft(lower, "+-") == "infinity":
		hint = "write a number; JSON has none for this"
	case lower == "none" || lower == "nil" || lower == "undefined":
		hint = "write null, or leave the member out"
	case strings.ContainsRune("+-.0123456789", rune(word[0])):
		hint = numberHint(word)
	}
	p.end(codeNotJSON, place, message, hint)
}

// bareKey reports a name that is typed without quotation marks.
func (p *parser) bareKey(at int) {
	word := p.oddText(at)
	if !isLetterOrDigit(word[0]) && word[0] != '_' && word[0] != '$' {
		p.notJSON(at, at+len(word), fmt.Sprintf("%s where a name in double quotation marks was wanted", quoteRaw(clip(word))), "remove it, or write the name")
		return
	}
	p.notJSON(at, at+len(word), fmt.Sprintf("the name %s is not in double quotation marks", quoteRaw(clip(word))), "write "+quote(word))
}

// isStart reports whether a word could go on to be a value.
func isStart(word string) bool {
	for _, w := range [...]string{"true", "false", "null"} {
		if strings.HasPrefix(w, word) {
			return true
		}
	}
	return word == "-" || strings.Trim(word, "-+.eE0123456789") == "" && strings.ContainsAny(word, "0123456789") && word[0] != '+' && word[0] != '.'
}

func numberHint(word string) string {
	switch {
	case word[0] == '+':
		return "write the number without the +"
	case word[0] == '.' || strings.HasPrefix(word, "-."):
		return "write a 0 before the point"
	case strings.HasSuffix(word, "."):
		return "write a digit after the point, or leave the point out"
	default:
		return "write a plain number, or put the text in double quotation marks"
	}
}

// bareNumber reports a number that goes on as something else: the 2 of 2 1/2,
// the 6.5 of 6.5 cm, the 0 of 01.
func (p *parser) bareNumber(at int) bool {
	start := p.last.place.Start
	adjacent := at == p.last.place.End
	c := p.byteAt(at)
	digit := '0' <= c && c <= '9'
	if adjacent && digit {
		word := firstWord(p.text[start:])
		p.notJSON(start, start+len(word), fmt.Sprintf("the number %s begins with a zero", clip(word)), "leave the zero out, or put it in double quotation marks")
		return true
	}
	if c == 0 || strings.ContainsAny(p.text[p.last.place.End:at], "\r\n") || c == '"' && !adjacent {
		return false
	}
	if strings.HasPrefix(p.text[at:], "//") || strings.HasPrefix(p.text[at:], "/*") || strings.IndexByte(":;=#{}[]", c) >= 0 {
		return false
	}
	if open, _, _ := p.around(); open == '[' && digit && !p.fraction(at) {
		return false // 1 2 in an array is a missing comma
	}
	hint := "put the whole value in double quotation marks"
	if c == '"' {
		hint += ", with in for inches"
	}
	p.bareLength("is more than a number and has no quotation marks", hint)
	return true
}

// fraction reports whether digits, a stroke and digits stand at an offset.
func (p *parser) fraction(at int) bool {
	after := p.skip(at, "0123456789")
	return after > at && p.byteAt(after) == '/' && p.skip(after+1, "0123456789") > after+1
}

// bareLength reports a value whose number was read but that goes on, up to
// where the next member or the end of the line must be.
func (p *parser) bareLength(what, hint string) {
	start := p.last.place.Start
	value := firstLine(p.text[start:])
	if end := strings.IndexAny(value[p.last.place.End-start+1:], ",]}"); end >= 0 {
		value = strings.TrimRight(value[:p.last.place.End-start+1+end], blank)
	}
	p.notJSON(start, start+len(value), fmt.Sprintf("the value %s %s", quoteRaw(clip(value)), what), hint)
}

// trailing reports text after the one value of the file.
func (p *parser) trailing() {
	at := p.skip(p.last.place.End, blank)
	if at == len(p.text) {
		return
	}
	rest := strings.TrimRight(p.text[at:], blank)
	message, hint := fmt.Sprintf("%s after the end of the file's value", quote(p.oddText(at))), "remove it"
	switch c := rest[0]; {
	case c == '}' || c == ']':
		message, hint = fmt.Sprintf("%c closes nothing: the file's value is complete at %s", c, p.place(p.last.place.End-1)), fmt.Sprintf("remove the %c, or the bracket too many before it", c)
	case strings.HasPrefix(rest, "//") || strings.HasPrefix(rest, "/*") || c == '#':
		message = "a comment after the end of the file's value; JSON has none"
	case c == '{' || c == '[':
		message, hint = fmt.Sprintf("a second value; the first is complete at %s, and a file holds one", p.place(p.last.place.End-1)), "put each value in a file of its own"
	}
	p.end(codeTrailing, source.Range{Start: at, End: at + len(rest)}, message, hint)
}
