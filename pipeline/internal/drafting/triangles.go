package drafting

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/plan"
)

// triangles is a row of triangles of 60 degrees between two half ones, with
// its allowance all round; ok is false for any other row.
func (d *Draft) triangles(row []plan.Cell) (w piecing.Patchwork, ok bool) {
	var first *derive.Shape
	var fabrics []int
	for i, c := range row {
		p := d.size.Part(c.Part.Text)
		if p == nil || p.Shape == nil || c.Sideways() || !p.Shape.Kind.Triangular() || (p.Shape.Kind == plan.HalfTriangle60) != (i == 0 || i == len(row)-1) {
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
	w = piecing.SewTriangleRow(first.Triangle60, len(row)-2)
	if len(row) > 2 && row[1].Turn == 180 { // then the first whole one points down
		w = w.Mirrored().Turned(2)
	}
	return w.InFabrics(fabrics...), true
}
