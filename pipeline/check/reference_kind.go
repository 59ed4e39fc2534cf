package check

import (
	"fmt"

	"yardproof/schema/plan"
	"yardproof/schema/source"
)

func wrongKinds(p *Pass) {
	s := p.Size.Of
	for _, m := range s.Mentions() {
		fabric, part := p.Size.Fabric(m.Name.Text) != nil, p.Size.Part(m.Name.Text) != nil
		switch {
		case m.Fabric && !fabric && part:
			p.Report(m.Name.At, Finding{
				Message: fmt.Sprintf("%s needs a fabric, and %q is a part", m.By, m.Name.Text),
				Hint:    writeName(m.Name.Text, roles(s)),
			})
		case !m.Fabric && !part && fabric:
			p.Report(m.Name.At, Finding{
				Message: fmt.Sprintf("%s needs a part, and %q is a fabric", m.By, m.Name.Text),
				Hint:    "make a part that is cut from it and name that",
			})
		}
	}
	for i := range s.Parts {
		p.wrongIngredients(&s.Parts[i])
	}
	p.wrongCells("the layout", gridCells(s.Layout.Grid), true)
	p.wrongUnits(s.Layout.Borders)
}

// wrongUnits reports pieced borders of bare triangles.
func (p *Pass) wrongUnits(borders []plan.Border) {
	for _, b := range borders {
		if b.Part.Given() {
			p.wrongCells(fmt.Sprintf("border %q", b.Name.Text), []plan.Cell{{Part: b.Part}}, false)
		}
	}
}

// wrongIngredients reports parts that an operation cannot be made of.
func (p *Pass) wrongIngredients(part *plan.Part) {
	by := fmt.Sprintf("%q", part.Name.Text)
	switch op := part.Operation.(type) {
	case plan.Tube:
		for _, t := range op.Sets {
			p.wrongSet("tube "+by, t)
		}
	case plan.TriangleSquare:
		for _, t := range op.Of {
			p.wrongTriangle(by, t, len(op.Of))
		}
	case plan.Rows:
		for _, row := range op.Rows {
			p.wrongCells(by, row, true)
		}
	case plan.Trim:
		p.wrongCells(by, []plan.Cell{{Part: op.Part}}, false)
	case plan.Hourglass:
		if op.HalfSquares.Given() {
			p.wrongHalfSquares(by, op.HalfSquares)
		}
	case plan.Recut:
		p.wrongCells(by, []plan.Cell{{Part: op.Part}}, false)
	case plan.Loop:
		p.wrongSet("loop "+by, op.Set)
	case plan.Shape:
		if op.Set.Given() {
			p.wrongSet("shape "+by, op.Set)
		}
	case plan.FlipCorners:
		p.wrongCells(by, []plan.Cell{{Part: op.Body}}, false)
	case plan.Setting:
		p.wrongCells(by, gridCells(op.Grid), false)
	case plan.Bordered:
		p.wrongCells(by, []plan.Cell{{Part: op.Part}}, false)
		p.wrongUnits(op.Borders)
	}
}

func (p *Pass) wrongSet(by string, name plan.Text) {
	part := p.Size.Part(name.Text)
	if part == nil {
		return
	}
	switch op := part.Operation.(type) {
	case plan.NotDerived:
	case plan.StripSet:
		if op.Segment.Given() {
			p.Report(name.At, Finding{
				Message: fmt.Sprintf("%s takes whole strip sets, and %q is cut into segments of %s", by, name.Text, p.length(op.Segment.Length)),
				Hint:    "make a strip set without a segment for it",
				Related: []Related{{op.Segment.At, "the segment"}},
			})
		}
	default:
		p.Report(name.At, Finding{
			Message: fmt.Sprintf("%s takes strip sets, and %q is none", by, name.Text),
			Hint:    "name a part made by strip_set",
			Related: []Related{{part.Name.At, "it is made here"}},
		})
	}
}

// wrongTriangle reports what is no triangle of the cut that so many triangles
// to a square take: two of squares cut once, four of squares cut twice.
func (p *Pass) wrongTriangle(by string, name plan.Text, count int) {
	part := p.Size.Part(name.Text)
	if part == nil {
		return
	}
	want, word := plan.CutOnce, "once"
	if count == 4 {
		want, word = plan.CutTwice, "twice"
	}
	switch op := part.Operation.(type) {
	case plan.NotDerived:
	case plan.Cut:
		if op.Halving != want {
			p.Report(name.At, Finding{
				Message: fmt.Sprintf("%s is sewn of %d triangles from squares cut %s diagonally, and %q is %s", by, count, word, name.Text, halved(op.Halving)),
				Hint:    fmt.Sprintf("cut %q with \"halved\": %q", name.Text, word),
				Related: []Related{{part.Name.At, "it is cut here"}},
			})
		}
	default:
		p.Report(name.At, Finding{
			Message: fmt.Sprintf("%s is sewn of %d triangles, and %q is not cut from fabric", by, count, name.Text),
			Hint:    fmt.Sprintf("name a part made by cut with \"halved\": %q", word),
			Related: []Related{{part.Name.At, "it is made here"}},
		})
	}
}

func halved(h plan.Halving) string {
	switch h {
	case plan.CutOnce:
		return "cut once"
	case plan.CutTwice:
		return "cut twice"
	}
	return "not cut diagonally"
}

// loose is what a part is that has no place in a grid, or in no row either, and
// the way out; "" for all that have one.
func loose(op plan.Operation, inRow bool) (what, hint string) {
	switch op := op.(type) {
	case plan.Shape:
		switch {
		case !op.Kind.Triangular():
			return op.Kind.Noun(), "sew it into a mosaic and name that"
		case !inRow:
			return op.Kind.Noun(), "sew the triangles into rows and name those"
		}
	case plan.StripSet:
		if op.Angle.Given() {
			return "segment cut at an angle", "sew it into a mosaic and name that"
		}
	}
	return "", ""
}

// wrongCells reports bare triangles where four-sided parts are meant, each
// triangle once. Triangles of 60 degrees may stand in rows.
func (p *Pass) wrongCells(by string, cells []plan.Cell, inRow bool) {
	told := map[string]bool{}
	for _, c := range cells {
		part := p.Size.Part(c.Part.Text)
		if part == nil || told[c.Part.Text] {
			continue
		}
		if what, hint := loose(part.Operation, inRow); what != "" {
			told[c.Part.Text] = true
			p.Report(c.Part.At, Finding{
				Message: fmt.Sprintf("%s needs a four-sided part with square corners, and %q is a %s", by, c.Part.Text, what),
				Hint:    hint,
				Related: []Related{{part.Name.At, "it is cut here"}},
			})
			continue
		}
		op, ok := part.Operation.(plan.Cut)
		if !ok || op.Halving == plan.Whole {
			continue
		}
		told[c.Part.Text] = true
		at := c.At
		if at == (source.Range{}) {
			at = c.Part.At
		}
		p.Report(at, Finding{
			Message: fmt.Sprintf("%s needs four-sided parts, and %q is a triangle", by, c.Part.Text),
			Hint:    "sew the triangles into a triangle_square and name that",
			Related: []Related{{part.Name.At, "the triangle is cut here"}},
		})
	}
}
