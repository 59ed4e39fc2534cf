package xlsx

import (
	"slices"

	"yardproof/pipeline/report"
)

// fails reports whether some inputs would make the expression an error: a
// division by zero, or arithmetic with a text.
func (b *book) fails(e *report.Expr) bool {
	switch e.Op {
	case report.Const, report.Ref:
		return false
	case report.Div:
		if len(e.Args) > 1 && !isNonzero(e.Args[1]) {
			return true
		}
	case report.If, report.Not:
		return slices.ContainsFunc(e.Args, b.fails)
	case report.Join:
		return slices.ContainsFunc(e.Args, func(a *report.Expr) bool { return b.fails(a) || a.Value != nil && b.textual(a) })
	case report.Equals:
		if comparesTexts(e) {
			return slices.ContainsFunc(e.Args, b.fails)
		}
	}
	return slices.ContainsFunc(e.Args, b.textual)
}

func isNonzero(e *report.Expr) bool {
	return e.Op == report.Const && e.Value != nil && e.Value.Sign() != 0
}

// textual reports whether some inputs would make the expression a text, or
// the error in whose place a cell shows one.
func (b *book) textual(e *report.Expr) bool {
	switch e.Op {
	case report.Const:
		return e.Value == nil
	case report.Ref:
		return b.cells[e.Name].textual
	case report.Join:
		return true
	case report.If:
		return b.fails(e) || slices.ContainsFunc(e.Args[1:], b.textual)
	}
	return b.fails(e)
}

// markTextual finds the cells that may show a text. Formulas refer to each
// other in no certain order, so it goes round until nothing is added.
func (b *book) markTextual(pages []*page) {
	var open []report.Cell
	for _, p := range pages {
		for _, l := range p.lines {
			for _, c := range l.cells {
				if c.Name != "" && c.Expr != nil && !c.Input {
					open = append(open, c)
				}
			}
		}
	}
	for before := len(open) + 1; len(open) < before; {
		before = len(open)
		open = slices.DeleteFunc(open, func(c report.Cell) bool {
			at, ok := b.cells[c.Name]
			if ok && b.textual(c.Expr) {
				at.textual = true
				b.cells[c.Name] = at
			}
			return at.textual
		})
	}
}
