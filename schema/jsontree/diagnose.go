package jsontree

import (
	"errors"
	"fmt"
	"strings"

	"github.com/go-json-experiment/json/jsontext"

	"yardproof/schema/source"
)

// diagnose finds words for text that the tokeniser has refused. That it was
// refused is the tokeniser's judgement; this only looks at what stands after
// the last good token, and what should.
func (p *parser) diagnose(err error) {
	p.unusable = true
	before := len(p.problems)
	switch at := p.skip(p.last.place.End, blank); {
	case p.last.key:
		p.afterKey(at)
	case p.last.kind == 0:
		p.badValue(at)
	case p.last.kind == '{' || p.last.kind == '[':
		p.badChild(at)
	default:
		p.afterValue(at)
	}
	if len(p.problems) == before {
		p.unexplained(err)
	}
}

const blank = " \t\r\n"

// unexplained repeats the tokeniser's own words.
func (p *parser) unexplained(err error) {
	at := p.last.place.End
	var syntax *jsontext.SyntacticError
	if errors.As(err, &syntax) {
		at, err = min(int(syntax.ByteOffset), len(p.text)), syntax.Err
	}
	p.end(codeNotJSON, source.At(at), fmt.Sprintf("this is not JSON: %v", err), "")
}

// notJSON reports the one problem that ends the reading.
func (p *parser) notJSON(start, end int, message, hint string) {
	p.end(codeNotJSON, source.Range{Start: start, End: end}, message, hint)
}

// byteAt is 0 past the end; the text itself may hold a 0 too, which no case
// mistakes for anything.
func (p *parser) byteAt(at int) byte {
	if at >= len(p.text) {
		return 0
	}
	return p.text[at]
}

// around is the innermost open bracket, where it stands, and whether there is one.
func (p *parser) around() (byte, int, bool) {
	if len(p.open) == 0 {
		return 0, 0, false
	}
	at := p.open[len(p.open)-1]
	return p.text[at], at, true
}

// lastText is the last good token as it was typed, for a message.
func (p *parser) lastText() string {
	return quoteRaw(clip(p.text[p.last.place.Start:p.last.place.End]))
}

func (p *parser) afterKey(at int) {
	switch {
	case p.byteAt(at) == ':':
		p.badValue(p.skip(at+1, blank))
	case p.stray(at):
	case p.byteAt(at) == '=':
		p.notJSON(at, at+1, fmt.Sprintf("= stands after the name %s; a colon was wanted", p.lastText()), "write : instead of =")
	case p.byteAt(at) == '"' && at == p.last.place.End:
		p.innerQuote(at)
	default:
		p.notJSON(p.last.place.End, p.last.place.End, fmt.Sprintf("no colon after the name %s", p.lastText()), "write a colon and a value after it")
	}
}

// badChild is for a place where an item or a member was wanted.
func (p *parser) badChild(at int) {
	if open, _, _ := p.around(); open == '{' {
		p.badKey(at)
		return
	}
	p.badValue(at)
}

func (p *parser) afterValue(at int) {
	if p.byteAt(at) != ',' {
		p.badNext(at)
		return
	}
	next := p.skip(at+1, blank)
	open, _, _ := p.around()
	switch c := p.byteAt(next); {
	case c == '}' || c == ']':
		p.trailingComma(at, next, open)
	case c == ',':
		p.notJSON(next, next+1, "two commas with nothing between them", "remove one of them")
	case open == '{' && p.last.kind == '0' && next == at+1 && '0' <= c && c <= '9':
		p.bareLength("has a decimal comma", "write the number with a point")
	default:
		p.badChild(next)
	}
}

func (p *parser) trailingComma(comma, next int, open byte) {
	if p.text[next] != closer(open) {
		p.wrongCloser(next)
		return
	}
	p.notJSON(comma, comma+1, fmt.Sprintf("a comma stands before the %c that closes the %s", p.text[next], bracket(open)), "remove the comma")
}

func (p *parser) wrongCloser(at int) {
	open, where, _ := p.around()
	p.notJSON(at, at+1,
		fmt.Sprintf("%c meets the %s that opens at %s; %c was wanted", p.text[at], bracket(open), p.place(where), closer(open)),
		fmt.Sprintf("close the %s with %c, or remove the %c", bracket(open), closer(open), p.text[at]))
}

// badNext is for a place where a comma or the closing bracket was wanted.
func (p *parser) badNext(at int) {
	open, where, _ := p.around()
	c := p.byteAt(at)
	switch {
	case p.last.kind == '0' && p.bareNumber(at):
	case p.stray(at):
	case p.last.kind == '"' && at == p.last.place.End && (c == '"' || isLetterOrDigit(c)):
		p.innerQuote(at)
	case c == '}' || c == ']':
		p.wrongCloser(at)
	case c == ':' && open == '[' && p.last.kind == '"':
		p.notJSON(p.last.place.Start, p.last.place.End,
			fmt.Sprintf("the name %s stands in the array that opens at %s", p.lastText(), p.place(where)),
			"close the array with ] before it")
	case c == ';':
		p.notJSON(at, at+1, "a semicolon; a comma was wanted", "write , instead of ;")
	case startsChild(open, c):
		p.notJSON(p.last.place.End, p.last.place.End, fmt.Sprintf("no comma between this and the next %s of the %s", childWord(open), bracket(open)), "write a comma here")
	default:
		word := p.oddText(at)
		p.notJSON(at, at+len(word), fmt.Sprintf("%s after a value; a comma or %c was wanted", quote(word), closer(open)), "remove it, or put it in double quotation marks")
	}
}

func childWord(open byte) string {
	if open == '{' {
		return "name"
	}
	return "item"
}

// startsChild reports whether a byte can begin the next name or item. Letters
// count: a word without quotation marks is a slip of its own.
func startsChild(open, c byte) bool {
	return c == '"' || isLetterOrDigit(c) || open == '[' && (c == '{' || c == '[' || c == '-')
}

func isLetterOrDigit(c byte) bool {
	return '0' <= c && c <= '9' || 'a' <= c|0x20 && c|0x20 <= 'z'
}

// badKey is for a place where a name was wanted.
func (p *parser) badKey(at int) {
	c := p.byteAt(at)
	switch {
	case p.stray(at):
	case c == '"':
		p.badString(at)
	case c == ']':
		p.wrongCloser(at)
	case c == ',':
		p.notJSON(at, at+1, "a comma with no member before it", "remove the comma")
	default:
		p.bareKey(at)
	}
}

// badValue is for a place where a value was wanted.
func (p *parser) badValue(at int) {
	c := p.byteAt(at)
	switch {
	case p.stray(at):
	case c == '"':
		p.badString(at)
	case strings.IndexByte("}],:", c) >= 0:
		p.noValue(at)
	default:
		p.badWord(at)
	}
}

func (p *parser) noValue(at int) {
	open, _, inside := p.around()
	switch {
	case p.last.key:
		p.notJSON(at, at+1, fmt.Sprintf("no value after the name %s", p.lastText()), "write its value, or remove the name")
	case inside && p.text[at] != closer(open) && p.text[at]|0x20 == '}':
		p.wrongCloser(at)
	default:
		p.notJSON(at, at+1, fmt.Sprintf("%c where a value was wanted", p.text[at]), fmt.Sprintf("write the value, or remove the %c", p.text[at]))
	}
}

// oddText is what a message shows of text it has no better name for: a word,
// or one character.
func (p *parser) oddText(at int) string {
	if word := firstWord(p.text[at:]); word != "" {
		return word
	}
	for i := range p.text[at:] {
		if i > 0 {
			return p.text[at : at+i]
		}
	}
	return p.text[at:]
}
