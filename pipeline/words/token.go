package words

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"yardproof/schema/source"
)

// kind is what a token is.
type kind int

const (
	word   kind = iota
	digits      // a numeral in figures: 12, 2.5, 1/2
	mark        // one character of punctuation
)

// token is a word, a numeral in figures or a mark.
type token struct {
	kind  kind
	text  string // in small letters, with plain slashes, hyphens and quotes
	at    source.Range
	loose bool // a blank, or the beginning, is before it
	wide  bool // so much room is before it as there is between columns
	line  int  // index of its line in the text
}

// is reports whether the token is one of the texts.
func (t token) is(texts ...string) bool {
	for _, text := range texts {
		if t.text == text {
			return true
		}
	}
	return false
}

// lexer makes tokens of one stretch of a line.
type lexer struct {
	text   string
	base   int // offset of text in the file
	line   int
	i      int
	tokens []token
	loose  bool
	blanks int
}

// lex makes tokens of a stretch of text that begins at an offset of the file.
// Marks of emphasis are no tokens.
func lex(text string, base, line int) []token {
	l := lexer{text: text, base: base, line: line, loose: true}
	for l.i < len(text) {
		l.next()
	}
	return l.tokens
}

func (l *lexer) peek() (rune, int) { return utf8.DecodeRuneInString(l.text[l.i:]) }

func (l *lexer) next() {
	if l.entity() {
		return
	}
	r, n := l.peek()
	switch {
	case blank(r):
		l.loose = true
		l.blanks++
		if r == '\t' {
			l.blanks += 2
		}
		l.i += n
	case r == '*' || r == '_' || r == '`' || r == '\\' || r == '\u200b' || r == '\ufeff' || r == '\u00ad':
		l.i += n
	case isDigit(r) || r == '.' && l.digitAfter(n):
		l.figures()
	case vulgar(r) != "" || isRaised(r) && l.raisedFraction():
		l.figures()
	case unicode.IsLetter(r):
		l.word()
	default:
		l.add(mark, plainMark(r), l.i, l.i+n)
	}
}

// entity reads what HTML writes for a blank or a sign.
func (l *lexer) entity() bool {
	if l.text[l.i] != '&' {
		return false
	}
	for name, text := range map[string]string{"&nbsp;": "", "&thinsp;": "", "&times;": "×", "&amp;": "&", "&quot;": `"`, "&frac12;": "1/2", "&frac14;": "1/4", "&frac34;": "3/4", "&Prime;": `"`, "&prime;": "'"} {
		if !strings.HasPrefix(l.text[l.i:], name) {
			continue
		}
		end := l.i + len(name)
		switch {
		case text == "":
			l.loose, l.i = true, end
		case text[0] == '1' || text[0] == '3':
			l.add(digits, text, l.i, end)
		default:
			l.add(mark, text, l.i, end)
		}
		return true
	}
	return false
}

func (l *lexer) digitAfter(n int) bool {
	return l.i+n < len(l.text) && isDigit(rune(l.text[l.i+n])) && (len(l.tokens) == 0 || l.loose)
}

func (l *lexer) add(k kind, text string, start, end int) {
	l.tokens = append(l.tokens, token{k, text, source.Range{Start: l.base + start, End: l.base + end}, l.loose, l.blanks > 1 && len(l.tokens) > 0, l.line})
	l.i, l.loose, l.blanks = end, false, 0
}

// word reads letters, and an apostrophe within them. Letters that follow a
// numeral without a blank, and digits that follow letters, are of one word each.
func (l *lexer) word() {
	start := l.i
	for l.i < len(l.text) {
		r, n := l.peek()
		apostrophe := (r == '\'' || r == '\u2019') && l.letterAt(l.i+n)
		if !unicode.IsLetter(r) && !unicode.IsMark(r) && !apostrophe {
			break
		}
		l.i += n
	}
	text := strings.ReplaceAll(strings.ToLower(l.text[start:l.i]), "\u2019", "'")
	l.add(word, text, start, l.i)
}

func (l *lexer) letterAt(i int) bool {
	if i >= len(l.text) {
		return false
	}
	r, _ := utf8.DecodeRuneInString(l.text[i:])
	return unicode.IsLetter(r)
}

// figures reads a numeral as far as it is written together: 12, 1,200, 2.5, 1/2,
// ½ and ¹⁄₂; what belongs together across blanks is put together later. The ½ of
// 2½ is a token of its own.
func (l *lexer) figures() {
	start := l.i
	r, n := l.peek()
	if v := vulgar(r); v != "" {
		if v == "1/" {
			v += l.digitsAfter(n)
			l.add(digits, v, start, max(l.i, start+n))
			return
		}
		l.add(digits, v, start, start+n)
		return
	}
	if isRaised(r) {
		l.raised()
		return
	}
	text := l.run()
	for l.i < len(l.text) {
		r, n := l.peek()
		rest := l.text[l.i+n:]
		switch {
		case r == ',' && thousands(text, rest):
			l.i += n
			text += l.run()
		case (r == '.' || slash(r)) && rest != "" && isDigit(rune(rest[0])):
			l.i += n
			text += string(plainMark(r)) + l.run()
		default:
			l.add(digits, text, start, l.i)
			return
		}
	}
	l.add(digits, text, start, l.i)
}

func (l *lexer) digitsAfter(n int) string {
	l.i += n
	return l.run()
}

// run reads digits.
func (l *lexer) run() string {
	start := l.i
	if l.i < len(l.text) && l.text[l.i] == '.' {
		l.i++
	}
	for l.i < len(l.text) && isDigit(rune(l.text[l.i])) {
		l.i++
	}
	return l.text[start:l.i]
}

// thousands reports whether a comma after digits parts thousands.
func thousands(before, after string) bool {
	return len(before) <= 3 && len(after) >= 3 && isDigit(rune(after[0])) && isDigit(rune(after[1])) && isDigit(rune(after[2])) &&
		(len(after) == 3 || !isDigit(rune(after[3]))) && before != "0"
}

// raisedFraction reports whether a raised digit is the upper half of a fraction.
func (l *lexer) raisedFraction() bool {
	rest := strings.TrimLeftFunc(l.text[l.i:], isRaised)
	r, _ := utf8.DecodeRuneInString(rest)
	return slash(r)
}

// raised reads ¹⁄₂, in whatever mixture of raised, lowered and plain digits.
func (l *lexer) raised() {
	start := l.i
	var text strings.Builder
	for l.i < len(l.text) {
		r, n := l.peek()
		d, ok := plainDigit(r)
		switch {
		case ok:
			text.WriteRune(d)
		case slash(r) && !strings.Contains(text.String(), "/"):
			text.WriteByte('/')
		default:
			l.add(digits, text.String(), start, l.i)
			return
		}
		l.i += n
	}
	l.add(digits, text.String(), start, l.i)
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

func slash(r rune) bool { return r == '/' || r == '\u2044' || r == '\u2215' }

const (
	superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹"
	subscripts   = "₀₁₂₃₄₅₆₇₈₉"
)

func isRaised(r rune) bool { return strings.ContainsRune(superscripts, r) }

// plainDigit is a digit of any height as a plain one.
func plainDigit(r rune) (rune, bool) {
	if isDigit(r) {
		return r, true
	}
	for _, set := range []string{superscripts, subscripts} {
		if at := strings.IndexRune(set, r); at >= 0 {
			return '0' + rune(utf8.RuneCountInString(set[:at])), true
		}
	}
	return r, false
}

// blank reports whether a character is room: also a non-breaking, thin or narrow
// space.
func blank(r rune) bool { return unicode.IsSpace(r) || r == '\u00a0' || r == '\u202f' }

// plainMark spells the marks that are printed in several ways in one.
func plainMark(r rune) string {
	switch r {
	case '\u2044', '\u2215':
		return "/"
	case '\u2010', '\u2011', '\u2012', '\u2013', '\u2212', '\u2014':
		return "-"
	case '\u2033', '\u201d', '\u201c', '\u02ba', '\u201f':
		return `"`
	case '\u2032', '\u2019', '\u2018', '\u02b9':
		return "'"
	case '\u00d7', '\u2715', '\u2a2f':
		return "×"
	}
	return string(r)
}

// vulgar spells one of Unicode's fraction characters; "1/" is one whose lower
// half follows.
func vulgar(r rune) string {
	switch r {
	case '\u00bc':
		return "1/4"
	case '\u00bd':
		return "1/2"
	case '\u00be':
		return "3/4"
	case '\u215f':
		return "1/"
	}
	spelt := []string{"1/7", "1/9", "1/10", "1/3", "2/3", "1/5", "2/5", "3/5", "4/5", "1/6", "5/6", "1/8", "3/8", "5/8", "7/8"}
	if i := int(r) - 0x2150; i >= 0 && i < len(spelt) {
		return spelt[i]
	}
	return ""
}
