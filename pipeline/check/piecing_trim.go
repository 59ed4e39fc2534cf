package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

func trimOverUnit(p *Pass) {
	for _, part := range p.Size.Parts {
		for _, t := range part.Room.Trims() {
			if t.DownTo.Given() && !t.To.Given() {
				p.reportNoLine(part, t)
				break
			}
			if t.To.Given() && t.To.Surd().Cmp(t.From) > 0 {
				p.reportTrim(part, t.To, t.From)
				break
			}
		}
	}
}

// reportNoLine reports a part that is to be trimmed down to a grid coarser than it
// is large.
func (p *Pass) reportNoLine(part *derive.Part, t derive.Trimming) {
	p.Report(t.DownTo.At, Finding{
		Message: fmt.Sprintf("%q is to be trimmed down to a line of %s and measures only %s: the first line is %s", part.Name.Text,
			p.length(t.DownTo.Length), t.From.Format(p.Plan.Units), p.length(t.DownTo.Length)),
		Ways:  ways(mend(p.putLength("trim down to lines of", t.DownTo.At, p.rulerGrid()))),
		About: geometryOf(part), Root: true,
	})
}

func (p *Pass) reportTrim(part *derive.Part, trim plan.Length, side measure.Surd) {
	p.Report(trim.At, Finding{
		Message: fmt.Sprintf("%q is to be trimmed to %s and measures only %s", part.Name.Text,
			p.length(trim.Length), side.Format(p.Plan.Units)),
		Ways:  p.trimmable(part, trim, side),
		About: geometryOf(part), Root: true,
	})
}

// trimmable is the way out for a part that is smaller than its trim.
func (p *Pass) trimmable(part *derive.Part, trim plan.Length, side measure.Surd) []diag.Way {
	smaller := noted(mend(p.putLength("trim to", trim.At, side.FloorTo(p.rulerGrid()))), "or less")
	if room, ok := part.Room.(derive.Resized); ok {
		return ways(smaller, p.cutSquares(part, room, trim.Surd()))
	}
	return ways(smaller, advise("call the larger size nominal in the pattern"))
}
