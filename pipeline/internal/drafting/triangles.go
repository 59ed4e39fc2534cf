package drafting

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/plan"
)

// triangles is a row of triangles of 60 degrees between two half ones, with
// its allowance all round; ok is false for any other row.
func (d *Draft) triangles(row []derive.Placed) (w piecing.Patchwork, ok bool) {
	var first *derive.Shape
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
	}
	if len(row) < 2 {
		return w, false
	}
	w = d.fill(piecing.SewTriangleRow(first.Triangle60, len(row)-2), row)
	if len(row) > 2 && row[1].Turn == 180 { // then the first whole one points down
		w = w.Mirrored().Turned(2)
	}
	return w, true
}

// fill gives the triangles of a row their fabrics, or the strips of the sets that
// they are cut from: those that point up show them as the set lies, the others
// the other way up.
func (d *Draft) fill(w piecing.Patchwork, row []derive.Placed) piecing.Patchwork {
	filled := piecing.Patchwork{Outline: w.Outline}
	for _, patch := range w.Patches {
		h := d.size.Part(row[patch.Fabric].Part.Text).Shape
		if h.Set == nil {
			filled.Patches = append(filled.Patches, piecing.Patch{Fabric: d.fabrics[h.Fabric.Role.Text], Outline: patch.Outline})
			continue
		}
		set := derive.Sewn(h.Set.Set.Strips, w.Size().Width, h.Set.Seam.Allowance.Length, d.number)
		if up := patch.Fabric%2 != 0; up {
			set = set.Moved(piecing.Point{Y: w.Size().Height.Sub(h.Height.Surd())})
		} else {
			set = set.Turned(2)
		}
		for _, strip := range set.Patches {
			if part := strip.Outline.Overlap(patch.Outline); part != nil {
				filled.Patches = append(filled.Patches, piecing.Patch{Fabric: strip.Fabric, Outline: part})
			}
		}
	}
	return filled
}
