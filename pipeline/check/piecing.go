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

var piecingChecks = []Check{
	{
		Rule: "piecing/bias-outside", Level: diag.Note, Since: "0.1.0", Scope: Size,
		Summary: "the outer edge of the quilt top is cut on the bias",
		Why:     "Bias edges stretch. A top whose outer edge is bias ripples before the binding is on, unless a border on straight grain holds it.",
		Fix:     "add a border, or tell the maker how to hold the edge: add bias-outside to the cautions",
		Run:     biasOutside,
	},
	{
		Rule: "piecing/off-grid", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "a cut size does not lie on the ruler's grid",
		Why:     "Rotary rulers are marked in eighths of an inch (some lines at sixteenths) or in millimetres. A size between the lines is cut by guess, differently every time.",
		Fix:     "round the size to the ruler's grid: up if the unit is trimmed afterwards, to the nearest if it is not",
		Run:     offGrid,
	},
	{
		Rule: "piecing/column-widths", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the columns of a grid do not meet: blocks of one column differ in width",
		Why:     "Blocks that finish 4 1/2 and 6 in wide in a checkerboard fill every row alike, so every row adds up, and every second seam misses the one above it by 1 1/2 in. The rows of a layout written as rows need not meet, nor do those of a part; there only seams that miss by no more than two seam allowances are told of, as they were probably meant to meet. An error above 1/4 in, a warning above 1/8 in and in a part. Common practice, no source; the limits are this project's.",
		Fix:     "make the blocks of a column equally wide, or write rows that need not meet as rows of the layout",
		Run:     columnWidths,
	},
	{
		Rule: "piecing/row-drift", Level: diag.Warning, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "rows of one block or quilt differ in width by more than 1/8 in",
		Why:     "Small errors of rounded units add up along a row. Beyond 1/8 in the seams no longer meet without easing; beyond 1/4 in see piecing/row-widths. Common practice, no source; the limits are this project's.",
		Fix:     "trim the units to the drafted size, or choose cut sizes with a smaller error",
		Run:     rowDrift,
	},
	{
		Rule: "piecing/row-heights", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "parts sewn side by side differ in height by more than 1/16 in",
		Why:     "Parts of one row are sewn along their full height. A sixteenth can be eased in; more leaves a step in the edge and the next row cannot be sewn straight. Common practice, no source; the limit is this project's.",
		Fix:     "make the parts equally high, turn one of them, or trim them to one size",
		Run:     rowHeights,
	},
	{
		Rule: "piecing/row-widths", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "rows of one block or quilt differ in width by more than 1/4 in",
		Why:     "Rows are sewn to each other along their full width. A 12-in row against an 11 1/2-in row cannot be eased.",
		Fix:     "count the parts of each row, check their sizes and turns, or trim the units",
		Run:     rowWidths,
	},
	{
		Rule: "piecing/seam-differs", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "a seam differs from the plan's and nothing says why",
		Why:     "The seam is said once and everything follows from it. A quarter-inch formula sewn with an overlock seam is the commonest reason for blocks that come out small.",
		Fix:     "take the plan's seam, or give the reason as the seam's why",
		Run:     seamDiffers,
	},
	{
		Rule: "piecing/seam-eats-piece", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "nothing of a piece is left once its seams are sewn",
		Why:     "A strip cut 1/2 in wide and sewn with 1/4-in seams on both sides finishes at nothing.",
		Fix:     "cut the piece wider than two seam allowances, or sew a narrower seam",
		Run:     seamEatsPiece,
	},
	{
		Rule: "piecing/tip-off-tube", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the ruler's tip lies beyond the far raw edge of the tube",
		Why:     "Fabric ends at the raw edge. A tip beyond it cuts the corner off the square.",
		Fix:     "lay the tip between the far seam and the raw edge",
		Run:     faults(derive.TipOffTube),
	},
	{
		Rule: "piecing/triangle-sizes", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the triangles sewn into one square are not of one size",
		Why:     "Triangles from 7 1/4-in and from 6 7/8-in squares meet at neither end. The square can only be trimmed to what the smaller ones give.",
		Fix:     "cut the squares of all its triangles to one size",
		Run:     faults(derive.TriangleSizes),
	},
	{
		Rule: "piecing/trim-over-unit", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "a part is to be trimmed to more than it measures",
		Why:     "Fabric can be trimmed off, not on. Squares from a tube of three 2 1/2-in strips are about 8.4853 in: a trim to 8 1/2 in fails by a sixty-fourth, all the way round.",
		Fix:     "trim to a smaller size, or cut the pieces larger",
		Run:     trimOverUnit,
	},
	{
		Rule: "piecing/tube-widths", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the two strip sets of a tube are not equally wide",
		Why:     "Both long edges are sewn together. Sets of unequal width do not lie flat, and the squares are cut from two different triangles.",
		Fix:     "use as many strips of the same width in both sets",
		Run:     faults(derive.TubeWidths),
	},
}

// Limits of what can be eased, in inches: this project's own, after common
// practice.
const (
	easedHeight = derive.Eased
	driftWarns  = measure.Inch / 8
	driftFails  = measure.Inch / 4
)

func geometryOf(part *derive.Part) Subject {
	return Subject{Kind: derive.Geometry, Name: part.Name.Text}
}

func biasOutside(p *Pass) {
	l := p.Size.Of.Layout
	if len(l.Borders) > 0 || l.Triangles != nil || l.Sashing != nil && l.Sashing.Outer && !l.Sashing.RowsOnly || p.cautions("bias-outside") {
		return
	}
	for _, b := range p.Size.Top.Blocks {
		if b.Part.Bias {
			p.Report(b.Part.Name.At, Finding{
				Message: fmt.Sprintf("the edges of %q are on the bias and no border holds them", b.Part.Name.Text),
				Ways:    ways(p.addCautions("bias-outside"), advise("add a border")),
			})
			return // one note is enough
		}
	}
}

// cautions reports whether the pattern prints a caution.
func (p *Pass) cautions(key string) bool {
	for _, c := range p.Size.Of.Cautions {
		if c.Text == key {
			return true
		}
	}
	return false
}

// onLines reports whether a length lies on the lines of a ruler that names them.
func (p *Pass) onLines(l plan.Length) bool {
	return slices.ContainsFunc(p.Size.Of.Tools.Rulers, func(r plan.Ruler) bool {
		return r.Lines.Given() && l.On(r.Lines.Length)
	})
}

// cutOnLine is the choice of a line of the ruler beside a length.
func (p *Pass) cutOnLine(l plan.Length, line measure.Length) diag.Way {
	if line <= 0 {
		return diag.Way{}
	}
	return choice(p.putLength("cut", l.At, line))
}

func offGrid(p *Pass) {
	grid := p.rulerGrid()
	seen := map[source.Range]bool{} // a square's width and height are one value
	report := func(what, of string, l plan.Length) {
		if l.Length == 0 || l.On(grid) || p.onLines(l) || seen[l.At] {
			return
		}
		seen[l.At] = true
		p.Report(l.At, Finding{
			Message: fmt.Sprintf("the %s of %q is %s, which is not on a ruler marked every %s",
				what, of, p.length(l.Length), p.length(grid)),
			Ways: ways(p.cutOnLine(l, measure.FloorTo(l.Length, grid)), p.cutOnLine(l, measure.CeilTo(l.Length, grid))),
		})
	}
	for _, part := range p.Size.Parts {
		for _, l := range part.Room.OnRuler() {
			report(l.What, part.Name.Text, l.Length)
		}
	}
	for _, b := range p.Size.AllBorders() {
		report("border width", b.Said.Name.Text, b.Said.Width)
	}
	for name, st := range p.settings() {
		if st.Sashing != nil {
			report("sashing width", name, st.Sashing.Said.Width)
		}
		if o := st.OnPoint; o != nil {
			if o.Sashing != nil {
				report("sashing width", name, o.Sashing.Width)
			}
			report("square", name, o.Said.SideCut.Square)
			report("square", name, o.Said.CornerCut.Square)
		}
	}
	if b := p.Size.Binding; b != nil {
		report("cut width", "binding", b.Said.Cut)
		report("square", "binding", b.Said.Square)
	}
	if b := p.Size.Of.Finish.Sleeve; b != nil {
		report("cut height", "sleeve", b.Cut)
	}
	if b := p.Size.Of.Finish.Label; b != nil {
		report("width", "label", b.Width)
		report("height", "label", b.Height)
	}
}
