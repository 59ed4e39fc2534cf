package xlsx

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"yardproof/exporters/internal/figure"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// grid is how wide the columns of a sheet are, in the file format's unit: the
// width of a digit of the workbook's default font.
//
// Tables of different columns stand on one sheet in a grid that serves all: each
// of their columns is one or several of the grid's.
type grid struct {
	columns []float64
	starts  map[string][]int // of the columns of tables of a shape, and where their last ends
	narrow  int              // columns that what leaves room beside it runs over
	span    int              // columns that text over the whole width runs over
}

// Room in units of a column's width.
const (
	padding     = 2.5 // beside the text: the cell's own margin and an indent
	narrowest   = 7.0
	boxWidth    = 4.0  // of a column of boxes
	widestPlain = 34.0 // of a column of plain text; longer text wraps
	widestHead  = 16.0 // that a column's title alone asks for
	moneyWidth  = 13.0 // amounts may grow when an input is changed
	spareColumn = 10.0
)

// pageWidth is how many units fit the paper unscaled, between the margins: on A4
// and on letter paper.
func pageWidth(wide bool) float64 {
	if wide {
		return 118
	}
	return 85
}

// besideShare is how much of the page's width narrow tables have.
func besideShare(s *report.Sheet) float64 {
	const usual = 60
	return float64(cmp.Or(s.Share, usual)) / 100
}

// gridStep is what the widths of columns are rounded up to where several tables
// stand in one grid, so that many of their edges meet.
const gridStep = 1.5

// leastWide is the width of a column of sentences, however full the page; a
// landscape page that is full of columns is printed smaller rather than be ragged.
func leastWide(wide, narrow bool) float64 {
	switch {
	case narrow:
		return 16
	case wide:
		return 36
	}
	return 24
}

// shape tells tables apart that do not have the same columns.
func shape(t *report.Table) string {
	ids := []string{strconv.FormatBool(t.Narrow)}
	for _, c := range t.Columns {
		ids = append(ids, c.ID, strconv.FormatBool(c.Wide))
	}
	return strings.Join(ids, "\x00")
}

// fit makes columns as wide as their contents ask for; columns of sentences
// share what is left of the page.
func fit(p *page, s *report.Sheet, h heading) grid {
	shapes, tables, needs := p.needs(h)
	paper, step := pageWidth(p.wide)/p.scale, 0.25
	if len(shapes) > 1 || p.hasNarrow() {
		step = gridStep
	}
	paper = math.Floor(paper/step) * step
	narrow := math.Floor(paper*besideShare(s)/step) * step
	edges := map[string][]float64{}
	for _, key := range shapes {
		t, room := tables[key], paper
		if t.Narrow {
			room = narrow
		}
		edges[key] = endsOf(share(needs[key], room, leastWide(p.wide, t.Narrow), step))
	}
	keep := acrossEdges(s, edges)
	for _, key := range shapes {
		edges[key] = snap(edges[key], keep)
	}
	return p.gridOf(edges, narrow, paper)
}

// needs are what the columns of the tables of each shape ask for.
func (p *page) needs(h heading) (shapes []string, tables map[string]*report.Table, needs map[string][]need) {
	tables, needs = map[string]*report.Table{}, map[string][]need{}
	for _, l := range p.lines {
		if l.table == nil {
			continue
		}
		key := shape(l.table)
		if tables[key] == nil {
			shapes = append(shapes, key)
			tables[key], needs[key] = l.table, make([]need, len(l.table.Columns))
		}
		for i := range l.table.Columns {
			needs[key][i].take(l, i, h.currency)
		}
	}
	return shapes, tables, needs
}

func (p *page) hasNarrow() bool {
	return slices.ContainsFunc(p.lines, func(l line) bool { return l.narrow })
}

// endsOf are the places at which columns end.
func endsOf(widths []float64) []float64 {
	at, all := 0.0, make([]float64, len(widths))
	for i, w := range widths {
		at += w
		all[i] = at
	}
	return all
}

// acrossEdges are the edges of the table whose rows are the series of a chart:
// no other may come between them, for its bars are cells that stand together.
func acrossEdges(s *report.Sheet, edges map[string][]float64) []float64 {
	for _, c := range s.Charts {
		for i := range s.Tables {
			if t := &s.Tables[i]; c.Across && t.ID == c.Table {
				return edges[shape(t)]
			}
		}
	}
	return nil
}

// snap moves edges outwards to those that are kept, as far as these go.
func snap(edges, keep []float64) []float64 {
	at, before, all := 0.0, 0.0, make([]float64, len(edges))
	for i, e := range edges {
		at += e - before
		before = e
		for _, k := range keep {
			if k >= at-tiny {
				at = k
				break
			}
		}
		all[i] = at
	}
	return all
}

// gridOf is the grid in which all tables stand.
func (p *page) gridOf(edges map[string][]float64, narrow, paper float64) grid {
	var all []float64
	for _, e := range edges {
		all = append(all, e...)
	}
	if p.hasNarrow() {
		all = append(all, narrow, paper)
	}
	slices.Sort(all)
	all = slices.Compact(all)
	g := grid{starts: map[string][]int{}}
	before := 0.0
	for _, e := range all {
		g.columns = append(g.columns, e-before)
		before = e
	}
	after := func(x float64) int {
		at, _ := slices.BinarySearch(all, x)
		return at + 1
	}
	for key, e := range edges {
		starts := []int{0}
		for _, x := range e {
			starts = append(starts, after(x))
		}
		g.starts[key] = starts
	}
	g.widen(p, paper)
	if p.hasNarrow() {
		g.narrow = after(narrow)
	}
	return g
}

// columnsAt are the grid's columns, from and to, of a column of a table; to is
// excluded.
func (p *page) columnsAt(t *report.Table, i int) (from, to int) {
	starts := p.grid.starts[shape(t)]
	return starts[i], starts[i+1]
}

// column is the column of the sheet, from 1, that a table's column begins in.
func (p *page) column(t *report.Table, i int) int {
	from, _ := p.columnsAt(t, i)
	return from + 1
}

// room is the width of a column of a table.
func (p *page) room(t *report.Table, i int) float64 { return p.grid.between(p.columnsAt(t, i)) }

// spanOf is how many columns text over the whole width runs over.
func (p *page) spanOf(l line) int {
	if l.narrow {
		return p.grid.narrow
	}
	return p.grid.span
}

// share gives every column what it needs; columns of sentences, the least
// demanding first, get an equal part of what is left of the page at most, and
// leastWide at least.
func share(needs []need, left, leastWide, step float64) []float64 {
	up := func(width float64) float64 { return math.Ceil(width/step-tiny) * step }
	down := func(width float64) float64 { return math.Floor(width/step+tiny) * step }
	widths := make([]float64, len(needs))
	var wide []int
	for i, n := range needs {
		if n.sentences {
			wide = append(wide, i)
		} else {
			widths[i] = up(n.width())
			left -= widths[i]
		}
	}
	slices.SortStableFunc(wide, func(i, j int) int { return cmp.Compare(needs[i].text, needs[j].text) })
	for done, i := range wide {
		wanted := needs[i].text + padding
		part := max(leastWide, down(left/float64(len(wide)-done)))
		widths[i] = up(max(needs[i].plain(), min(wanted, part)))
		left -= widths[i]
	}
	return widths
}

// tiny keeps a width that is a whole number of steps from becoming one more.
const tiny = 1e-9

// quarters keeps widths to numbers that are short to write.
func quarters(width float64) float64 { return math.Ceil(width*4-tiny) / 4 }

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
	wanted := 0.0
	for _, l := range p.lines {
		if l.spans() && !l.narrow {
			wanted = max(wanted, textWidth(l.text, l.part != sentence)*look{part: l.part}.size()/fontSize+padding)
		}
	}
	wanted = math.Floor(4*min(paper, wanted)) / 4
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
	boxes     bool    // it has boxes to tick, and no words
	number    float64 // of the longest number, which cannot wrap
	text      float64 // of the longest text
	head      float64 // of the titles, as far as they do not wrap
}

// plain is what the column needs whatever its text does.
func (n need) plain() float64 {
	least := narrowest
	if n.boxes && n.number+n.text == 0 {
		least = boxWidth
	}
	if n.head > 0 {
		least = max(least, n.head+padding)
	}
	return max(least, n.number+padding)
}

func (n need) width() float64 {
	if n.text == 0 {
		return n.plain()
	}
	return max(n.plain(), min(n.text+padding, widestPlain))
}

func (n *need) take(l line, i int, currency measure.Currency) {
	column := l.table.Columns[i]
	n.sentences = n.sentences || column.Wide
	switch {
	case l.part == head:
		n.head = max(n.head, headNeed(titleOf(*l.table, i)))
	case i >= len(l.cells):
	case l.cells[i].Kind == report.Box:
		n.boxes = true
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
