package drafting

import (
	"slices"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// setting sews parts into rows, with the sashes between them.
func (d *Draft) setting(of plan.Setting, st *derive.Setting, seam measure.Length, walk *derive.Walk) (piecing.Patchwork, bool) {
	if of.Grid == nil || st == nil || !st.Known {
		return piecing.Patchwork{}, false
	}
	if st.OnPoint != nil {
		return d.onPoint(of, st, seam, walk)
	}
	full, _ := walk.Setting(of)
	rows, ok := d.cells(full)
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
	return piecing.Sew(rows, seam)
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
func (d *Draft) onPoint(of plan.Setting, st *derive.Setting, seam measure.Length, walk *derive.Walk) (piecing.Patchwork, bool) {
	o := st.OnPoint
	placed, between := walk.Setting(of)
	full, ok := d.cells(placed)
	short, known := d.cells(between)
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
	w = w.Shown(inner)
	if !fits(w, piecing.Box{Width: o.Block, Height: o.Block}) {
		return w, false
	}
	return w.TurnedBy(piecing.Degrees45).AtOrigin(), true
}

// repeated sews the units of a border on, turned towards each side clockwise
// from the top; ok is false where they do not divide the sides.
func (d *Draft) repeated(w piecing.Patchwork, b derive.Border, around derive.Surround) (piecing.Patchwork, bool) {
	u := b.Units
	if u == nil || !u.SideDrift.IsZero() || !u.EndDrift.IsZero() || 2*(u.Sides+u.Ends) > Most {
		return w, false
	}
	var strips [4]piecing.Patchwork
	for i := range strips {
		if len(around.Sides[i]) == 0 {
			continue // no strips there
		}
		var ok bool
		if strips[i], ok = d.units(around.Sides[i], i, b.Seam); !ok {
			return w, false
		}
	}
	return d.round(w, b, strips, around.Corners)
}

// units is the units of one side of a border, so many quarters clockwise from
// the top and given clockwise: the right and left sides are columns, and the
// bottom and left ones are given from their end.
func (d *Draft) units(along []derive.Placed, quarters int, seam measure.Length) (piecing.Patchwork, bool) {
	var line []piecing.Patchwork
	for _, c := range along {
		w, ok := d.cell(c)
		if !ok {
			return w, false
		}
		line = append(line, w)
	}
	if quarters >= 2 {
		slices.Reverse(line)
	}
	if quarters%2 == 0 {
		return piecing.Sew([][]piecing.Patchwork{line}, seam)
	}
	var column [][]piecing.Patchwork
	for _, w := range line {
		column = append(column, []piecing.Patchwork{w})
	}
	return piecing.Sew(column, seam)
}

// round sews four strips, from the top clockwise, about work in their order,
// or the two of one pair.
func (d *Draft) round(w piecing.Patchwork, b derive.Border, strips [4]piecing.Patchwork, blocks []derive.Placed) (piecing.Patchwork, bool) {
	top, right, bottom, left := strips[0], strips[1], strips[2], strips[3]
	sides := func(w piecing.Patchwork) (piecing.Patchwork, bool) {
		return piecing.Sew([][]piecing.Patchwork{{left, w, right}}, b.Seam)
	}
	ends := func(w piecing.Patchwork) (piecing.Patchwork, bool) {
		return piecing.Sew([][]piecing.Patchwork{{top}, {w}, {bottom}}, b.Seam)
	}
	if b.Corners > 0 {
		corners, ok := d.corners(b, blocks)
		if !ok {
			return w, false
		}
		return piecing.Sew([][]piecing.Patchwork{
			{corners[0], top, corners[1]}, {left, w, right}, {corners[3], bottom, corners[2]},
		}, b.Seam)
	}
	switch {
	case b.Sides.IsZero():
		return ends(w)
	case b.Ends.IsZero():
		return sides(w)
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

// corners is what stands in a border's corners, clockwise from the top left:
// blocks, or else squares of fabric.
func (d *Draft) corners(b derive.Border, blocks []derive.Placed) (all [4]piecing.Patchwork, ok bool) {
	square := piecing.Box{Width: b.Cut.Surd(), Height: b.Cut.Surd()}
	for i := range all {
		if len(blocks) == 0 {
			fabric, known := d.fabrics[b.Said.CornerFabric.Text]
			all[i], ok = piecing.Plain(square, fabric), known
		} else {
			all[i], ok = d.cell(blocks[i])
			ok = ok && fits(all[i], square)
		}
		if !ok {
			return all, false
		}
	}
	return all, true
}

// mitred is work with a mitred border about it: strips that meet on the
// diagonals, seam allowance outside.
func mitred(w piecing.Patchwork, b derive.Border, fabric int) (piecing.Patchwork, bool) {
	inner, ok := w.Outline.Inset(b.Seam)
	if !ok {
		return w, false
	}
	band := b.Cut - b.Seam // finished, and the outer allowance
	middle := w.Shown(inner).AtOrigin()
	places := piecing.BorderPlaces(middle.Size(), band, piecing.MitredCorners)
	out := middle.Moved(piecing.Point{X: band.Surd(), Y: band.Surd()})
	out.Outline = piecing.Rectangle(piecing.Point{}, b.Outer)
	for _, p := range places {
		out.Patches = append(out.Patches, piecing.Patch{Fabric: fabric, Outline: p.Outline})
	}
	return out, true
}
