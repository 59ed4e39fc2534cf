package drafting

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// setting sews parts into rows, with the sashes between them.
func (d *Draft) setting(of plan.Setting, st *derive.Setting, seam measure.Length) (piecing.Patchwork, bool) {
	if of.Grid == nil || st == nil || !st.Known {
		return piecing.Patchwork{}, false
	}
	if st.OnPoint != nil {
		return d.onPoint(of, st, seam)
	}
	rows, ok := d.cells(of.Grid.Rows.N, of.Grid.Row)
	if !ok {
		return piecing.Patchwork{}, false
	}
	if g := st.Sashing; g != nil {
		fabric, corner, known := d.sashes(g.Said)
		if !known {
			return piecing.Patchwork{}, false
		}
		rows = derive.Sashed(rows, g.Said,
			piecing.Plain(g.UprightCut, fabric), piecing.Plain(g.LevelCut, fabric), piecing.Plain(g.Stone, corner))
	}
	return sew(rows, seam)
}

// sashes are the fabrics of sashing and of its cornerstones, if it has any; ok
// is false where one is not known.
func (d *Draft) sashes(g *plan.Sashing) (sash, stone int, ok bool) {
	sash, ok = d.fabrics[g.Fabric.Text]
	stone, known := d.fabrics[g.Cornerstones.Text]
	return sash, stone, ok && (known || !g.Cornerstones.Given())
}

// onPoint lays finished blocks, turned an eighth clockwise, and setting
// triangles into their places, seam allowance outside.
func (d *Draft) onPoint(of plan.Setting, st *derive.Setting, seam measure.Length) (piecing.Patchwork, bool) {
	o := st.OnPoint
	full, ok := d.cells(of.Grid.Rows.N, of.Grid.Row)
	short, known := d.cells(of.Grid.Rows.N-1, of.Grid.Short)
	sides, sided := d.fabrics[o.Said.Sides.Text]
	corners, cornered := d.fabrics[o.Said.Corners.Text]
	sash, stone, sashed := 0, 0, true
	if o.Sashing != nil {
		sash, stone, sashed = d.sashes(o.Sashing)
	}
	whole := piecing.Patchwork{Outline: piecing.Rectangle(piecing.Point{}, st.Box)}
	if !ok || !known || !sided || !cornered || !sashed {
		return whole, false
	}
	var blocks []piecing.Patchwork
	for r := range full {
		blocks = append(blocks, full[r]...)
		if r < len(short) {
			blocks = append(blocks, short[r]...)
		}
	}
	next := 0
	for _, p := range o.Around(o.Float.Add(seam.Surd())) {
		switch p.Kind {
		case piecing.SideTriangle:
			whole.Patches = append(whole.Patches, piecing.Patch{Fabric: sides, Outline: p.Outline})
		case piecing.SashPlace:
			whole.Patches = append(whole.Patches, piecing.Patch{Fabric: sash, Outline: p.Outline})
		case piecing.CornerstonePlace:
			whole.Patches = append(whole.Patches, piecing.Patch{Fabric: stone, Outline: p.Outline})
		case piecing.CornerTriangle:
			whole.Patches = append(whole.Patches, piecing.Patch{Fabric: corners, Outline: p.Outline})
		default:
			w, ok := d.tilted(blocks[next], o, seam)
			if !ok {
				return whole, false
			}
			corner, _ := p.Outline.Bounds()
			whole.Patches = append(whole.Patches, w.Moved(corner).Patches...)
			next++
		}
	}
	return whole, true
}

// tilted is a block as it shows on point; ok is false where it is not as
// large as the others.
func (d *Draft) tilted(w piecing.Patchwork, o *derive.OnPoint, seam measure.Length) (piecing.Patchwork, bool) {
	inner, ok := w.Outline.Inset(seam)
	if !ok {
		return w, false
	}
	w = cutTo(w, inner)
	if !fits(w, piecing.Box{Width: o.Block, Height: o.Block}) {
		return w, false
	}
	return w.TurnedBy(piecing.Degrees45).AtOrigin(), true
}

// repeated sews the units of a border on, turned towards each side clockwise
// from the top; ok is false where they do not divide the sides.
func (d *Draft) repeated(w piecing.Patchwork, b derive.Border) (piecing.Patchwork, bool) {
	u := b.Units
	unit, ok := d.parts[b.Said.Part.Text]
	if !ok || u == nil || !u.SideDrift.IsZero() || !u.EndDrift.IsZero() || 2*(u.Sides+u.Ends) > Most {
		return w, false
	}
	row := func(quarters int, n int64) (piecing.Patchwork, bool) {
		turned := unit.Turned(quarters)
		var line []piecing.Patchwork
		var column [][]piecing.Patchwork
		for range n {
			line, column = append(line, turned), append(column, []piecing.Patchwork{turned})
		}
		if quarters%2 == 1 {
			return sew(column, b.Seam)
		}
		return sew([][]piecing.Patchwork{line}, b.Seam)
	}
	var strips [4]piecing.Patchwork
	for i := range strips {
		n := u.Ends
		if i%2 == 1 {
			n = u.Sides
		}
		if strips[i], ok = row(i, n); !ok {
			return w, false
		}
	}
	return d.round(w, b, strips)
}

// round sews four strips, from the top clockwise, about work in their order.
func (d *Draft) round(w piecing.Patchwork, b derive.Border, strips [4]piecing.Patchwork) (piecing.Patchwork, bool) {
	top, right, bottom, left := strips[0], strips[1], strips[2], strips[3]
	sides := func(w piecing.Patchwork) (piecing.Patchwork, bool) {
		return sew([][]piecing.Patchwork{{left, w, right}}, b.Seam)
	}
	ends := func(w piecing.Patchwork) (piecing.Patchwork, bool) {
		return sew([][]piecing.Patchwork{{top}, {w}, {bottom}}, b.Seam)
	}
	if b.Corners > 0 {
		corner, ok := d.corner(b)
		if !ok {
			return w, false
		}
		return sew([][]piecing.Patchwork{
			{corner, top, corner.Turned(1)}, {left, w, right}, {corner.Turned(3), bottom, corner.Turned(2)},
		}, b.Seam)
	}
	first, second := sides, ends
	if b.Said.EndsOn {
		first, second = ends, sides
	}
	w, ok := first(w)
	if !ok {
		return w, false
	}
	return second(w)
}

// corner is what stands in a border's upper left corner.
func (d *Draft) corner(b derive.Border) (piecing.Patchwork, bool) {
	square := piecing.Box{Width: b.Cut.Surd(), Height: b.Cut.Surd()}
	if b.Said.CornerPart.Given() {
		w, ok := d.parts[b.Said.CornerPart.Text]
		return w, ok && fits(w, square)
	}
	fabric, ok := d.fabrics[b.Said.CornerFabric.Text]
	return piecing.Plain(square, fabric), ok
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
