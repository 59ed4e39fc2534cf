package plan

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"yardproof/schema/source"
)

// A list beyond these is no studio's, and reading on would only cost memory.
const (
	maxListBytes    = 8 << 20
	maxListProblems = 100
)

// listReader reads a list row by row: CSV (RFC 4180) in UTF-8, or a sheet
// written as such, with a header row that has its columns in any order; other
// columns are passed over. A byte order mark is accepted, because spreadsheet
// programs write one. Each problem points at a field.
type listReader struct {
	code     string // the rule of what is wrong with the list
	what     string // "the price list"
	file     *source.File
	from     ListSource
	wanted   []string // columns that there must be
	known    []string // columns that there may be
	problems []source.Problem
	text     []byte // after the byte order mark
	skipped  int    // bytes of the mark
	lines    []int  // where lines begin in text
	csv      *csv.Reader
	fields   []string
	columns  map[string]int
}

// open makes ready for the first row below the header; false when there is
// none to be had.
func (p *listReader) open() bool { return p.readable() && p.header() }

// more goes to the next row, unless too much is wrong already.
func (p *listReader) more() bool { return p.next() && len(p.problems) < maxListProblems }

func (p *listReader) report(at source.Range, hint, format string, args ...any) {
	p.problems = append(p.problems, source.Problem{Code: p.code, Range: at, Message: fmt.Sprintf(format, args...), Hint: hint})
}

func (p *listReader) readable() bool {
	b := p.file.Bytes
	p.text = bytes.TrimPrefix(b, []byte("\ufeff"))
	p.skipped = len(b) - len(p.text)
	switch {
	case len(b) > maxListBytes:
		p.report(source.At(0), "split it", "%s has %d bytes; the most is %d", p.what, len(b), maxListBytes)
		return false
	case !utf8.Valid(p.text):
		at := p.skipped + firstInvalid(p.text)
		p.report(source.Range{Start: at, End: at + 1}, "save it as CSV in UTF-8", "%s is not UTF-8 here", p.what)
		return false
	}
	p.lines = []int{0}
	for i, c := range p.text {
		if c == '\n' {
			p.lines = append(p.lines, i+1)
		}
	}
	p.csv = csv.NewReader(bytes.NewReader(p.text))
	p.csv.FieldsPerRecord = -1
	p.csv.Comma = p.separator()
	return true
}

// separator is what the project says stands between columns, or else what the
// header row shows: semicolons and tabs where it has no commas.
func (p *listReader) separator() rune {
	switch p.from.Separator.Text {
	case "tab":
		return '\t'
	case ";":
		return ';'
	case ",":
		return ','
	}
	first := string(p.text)
	for line := range strings.Lines(first) {
		if strings.TrimSpace(line) != "" {
			first = line
			break
		}
	}
	for _, r := range ";\t" {
		if p.from.HeaderRow.N <= 1 && strings.ContainsRune(first, r) && !strings.Contains(first, ",") {
			return r
		}
	}
	return ','
}

func firstInvalid(b []byte) int {
	at := 0
	for at < len(b) {
		r, n := utf8.DecodeRune(b[at:])
		if r == utf8.RuneError && n == 1 {
			break
		}
		at += n
	}
	return at
}

// next reads a row that has any text; false at the end or where the text is no
// longer CSV.
func (p *listReader) next() bool {
	for {
		fields, err := p.csv.Read()
		if err != nil {
			p.broken(err)
			return false
		}
		p.fields = fields
		if strings.TrimSpace(strings.Join(fields, "")) != "" {
			return true
		}
	}
}

func (p *listReader) broken(err error) {
	if errors.Is(err, io.EOF) {
		return
	}
	at := source.At(p.skipped + int(p.csv.InputOffset()))
	var e *csv.ParseError
	if errors.As(err, &e) {
		at = source.At(p.offset(e.Line, e.Column))
		err = e.Err
	}
	p.report(at, "put a text that contains quotation marks in quotation marks, and double those inside it", "%s cannot be read on from here: %v", p.what, err)
}

// offset turns a line and a byte column, both from 1, into an offset of the
// file.
func (p *listReader) offset(line, column int) int {
	line = max(1, min(line, len(p.lines)))
	return min(p.skipped+p.lines[line-1]+max(column, 1)-1, p.skipped+len(p.text))
}

// place is the range of a field of the row, or of the row's end when it is too
// short to have it.
func (p *listReader) place(column int) source.Range {
	end := p.skipped + int(p.csv.InputOffset())
	if column < len(p.fields)-1 {
		end = p.offset(p.csv.FieldPos(column+1)) - 1
	}
	for end > p.skipped && strings.IndexByte("\r\n", p.text[end-p.skipped-1]) >= 0 {
		end--
	}
	if column >= len(p.fields) {
		return source.At(end)
	}
	start := p.offset(p.csv.FieldPos(column))
	return source.Range{Start: start, End: max(start, end)}
}

func (p *listReader) rowPlace() source.Range {
	return source.Range{Start: p.place(0).Start, End: p.place(len(p.fields) - 1).End}
}

// header reads the header row, which the project may say stands further down.
func (p *listReader) header() bool {
	for {
		if !p.next() {
			if len(p.problems) == 0 {
				p.report(source.At(p.skipped), "begin it with "+strings.Join(p.wanted, ","), "%s is empty", p.what)
			}
			return false
		}
		if line, _ := p.csv.FieldPos(0); line >= p.from.HeaderRow.N {
			break
		}
	}
	p.columns = map[string]int{}
	for i, field := range p.fields {
		p.column(i, strings.TrimSpace(field))
	}
	var missing []string
	for _, name := range p.wanted {
		if !p.has(name) && !p.stated(name) {
			missing = append(missing, quote(p.heading(name)))
		}
	}
	if len(missing) > 0 {
		p.report(p.rowPlace(), p.headerHint(), "the header row of %s has no column %s", p.what, strings.Join(missing, " or "))
	}
	return len(p.problems) == 0
}

// headerHint is the way out for a header row that lacks a column.
func (p *listReader) headerHint() string {
	if len(p.from.Columns) > 0 {
		return "say in \"columns\" of the project file what the list calls it"
	}
	return "begin the list with " + strings.Join(p.wanted, ",")
}

// stated reports whether the project says for all rows what a column would.
func (p *listReader) stated(name string) bool {
	return name == "description" || name == "unit" && p.from.Unit.Given()
}

// heading is what the list calls a column.
func (p *listReader) heading(name string) string {
	if t, ok := p.from.Columns[name]; ok {
		return t.Text
	}
	return name
}

func (p *listReader) column(i int, field string) {
	for _, name := range p.known {
		if !strings.EqualFold(p.heading(name), field) {
			continue
		}
		if _, twice := p.columns[name]; twice {
			p.report(p.place(i), "remove or rename one of them", "%s has two columns %q", p.what, field)
			return
		}
		p.columns[name] = i
	}
}

// filled is how many fields of the row have any text.
func (p *listReader) filled() int {
	n := 0
	for _, field := range p.fields {
		if strings.TrimSpace(field) != "" {
			n++
		}
	}
	return n
}

// has reports whether the list has a column.
func (p *listReader) has(name string) bool {
	_, ok := p.columns[name]
	return ok
}

// field is a field of the row by its column's name; empty where the list has no
// such column.
func (p *listReader) field(name string) (string, source.Range) {
	column, ok := p.columns[name]
	switch {
	case !ok:
		return "", p.rowPlace()
	case column >= len(p.fields):
		return "", p.place(column)
	}
	return strings.TrimSpace(p.fields[column]), p.place(column)
}

// decimal is a number of the list with a point before its decimals and nothing
// between its thousands, as the project says that the list writes them; false
// when its marks are not those.
func (p *listReader) decimal(text string) (string, bool) {
	point, group := p.from.Mark(), p.from.Thousands.Text
	whole, fraction, _ := strings.Cut(text, point)
	if group != "" && strings.Contains(whole, group) {
		groups := strings.Split(whole, group)
		for i, g := range groups {
			if len(g) > 3 || g == "" || i > 0 && len(g) != 3 {
				return "", false
			}
		}
		whole = strings.Join(groups, "")
	}
	marks := slices.ContainsFunc([]string{whole, fraction}, func(s string) bool { return strings.ContainsAny(s, ".,'") })
	if marks && point != "." {
		return "", false
	}
	if strings.Contains(text, point) {
		return whole + "." + fraction, true
	}
	return whole, true
}

// marks says how the list writes numbers, for a hint.
func (p *listReader) marks() string {
	if p.from.Mark() == "," {
		return "6,00"
	}
	return "6.00"
}
