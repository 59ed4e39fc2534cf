package xlsx

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"yardproof/exporters/internal/figure"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// book is a workbook being built.
type book struct {
	heading heading
	file    *excelize.File
	styles  map[look]int
	marked  *int // the look of what stands out; nil as long as nothing does
	cells   map[string]cellAt
	names   []string // of cells, in the order of the sheets
}

func newBook(h heading, pages []*page) *book {
	b := &book{heading: h, file: excelize.NewFile(), styles: map[look]int{}}
	b.cells, b.names = findCells(pages)
	b.markTextual(pages)
	return b
}

var errStopped = errors.New("stopped before it was whole")

// build sets everything about the sheets before it streams their rows: the
// library drops page setup that comes after them.
func (b *book) build(pages []*page) error {
	if err := b.properties(); err != nil {
		return err
	}
	for i, p := range pages {
		if err := b.addSheet(i, p.name); err != nil {
			return err
		}
	}
	if err := b.defineNames(); err != nil {
		return err
	}
	for _, p := range pages {
		if b.heading.stop != nil && b.heading.stop() {
			return errStopped
		}
		if err := b.setUp(p); err != nil {
			return fmt.Errorf("sheet %s: %w", p.name, err)
		}
	}
	for _, p := range pages {
		if b.heading.stop != nil && b.heading.stop() {
			return errStopped
		}
		if err := b.stream(p); err != nil {
			return err
		}
	}
	return nil
}

func (b *book) addSheet(i int, name string) error {
	if i == 0 {
		return b.file.SetSheetName(b.file.GetSheetName(0), name)
	}
	_, err := b.file.NewSheet(name)
	return err
}

func (b *book) defineNames() error {
	for _, name := range b.names {
		at := b.cells[name]
		if at.defined == "" {
			continue
		}
		err := b.file.SetDefinedName(&excelize.DefinedName{Name: at.defined, RefersTo: at.address()})
		if err != nil {
			return fmt.Errorf("name %s: %w", at.defined, err)
		}
	}
	return nil
}

// stream writes the rows of a sheet; only the library's stream stores the
// value beside a formula.
func (b *book) stream(p *page) error {
	w, err := b.file.NewStreamWriter(p.name)
	if err != nil {
		return err
	}
	if err := prepare(w, p); err != nil {
		return err
	}
	for i, l := range p.lines {
		if err := b.row(w, p, l, i+1); err != nil {
			return err
		}
	}
	return w.Flush()
}

func prepare(w *excelize.StreamWriter, p *page) error {
	// From the last to the first: the library puts each before those it has,
	// and the file format wants them in order.
	for i, width := range slices.Backward(p.grid.columns) {
		if err := w.SetColWidth(i+1, i+1, quarters(width)); err != nil {
			return err
		}
	}
	return p.freeze(w)
}

// freeze keeps the titles of columns, and first columns, in view while the rest
// scrolls.
func (p *page) freeze(w *excelize.StreamWriter) error {
	row := p.frozen()
	pane := "bottomLeft"
	switch {
	case p.still > 0 && row > 0:
		pane = "bottomRight"
	case p.still > 0:
		pane = "topRight"
	case row == 0:
		return nil
	}
	return w.SetPanes(&excelize.Panes{
		Freeze: true, XSplit: p.still, YSplit: row, ActivePane: pane,
		TopLeftCell: relative(p.still+1, row+1),
	})
}

// mostFrozen is how many rows may stand still and leave room to scroll in.
const mostFrozen = 10

// frozen is the last row that stands still while the rest scrolls, 0 for none:
// the column titles of a sheet that has one table.
func (p *page) frozen() int {
	if len(p.heads) == 1 && p.heads[0] <= mostFrozen {
		return p.heads[0]
	}
	return 0
}

func (b *book) row(w *excelize.StreamWriter, p *page, l line, row int) error {
	switch l.part {
	case blank:
		return nil
	case space:
		return w.SetRow(fmt.Sprintf("A%d", row), nil, excelize.RowOpts{Height: l.spaceTall()})
	}
	if l.spans() {
		return b.text(w, p, l, row)
	}
	values, err := b.values(p, l)
	if err != nil {
		return err
	}
	for i := range l.table.Columns {
		from, to := p.columnsAt(l.table, i)
		if err := merge(w, from+1, to, row); err != nil {
			return err
		}
	}
	return w.SetRow(fmt.Sprintf("A%d", row), values, excelize.RowOpts{Height: l.height(p)})
}

// merge makes one cell of the columns first to last of a row.
func merge(w *excelize.StreamWriter, first, last, row int) error {
	if first >= last {
		return nil
	}
	from, to := absolute(first, row), absolute(last, row)
	return w.MergeCell(strings.ReplaceAll(from, "$", ""), strings.ReplaceAll(to, "$", ""))
}

// text is a line that runs over the whole width.
func (b *book) text(w *excelize.StreamWriter, p *page, l line, row int) error {
	style, err := b.style(look{part: l.part})
	if err != nil {
		return err
	}
	values := make([]any, p.spanOf(l))
	for i := range values {
		values[i] = excelize.Cell{StyleID: style}
	}
	values[0] = excelize.Cell{StyleID: style, Value: l.text}
	if err := merge(w, 1, p.spanOf(l), row); err != nil {
		return err
	}
	return w.SetRow(fmt.Sprintf("A%d", row), values, excelize.RowOpts{Height: l.height(p)})
}

// height is what the line's text needs once it is wrapped: programs fit rows
// to their text themselves, but not to text over several columns, and some
// previewers not at all.
func (l line) height(p *page) float64 {
	bold := l.part != body && l.part != sentence
	if l.spans() {
		size := look{part: l.part}.size() / fontSize
		return tall(l.part, linesOf(l.text, (p.grid.between(0, p.spanOf(l))-padding)/size, bold))
	}
	lines := 1
	for i := range columnsOf(l) {
		lines = max(lines, linesOf(l.words(i), p.room(l.table, i)-padding, bold))
	}
	return max(tall(l.part, lines), l.boxHeight())
}

// tall is the height of a line of wrapped text.
func tall(part part, lines int) float64 { return min(part.tall(lines), excelize.MaxRowHeight) }

// spaceTall is the height of a line that a picture stands over.
func (l line) spaceTall() float64 {
	if l.tall > 0 {
		return l.tall
	}
	return spaceHeight
}

// tickHeight leaves room for a tick that is made with a pen.
const tickHeight = 18.0

func (l line) boxHeight() float64 {
	for _, c := range l.cells {
		if c.Kind == report.Box {
			return tickHeight
		}
	}
	return 0
}

// words is the text of a column of the line that may have to wrap.
func (l line) words(i int) string {
	switch {
	case l.part == head:
		return titleOf(*l.table, i)
	case i < len(l.cells) && !figure.IsNumber(l.cells[i]):
		return figure.Words(l.cells[i])
	}
	return ""
}

func (b *book) values(p *page, l line) ([]any, error) {
	var values []any
	for i := range l.table.Columns {
		var value excelize.Cell
		var err error
		if l.part == head {
			value, err = b.headCell(*l.table, i)
		} else {
			value, err = b.cell(p, l, i)
		}
		if err != nil {
			return nil, err
		}
		from, to := p.columnsAt(l.table, i)
		values = append(values, value)
		for range to - from - 1 {
			values = append(values, excelize.Cell{StyleID: value.StyleID})
		}
	}
	return values, nil
}

func (b *book) headCell(t report.Table, i int) (excelize.Cell, error) {
	right := kindOf(t, i) != report.Text || t.Columns[i].Right
	style, err := b.style(look{part: head, number: right, beside: i > 0})
	return excelize.Cell{StyleID: style, Value: titleOf(t, i)}, err
}

// cell draws a row's cell of column i, an empty one where the row is shorter.
func (b *book) cell(p *page, l line, i int) (excelize.Cell, error) {
	c := report.Cell{}
	if i < len(l.cells) {
		c = l.cells[i]
	}
	drawn := look{part: l.part, input: c.Input, box: c.Kind == report.Box, beside: i > 0, right: l.table.Columns[i].Right}
	if c.Kind != report.Text && c.Kind != report.Empty && c.Kind != report.Box {
		drawn.number = figure.IsNumber(c) || c.Expr != nil
		drawn.format = b.numberFormat(c, l.table.Columns[i].Unit)
	}
	style, err := b.style(drawn)
	if err != nil {
		return excelize.Cell{}, err
	}
	c = upward(c)
	value := excelize.Cell{StyleID: style, Value: stored(c)}
	if c.Expr != nil && !c.Input {
		value.Formula, err = b.formulaOf(c.Expr, p.name)
	}
	return value, err
}

// stored is the value kept in the file: the double nearest to the exact one, or
// text. An empty cell has none.
func stored(c report.Cell) any {
	switch {
	case c.Kind == report.Count:
		return c.Int
	case (c.Kind == report.Length || c.Kind == report.Fabric) && figure.IsNumber(c):
		return shown(c).MulInt(int64(measure.Inch)).Float(measure.In)
	}
	if value := figure.Value(c); value != nil {
		f, _ := value.Float64()
		return f
	}
	if words := figure.Words(c); words != "" {
		return words
	}
	return nil
}
