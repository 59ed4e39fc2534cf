package drafting

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/plan"

	"yardproof/schema/measure"
)

// setting sews parts into rows, with the sashes between them. Blocks on point
// are not drafted.
func (d *Draft) setting(of plan.Setting, st *derive.Setting, seam measure.Length) (piecing.Patchwork, bool) {
	if of.Grid == nil || st == nil || !st.Known || st.OnPoint != nil {
		return piecing.Patchwork{}, false
	}
	rows, ok := d.cells(of.Grid.Rows.N, of.Grid.Row)
	if !ok {
		return piecing.Patchwork{}, false
	}
	if g := st.Sashing; g != nil {
		fabric, known := d.fabrics[g.Said.Fabric.Text]
		stones := g.Said.Cornerstones.Given()
		corner, cornered := d.fabrics[g.Said.Cornerstones.Text]
		if !known || stones && !cornered {
			return piecing.Patchwork{}, false
		}
		rows = derive.Sashed(rows, g.Said.Outer, stones,
			piecing.Plain(g.UprightCut, fabric), piecing.Plain(g.LevelCut, fabric), piecing.Plain(g.Stone, corner))
	}
	return sew(rows, seam)
}

// mitred is work with a mitred border about it: strips that meet on the
// diagonals, seam allowance outside.
func mitred(w piecing.Patchwork, b derive.Border, fabric int) (piecing.Patchwork, bool) {
	inner, ok := w.Outline.Inset(b.Seam)
	if !ok {
		return w, false
	}
	band := b.Cut - b.Seam // finished, and the outer allowance
	middle := cutTo(w, inner).AtOrigin()
	places := piecing.BorderPlaces(middle.Size(), band, piecing.MitredCorners)
	out := middle.Moved(piecing.Point{X: band.Surd(), Y: band.Surd()})
	out.Outline = piecing.Rectangle(piecing.Point{}, b.Outer)
	for _, p := range places {
		out.Patches = append(out.Patches, piecing.Patch{Fabric: fabric, Outline: p.Outline})
	}
	return out, true
}
