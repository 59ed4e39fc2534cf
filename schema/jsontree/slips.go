package jsontree

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"yardproof/schema/source"
)

// stray reports what is out of place wherever it stands outside a string: the
// end of the file, comments, other quotation marks, blanks that are none.
func (p *parser) stray(at int) bool {
	if at >= len(p.text) {
		p.unclosed()
		return true
	}
	rest := p.text[at:]
	r, n := utf8.DecodeRuneInString(rest)
	switch {
	case strings.HasPrefix(rest, "//") || strings.HasPrefix(rest, "/*") || r == '#':
		p.notJSON(at, at+len(comment(rest)), "a comment; JSON has none", "remove it, or keep the words in a description")
	case r == '\'':
		p.notJSON(at, at+1, "a single quotation mark; JSON takes the double one, \"", "write \" at both ends of the text")
	case r == '`' || r > utf8.RuneSelf && unicode.Is(unicode.Quotation_Mark, r):
		p.notJSON(at, at+n, fmt.Sprintf("the quotation mark %c; JSON takes the straight double one, \"", r), "write \" at both ends of the text")
	case !unicode.IsPrint(r) || r == '\u00A0':
		p.notJSON(at, at+n, fmt.Sprintf("the invisible character U+%04X stands outside a string", r), "remove it, or write a plain space")
	default:
		return false
	}
	return true
}

// comment is the text of a comment that s begins with.
func comment(s string) string {
	if strings.HasPrefix(s, "/*") {
		if end := strings.Index(s, "*/"); end >= 0 {
			return s[:end+2]
		}
		return strings.TrimRight(s, blank)
	}
	return firstLine(s)
}

// firstLine is the text before the first line ending, without blanks at its end.
func firstLine(s string) string {
	if end := strings.IndexAny(s, "\r\n"); end >= 0 {
		s = s[:end]
	}
	return strings.TrimRight(s, blank)
}

// unclosed reports that the file ends too soon, at the end of its text. A
// bracket is open then: a file of blanks alone has been told apart before.
func (p *parser) unclosed() {
	end := len(strings.TrimRight(p.text, blank))
	open, where, _ := p.around()
	hint := fmt.Sprintf("write the missing %c", closer(open))
	if s := p.crooked; s.found {
		hint = fmt.Sprintf("write the missing bracket, perhaps before line %d, where the %s from line %d is closed further left than it begins",
			p.line(s.place.End-1), bracket(p.text[s.place.Start]), p.line(s.place.Start))
	}
	p.notJSON(end, end, fmt.Sprintf("the file ends before the %s that opens at %s is closed", bracket(open), p.place(where)), hint)
}

// slant remembers the first object or array that is closed further left than
// the line that opened it begins. When brackets do not match up in the end,
// the missing one is most likely just before: the closing bracket on that line
// was meant for something further out.
type slant struct {
	found bool
	place source.Range
}

func (s *slant) note(text string, r source.Range) {
	if s.found {
		return
	}
	closer := r.End - 1
	line := closer
	for line > 0 && (text[line-1] == ' ' || text[line-1] == '\t') {
		line--
	}
	if line <= r.Start || text[line-1] != '\n' && text[line-1] != '\r' {
		return // the bracket does not begin its line
	}
	if closer-line < indentOf(text, r.Start) {
		*s = slant{true, r}
	}
}

// mostIndent bounds the look back along a line, which may be megabytes long.
const mostIndent = 400

// indentOf is the number of blanks that begin the line of an offset.
func indentOf(text string, at int) int {
	from := max(0, at-mostIndent)
	line := from + strings.LastIndexAny(text[from:at], "\r\n") + 1
	return len(text[line:at]) - len(strings.TrimLeft(text[line:at], " \t"))
}

// badString says what is wrong inside a string that begins at an offset.
func (p *parser) badString(at int) {
	for i := at + 1; i < len(p.text); i++ {
		switch c := p.text[i]; {
		case c == '"':
			return
		case c == '\n' || c == '\r':
			p.notJSON(at, i, "the string that begins here is not closed on its line", "close it with \", or write \\n for a line break inside it")
			return
		case c < ' ':
			p.notJSON(i, i+1, fmt.Sprintf("the control character U+%04X stands inside a string", c)+p.after(at+1, i, ""), fmt.Sprintf("write %s instead", escaped(c)))
			return
		case c == '\\':
			if n := p.escapeLength(i); n == 0 {
				return
			} else {
				i += n - 1
			}
		}
	}
	p.notJSON(at, len(p.text), "the file ends before the string that begins here is closed", "close it with \"")
}

func escaped(c byte) string {
	if c == '\t' {
		return `\t`
	}
	return fmt.Sprintf(`\u%04X`, c)
}

// escapeLength is the length of the escape at an offset; a bad one is reported
// and has length 0.
func (p *parser) escapeLength(at int) int {
	if at+1 == len(p.text) || strings.IndexByte(`"\/bfnrt`, p.text[at+1]) >= 0 {
		return 2
	}
	if p.codeUnit(at) >= 0 {
		return 6
	}
	end := at + 1 + len(p.oddChar(at+1))
	if p.text[at+1] == 'u' {
		for end < min(at+6, len(p.text)) && isHex(p.text[end]) {
			end++
		}
		if end == len(p.text) {
			return end - at // cut off, not wrong
		}
	}
	p.notJSON(at, end, fmt.Sprintf("%s is not an escape that JSON knows", quoteRaw(p.text[at:end])), `write \\ for a backslash; the escapes are \" \\ \/ \b \f \n \r \t and \u with four hexadecimal digits`)
	return 0
}

func isHex(c byte) bool {
	return '0' <= c && c <= '9' || 'a' <= c|0x20 && c|0x20 <= 'f'
}

// oddChar is the one character at an offset.
func (p *parser) oddChar(at int) string {
	_, n := utf8.DecodeRuneInString(p.text[at:])
	return p.text[at : at+n]
}

// quoteRaw shows text as it was typed where that can be printed.
func quoteRaw(s string) string {
	if strings.ContainsFunc(s, func(r rune) bool { return !unicode.IsPrint(r) }) {
		return quote(s)
	}
	return s
}

// innerQuote reports that a string goes on after the quotation mark that ends
// it: usually that was meant as the inch mark of a length.
func (p *parser) innerQuote(at int) {
	p.notJSON(at-1, at, fmt.Sprintf("the string %s ends here, but more text follows at once", p.lastText()),
		`write in for inches, or \" for a quotation mark inside a string`)
}
