package xlsx

import (
	"math"

	"yardproof/exporters/internal/figure"
	"yardproof/pipeline/report"
)

// part is what a line of a sheet is, and decides its look.
type part int

const (
	blank part = iota
	title
	unproved
	sentence
	subtitle // heading of a table
	head     // titles of the columns
	body
	group
	total
	alert
	space // below a picture or chart
)

// line is one row of a sheet: either text over the whole width, or the cells
// of a table.
type line struct {
	part  part
	text  string
	table *report.Table // nil for text
	cells []report.Cell // of a row of the table; none for its head

	narrow bool    // it leaves the right of the page to pictures
	tall   float64 // of a space, in points; 0 for spaceHeight
}

// spans reports whether the line is text over the whole width.
func (l line) spans() bool { return l.table == nil && l.part != blank && l.part != space }

// page is a sheet as lines; the first line is row 1. Pictures stand over the
// space at its end.
type page struct {
	name   string // of the sheet in the workbook
	wide   bool
	still  int // first columns that stay in view
	lines  []line
	heads  []int // rows that hold the titles of columns
	blocks []block
	grid   grid
	inputs bool
	live   bool // it has formulas or inputs

	charts   []chart
	pictures []picture
	breaks   []int   // rows that begin a page
	pages    int     // that it takes, pictures below the tables left out
	scale    float64 // of printing
}

const inputsText = "Cells in a heavy box may be changed; everything that depends on them follows."

func layOut(h heading, sheets []report.Sheet) []*page {
	names := sheetNames{}
	var pages []*page
	for i := range sheets {
		s := &sheets[i]
		pages = append(pages, layOutSheet(h, s, names.unique(s.Title)))
	}
	return pages
}

// layOutSheet prints a sheet as large as it fits: its columns the paper, and its
// lines the pages that it is to have.
func layOutSheet(h heading, s *report.Sheet, name string) *page {
	for scale := 1.0; ; scale -= scaleStep {
		last := scale-scaleStep < leastScale(s)-scaleStep/2
		p := layOutAt(h, s, name, math.Round(100*scale)/100)
		fits := p.total() <= pageWidth(s.Wide)/p.scale+tiny
		if !fits && last {
			p = layOutAt(h, s, name, max(smallestScale, math.Floor(100*pageWidth(s.Wide)/p.total())/100))
		}
		if last || fits && (s.Pages == 0 || p.pages <= s.Pages) {
			p.addPictures(s.Pictures)
			return p
		}
	}
}

// layOutAt is a sheet without the pictures below its tables, at a scale.
func layOutAt(h heading, s *report.Sheet, name string, scale float64) *page {
	p := &page{name: name, wide: s.Wide, still: s.Still, scale: scale}
	p.findInputs(s)
	p.addTop(h, s)
	for j := range s.Tables {
		p.addTable(&s.Tables[j])
	}
	p.grid = fit(p, s, h)
	p.setBeside()
	p.addCharts(s.Charts)
	p.breakPages(h)
	return p
}

// total is the width of all columns.
func (p *page) total() float64 { return p.grid.between(0, len(p.grid.columns)) }

func (p *page) add(l line) { p.lines = append(p.lines, l) }

func (p *page) addText(part part, text string) {
	if text != "" {
		p.add(line{part: part, text: text})
	}
}

func (p *page) addTop(h heading, s *report.Sheet) {
	top := s.Title
	if h.title != "" {
		top = h.title + ": " + s.Title
	}
	p.addText(title, top)
	if !h.proved {
		p.addText(unproved, figure.Unproved(h.subject))
	}
	if p.inputs {
		p.addText(sentence, inputsText)
	}
}

// findInputs finds out whether the sheet is to be typed into.
func (p *page) findInputs(s *report.Sheet) {
	for _, t := range s.Tables {
		for _, r := range t.Rows {
			for _, c := range r.Cells {
				p.inputs = p.inputs || c.Input
				p.live = p.live || c.Input || c.Expr != nil
			}
		}
	}
}

func (p *page) addTable(t *report.Table) {
	b := block{table: t, first: len(p.lines) + 1, begins: t.Begins}
	p.add(line{part: blank})
	p.addText(subtitle, t.Heading)
	for _, text := range t.Lead {
		p.addText(sentence, text)
	}
	if !t.Under && titled(t) {
		p.add(line{part: head, table: t})
		p.heads = append(p.heads, len(p.lines))
	}
	b.rows = len(p.lines) + 1
	for _, r := range t.Rows {
		p.addRow(t, r)
	}
	for _, text := range t.Foot {
		p.addText(sentence, text)
	}
	b.last = len(p.lines)
	for i := b.first - 1; i < b.last; i++ {
		p.lines[i].narrow = t.Narrow
	}
	p.blocks = append(p.blocks, b)
}

// titled reports whether some column of a table has a title.
func titled(t *report.Table) bool {
	for i := range t.Columns {
		if titleOf(*t, i) != "" {
			return true
		}
	}
	return false
}

// addRow lets a heading or an alert that is nothing but words run over the
// whole width, where they would not fit a column.
func (p *page) addRow(t *report.Table, r report.Row) {
	part := partOf(r.Style)
	if part == group || part == alert {
		if words, ok := onlyWords(r.Cells); ok {
			p.add(line{part: part, text: words})
			return
		}
	}
	p.add(line{part: part, table: t, cells: r.Cells[:min(len(r.Cells), len(t.Columns))]})
}

func partOf(style report.RowStyle) part {
	switch style {
	case report.Group:
		return group
	case report.Total:
		return total
	case report.Alert:
		return alert
	}
	return body
}

// onlyWords is the text of a row whose only cell with something in it is
// fixed text in the first column.
func onlyWords(cells []report.Cell) (string, bool) {
	if len(cells) == 0 || cells[0].Kind != report.Text || cells[0].Name != "" || cells[0].Text == "" {
		return "", false
	}
	for _, c := range cells[1:] {
		if figure.IsNumber(c) || figure.Words(c) != "" {
			return "", false
		}
	}
	return cells[0].Text, true
}
