package xlsx

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"yardproof/pipeline/report"
)

// Spreadsheet programs calculate in binary floating point, where 3 * 1.1 is a
// little more than 3.3, and 0.75 * 9.86 a little less than 7.395. Before a
// formula rounds, or asks whether one number is over another, what is beyond
// these decimals is dropped, so that a boundary falls on the side it falls on in
// exact arithmetic.
const dustPlaces = 9

// maxDigits is how many digits a number may have in a formula; programs drop
// the rest.
const maxDigits = 15

// Binding strengths of operators.
const (
	comparisons = iota + 1
	sums
	products
	atoms
)

// formula writes an expression in the workbook's language, without the leading
// equals sign. Names are looked up by refer.
type formula struct {
	refer   func(name string) (string, bool)
	textual func(e *report.Expr) bool                  // it may come out as text; nil where nothing does
	ranges  func(refs []*report.Expr) ([]string, bool) // the cells as ranges; nil where they are not to be put together
	unknown string                                     // the first name that refer does not know
}

func (f *formula) write(e *report.Expr) (text string, strength int) {
	switch e.Op {
	case report.Const:
		return constant(e)
	case report.Ref:
		return f.name(e.Name), atoms
	case report.Add:
		return f.sum(e.Args)
	case report.AddKnown:
		return f.sumKnown(e.Args), atoms
	case report.Sub:
		return f.join(e.Args, " - ", sums, products), sums
	case report.Mul:
		return f.join(e.Args, " * ", products, atoms), products
	case report.Div:
		return f.join(e.Args, " / ", products, atoms), products
	case report.If:
		return fmt.Sprintf("IF(%s,%s,%s)", f.argument(e, 0), f.argument(e, 1), f.argument(e, 2)), atoms
	case report.Join:
		return f.joined(e), comparisons
	case report.Exceeds, report.Under, report.Equals:
		return f.compared(e), comparisons
	case report.Not:
		return fmt.Sprintf("NOT(%s)", f.argument(e, 0)), atoms
	}
	return f.function(e), atoms
}

// function writes what programs have a function for.
func (f *formula) function(e *report.Expr) string {
	switch e.Op {
	case report.Round:
		return fmt.Sprintf("ROUND(%s,%d)", f.clean(e, 0), e.Digits)
	case report.RoundUp:
		return fmt.Sprintf("ROUNDUP(%s,%d)", f.clean(e, 0), e.Digits)
	case report.RoundDown:
		return fmt.Sprintf("ROUNDDOWN(%s,%d)", f.clean(e, 0), e.Digits)
	case report.Min:
		return "MIN(" + f.numbers(e.Args) + ")"
	case report.Max:
		return "MAX(" + f.numbers(e.Args) + ")"
	}
	return "NA()"
}

// clean is an argument without its dust.
func (f *formula) clean(e *report.Expr, i int) string {
	return fmt.Sprintf("ROUND(%s,%d)", f.argument(e, i), e.Digits+dustPlaces)
}

// numbers are arguments of a function that passes over cells with text in them.
// Added to nothing, a text is the error that it is everywhere else.
func (f *formula) numbers(args []*report.Expr) string {
	var all []string
	for _, a := range args {
		text, _ := f.write(a)
		if a.Op == report.Ref && f.textual != nil && f.textual(a) {
			text = "0 + " + text
		}
		all = append(all, text)
	}
	return strings.Join(all, ",")
}

// compared writes a condition. Texts are compared as they are, numbers without
// their dust.
func (f *formula) compared(e *report.Expr) string {
	sign := map[report.Op]string{report.Exceeds: ">", report.Under: "<", report.Equals: "="}[e.Op]
	if comparesTexts(e) {
		return f.join(e.Args, sign, sums, sums)
	}
	return fmt.Sprintf("ROUND(%s,%d)%s0", f.join(e.Args, " - ", sums, products), dustPlaces, sign)
}

// comparesTexts reports whether something that an Equals compares is a text.
func comparesTexts(e *report.Expr) bool {
	return e.Op == report.Equals && slices.ContainsFunc(e.Args, func(a *report.Expr) bool { return a.Value == nil })
}

// joined writes texts and numbers as one text.
func (f *formula) joined(e *report.Expr) string {
	parts := []*report.Expr{{Op: report.Const}} // of one number alone it makes a text
	for _, a := range e.Args {
		if a.Value != nil {
			a = &report.Expr{Op: report.Round, Args: []*report.Expr{a}, Digits: e.Digits, Value: a.Value}
		}
		parts = append(parts, a)
	}
	if len(e.Args) > 0 && e.Args[0].Value == nil {
		parts = parts[1:]
	}
	return f.join(parts, " & ", sums, sums)
}

func (f *formula) name(name string) string {
	text, ok := f.refer(name)
	if !ok && f.unknown == "" {
		f.unknown = name
	}
	return text
}

// argument is an argument on its own between commas. One that is missing is
// the error value that says "not available".
func (f *formula) argument(e *report.Expr, i int) string {
	if i >= len(e.Args) {
		return "NA()"
	}
	text, _ := f.write(e.Args[i])
	return text
}

// leastRange is how many cells are worth being written as a range.
const leastRange = 3

// sum adds arguments; cells that stand below each other are one range, so that
// a formula stays as short as programs want it however many there are. A range
// passes over a text, so where one may be, the numbers are counted.
func (f *formula) sum(args []*report.Expr) (text string, strength int) {
	if f.ranges == nil || len(args) < leastRange {
		return f.join(args, " + ", sums, sums), sums
	}
	ranges, ok := f.ranges(args)
	if !ok {
		return f.join(args, " + ", sums, sums), sums
	}
	cells := strings.Join(ranges, ",")
	if slices.ContainsFunc(args, f.textual) {
		return fmt.Sprintf("IF(COUNT(%s)=%d,SUM(%s),NA())", cells, len(args), cells), atoms
	}
	return "SUM(" + cells + ")", atoms
}

// sumKnown adds cells; the function passes over those with text in them.
func (f *formula) sumKnown(args []*report.Expr) string {
	if len(args) == 0 {
		return "0"
	}
	if f.ranges != nil {
		if ranges, ok := f.ranges(args); ok {
			return "SUM(" + strings.Join(ranges, ",") + ")"
		}
	}
	var all []string
	for _, a := range args {
		text, _ := f.write(a)
		all = append(all, text)
	}
	return "SUM(" + strings.Join(all, ",") + ")"
}

// join writes arguments between operators. What binds less tightly than the
// first, or a later, place needs goes into brackets.
func (f *formula) join(args []*report.Expr, operator string, first, later int) string {
	var s strings.Builder
	need := first
	for i, a := range args {
		if i > 0 {
			s.WriteString(operator)
			need = later
		}
		text, strength := f.write(a)
		if strength < need {
			text = "(" + text + ")"
		}
		s.WriteString(text)
	}
	if len(args) == 0 {
		return "0"
	}
	return s.String()
}

// constant writes a number out if its digits allow, else as a division.
func constant(e *report.Expr) (text string, strength int) {
	value := e.Value
	if value == nil {
		return literal(e.Text), atoms
	}
	text = value.RatString()
	if places, exact := value.FloatPrec(); exact {
		if decimal := value.FloatString(places); len(decimal) <= maxDigits {
			text = decimal
		}
	}
	switch {
	case value.Sign() < 0:
		return text, sums // so that it never stands bare behind an operator
	case strings.Contains(text, "/"):
		return text, products
	}
	return text, atoms
}

// literal is text in a formula.
func literal(text string) string {
	return `"` + strings.ReplaceAll(text, `"`, `""`) + `"`
}

// cellAt is where a named cell is.
type cellAt struct {
	sheet       string
	column, row int
	defined     string // its name in the workbook; empty when it goes by its address
	textual     bool   // it may show a text where a number is expected
}

// reference is what a formula on a sheet calls the cell.
func (c cellAt) reference(from string) string {
	switch {
	case c.defined != "":
		return c.defined
	case c.sheet == from:
		return absolute(c.column, c.row)
	}
	return c.address()
}

func (c cellAt) address() string { return quoted(c.sheet) + "!" + absolute(c.column, c.row) }

// findCells lists where the named cells of the book are. Inputs get a name in
// the workbook, the first of two that would be the same.
func findCells(pages []*page) (cells map[string]cellAt, order []string) {
	cells = map[string]cellAt{}
	defined := map[string]bool{}
	for _, p := range pages {
		for i, l := range p.lines {
			for j, c := range l.cells {
				if _, known := cells[c.Name]; c.Name == "" || known {
					continue
				}
				at := cellAt{sheet: p.name, column: p.column(l.table, j), row: i + 1}
				if name := definedName(c.Name); c.Input && !defined[strings.ToLower(name)] {
					at.defined = name
					defined[strings.ToLower(name)] = true
				}
				cells[c.Name] = at
				order = append(order, c.Name)
			}
		}
	}
	return cells, order
}

// mostCharacters is the file format's limit to a formula.
const mostCharacters = 8192

// formulaOf is the formula of a cell on a sheet.
func (b *book) formulaOf(e *report.Expr, sheet string) (string, error) {
	text, err := b.expression(e, sheet)
	if err == nil && b.fails(e) {
		// It looks like a number that could not be worked out to begin with.
		text = "IFERROR(" + text + "," + literal(report.Unknown) + ")"
	}
	if err == nil && len(text) > mostCharacters {
		err = fmt.Errorf("sheet %s: a formula has %d characters, and no program takes more than %d", sheet, len(text), mostCharacters)
	}
	return text, err
}

func (b *book) expression(e *report.Expr, sheet string) (string, error) {
	f := formula{
		refer: func(name string) (string, bool) {
			at, ok := b.cells[name]
			return at.reference(sheet), ok
		},
		textual: b.textual,
		ranges:  func(refs []*report.Expr) ([]string, bool) { return b.ranges(refs, sheet) },
	}
	text, _ := f.write(e)
	if f.unknown != "" {
		return "", fmt.Errorf("sheet %s: a formula refers to %s, which no cell is called", sheet, strconv.Quote(f.unknown))
	}
	return text, nil
}

// ranges puts cells together that stand below each other; ok is false where
// that would shorten little.
func (b *book) ranges(refs []*report.Expr, sheet string) (ranges []string, ok bool) {
	var first, last cellAt
	end := func() {
		if last.row > 0 {
			ranges = append(ranges, rangeOf(first, last, sheet))
		}
	}
	for _, r := range refs {
		at, known := b.cells[r.Name]
		if r.Op != report.Ref || !known {
			return nil, false
		}
		if at.sheet != last.sheet || at.column != last.column || at.row != last.row+1 {
			end()
			first = at
		}
		last = at
	}
	end()
	return ranges, 2*len(ranges) <= len(refs)
}

func rangeOf(first, last cellAt, from string) string {
	first.defined, last.sheet, last.defined = "", from, ""
	text := first.reference(from)
	if first.row < last.row {
		text += ":" + last.reference(from)
	}
	return text
}
