package xlsx

import (
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
}

// spans reports whether the line is text over the whole width.
func (l line) spans() bool { return l.table == nil && l.part != blank && l.part != space }

// page is a sheet as lines; the first line is row 1. Pictures stand over the
// space at its end.
type page struct {
	name    string // of the sheet in the workbook
	wide    bool
	size    float64 // of its type, in the usual one
	still   int     // first columns that stay in view
	lines   []line
	heads   []int // rows that hold the titles of columns
	blocks  []block
	columns int // of the table that has most
	grid    grid
	inputs  bool
	live    bool // it has formulas or inputs

	charts   []chart
	pictures []picture
	breaks   []int   // rows that begin a page
	scale    float64 // of printing; 0 where the sheet fits itself to the paper
}

const inputsText = "Cells in a heavy box may be changed; everything that depends on them follows."

func layOut(h heading, sheets []report.Sheet) []*page {
	names := sheetNames{}
	var pages []*page
	for i := range sheets {
		s := &sheets[i]
		p := &page{name: names.unique(s.Title), wide: s.Wide, still: s.Still, size: 1}
		if s.Large {
			p.size = largeType
		}
		p.findInputs(s)
		p.addTop(h, s)
		for j := range s.Tables {
			p.addTable(&s.Tables[j])
		}
		p.grid = fit(p, h)
		p.scale = p.fixedScale(s, h)
		p.addCharts(s.Charts)
		p.addPictures(s.Pictures)
		p.breakPages(h)
		pages = append(pages, p)
	}
	return pages
}

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
	p.columns = max(p.columns, len(t.Columns))
	b := block{table: t, first: len(p.lines) + 1}
	p.add(line{part: blank})
	p.addText(subtitle, t.Heading)
	for _, text := range t.Lead {
		p.addText(sentence, text)
	}
	if len(t.Columns) > 0 {
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
	p.blocks = append(p.blocks, b)
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
