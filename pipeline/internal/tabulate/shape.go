package tabulate

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// measured is the size that a part should measure as it is: of a triangle the
// box round it as it is cut, not its place in a row.
func measured(p *derive.Part) piecing.Box {
	if p.Shape != nil {
		return p.Shape.Cut
	}
	return p.Box
}

func howShape(p *derive.Part, u measure.Unit) string {
	h := p.Shape
	return fmt.Sprintf("cut from %s %s wide of %s, %d from each, %s", many(h.Count, "strip"), h.Height.Format(u), h.Fabric.Role.Text, h.Yield.Each, cutShape(p))
}

// cutShape says how a strip is cut into triangles.
func cutShape(p *derive.Part) string {
	if p.Shape.Half {
		return "half triangles of 60 degrees in pairs, head to tail; a pair that slopes the other way gives their mirror images"
	}
	if p.Shape.Blunt {
		return "triangles of 60 degrees, up and down in turn, their tips cut off"
	}
	return "triangles of 60 degrees, up and down in turn"
}

// strip says what becomes of a strip that is cut whole across the fabric.
func (c cutter) strip(n derive.Need) string {
	if p := c.s.Part(n.For.Text); p != nil && p.Shape != nil {
		return fmt.Sprintf("Cut into %s, %d from a whole strip.", cutShape(p), p.Shape.Yield.Each)
	}
	return "Use whole."
}

func shapeNote(p *derive.Part, u measure.Unit) string {
	what := "triangle"
	if p.Shape.Half {
		what = "half triangle"
	}
	return slackNote(what, p.Shape.Yield, u)
}

func howTemplate(s *derive.Size, p *derive.Part, op plan.Template) string {
	u, c := s.Plan.Units, p.Unit.Pieces[0]
	text := "cut round its template from " + c.Width.Bare(u) + " x " + c.Height.Format(u) + " of " + c.Fabric.Role.Text
	switch op.Grain {
	case plan.GrainAlong:
		text += ", the template upright along the selvages"
	case plan.GrainAcross:
		text += ", the template upright across the selvages"
	case plan.GrainBias:
		text += ", the template on the bias"
	}
	return text
}

// templateNote is how much of its box the piece leaves, where the plan gives
// its area, and that nothing proves its outline.
func templateNote(op plan.Template, u measure.Unit) string {
	note := "not proved: its outline and fit are the template's"
	if op.Area == nil {
		return note
	}
	box := measure.Area(op.Box[0].Surd(), op.Box[1].Surd())
	return note + "; fills " + measure.FormatArea(op.AreaIn(u), u) + " of a box of " + measure.FormatArea(box, u)
}

// unproved are the template pieces: only the boxes they are cut from are
// proved.
func (in Input) unproved() []report.Row {
	var names []string
	for _, s := range in.Sizes {
		for _, p := range s.Parts {
			if _, ok := p.Operation.(plan.Template); ok && p.Needed > 0 {
				names = append(names, p.Name.Text)
			}
		}
	}
	if len(names) == 0 {
		return nil
	}
	return []report.Row{row(report.T("not proved"), report.T("The outline and fit of pieces cut round a template: "+strings.Join(unique(names), ", ")+". The box that each is cut from is counted, and the finished size is the plan's word."))}
}
