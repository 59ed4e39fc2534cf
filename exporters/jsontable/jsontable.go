package jsontable

import (
	"bytes"
	"encoding/json"

	"yardproof/exporters/internal/figure"
	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// Version is the number of the format, first in every document.
const Version = 1

type document struct {
	Format   int       `json:"format"`
	Studio   string    `json:"studio,omitempty"`
	File     string    `json:"file,omitempty"`
	ID       string    `json:"id,omitempty"`
	Title    string    `json:"title,omitempty"`
	Revision string    `json:"revision,omitempty"`
	Status   string    `json:"status,omitempty"`
	Units    string    `json:"units,omitempty"`
	Currency string    `json:"currency,omitempty"`
	Proved   bool      `json:"proved"`
	Sizes    []string  `json:"sizes,omitempty"`
	Sheets   []sheet   `json:"sheets"`
	Workings []working `json:"workings,omitempty"`
}

type sheet struct {
	ID     string  `json:"id"`
	Title  string  `json:"title"`
	Tables []table `json:"tables"`
}

type table struct {
	ID      string   `json:"id"`
	Heading string   `json:"heading,omitempty"`
	Lead    []string `json:"lead,omitempty"`
	Columns []column `json:"columns"`
	Rows    []row    `json:"rows"`
	Foot    []string `json:"foot,omitempty"`
}

type column struct {
	ID    string `json:"id"`
	Title string `json:"title"`
	Unit  string `json:"unit,omitempty"`
}

type row struct {
	Style string `json:"style,omitempty"` // empty for the table's data proper
	Cells object `json:"cells"`           // by column ID, in column order
}

type working struct {
	What    string `json:"what"`
	Formula string `json:"formula"`
	Value   any    `json:"value"`
	Terms   []term `json:"terms"`
}

type term struct {
	Symbol string `json:"symbol"`
	Says   string `json:"says"`
	Value  any    `json:"value"`
	Line   int    `json:"line,omitempty"` // where the plan says it
	Column int    `json:"column,omitempty"`
}

// Plan is the plan's document.
func Plan(p *report.Plan) ([]byte, error) {
	w := writer{currency: p.Currency, source: p.Source, workings: figure.Collect(p.Sheets)}
	return w.encode(document{
		Format: Version, File: p.File, ID: p.ID, Title: p.Title, Revision: p.Revision,
		Status: p.Status, Units: p.Units.String(), Currency: p.Currency.Code(),
		Proved: p.Proved, Sizes: p.Sizes,
	}, p.Sheets)
}

// Line is the document of the line's own tables; it is proved when no finding
// of the run is an error.
func Line(r *report.Run) ([]byte, error) {
	w := writer{currency: r.Currency, workings: figure.Collect(r.Sheets)}
	return w.encode(document{
		Format: Version, Studio: r.Studio, Currency: r.Currency.Code(),
		Proved: diag.Worst(r.All()) < diag.Error,
	}, r.Sheets)
}

type writer struct {
	currency measure.Currency
	source   *source.File
	workings *figure.Workings
}

func (w writer) encode(d document, sheets []report.Sheet) ([]byte, error) {
	d.Sheets = []sheet{}
	for _, s := range sheets {
		if !s.Again {
			d.Sheets = append(d.Sheets, w.sheet(s))
		}
	}
	for _, work := range w.workings.List {
		d.Workings = append(d.Workings, w.working(work))
	}
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", " ")
	err := encoder.Encode(d)
	return words.JSON(b.Bytes()), err
}

func (w writer) sheet(s report.Sheet) sheet {
	out := sheet{ID: s.ID, Title: s.Title, Tables: []table{}}
	for _, t := range s.Tables {
		out.Tables = append(out.Tables, w.table(t))
	}
	return out
}

func (w writer) table(t report.Table) table {
	out := table{ID: t.ID, Heading: t.Heading, Lead: t.Lead, Foot: t.Foot, Columns: []column{}, Rows: []row{}}
	for _, c := range t.Columns {
		out.Columns = append(out.Columns, column{c.ID, c.Title, c.Unit})
	}
	for _, r := range t.Rows {
		out.Rows = append(out.Rows, w.row(t, r))
	}
	return out
}

func (w writer) row(t report.Table, r report.Row) row {
	out := row{}
	if r.Style != report.Body {
		out.Style = figure.Role(r.Style)
	}
	for i, c := range r.Cells {
		if i < len(t.Columns) {
			out.Cells = append(out.Cells, member{t.Columns[i].ID, w.cell(c)})
		}
	}
	return out
}

func (w writer) working(work *report.Work) working {
	out := working{What: work.What, Formula: work.Formula, Value: w.cell(work.Value), Terms: []term{}}
	for _, t := range work.Terms {
		item := term{Symbol: t.Symbol, Says: t.Says, Value: w.cell(t.Value)}
		if w.source != nil && !t.At.Empty() {
			at := w.source.Position(t.At.Start)
			item.Line, item.Column = at.Line, at.Column
		}
		out.Terms = append(out.Terms, item)
	}
	return out
}
