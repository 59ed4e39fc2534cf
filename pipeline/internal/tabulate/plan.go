package tabulate

import (
	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Input is a plan and all that is known of it.
type Input struct {
	Plan     *plan.Plan
	Sizes    []*derive.Size
	Project  *plan.Project
	Kits     []*kit.Kit // of its sizes
	Alone    line.Alone // what is ordered for the kits by themselves
	Findings []diag.Finding
	Stop     func() bool // tells that nobody waits for the sheets any more, which are then left as they are; may be nil
	works    workings
}

// Plan is the sheets of a plan's workbook.
func Plan(in Input) []report.Sheet {
	in.works = workings{}
	sheets := []report.Sheet{in.overview(), in.requirements()}
	var lists []report.Sheet
	for _, s := range in.Sizes {
		if in.stopped() {
			return sheets
		}
		lists = append(lists, cutList(s, in.cutPictures()))
	}
	sheets = append(sheets, lists...)
	for _, s := range in.Sizes {
		if in.stopped() {
			return sheets
		}
		sheets = append(sheets, sewing(s, in.works))
	}
	if costing, ok := in.kitSheet(); ok {
		sheets = append(sheets, costing)
	}
	sheets = append(sheets, in.papers(in.kits(), lists)...)
	hang(sheets, mostPictures)
	return sheets
}

// stopped tells that nobody waits for the sheets any more.
func (in Input) stopped() bool { return in.Stop != nil && in.Stop() }

func (in Input) units() measure.Unit { return in.Plan.Units }

// unitName heads a column of lengths.
func unitName(u measure.Unit) string { return u.String() }

// fabricUnit heads a column of fabric lengths.
func fabricUnit(u measure.Unit) string {
	if u == measure.Cm {
		return "m"
	}
	return "yd"
}

func row(cells ...report.Cell) report.Row { return report.Row{Cells: cells} }

// are is the verb that goes with a number of things.
func are(n int64) string { return goes(n, "is", "are") }

// goes is the form of a verb that goes with a number of things.
func goes(n int64, one, several string) string {
	if n == 1 {
		return one
	}
	return several
}
