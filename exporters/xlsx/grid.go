package xlsx

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"yardproof/exporters/internal/figure"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// grid is how wide the columns of a sheet are, in the file format's unit: the
// width of a digit of the workbook's default font.
type grid struct {
	columns []float64
	span    int // columns that text over the whole width runs over
}

// Room in units of a column's width.
const (
	padding     = 2.5 // beside the text: the cell's own margin and an indent
	narrowest   = 7.0
	widestPlain = 34.0 // of a column of plain text; longer text wraps
	widestHead  = 16.0 // that a column's title alone asks for
	moneyWidth  = 13.0 // amounts may grow when an input is changed
	spareColumn = 10.0
)

// pageWidth is how many units fit the paper unscaled, between the margins.
func pageWidth(h heading, wide bool) float64 {
	switch {
	case h.metric && wide:
		return 126
	case h.metric:
		return 85
	case wide:
		return 118
	}
	return 88
}

// leastWide is the width of a column of sentences, however full the page; a
// landscape page that is full of columns is printed smaller rather than be ragged,
// but not one of large type.
func (p *page) leastWide() float64 {
	if p.wide && p.size == 1 {
		return 44
	}
	return 28
}

// fit makes columns as wide as their contents ask for; columns of sentences
// share what is left of the page. Widths are those of type of the usual size.
func fit(p *page, h heading) grid {
	needs := make([]need, p.columns)
	for _, l := range p.lines {
		for i := range columnsOf(l) {
			if !p.stretched(l, i) {
				needs[i].take(l, i, h.currency)
			}
		}
	}
	paper := pageWidth(h, p.wide) / p.size
	g := grid{columns: share(needs, paper, p.leastWide())}
	g.widen(p, paper)
	return g
}

// stretched reports whether the line's cell of column i runs on below the
// columns that wider tables of the sheet have: the sentences that a narrow
// table ends in.
func (p *page) stretched(l line, i int) bool {
	columns := columnsOf(l)
	return i == len(columns)-1 && i < p.columns-1 && columns[i].Wide
}

// share gives every column what it needs; columns of sentences, the least
// demanding first, get an equal part of what is left of the page at most, and
// leastWide at least.
func share(needs []need, left, leastWide float64) []float64 {
	widths := make([]float64, len(needs))
	var wide []int
	for i, n := range needs {
		if n.sentences {
			wide = append(wide, i)
		} else {
			widths[i] = quarters(n.width())
			left -= widths[i]
		}
	}
	slices.SortStableFunc(wide, func(i, j int) int { return cmp.Compare(needs[i].text, needs[j].text) })
	for done, i := range wide {
		wanted := needs[i].text + padding
		part := max(leastWide, left/float64(len(wide)-done))
		widths[i] = quarters(max(needs[i].plain(), min(wanted, part)))
		left -= widths[i]
	}
	return widths
}

// quarters keeps widths to numbers that are short to write.
func quarters(width float64) float64 { return math.Ceil(width*4) / 4 }

// columnsOf is the columns of a line that belongs to a table.
func columnsOf(l line) []report.Column {
	if l.table == nil {
		return nil
	}
	return l.table.Columns
}

// widen adds columns without contents where text that runs over several
// would have to wrap although there is room on the page.
func (g *grid) widen(p *page, paper float64) {
	wanted, least := 0.0, 0.0
	for _, l := range p.lines {
		if l.spans() {
			wanted = max(wanted, textWidth(l.text, l.part != sentence)*look{part: l.part}.size()/fontSize+padding)
		}
		if last := len(columnsOf(l)) - 1; last >= 0 && p.stretched(l, last) {
			before := g.between(0, last)
			text := textWidth(l.words(last), l.part != body) + padding
			wanted = max(wanted, before+text)
			least = max(least, before+min(text, p.leastWide()))
		}
	}
	wanted = max(least, min(paper, wanted))
	for total := g.between(0, len(g.columns)); total < wanted; total = g.between(0, len(g.columns)) {
		g.columns = append(g.columns, quarters(min(spareColumn, wanted-total)))
	}
	g.span = len(g.columns)
}

// between is the width of the columns from..to, to excluded.
func (g grid) between(from, to int) float64 {
	total := 0.0
	for _, w := range g.columns[from:to] {
		total += w
	}
	return total
}

// need is what the cells of one column of a sheet ask for.
type need struct {
	sentences bool
	number    float64 // of the longest number, which cannot wrap
	text      float64 // of the longest text
	head      float64 // of the titles, as far as they do not wrap
}

// plain is what the column needs whatever its text does.
func (n need) plain() float64 { return max(narrowest, n.number+padding, n.head+padding) }

func (n need) width() float64 { return max(n.plain(), min(n.text+padding, widestPlain)) }

func (n *need) take(l line, i int, currency measure.Currency) {
	column := l.table.Columns[i]
	n.sentences = n.sentences || column.Wide
	switch {
	case l.part == head:
		n.head = max(n.head, headNeed(titleOf(*l.table, i)))
	case i >= len(l.cells):
	case figure.IsNumber(l.cells[i]):
		n.number = max(n.number, numberNeed(l.cells[i], currency))
	default:
		n.text = max(n.text, textWidth(figure.Words(l.cells[i]), l.part != body))
	}
}

// headNeed is what a title asks for once it has been wrapped between words.
func headNeed(title string) float64 {
	longest := 0.0
	for word := range strings.FieldsSeq(title) {
		longest = max(longest, textWidth(word, true))
	}
	return max(longest, min(textWidth(title, true), widestHead))
}

// numberNeed is generous: a number that does not fit is shown as hashes. The
// words of figure are at least as long as what number formats show, but for
// the marks between thousands.
func numberNeed(c report.Cell, currency measure.Currency) float64 {
	text := figure.Text(c, currency)
	need := 1.1*textWidth(text, true) + float64(len(text)/4)*runeWidth(',')
	if c.Kind == report.Money {
		need = max(need, moneyWidth-padding)
	}
	if c.Input || c.Expr != nil {
		need = max(need, 9)
	}
	return need
}

// titleOf is a column's title with its unit, unless its cells say it anyway.
func titleOf(t report.Table, i int) string {
	c := t.Columns[i]
	if c.Unit == "" || saysUnit(t, i) || strings.Contains(c.Title, "("+c.Unit+")") {
		return c.Title
	}
	return c.Title + " (" + c.Unit + ")"
}

func saysUnit(t report.Table, i int) bool {
	switch kindOf(t, i) {
	case report.Money, report.Fabric:
		return true
	case report.Share:
		return t.Columns[i].Unit == "%"
	}
	return false
}

// kindOf is the kind of a column: of its first cell that holds a number, or
// else text.
func kindOf(t report.Table, i int) report.CellKind {
	for _, r := range t.Rows {
		if i < len(r.Cells) && figure.IsNumber(r.Cells[i]) {
			return r.Cells[i].Kind
		}
	}
	return report.Text
}
