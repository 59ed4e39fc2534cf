package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// shapeChecks are about triangles of 60 degrees and template pieces.
var shapeChecks = []Check{
	{
		Rule: "piecing/template-area", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "a template piece is said to be larger than the box it is cut from",
		Why:     "A piece lies inside the box it is cut from. A petal of 60 sq in does not come out of 6 x 9 in: one of the two numbers is of another size of the pattern.",
		Fix:     "measure the template again, seam allowances included, and correct its box or its area",
		Run:     templateArea,
	},
	{
		Rule: "piecing/triangle-row", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "a row with triangles of 60 degrees does not close to a rectangle",
		Why:     "Triangles of 60 degrees stand up and down in turn, and only a half triangle at each end makes the row square. A rectangle or a turned triangle between them leaves a gap. Derived from geometry.",
		Fix:     "begin and end the row with a half triangle, whole ones between them, none of them on its side",
		Run:     triangleRows,
	},
	{
		Rule: "tools/no-60-degree-line", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "triangles of 60 degrees are cut and no ruler has a 60-degree line",
		Why:     "The sloping cuts are set by the ruler's 60-degree line. A 45-degree line gives triangles that do not meet.",
		Fix:     "name a ruler with a 60-degree line, or add the line to a ruler that has it",
		Run:     noSixty,
	},
}

func templateArea(p *Pass) {
	for _, part := range p.Size.Parts {
		op, ok := part.Operation.(plan.Template)
		if !ok || op.Area == nil {
			continue
		}
		area, box := op.AreaIn(p.Plan.Units), measure.Area(op.Box[0].Surd(), op.Box[1].Surd())
		if area.Cmp(box) <= 0 {
			continue
		}
		p.Report(op.AreaAt, Finding{
			Message: fmt.Sprintf("%q is said to cover %s, and its box of %s only holds %s", part.Name.Text, measure.FormatArea(area, p.Plan.Units),
				p.pair(op.Box[0].Length, op.Box[1].Length), measure.FormatArea(box, p.Plan.Units)),
			Hint:    "correct the area or the box",
			Related: []Related{{op.Box[0].At, "the box"}},
		})
	}
}

// rowOf is a row of cells and who has it.
type rowOf struct {
	by    string
	about Subject
	cells []plan.Cell
}

func (p *Pass) allRows() []rowOf {
	var out []rowOf
	for _, part := range p.Size.Parts {
		if op, ok := part.Operation.(plan.Rows); ok {
			for _, row := range op.Rows {
				out = append(out, rowOf{fmt.Sprintf("%q", part.Name.Text), geometryOf(part), row})
			}
		}
	}
	if g := p.Size.Of.Layout.Grid; g != nil {
		for _, row := range g.Blocks {
			if !g.Written {
				row = repeated(row, g.Columns.N)
			}
			out = append(out, rowOf{"the layout", Subject{Kind: derive.TopSize}, row})
		}
	}
	return out
}

// repeated is an arrangement's row as far as the layout's columns go.
func repeated(row []plan.Cell, columns int) []plan.Cell {
	var out []plan.Cell
	for c := range columns {
		if len(row) > 0 {
			out = append(out, row[c%len(row)])
		}
	}
	return out
}

func triangleRows(p *Pass) {
	for _, r := range p.allRows() {
		if at, why := p.gap(r.cells); why != "" {
			p.Report(at, Finding{
				Message: fmt.Sprintf("a row of %s %s", r.by, why),
				Hint:    "begin and end it with a half triangle and put whole ones between them",
				About:   r.about, Root: true,
			})
		}
	}
}

// gap is the first place where a row with triangles does not close, and why;
// "" where it does, or where there are no triangles.
func (p *Pass) gap(row []plan.Cell) (source.Range, string) {
	triangles := false
	for _, c := range row {
		triangles = triangles || p.shape(c) != nil
	}
	if !triangles {
		return source.Range{}, ""
	}
	for i, c := range row {
		h, end := p.shape(c), i == 0 || i == len(row)-1
		switch {
		case h == nil:
			return c.At, fmt.Sprintf("has %q among triangles of 60 degrees", c.Part.Text)
		case c.Sideways():
			return c.At, fmt.Sprintf("has the triangle %q on its side", c.Part.Text)
		case end && !h.Half:
			return c.At, fmt.Sprintf("has the whole triangle %q at its end", c.Part.Text)
		case !end && h.Half:
			return c.At, fmt.Sprintf("has the half triangle %q inside it", c.Part.Text)
		}
	}
	if len(row) == 1 {
		return row[0].At, fmt.Sprintf("is the half triangle %q alone", row[0].Part.Text)
	}
	return source.Range{}, ""
}

func (p *Pass) shape(c plan.Cell) *derive.Shape {
	if part := p.Size.Part(c.Part.Text); part != nil {
		return part.Shape
	}
	return nil
}

func noSixty(p *Pass) {
	rulers := p.Size.Of.Tools.Rulers
	for i := range rulers {
		if rulers[i].Angle(60) {
			return
		}
	}
	for _, part := range p.Size.Parts {
		if part.Shape == nil || len(rulers) == 0 {
			continue
		}
		p.Report(p.rulersAt(part), Finding{
			Message: fmt.Sprintf("%q is cut at 60 degrees and none of the rulers named has a 60-degree line", part.Name.Text),
			Hint:    "add 60 to the angles of a ruler that has the line, or name one that does",
			Related: p.madeHere(part),
		})
		return // one finding is enough
	}
}

func (p *Pass) madeHere(part *derive.Part) []Related {
	if p.rulersAt(part) == part.Name.At {
		return nil
	}
	return []Related{{part.Name.At, "it is cut here"}}
}
