package drafting

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// triangles is a row of triangles of 60 degrees between two half ones, with
// its allowance all round; ok is false for any other row.
func (d *Draft) triangles(row []plan.Cell) (w piecing.Patchwork, ok bool) {
	var first *derive.Shape
	var fabrics []int
	for i, c := range row {
		p := d.size.Part(c.Part.Text)
		if p == nil || p.Shape == nil || p.Shape.Half != (i == 0 || i == len(row)-1) {
			return w, false
		}
		if first == nil {
			first = p.Shape
		}
		if !p.Shape.Triangle60.Height.Equal(first.Triangle60.Height) || p.Shape.Seam != first.Seam {
			return w, false
		}
		fabrics = append(fabrics, d.fabrics[p.Shape.Fabric.Role.Text])
	}
	if len(row) < 2 {
		return w, false
	}
	w = piecing.DraftTriangleRow(first.Triangle60, len(row)-2).InFabrics(fabrics...)
	return allowed(w, first.Seam), true
}

// allowed is a finished rectangle with its allowance: each patch on an edge is
// drawn on across it, as the seam that is sewn along the edge hides it.
func allowed(w piecing.Patchwork, seam measure.Length) piecing.Patchwork {
	for range 4 { // the top edge, with each edge turned to the top
		w = topAllowed(w, seam).Turned(1)
	}
	return w
}

func topAllowed(w piecing.Patchwork, seam measure.Length) piecing.Patchwork {
	size := w.Size()
	s := seam.Surd()
	grown := piecing.Patchwork{Outline: piecing.Rectangle(piecing.Point{Y: s.Neg()}, piecing.Box{Width: size.Width, Height: size.Height.Add(s)})}
	for _, p := range w.Patches {
		grown.Patches = append(grown.Patches, p)
		for i, a := range p.Outline {
			b := p.Outline[(i+1)%len(p.Outline)]
			if a.Y.IsZero() && b.Y.IsZero() { // clockwise, so a is on the left
				strip := piecing.Rectangle(piecing.Point{X: a.X, Y: s.Neg()}, piecing.Box{Width: b.X.Sub(a.X), Height: s})
				grown.Patches = append(grown.Patches, piecing.Patch{Fabric: p.Fabric, Outline: strip})
			}
		}
	}
	return grown.AtOrigin()
}
