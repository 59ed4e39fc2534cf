package piecing

import "yardproof/schema/measure"

// Outline is the cut triangle, point up, its base along the bottom: three
// corners, or four when it is blunted. At the origin.
func (t Triangle60) Outline() Polygon {
	height, base := t.Strip(), t.CutSide()
	left, right := base.Sub(t.Tip()).DivInt(2), base.Add(t.Tip()).DivInt(2)
	return Polygon{{left, measure.Surd{}}, {right, measure.Surd{}}, {base, height}, {Y: height}}.simple()
}

// HalfOutline is the cut half triangle that ends a row on the right of a
// triangle pointing up: its right angle at the top right, its sharp tip below
// it, blunted where the strip ends. At the origin.
func (t Triangle60) HalfOutline() Polygon {
	upright, along := t.HalfLegs()
	strip := t.Strip()
	whole := Polygon{{}, {X: along}, {along, upright}}
	return whole.cut(Point{along, strip}, Point{measure.Surd{}, strip})
}

// SewTriangleRow is the row of DraftTriangleRow before it is sewn on, seam
// allowance all round: sewn from the left, each piece over what is sewn
// already. Within the allowance the seams run on past the points, and the
// piece sewn last lies on top.
func SewTriangleRow(t Triangle60, m int) Patchwork {
	half, s := t.Side().DivInt(2), t.Seam.Surd()
	row := Rectangle(Point{}, Box{plus2s(t.RowWidth(int64(m)), t.Seam), plus2s(t.Height, t.Seam)})
	w := shape(row, 0)
	reach := 1 + int(measure.FloorDiv((2*t.Seam).Surd(), half)) // pieces back that a seam may run over
	for i := range m + 1 {
		left, right := s.Add(half.MulInt(int64(i))), s.Add(half.MulInt(int64(i+1)))
		low, high := Point{left, s.Add(t.Height)}, Point{right, s}
		if i%2 != 0 {
			low.X, high.X = right, left
		}
		for k := max(0, i-reach); k <= i; k++ {
			w.Patches[k].Outline = w.Patches[k].Outline.cut(high, low)
		}
		w.Patches = append(w.Patches, Patch{i + 1, row.cut(low, high)})
	}
	return w
}

// Outline is the cut parallelogram, two sides level, leaning to the right
// upwards, at the origin.
func (c Slant) Outline() Polygon {
	lean, advance := c.Waste(), c.Advance()
	return Polygon{
		{lean, measure.Surd{}}, {lean.Add(advance), measure.Surd{}}, {advance, c.Strip}, {Y: c.Strip},
	}
}

// Segment is the n-th slanted segment, from 0, of a strip set, lying as it is
// cut and moved to the origin. The set's length decides how many there are
// (Slant.PerStrip).
func (c Slant) Segment(set Patchwork, n int64) Patchwork {
	along := Point{X: c.Advance().MulInt(n)}
	return set.CutTo(c.Outline().each(along.plus)).AtOrigin()
}

// CutTriangle is the n-th triangle, from 0, cut from a strip set: even ones
// point up as the set lies, odd ones down. At the origin.
func (t Triangle60) CutTriangle(set Patchwork, n int64) Patchwork {
	along := Point{X: t.Advance().MulInt(n)}
	outline := t.Outline()
	if n%2 != 0 {
		outline = shape(outline, 0).Turned(2).Outline
	}
	return set.CutTo(outline.each(along.plus)).AtOrigin()
}
