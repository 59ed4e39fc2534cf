package tabulate

import (
	"strings"

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
	Excused  []report.Excused // of the plan's own findings
	Studio   string
	Stop     func() bool // tells that nobody waits for the sheets any more, which are then left as they are; may be nil
	works    workings
}

// Plan is the sheets of a plan's workbooks: what is handed on with it first, then papers,
// layouts and figures of each size, and checks.
func Plan(in Input) []report.Sheet {
	in.works = workings{}
	kits := in.kits()
	pictures, undrawn := in.quiltPictures()
	tops, units := topsAndUnits(pictures)
	sheets := []report.Sheet{in.proofSheet(tops, kits), in.youWillNeed()}
	sheets = append(sheets, in.cards(tops, kits)...)
	sheets = append(sheets, in.allCuts(), in.steps(units))
	if costing, ok := in.kitSheet(); ok {
		sheets = append(sheets, costing)
	}
	beside := in.papers(kits, tops)
	for _, s := range in.Sizes {
		if in.stopped() {
			return sheets
		}
		beside = append(beside, cutList(s, in.cutPictures()))
	}
	for _, s := range in.Sizes {
		if in.stopped() {
			return sheets
		}
		beside = append(beside, sewing(s, in.works))
	}
	beside = append(beside, in.requirements(), in.checks(pictures, undrawn))
	for i := range beside {
		beside[i].Aside = true
	}
	sheets = append(sheets, beside...)
	hang(sheets, mostPictures)
	return sheets
}

// topsAndUnits are the pictures of tops, and those of what they are sewn from.
func topsAndUnits(all []report.Picture) (tops, units []report.Picture) {
	for _, p := range all {
		if strings.HasPrefix(p.ID, topPrefix) {
			tops = append(tops, p)
		} else {
			units = append(units, p)
		}
	}
	return tops, units
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
