package jsontree

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"

	"yardproof/schema/source"
)

// readable reports whether the bytes are of a size and an encoding that can be
// read at all.
func (p *parser) readable() bool {
	b := p.file.Bytes
	switch {
	case len(b) > p.lim.MaxBytes:
		p.end(codeLarge, source.At(0), fmt.Sprintf("the file holds more than %s", size(p.lim.MaxBytes)), "split the file, or check that it is a plan at all")
	case p.wide(b) || p.broken(b):
	case len(bytes.TrimLeft(b, " \t\r\n")) == 0:
		p.end(codeEmpty, source.At(0), "the file is empty; one JSON value was wanted", "write the value, or delete the file")
	}
	return !p.unusable
}

// wide looks for the marks of other Unicode encodings. Without a byte order
// mark they show in a NUL byte, which UTF-8 JSON cannot hold, beside the first
// character.
func (p *parser) wide(b []byte) bool {
	const hint = "save the file as UTF-8 without a byte order mark"
	for _, e := range encodings {
		if bytes.HasPrefix(b, []byte(e.mark)) {
			p.end(codeEncoding, source.Range{Start: 0, End: len(e.mark)}, e.message, hint)
			return true
		}
	}
	if everyOther(b, 0) != everyOther(b, 1) {
		p.end(codeEncoding, source.Range{Start: 0, End: 2}, "the file is UTF-16 or UTF-32 text; UTF-8 was wanted", hint)
		return true
	}
	return false
}

// everyOther reports whether the characters at the start of the text have a
// NUL at the even or odd places, as those of ASCII in UTF-16 have.
func everyOther(b []byte, odd int) bool {
	return len(b) > 1 && len(b)%2 == 0 && b[odd] == 0 && (len(b) == 2 || b[odd+2] == 0)
}

// encodings are the byte order marks (the Unicode Standard, section 23.8),
// the longer before those they begin with.
var encodings = [...]struct{ mark, message string }{
	{"\xEF\xBB\xBF", "the file begins with a byte order mark (EF BB BF), which JSON does not allow"},
	{"\xFF\xFE\x00\x00", "the file is UTF-32 text (it begins with FF FE 00 00); UTF-8 was wanted"},
	{"\x00\x00\xFE\xFF", "the file is UTF-32 text (it begins with 00 00 FE FF); UTF-8 was wanted"},
	{"\xFF\xFE", "the file is UTF-16 text (it begins with FF FE); UTF-8 was wanted"},
	{"\xFE\xFF", "the file is UTF-16 text (it begins with FE FF); UTF-8 was wanted"},
}

// broken looks for bytes that are not UTF-8. A file in another encoding is
// full of them, so the first is shown and the rest counted.
func (p *parser) broken(b []byte) bool {
	if utf8.Valid(b) {
		return false
	}
	first, count := -1, 0
	for i := 0; i < len(b); {
		r, n := utf8.DecodeRune(b[i:])
		if r == utf8.RuneError && n == 1 {
			count++
			if first < 0 {
				first = i
			}
		}
		i += n
	}
	message := fmt.Sprintf("the byte %02X is not UTF-8 text", b[first])
	if count > 1 {
		message += fmt.Sprintf(" (and %s more in the file)", thousands(count-1))
	}
	p.end(codeEncoding, source.Range{Start: first, End: first + 1}, message, "save the file as UTF-8")
	return true
}

// characters reports what in a string stands for no character that can be
// shown: one half of a surrogate pair without the other (RFC 7493, section
// 2.1), and control characters but tabs and line breaks. Those would end a cell,
// or move a terminal's cursor, wherever the text is printed.
func (p *parser) characters(r source.Range) {
	for i := r.Start; i < r.End; {
		c, n := utf8.DecodeRuneInString(p.text[i:])
		switch {
		case c != '\\':
			if unicode.IsControl(c) {
				p.control(i, n, fmt.Sprintf("the character U+%04X", c)+p.after(r.Start+1, i, ","))
			}
			i += n
		case p.text[i+1] == 'u':
			i += p.escape(i)
		default:
			if strings.IndexByte("bf", p.text[i+1]) >= 0 {
				p.control(i, 2, p.text[i:i+2])
			}
			i += 2
		}
	}
}

func (p *parser) control(at, length int, what string) {
	p.fail(codeEncoding, source.Range{Start: at, End: at + length}, what+" is a control character, which no text can show", "remove it")
}

// after says behind which characters of a string something stands that cannot be
// seen, between commas if the sentence goes on; nothing where it comes first.
func (p *parser) after(begin, at int, end string) string {
	const most = 12
	var seen []rune
	for before := p.text[begin:at]; len(seen) < most; {
		c, n := utf8.DecodeLastRuneInString(before)
		if !unicode.IsPrint(c) || n == 0 {
			break
		}
		before, seen = before[:len(before)-n], append(seen, c)
	}
	if len(seen) == 0 {
		return ""
	}
	slices.Reverse(seen)
	return fmt.Sprintf(", after %q", string(seen)) + end
}

// escape checks the \uXXXX at an offset and is the length of what it stands
// for: 12 for a whole pair, else 6.
func (p *parser) escape(at int) int {
	first := p.codeUnit(at)
	switch {
	case unicode.IsControl(first) && first != '\t' && first != '\n' && first != '\r':
		p.control(at, 6, p.text[at:at+6])
		return 6
	case !utf16.IsSurrogate(first):
		return 6
	case utf16.DecodeRune(first, p.codeUnit(at+6)) != utf8.RuneError:
		return 12
	}
	p.fail(codeEncoding, source.Range{Start: at, End: at + 6},
		fmt.Sprintf("%s is half of a surrogate pair and stands for no character", p.text[at:at+6]),
		"write the character itself, or both halves of the pair")
	return 6
}

// codeUnit is the value of a \uXXXX, or -1 where there is none.
func (p *parser) codeUnit(at int) rune {
	if at+6 > len(p.text) || p.text[at:at+2] != `\u` {
		return -1
	}
	n, err := strconv.ParseUint(p.text[at+2:at+6], 16, 16)
	if err != nil {
		return -1
	}
	return rune(n)
}
