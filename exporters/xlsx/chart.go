package xlsx

import (
	"fmt"
	"math"
	"slices"

	"github.com/xuri/excelize/v2"

	"yardproof/pipeline/report"
)

// chart is a chart below the tables of a sheet.
type chart struct {
	report.Chart
	row           int     // of its upper edge
	width, height float64 // in millimetres of paper
}

// Sizes of a chart on paper, in millimetres.
const (
	chartFrame = 36.0 // title, axis and legend
	barHeight  = 5.0
	barGap     = 4.0
)

// addCharts reserves rows for the charts.
func (p *page) addCharts(list []report.Chart) {
	paper := paperFor(p.wide)
	for _, c := range list {
		points, series := c.To-c.From, len(c.Values)
		if c.Across {
			points, series = series, points
		}
		if c.Stacked {
			series = 1
		}
		height := min(paper.Height, chartFrame+float64(points)*(barHeight*float64(series)+barGap))
		p.add(line{part: blank}) // begins a page with the chart, whose edge would be seen on the one before
		at := len(p.lines) + 1
		for range int(math.Ceil(p.onSheet(height)*pointsPerInch/spaceHeight) + 1) {
			p.add(line{part: space})
		}
		p.charts = append(p.charts, chart{Chart: c, row: at, width: paper.Width, height: height})
		p.blocks = append(p.blocks, block{first: at - 1, last: len(p.lines)})
	}
}

func (b *book) placeCharts(p *page) error {
	for _, c := range p.charts {
		if err := b.placeChart(p, c); err != nil {
			return fmt.Errorf("chart %s: %w", c.ID, err)
		}
	}
	return nil
}

func (b *book) placeChart(p *page, c chart) error {
	of, ok := p.tableOf(c.Table)
	if !ok {
		return fmt.Errorf("no table is called %s", c.Table)
	}
	series, err := c.series(p, of)
	if err != nil {
		return err
	}
	const pixelsPerInch = 96 // of the library
	pixels := func(millimetres float64) uint { return uint(p.onSheet(millimetres) * pixelsPerInch) }
	text := excelize.Font{Family: fontFamily, Size: fontSize, Color: black}
	kind := excelize.Bar
	overlap, between, no := 0, uint(60), false
	if c.Stacked {
		kind, overlap = excelize.BarStacked, 100
	}
	legend := excelize.ChartLegend{Position: "bottom", Font: &text}
	if len(series) == 1 {
		legend = excelize.ChartLegend{Position: "none"}
	}
	return b.file.AddChart(p.name, relative(1, c.row), &excelize.Chart{
		Type: kind, Series: series, Overlap: &overlap, GapWidth: &between, VaryColors: &no,
		Dimension: excelize.ChartDimension{Width: pixels(c.width), Height: pixels(c.height)},
		Format:    excelize.GraphicOptions{AltText: cut(c.Title+". "+c.About, excelize.TotalCellChars), Positioning: "oneCell"},
		Title:     excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: c.Title, Font: &excelize.Font{Family: fontFamily, Size: 12, Bold: true, Color: black}}}},
		Legend:    legend,
		XAxis:     excelize.ChartAxis{ReverseOrder: true, Font: text, TickLabelPosition: excelize.ChartTickLabelLow},
		YAxis: excelize.ChartAxis{MajorGridLines: true, Font: text, NumFmt: excelize.ChartNumFmt{CustomNumFmt: b.axisFormat(c, of)},
			Title: excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: c.Axis, Font: &text}}}},
		PlotArea:     excelize.ChartPlotArea{ShowVal: !c.Stacked, NumFmt: excelize.ChartNumFmt{CustomNumFmt: b.axisFormat(c, of)}},
		Border:       excelize.LineOptions{Type: excelize.LineSolid, Fill: solid(grey), Width: 0.75},
		ShowBlanksAs: "gap",
	})
}

func solid(color string) excelize.Fill {
	return excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{color}}
}

// axisFormat is for numbers along the axis and at the bars.
func (b *book) axisFormat(c chart, of block) string {
	switch of.table.Rows[c.From].Cells[of.numbersColumn(c.Values[0])-1].Kind {
	case report.Share:
		return "0%"
	case report.Money:
		return "#,##" + decimals(b.heading.currency.Digits())
	}
	return general
}

// tableOf finds a table of the sheet.
func (p *page) tableOf(id string) (block, bool) {
	for _, b := range p.blocks {
		if b.table != nil && b.table.ID == id {
			return b, true
		}
	}
	return block{}, false
}

// numbersColumn is the column of an ID, 0 for none; a size of a plan may be
// called as the column of labels before it is.
func (b block) numbersColumn(id string) int {
	for i, c := range slices.Backward(b.table.Columns) {
		if c.ID == id {
			return i + 1
		}
	}
	return 0
}

// series are the cells that the chart's bars stand for.
func (c chart) series(p *page, of block) ([]excelize.ChartSeries, error) {
	columns := make([]int, len(c.Values))
	for i, id := range c.Values {
		columns[i] = of.numbersColumn(id)
	}
	label := 1 + slices.IndexFunc(of.table.Columns, func(x report.Column) bool { return x.ID == c.Label })
	if len(columns) == 0 || slices.Contains(columns, 0) || label == 0 || c.From < 0 || c.From >= c.To || c.To > len(of.table.Rows) {
		return nil, fmt.Errorf("its rows or columns are not in table %s", c.Table)
	}
	for i := range columns {
		columns[i] = p.column(of.table, columns[i]-1)
	}
	label = p.column(of.table, label-1)
	first, last, head := of.rows+c.From, of.rows+c.To-1, of.rows-1
	area := func(fromColumn, fromRow, toColumn, toRow int) string {
		text := quoted(p.name) + "!" + absolute(fromColumn, fromRow)
		if fromColumn != toColumn || fromRow != toRow {
			text += ":" + absolute(toColumn, toRow)
		}
		return text
	}
	var all []excelize.ChartSeries
	add := func(name, categories, values string) {
		all = append(all, excelize.ChartSeries{
			Name: name, Categories: categories, Values: values, Fill: solid(placeholder(len(all))),
			DataLabel: excelize.ChartDataLabel{Font: excelize.Font{Family: fontFamily, Size: fontSize - 1, Color: black}},
		})
	}
	if !c.Across {
		for _, column := range columns {
			add(area(column, head, column, head), area(label, first, label, last), area(column, first, column, last))
		}
		return all, nil
	}
	from, to := columns[0], columns[len(columns)-1]
	for row := first; row <= last; row++ {
		add(area(label, row, label, row), area(from, head, to, head), area(from, row, to, row))
	}
	return all, nil
}
