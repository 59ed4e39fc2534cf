package check

import (
	"fmt"
	"slices"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// shapeChecks are about pieces that are no rectangles.
var shapeChecks = []Check{
	{
		Rule: "piecing/mosaic-area", Level: diag.Error, Lesser: diag.Note, Since: "0.1.0", Scope: Size,
		Summary: "the pieces of a mosaic do not cover its finished size",
		Why:     "How the pieces of a star or a rosette fit is drawn in the pattern; what they cover can be added up. Seven diamonds where eight are meant leave a hole, and so does a corner square of another size. What differs by less than an eighth of an inch on every side comes of sides that are on no ruler, and is a note. A template counts as anything from nothing to the box that it fills or its stated area, and applique as nothing, since it lies on top. Pieces that are trimmed at the edges reach over them by no more than they are long. Areas are derived from geometry.",
		Fix:     "correct the number of pieces, their sizes or the finished size; where pieces reach over the edges, say that these are trimmed",
		Run:     mosaicArea,
	},
	{
		Rule: "piecing/shape-strip", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the strip for hexagons or diamonds is narrower than they are, or the strip set for triangles not as wide",
		Why:     "A hexagon or diamond is as high as its strip less two seam allowances, and a triangle as its strip set less three, or two. Cut from a narrower strip every one is smaller, and a star of eight takes the difference eight times. Derived from geometry.",
		Fix:     "cut the strip as wide as geometry asks for, or state the smaller side",
		Run:     shapeStrip,
	},
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
		Summary: "shapes or segments are cut at 60 or 45 degrees and no ruler has that line",
		Why:     "The sloping cuts are set by a line of the ruler. A 45-degree line gives triangles of 60 degrees that do not meet, and half a degree off gives a star of eight that does not lie flat.",
		Fix:     "name a ruler with the line, or add the line to a ruler that has it",
		Run:     noSlantLine,
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

func mosaicArea(p *Pass) {
	for _, part := range p.Size.Parts {
		m := part.Mosaic
		if m == nil || !m.Known {
			continue
		}
		op := part.Operation.(plan.Mosaic)
		off, why := p.coverage(op, m)
		if off.IsZero() {
			continue
		}
		f := Finding{
			Message: fmt.Sprintf("the pieces of %q cover %s", part.Name.Text, why),
			Hint:    "count the pieces, and compare their finished sizes with the drawing",
		}
		eighth := measure.Area(op.Finished[0].Surd().Add(op.Finished[1].Surd()), (measure.Inch / 4).Surd())
		if m.Exact() && measure.Max(off, off.Neg()).Cmp(eighth) <= 0 {
			f.Level, f.Hint = diag.Note, "nothing, if the sides were rounded to the ruler: ease it in, or trim"
		}
		p.Report(op.Finished[0].At, f)
	}
}

// coverage is by how much the pieces of a mosaic cannot be right, and what they
// cover against what they should; zero where nothing speaks against them.
func (p *Pass) coverage(op plan.Mosaic, m *derive.Mosaic) (off measure.Surd, why string) {
	finished := p.pair(op.Finished[0].Length, op.Finished[1].Length) + " finished"
	covers := func(bound string, a measure.Surd) string {
		if m.Exact() {
			bound = ""
		}
		return fmt.Sprintf("%s%s, and %s", bound, measure.FormatArea(a, p.Plan.Units), finished)
	}
	short, over := m.Most.Sub(m.Wanted), m.Least.Sub(m.Wanted)
	wanted := " are " + measure.FormatArea(m.Wanted, p.Plan.Units)
	switch {
	case short.Sign() < 0:
		return short, covers("at most ", m.Most) + wanted
	case over.Sign() > 0 && !op.Trimmed:
		return over, covers("at least ", m.Least) + wanted
	case op.Trimmed && m.Least.Cmp(m.Reach) > 0:
		return m.Least.Sub(m.Reach), covers("at least ", m.Least) + " are reached by no more than " + measure.FormatArea(m.Reach, p.Plan.Units) + " of them, if all others are trimmed away"
	}
	return off, ""
}

func shapeStrip(p *Pass) {
	for _, part := range p.Size.Parts {
		op, ok := part.Operation.(plan.Shape)
		if !ok || part.Shape == nil {
			continue
		}
		if part.Shape.Set != nil {
			p.shapeSet(part, op)
			continue
		}
		if part.Shape.Over().Sign() >= 0 {
			continue
		}
		p.Report(op.Strip.At, Finding{
			Message: fmt.Sprintf("the strip for %q is %s wide, and a %s of %s takes %s", part.Name.Text, p.length(op.Strip.Length), op.Kind.Noun(),
				p.length(op.Finished.Length), part.Shape.Exact.AsCut(p.Plan.Units)),
			Hint:    "cut it " + p.needs(part.Shape.Exact.CeilTo(p.rulerGrid())) + " wide",
			Related: []Related{{op.Finished.At, "the finished side"}},
		})
	}
}

// shapeSet: triangles are as high as their strip set makes them, so it must be
// exactly as wide as they take.
func (p *Pass) shapeSet(part *derive.Part, op plan.Shape) {
	h := part.Shape
	if h.Over().IsZero() {
		return
	}
	p.Report(op.Finished.At, Finding{
		Message: fmt.Sprintf("%q is cut from strip sets %s wide, and a %s %s high takes %s", part.Name.Text, p.length(h.Height), op.Kind.Noun(),
			p.length(op.Finished.Length), h.Exact.AsCut(p.Plan.Units)),
		Hint:    "make the strips of the set wider or narrower, or the triangles " + op.Finished.Surd().Add(h.Over()).Format(p.Plan.Units) + " high",
		Related: []Related{{op.Set.At, "the strip set"}},
	})
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
		angle := slant(part)
		if angle == 0 || told[angle] || slices.ContainsFunc(rulers, func(r plan.Ruler) bool { return r.Angle(angle) }) {
			continue
		}
		told[angle] = true // one finding for each angle is enough
		p.Report(p.rulersAt(part), Finding{
			Message: fmt.Sprintf("%q is cut at %d degrees and none of the rulers named has a %d-degree line", part.Name.Text, angle, angle),
			Hint:    fmt.Sprintf("add %d to the angles of a ruler that has the line, or name one that does", angle),
			Related: p.madeHere(part),
		})
	}
}

// slant is the angle in degrees of the cuts across a part's strips, 0 where
// they are square.
func slant(part *derive.Part) int {
	switch op := part.Operation.(type) {
	case plan.Shape:
		if op.Kind == plan.Diamond45 {
			return 45
		}
		return 60
	case plan.StripSet:
		return op.Angle.N
	}
	return 0
}

func (p *Pass) madeHere(part *derive.Part) []Related {
	if p.rulersAt(part) == part.Name.At {
		return nil
	}
	return []Related{{part.Name.At, "it is cut here"}}
}
