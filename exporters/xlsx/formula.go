package xlsx

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"yardproof/pipeline/report"
)

// Spreadsheet programs calculate in binary floating point, where 3 * 1.1 is a
// little more than 3.3. Before a formula rounds up, or asks whether one number
// is over another, what is beyond these decimals is dropped, so that a boundary
// falls on the side it falls on in exact arithmetic.
const dustPlaces = 9

// maxDigits is how many digits a number may have in a formula; programs drop
// the rest.
const maxDigits = 15

// Binding strengths of operators.
const (
	sums = iota + 1
	products
	atoms
)

// formula writes an expression in the workbook's language, without the leading
// equals sign. Names are looked up by refer.
type formula struct {
	refer   func(name string) (string, bool)
	unknown string // the first name that refer does not know
}

func (f *formula) write(e *report.Expr) (text string, strength int) {
	switch e.Op {
	case report.Const:
		return constant(e)
	case report.Ref:
		return f.name(e.Name), atoms
	case report.Add:
		return f.join(e.Args, " + ", sums, sums), sums
	case report.Sub:
		return f.join(e.Args, " - ", sums, products), sums
	case report.Mul:
		return f.join(e.Args, " * ", products, atoms), products
	case report.Div:
		return f.join(e.Args, " / ", products, atoms), products
	case report.Round:
		return fmt.Sprintf("ROUND(%s,%d)", f.argument(e, 0), e.Digits), atoms
	case report.RoundUp:
		return fmt.Sprintf("ROUNDUP(ROUND(%s,%d),%d)", f.argument(e, 0), e.Digits+dustPlaces, e.Digits), atoms
	case report.IfOver:
		over := f.join(e.Args[:min(2, len(e.Args))], " - ", sums, products)
		return fmt.Sprintf("IF(ROUND(%s,%d)>0,%s,%s)", over, dustPlaces, f.argument(e, 2), f.argument(e, 3)), atoms
	}
	return "NA()", atoms
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

// mayFail reports whether some input would make the expression divide by zero,
// or refer to a cell that does.
func (b *book) mayFail(e *report.Expr) bool {
	switch {
	case e.Op == report.Ref:
		return b.cells[e.Name].mayFail
	case e.Op == report.Div && len(e.Args) > 1:
		by := e.Args[1]
		if by.Op != report.Const || by.Value == nil || by.Value.Sign() == 0 {
			return true
		}
	}
	return slices.ContainsFunc(e.Args, b.mayFail)
}

// markFailing finds the cells whose formulas may fail. Formulas refer to each
// other in no certain order, so it goes round until nothing is added.
func (b *book) markFailing(pages []*page) {
	for added := true; added; {
		added = false
		for _, p := range pages {
			for _, l := range p.lines {
				for _, c := range l.cells {
					at, ok := b.cells[c.Name]
					if ok && !at.mayFail && c.Expr != nil && !c.Input && b.mayFail(c.Expr) {
						at.mayFail, added = true, true
						b.cells[c.Name] = at
					}
				}
			}
		}
	}
}

// cellAt is where a named cell is.
type cellAt struct {
	sheet       string
	column, row int
	defined     string // its name in the workbook; empty when it goes by its address
	mayFail     bool
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
				at := cellAt{sheet: p.name, column: j + 1, row: i + 1}
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

// formulaOf is the formula of a cell on a sheet.
func (b *book) formulaOf(e *report.Expr, sheet string) (string, error) {
	f := formula{refer: func(name string) (string, bool) {
		at, ok := b.cells[name]
		return at.reference(sheet), ok
	}}
	text, _ := f.write(e)
	if b.mayFail(e) {
		// It looks like a number that could not be worked out to begin with.
		text = "IFERROR(" + text + "," + literal(report.Unknown) + ")"
	}
	if f.unknown != "" {
		return "", fmt.Errorf("sheet %s: a formula refers to %s, which no cell is called", sheet, strconv.Quote(f.unknown))
	}
	return text, nil
}
