package piecing

import "yardproof/schema/measure"

// OnPoint is a layout of square blocks turned 45 degrees, with k blocks in a
// full row and r full rows, set in side and corner triangles. Where it is
// sashed, sashes lie round every block, and the outer edge runs through the
// middles of the outermost cornerstones. All formulas are derived from
// geometry.
type OnPoint struct {
	Columns, Rows int64          // k and r, at least 1
	Block         measure.Surd   // b, finished
	Sash          measure.Length // t, finished width of the sashes; 0 without
}

// Pitch is from one block to the next, b + t.
func (o OnPoint) Pitch() measure.Surd { return o.Block.Add(o.Sash.Surd()) }

// Sashes is 4rk, where there are any: one on each side of every block of the
// full rows, which the alternates and the triangles share.
func (o OnPoint) Sashes() int64 {
	if o.Sash == 0 {
		return 0
	}
	return 4 * o.Rows * o.Columns
}

// Cornerstones is 2rk + r + k, where there are sashes. EdgeStones of them lie
// on the edge and are trimmed with it.
func (o OnPoint) Cornerstones() int64 {
	if o.Sash == 0 {
		return 0
	}
	return 2*o.Rows*o.Columns + o.Rows + o.Columns
}

// EdgeStones is 2(r + k), where there are sashes.
func (o OnPoint) EdgeStones() int64 {
	if o.Sash == 0 {
		return 0
	}
	return 2 * (o.Rows + o.Columns)
}

// Pieces is the cut sizes: a sash, t + 2s wide and 2s longer than a block's
// side, and a cornerstone, t + 2s square.
func (o OnPoint) Pieces(s measure.Length) (sash, stone Box) {
	t := (o.Sash + 2*s).Surd()
	return Box{plus2s(o.Block, s), t}, Box{t, t}
}

// Blocks is all blocks, rk + (r-1)(k-1).
func (o OnPoint) Blocks() int64 { return o.Rows*o.Columns + o.Alternates() }

// Alternates is how many of the blocks stand in the rows between the full
// ones, (r-1)(k-1): those that can be alternate blocks.
func (o OnPoint) Alternates() int64 { return (o.Rows - 1) * (o.Columns - 1) }

// SideTriangles is 2(r-1) + 2(k-1).
func (o OnPoint) SideTriangles() int64 { return 2 * (o.Rows + o.Columns - 2) }

// SideSquares is the squares to cut twice diagonally for the side triangles,
// four from each, rounded up.
func (o OnPoint) SideSquares() int64 { return Batches(o.SideTriangles(), 4) }

// CornerTriangles is 4, from CornerSquares squares cut once.
func (o OnPoint) CornerTriangles() int64 { return 4 }

// CornerSquares is the squares to cut once diagonally for the corners.
func (o OnPoint) CornerSquares() int64 { return 2 }

// Finished is the finished size, setting triangles cut tight:
// k(b + t)sqrt2 by r(b + t)sqrt2. On no ruler when b is.
func (o OnPoint) Finished() Box {
	diagonal := o.Pitch().Mul(measure.Root2())
	return Box{diagonal.MulInt(o.Columns), diagonal.MulInt(o.Rows)}
}

// Setting is the squares for setting triangles.
type Setting struct {
	Side, Corner Fit // exact, and rounded up to the grid: tight
}

// SettingTriangles is the squares for the setting triangles of blocks of
// finished side b. Side triangles come from squares cut twice, exact
// b*sqrt2 + (2 + 2 sqrt2)s, corner triangles from squares cut once, exact
// b/sqrt2 + (2 + sqrt2)s, both rounded up to grid, so that straight grain lies
// on the quilt's edge. Derived from geometry; Trade has the trade's own.
func SettingTriangles(b measure.Surd, s, grid measure.Length) Setting {
	long, leg := b.Mul(measure.Root2()), b.Div(measure.Root2())
	return Setting{
		Side:   fit(long.Add(QuarterSquareAdd(s)), one(), grid, Up),
		Corner: fit(leg.Add(HalfSquareAdd(s)), one(), grid, Up),
	}
}

// Float is how far the blocks' points can float inside the outer seam,
// finished, when the squares are cut side and corner: half of what the
// smaller one exceeds its exact size by, none when either is short. Each outer
// edge moves out by half of that, derived from geometry.
func (t Setting) Float(side, corner measure.Length) measure.Surd {
	over := measure.Min(t.Side.With(side).Over(), t.Corner.With(corner).Over())
	return measure.Max(over, measure.Surd{}).DivInt(2)
}

// Floating is the finished size with the edges trimmed so that the points
// float by so much, finished: 2*float more each way. It depends on the trim,
// so a plan must state it (common practice, no source).
func (o OnPoint) Floating(float measure.Surd) Box {
	tight := o.Finished()
	return Box{tight.Width.Add(float.MulInt(2)), tight.Height.Add(float.MulInt(2))}
}
