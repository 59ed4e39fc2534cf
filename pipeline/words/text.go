package words

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// passage is a stretch of a text that is read together: a paragraph, an item of a
// list, a heading, or a cell of a table behind the label of its row.
type passage struct {
	tokens   []token
	lent     int     // how many of the tokens are lent by the label, and read elsewhere too
	column   []token // heading of its column
	lead     []token // the line that introduces it
	headings [][]token
}

// reader takes a text apart.
type reader struct {
	sizes    func([]token) int // which one size is named, 0 for none or several
	lines    []textLine
	out      []passage
	stack    []heading
	lead     []token
	block    []token // of the paragraph being read
	last     string  // its last line
	columns  [][]token
	markers  []token // numbers of list items
	blanked  bool    // a blank line is before this one
	inIndent bool
	width    int // of the longest line
}

type heading struct {
	level  int
	tokens []token
}

type textLine struct {
	text string
	base int
	n    int
}

// take takes a text apart into segments, and gives the numbers that only mark
// items of lists besides. The function tells which size tokens name.
func take(text string, sizes func([]token) int) (segments []passage, markers []token) {
	r := reader{sizes: sizes, lines: linesOf(text), blanked: true}
	for _, l := range r.lines {
		if !tableRow(strings.TrimSpace(l.text)) {
			r.width = max(r.width, utf8.RuneCountInString(l.text))
		}
	}
	for i := 0; i < len(r.lines); {
		i = r.line(i)
	}
	r.flush()
	return r.out, r.markers
}

func linesOf(text string) []textLine {
	var all []textLine
	start := 0
	for n, line := range strings.SplitAfter(strings.NewReplacer("\r\n", " \n", "\r", "\n").Replace(text), "\n") {
		all = append(all, textLine{strings.TrimRight(line, "\n"), start, n})
		start += len(line)
	}
	return all
}

func (l textLine) lex() []token { return lex(l.text, l.base, l.n) }

// line reads line i and gives the one to go on with.
func (r *reader) line(i int) int {
	l := r.lines[i]
	text := strings.TrimSpace(l.text)
	blanked := r.blanked
	r.blanked = text == ""
	switch {
	case text == "":
		r.flush()
		if i+1 < len(r.lines) && indent(r.lines[i+1].text) == 0 {
			r.lead = nil
		}
		return i + 1
	case tableRow(text):
		r.flush()
		return r.table(i)
	case rule(text):
		r.underline(text)
		return i + 1
	case strings.HasPrefix(text, "#"):
		r.flush()
		level := len(text) - len(strings.TrimLeft(text, "#"))
		r.heading(level, l.part(strings.Index(l.text, "#")+level))
		return i + 1
	case boldLine(text):
		r.flush()
		r.heading(7, l.lex())
		return i + 1
	}
	if rest := listMark(l.text); rest > 0 {
		r.flush()
		r.item(l, rest)
		return i + 1
	}
	if len(r.block) == 0 && r.plainHeading(text, i, blanked) {
		return i + 1
	}
	r.prose(l, blanked)
	return i + 1
}

// part is the tokens of a line from an offset on.
func (l textLine) part(from int) []token { return lex(l.text[from:], l.base+from, l.n) }

func indent(text string) int {
	n := 0
	for _, r := range text {
		switch {
		case r == '\t':
			n += 4
		case r == ' ':
			n++
		default:
			return n
		}
	}
	return 0
}

// rule reports whether a line is drawn rather than written.
func rule(text string) bool { return len(text) > 2 && strings.Trim(text, "=-_* ") == "" }

// underline makes a heading of the paragraph above a drawn line.
func (r *reader) underline(text string) {
	if len(r.block) == 0 {
		return
	}
	level := 2
	if text[0] == '=' {
		level = 1
	}
	tokens := r.block
	r.block = nil
	r.heading(level, tokens)
}

func boldLine(text string) bool {
	text = strings.TrimSuffix(text, ":")
	return len(text) > 4 && (strings.HasPrefix(text, "**") && strings.HasSuffix(text, "**") && !strings.Contains(text[2:len(text)-2], "**") ||
		strings.HasPrefix(text, "__") && strings.HasSuffix(text, "__")) && !hasDigits(text)
}

func hasDigits(text string) bool {
	return strings.ContainsFunc(text, func(r rune) bool { return isDigit(r) || vulgar(r) != "" })
}

// listMark is where the text of an item of a list begins, 0 where the line begins
// none.
func listMark(text string) int {
	trimmed := strings.TrimLeft(text, " \t")
	at := len(text) - len(trimmed)
	r, n := utf8.DecodeRuneInString(trimmed)
	if strings.ContainsRune("-*+•‣◦·–—▪■□☐", r) && strings.HasPrefix(trimmed[n:], " ") {
		return at + n
	}
	rest := strings.TrimPrefix(trimmed, "(")
	figures := strings.TrimLeft(rest, "0123456789")
	if n := len(rest) - len(figures); n > 0 && n < 3 && len(figures) > 1 && (figures[0] == '.' || figures[0] == ')') && blank(rune(figures[1])) {
		return len(text) - len(figures) + 1
	}
	return 0
}

// item begins a segment with an item of a list.
func (r *reader) item(l textLine, from int) {
	for _, t := range lex(l.text[:from], l.base, l.n) {
		if t.kind == digits {
			r.markers = append(r.markers, t)
		}
	}
	r.block, r.last = l.part(from), l.text
	r.inIndent = true
}

// mostLent is how many tokens of a heading, a label or a line that introduces
// others are lent to what stands below them.
const mostLent = 60

func head(t []token) []token { return t[:min(len(t), mostLent)] }

// heading begins a section.
func (r *reader) heading(level int, tokens []token) {
	for len(r.stack) > 0 && r.stack[len(r.stack)-1].level >= level {
		r.stack = r.stack[:len(r.stack)-1]
	}
	r.add(passage{tokens: tokens})
	r.stack = append(r.stack, heading{level, head(tokens)})
	r.lead, r.columns = nil, nil
}

// plainHeading reads a heading that nothing marks as one: a line in capitals, or a
// short one without figures and without an end, that something follows.
func (r *reader) plainHeading(text string, i int, blanked bool) bool {
	if len(text) > 60 || hasDigits(text) || strings.ContainsAny(text[len(text)-1:], ".!?,;") || indent(r.lines[i].text) > 12 {
		return false
	}
	level := 0
	switch {
	case capitals(text):
		level = 3
	case blanked && len(strings.Fields(text)) <= 8 && i+1 < len(r.lines) && !strings.Contains(text, "  "):
		level = 8
	default:
		return false
	}
	r.heading(level, r.lines[i].lex())
	return true
}

func capitals(text string) bool {
	letters := 0
	for _, r := range text {
		if unicode.IsLower(r) {
			return false
		}
		if unicode.IsUpper(r) {
			letters++
		}
	}
	return letters > 2
}

// prose adds a line to the paragraph, or begins another where the line before
// stands for itself.
func (r *reader) prose(l textLine, blanked bool) {
	tokens := l.lex()
	if header := r.header(tokens); header {
		return
	}
	if cells := apart(tokens); len(cells) > 1 {
		r.flush()
		r.cells(cells)
		return
	}
	if len(r.block) > 0 && !r.goesOn(l.text) {
		r.flush()
	}
	if len(r.block) == 0 && indent(l.text) == 0 {
		r.lead = nil
	}
	r.block = append(r.block, tokens...)
	r.last = l.text
}

// unended are words that no sentence ends with.
var unended = set("of", "the", "and", "to", "a", "an", "with", "for", "from", "or", "by", "is", "are", "each", "these", "their", "measures", "into")

// goesOn reports whether a line goes on with what the line before it says: its first
// word had no room there, or it begins in the middle of a sentence.
func (r *reader) goesOn(text string) bool {
	last := strings.TrimSpace(r.last)
	n := utf8.RuneCountInString(r.last)
	words := strings.Fields(text)
	first, _ := utf8.DecodeRuneInString(words[0])
	colon := strings.IndexByte(text, ':')
	switch {
	case strings.HasSuffix(last, ":"):
		return false
	case r.inIndent && indent(text) > indent(r.last):
		return true
	case indent(text) != indent(r.last) && !r.inIndent:
		return false
	case unended[strings.ToLower(last[strings.LastIndexByte(last, ' ')+1:])]:
		return true
	case n >= 50 && n+1+utf8.RuneCountInString(words[0]) > r.width:
		return true
	}
	return n >= 50 && unicode.IsLower(first) && (colon < 0 || colon > 40)
}

// flush ends the paragraph. A line that introduces others lends them its words.
func (r *reader) flush() {
	if len(r.block) == 0 {
		return
	}
	block, item := r.block, r.inIndent
	r.block, r.inIndent = nil, false
	r.add(passage{tokens: block})
	last := block[len(block)-1]
	if !item && indent(r.last) == 0 && !last.is(".", "!", "?") && block[0].line == last.line && r.introduces(last) {
		r.lead = head(block)
	}
}

// introduces reports whether a line leads up to those below it: it ends with a
// colon, or they are set in.
func (r *reader) introduces(last token) bool {
	for n := last.line + 1; n < len(r.lines) && n <= last.line+2; n++ {
		if text := r.lines[n].text; strings.TrimSpace(text) != "" {
			return last.is(":") || indent(text) > 0 || listMark(text) > 0
		}
	}
	return false
}

// add adds a segment below the headings that it stands under.
func (r *reader) add(s passage) {
	for _, h := range r.stack {
		s.headings = append(s.headings, h.tokens)
	}
	s.lent = min(s.lent, len(s.tokens))
	if s.lead == nil && len(s.tokens) > 0 && len(r.lead) > 0 && r.lead[0].at != s.tokens[0].at {
		s.lead = r.lead
	}
	r.out = append(r.out, s)
}
