package xlsx

import (
	"errors"
	"slices"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// heading is what a workbook says of itself on every page.
type heading struct {
	title    string
	revision string
	about    string // what the workbook is, for its properties
	subject  string // what it is about: "this plan"
	currency measure.Currency
	metric   bool // A4 rather than letter paper
	proved   bool
	source   *source.File // nil for the line
	stop     func() bool  // may be nil
}

// Plan is the plan's workbook: what is handed on with it. It is an error if the
// plan has no sheets, or if a formula refers to a cell that is not there, or if
// it was told to stop.
func Plan(p *report.Plan) ([]byte, error) { return write(ofPlan(p), aside(p.Sheets, false)) }

// Papers is the workbook beside the plan's: papers that leave the desk, checks and
// how all figures came about; empty where there are none. Errors are those of
// [Plan].
func Papers(p *report.Plan) ([]byte, error) { return papers(ofPlan(p), p.Sheets) }

func ofPlan(p *report.Plan) heading {
	return heading{
		title:    p.Title,
		revision: p.Revision,
		about:    "Figures of a quilt pattern",
		subject:  "this plan",
		currency: p.Currency,
		metric:   p.Units == measure.Cm,
		proved:   p.Proved,
		source:   p.Source,
		stop:     p.Stop,
	}
}

// Line is the workbook of the whole line. It counts as proved when no finding
// of the run is an error. Errors are those of [Plan].
func Line(r *report.Run) ([]byte, error) { return write(ofLine(r), aside(r.Sheets, false)) }

// LinePapers is the workbook beside the line's, as [Papers].
func LinePapers(r *report.Run) ([]byte, error) { return papers(ofLine(r), r.Sheets) }

func ofLine(r *report.Run) heading {
	return heading{
		title:    r.Studio,
		about:    "Figures of a line of quilt patterns",
		subject:  "a plan of this line",
		currency: r.Currency,
		metric:   isMetric(r.Sheets),
		proved:   diag.Worst(r.All()) < diag.Error,
	}
}

// aside are the sheets of the second workbook, or those of the first.
func aside(sheets []report.Sheet, second bool) []report.Sheet {
	return slices.DeleteFunc(slices.Clone(sheets), func(s report.Sheet) bool { return s.Aside != second })
}

func papers(h heading, sheets []report.Sheet) ([]byte, error) {
	second := aside(sheets, true)
	if workings, ok := workingsSheet(sheets, h.source); ok {
		second = append(second, workings)
	}
	if len(second) == 0 {
		return nil, nil
	}
	return write(h, second)
}

// isMetric reports whether the first length of the sheets is in centimetres: a
// line's plans may differ, and a run has no unit of its own.
func isMetric(sheets []report.Sheet) bool {
	for _, s := range sheets {
		for _, t := range s.Tables {
			for _, r := range t.Rows {
				for _, c := range r.Cells {
					if c.Kind == report.Length || c.Kind == report.Fabric {
						return c.Unit == measure.Cm
					}
				}
			}
		}
	}
	return false
}

func write(h heading, sheets []report.Sheet) ([]byte, error) {
	if len(sheets) == 0 {
		return nil, errors.New("a workbook needs at least one sheet")
	}
	pages := layOut(h, sheets)
	b := newBook(h, pages)
	if err := b.build(pages); err != nil {
		return nil, err
	}
	return b.bytes()
}
