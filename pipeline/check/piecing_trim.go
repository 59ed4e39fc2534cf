package check

import (
	"fmt"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

func tipOffTube(p *Pass) {
	for _, part := range p.Size.Parts {
		if t := part.Tube; t != nil && t.Beyond > t.Seam {
			op := part.Operation.(plan.Tube)
			p.Report(op.Tip.Beyond.At, Finding{
				Message: fmt.Sprintf("the tip lies %s beyond the far seam of %q, and the raw edge is only %s beyond it",
					p.length(t.Beyond), part.Name.Text, p.length(t.Seam)),
				Hint:  fmt.Sprintf("lay the tip at most %s beyond the far seam", p.there(t.Seam)),
				About: geometryOf(part), Root: true,
			})
		}
	}
}

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
		Hint:  fmt.Sprintf("trim down to lines of %s", p.length(p.rulerGrid())),
		About: geometryOf(part), Root: true,
	})
}

func (p *Pass) reportTrim(part *derive.Part, trim plan.Length, side measure.Surd) {
	p.Report(trim.At, Finding{
		Message: fmt.Sprintf("%q is to be trimmed to %s and measures only %s", part.Name.Text,
			p.length(trim.Length), side.Format(p.Plan.Units)),
		Hint:  p.trimmable(part, trim, side),
		About: geometryOf(part), Root: true,
	})
}

// trimmable is the way out for a part that is smaller than its trim.
func (p *Pass) trimmable(part *derive.Part, trim plan.Length, side measure.Surd) string {
	hint := fmt.Sprintf("trim to %s or less", p.there(side.FloorTo(p.rulerGrid())))
	if cut, ok := p.recut(part, trim.Surd()); ok {
		return hint + ", or cut the squares " + cut
	}
	return hint + ", or call the larger size nominal in the pattern"
}

func tubeWidths(p *Pass) {
	for _, part := range p.Size.Parts {
		t := part.Tube
		if t == nil || t.Sets[0].Set.Width == t.Sets[1].Set.Width {
			continue
		}
		op := part.Operation.(plan.Tube)
		p.Report(cover([]plan.Cell{{At: op.Sets[0].At}, {At: op.Sets[1].At}}), Finding{
			Message: fmt.Sprintf("set %q is %s wide and set %q %s: they cannot be sewn into a tube",
				op.Sets[0].Text, p.length(t.Sets[0].Set.Width), op.Sets[1].Text, p.length(t.Sets[1].Set.Width)),
			Hint:  "give both sets as many strips of the same width",
			About: geometryOf(part), Root: true,
		})
	}
}

func triangleSizes(p *Pass) {
	for _, part := range p.Size.Parts {
		op, ok := part.Operation.(plan.TriangleSquare)
		if !ok || part.Triangle == nil {
			continue
		}
		first := p.Size.Part(op.Of[0].Text).Operation.(plan.Cut).Width
		for _, of := range op.Of[1:] {
			if cut := p.Size.Part(of.Text).Operation.(plan.Cut).Width; cut.Length != first.Length {
				p.Report(of.At, Finding{
					Message: fmt.Sprintf("%q is sewn of triangles from squares of %s and of %s", part.Name.Text, p.length(first.Length), p.length(cut.Length)),
					Hint:    fmt.Sprintf("cut the squares of %q and %q to one size", op.Of[0].Text, of.Text),
					About:   geometryOf(part), Root: true,
					Related: []Related{{first.At, "one size"}, {cut.At, "the other"}},
				})
				break
			}
		}
	}
}
