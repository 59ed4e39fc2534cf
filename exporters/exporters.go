package exporters

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"

	"yardproof/exporters/annotations"
	"yardproof/exporters/codequality"
	"yardproof/exporters/csvtable"
	"yardproof/exporters/internal/words"
	"yardproof/exporters/jsonreport"
	"yardproof/exporters/jsontable"
	"yardproof/exporters/junit"
	"yardproof/exporters/lines"
	"yardproof/exporters/markdown"
	"yardproof/exporters/sarif"
	"yardproof/exporters/svg"
	"yardproof/exporters/text"
	"yardproof/exporters/xlsx"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// Options say what a report is written to, and what only the program knows of
// the run. A format ignores what it has no use for.
type Options struct {
	Color   bool       // escape sequences for colours are understood
	Width   int        // columns of the terminal; 0 leaves lines as long as they are
	Version string     // of yardproof; may be empty
	FailOn  diag.Level // from which level on findings give status 1; 0 when nobody asked
	Verbose bool       // for a person who wants to see what is accepted, too

	// Only leaves out the findings for which it is false; the sums still count
	// them. Nil leaves out none.
	Only func(diag.Finding) bool
	// Gone are findings of an earlier run that are no more.
	Gone []diag.Finding
}

// ReportFormat writes the findings of a run as a stream.
type ReportFormat struct {
	Name    string // as flags take it
	Summary string // what it is for, in a line
	Write   func(io.Writer, *report.Run, Options) error
}

// ExportFormat turns what was derived into files. Plan gives those of one plan,
// below a folder named for its id; Line those of the whole line, nil when the
// run has no sheets for it.
type ExportFormat struct {
	Name    string // as flags take it
	Summary string // what it is for, in a line
	Plan    func(*report.Plan) ([]report.File, error)
	Line    func(*report.Run) ([]report.File, error)
}

// Reports lists the report formats by name.
func Reports() []ReportFormat {
	return []ReportFormat{
		{
			Name:    "annotations",
			Summary: "workflow commands, which a CI service shows beside the lines of a plan",
			Write:   plain(annotations.Write),
		},
		{
			Name:    "codequality",
			Summary: "Code Quality JSON, which a CI service shows in a merge request",
			Write:   plain(codequality.Write),
		},
		{
			Name:    "json",
			Summary: "findings with their places, for programs",
			Write:   plain(jsonreport.Write),
		},
		{
			Name:    "junit",
			Summary: "JUnit XML, a case a plan and size, for a CI service's list of tests",
			Write:   plain(junit.Write),
		},
		{
			Name:    "lines",
			Summary: "a finding a line, path:line:col: level: text [rule], for editors",
			Write:   plain(lines.Write),
		},
		{
			Name:    "markdown",
			Summary: "a comment for a pull request",
			Write:   plain(markdown.Write),
		},
		{
			Name:    "sarif",
			Summary: "SARIF 2.1.0, for code scanning and editors",
			Write: func(w io.Writer, r *report.Run, o Options) error {
				return sarif.Write(w, r, sarif.Options{Version: o.Version, FailOn: o.FailOn})
			},
		},
		{
			Name:    "text",
			Summary: "findings with the lines of the plan they are about, for people",
			Write: func(w io.Writer, r *report.Run, o Options) error {
				return text.Write(w, r, text.Options{Color: o.Color, Width: o.Width, Verbose: o.Verbose, Only: o.Only, Gone: o.Gone})
			},
		},
	}
}

// plain is the writer of a format that has no options.
func plain(write func(io.Writer, *report.Run) error) func(io.Writer, *report.Run, Options) error {
	return func(w io.Writer, r *report.Run, _ Options) error { return write(w, r) }
}

// Exports lists the export formats by name.
func Exports() []ExportFormat {
	return []ExportFormat{
		{
			Name:    "csv",
			Summary: "every table as a file of comma-separated values",
			Plan:    csvPlan,
			Line:    csvLine,
		},
		{
			Name:    "json",
			Summary: "all tables of a plan in one file, with exact values and their working",
			Plan:    jsonPlan,
			Line:    jsonLine,
		},
		{
			Name:    "svg",
			Summary: "pictures of the quilt, of its units and of the cutting layouts, to scale",
			Plan:    svgPlan,
			Line:    func(*report.Run) ([]report.File, error) { return nil, nil },
		},
		{
			Name:    "xlsx",
			Summary: "two workbooks a plan, ready to print, with live formulas over their inputs: what is handed on, and beside it papers, checks and workings",
			Plan:    xlsxPlan,
			Line:    xlsxLine,
		},
	}
}

// Report looks a report format up.
func Report(name string) (ReportFormat, bool) {
	for _, f := range Reports() {
		if f.Name == name {
			return f, true
		}
	}
	return ReportFormat{}, false
}

// Export looks an export format up.
func Export(name string) (ExportFormat, bool) {
	for _, f := range Exports() {
		if f.Name == name {
			return f, true
		}
	}
	return ExportFormat{}, false
}

// lineName names the line's files; a plan with this id would share a folder
// with them, and package store refuses to write one file twice.
const lineName = "line"

var errNoID = errors.New("the plan has no id to name its files by")

func csvPlan(p *report.Plan) ([]report.File, error) {
	return csvFiles(p.ID, p.Sheets, csvtable.Style{Currency: p.Currency, Unproved: !p.Proved})
}

func csvLine(r *report.Run) ([]report.File, error) {
	return csvFiles(lineName, r.Sheets, csvtable.Style{Currency: r.Currency})
}

func csvFiles(folder string, sheets []report.Sheet, style csvtable.Style) ([]report.File, error) {
	if folder == "" {
		return nil, fmt.Errorf("export csv: %w", errNoID)
	}
	named, err := csvtable.Name(sheets)
	if err != nil {
		return nil, fmt.Errorf("export csv of %s: %w", folder, err)
	}
	var files []report.File
	for _, n := range named {
		files = append(files, report.File{Name: folder + "/" + n.Name + ".csv", Bytes: csvtable.Bytes(n.Table, style)})
	}
	return files, nil
}

func jsonPlan(p *report.Plan) ([]report.File, error) {
	b, err := jsontable.Plan(p)
	return one(p.ID, p.ID+"/"+p.ID+".json", b, err)
}

func jsonLine(r *report.Run) ([]report.File, error) {
	if len(r.Sheets) == 0 {
		return nil, nil
	}
	b, err := jsontable.Line(r)
	return one(lineName, lineName+".json", b, err)
}

func svgPlan(p *report.Plan) ([]report.File, error) {
	if p.ID == "" {
		return nil, fmt.Errorf("export svg: %w", errNoID)
	}
	var files []report.File
	for _, n := range svg.Name(p.Sheets) {
		files = append(files, report.File{Name: p.ID + "/" + n.Name + ".svg", Bytes: svg.Bytes(n.Picture, p.Proved)})
	}
	return files, nil
}

func xlsxPlan(p *report.Plan) ([]report.File, error) {
	return two(p.ID, p.ID+"/"+p.ID, func() ([]byte, error) { return xlsx.Plan(p) }, func() ([]byte, error) { return xlsx.Papers(p) })
}

func xlsxLine(r *report.Run) ([]report.File, error) {
	if len(r.Sheets) == 0 {
		return nil, nil
	}
	return two(lineName, lineName, func() ([]byte, error) { return xlsx.Line(r) }, func() ([]byte, error) { return xlsx.LinePapers(r) })
}

// two are a workbook and the one beside it, which may be empty and is not written then.
func two(id, name string, first, beside func() ([]byte, error)) ([]report.File, error) {
	b, err := first()
	files, err := one(id, name+".xlsx", b, err)
	if err != nil {
		return nil, err
	}
	b, err = beside()
	if err == nil && b == nil {
		return files, nil
	}
	more, err := one(id, name+"-papers.xlsx", b, err)
	return append(files, more...), err
}

func one(id, name string, b []byte, err error) ([]report.File, error) {
	if id == "" {
		err = errNoID
	}
	if err != nil {
		return nil, fmt.Errorf("export %s: %w", name, err)
	}
	return []report.File{{Name: name, Bytes: b}}, nil
}

// ReportSchema is the JSON Schema of the json report.
func ReportSchema() []byte { return jsonreport.Schema() }

// Shown is the name of a file or folder for a line that a person or a CI
// service reads: as it is, or quoted where a terminal or a service would obey
// something in it.
func Shown(name string) string { return words.Name(filepath.ToSlash(name)) }

// OneLine is a text that may name files, such as an error, as one line that
// nobody obeys.
func OneLine(text string) string { return words.Line(text) }
