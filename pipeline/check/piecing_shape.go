package check

import (
	"fmt"
	"slices"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// shapeChecks are about pieces that are no rectangles.
var shapeChecks = []Check{
	{
		Rule: "piecing/mosaic-area", Level: diag.Error, Lesser: diag.Note, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the pieces of a mosaic do not cover its finished size",
		Why:     "How the pieces of a star or a rosette fit is drawn in the pattern; what they cover can be added up. Seven diamonds where eight are meant leave a hole, and so does a corner square of another size. What differs by less than an eighth of an inch on every side comes of sides that are on no ruler, and is a note. A template counts as anything from nothing to the box that it fills or its stated area, and applique as nothing, since it lies on top. Pieces that are trimmed at the edges reach over them by no more than they are long. Areas are derived from geometry.",
		Fix:     "correct the number of pieces, their sizes or the finished size; where pieces reach over the edges, say that these are trimmed",
		Run:     faults(derive.MosaicArea),
	},
	{
		Rule: "piecing/shape-strip", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the strip for hexagons or diamonds is narrower than they are, or the strip set for triangles not as wide",
		Why:     "A hexagon or diamond is as high as its strip less two seam allowances, and a triangle as its strip set less three, or two. Cut from a narrower strip every one is smaller, and a star of eight takes the difference eight times. Derived from geometry.",
		Fix:     "cut the strip as wide as geometry asks for, or state the smaller side",
		Run:     faults(derive.ShapeStrip),
	},
	{
		Rule: "piecing/template-area", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "a template piece is said to be larger than the box it is cut from",
		Why:     "A piece lies inside the box it is cut from. A petal of 60 sq in does not come out of 6 x 9 in: one of the two numbers is of another size of the pattern.",
		Fix:     "measure the template again, seam allowances included, and correct its box or its area",
		Run:     faults(derive.TemplateArea),
	},
	{
		Rule: "piecing/triangle-row", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "a row with triangles of 60 degrees does not close to a rectangle",
		Why:     "Triangles of 60 degrees stand up and down in turn, and only a half triangle at each end makes the row square. A rectangle or a turned triangle between them leaves a gap. Derived from geometry.",
		Fix:     "begin and end the row with a half triangle, whole ones between them, none of them on its side",
		Run:     triangleRows,
	},
	{
		Rule: "tools/no-60-degree-line", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "shapes or segments are cut at 60 or 45 degrees and no ruler has that line",
		Why:     "The sloping cuts are set by a line of the ruler. A 45-degree line gives triangles of 60 degrees that do not meet, and half a degree off gives a star of eight that does not lie flat.",
		Fix:     "name a ruler with the line, or add the line to a ruler that has it",
		Run:     noSlantLine,
	},
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
		if room, ok := part.Room.(derive.Holding); ok {
			for _, row := range room.Rows() {
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
				Ways:    ways(advise("begin and end it with a half triangle and put whole ones between them")),
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
		case end && h.Kind != plan.HalfTriangle60:
			return c.At, fmt.Sprintf("has the whole triangle %q at its end", c.Part.Text)
		case !end && h.Kind == plan.HalfTriangle60:
			return c.At, fmt.Sprintf("has the half triangle %q inside it", c.Part.Text)
		}
	}
	if len(row) == 1 {
		return row[0].At, fmt.Sprintf("is the half triangle %q alone", row[0].Part.Text)
	}
	return source.Range{}, ""
}

func (p *Pass) shape(c plan.Cell) *derive.Shape {
	if part := p.Size.Part(c.Part.Text); part != nil && part.Shape != nil && part.Shape.Kind.Triangular() {
		return part.Shape
	}
	return nil
}

func noSlantLine(p *Pass) {
	rulers := p.Size.Of.Tools.Rulers
	if len(rulers) == 0 {
		return
	}
	told := map[int]bool{}
	for _, part := range p.Size.Parts {
		room, ok := part.Room.(derive.Angled)
		if !ok {
			continue
		}
		angle := room.Degrees()
		if angle == 0 || told[angle] || slices.ContainsFunc(rulers, func(r plan.Ruler) bool { return r.Angle(angle) }) {
			continue
		}
		told[angle] = true // one finding for each angle is enough
		p.Report(p.rulersAt(part), Finding{
			Message: fmt.Sprintf("%q is cut at %d degrees and none of the rulers named has a %d-degree line", part.Name.Text, angle, angle),
			Ways:    append(p.addAngle(rulers, angle), advise(fmt.Sprintf("name a ruler that has a %d-degree line", angle))),
			Related: p.madeHere(part),
		})
	}
}

func (p *Pass) madeHere(part *derive.Part) []Related {
	if p.rulersAt(part) == part.Name.At {
		return nil
	}
	return []Related{{part.Name.At, "it is cut here"}}
}
