package piecing

import "yardproof/schema/measure"

// Sashing is sashes of finished width t between the blocks of an r by k grid,
// and round it when Outer; or only between its rows, and above and below them
// when Outer. All formulas are derived from geometry.
type Sashing struct {
	Rows, Columns int64
	Block         Box            // finished
	Width         measure.Length // t, finished
	Outer         bool
	RowsOnly      bool
}

// across and down are how many sashes lie side by side in a row and one below
// the other in a column.
func (g Sashing) across() int64 {
	if g.RowsOnly {
		return 0
	}
	return g.Columns + g.ring()
}

func (g Sashing) down() int64 { return g.Rows + g.ring() }

func (g Sashing) ring() int64 {
	if g.Outer {
		return 1
	}
	return -1
}

// Upright is how many sashes stand beside blocks, as long as a block is high:
// r(k-1), or r(k+1) with the outer ring.
func (g Sashing) Upright() int64 { return g.Rows * g.across() }

// Level is how many sashes lie above and below blocks, as long as a block is
// wide: k(r-1), or k(r+1) with the outer ring; there they run through when
// there are none beside them.
func (g Sashing) Level() int64 { return g.Columns * g.down() }

// Sashes is both together.
func (g Sashing) Sashes() int64 { return g.Upright() + g.Level() }

// Cornerstones is (r-1)(k-1), or (r+1)(k+1) with the outer ring.
func (g Sashing) Cornerstones() int64 { return g.across() * g.down() }

// Finished is W = k*b + (k-1)t, or (k+1)t with the outer ring; H likewise.
func (g Sashing) Finished() Box {
	return g.Around(Box{g.Block.Width.MulInt(g.Columns), g.Block.Height.MulInt(g.Rows)})
}

// Around is the size of blocks of a size, side by side, with the sashes put
// between them.
func (g Sashing) Around(blocks Box) Box {
	t := g.Width.Surd()
	return Box{blocks.Width.Add(t.MulInt(g.across())), blocks.Height.Add(t.MulInt(g.down()))}
}

// Pieces is the cut sizes: upright and level sashes, each t + 2s wide and 2s
// longer than the block, and the cornerstones, t + 2s square.
func (g Sashing) Pieces(s measure.Length) (upright, level, cornerstone Box) {
	t := (g.Width + 2*s).Surd()
	return Box{t, plus2s(g.Block.Height, s)}, Box{plus2s(g.Block.Width, s), t}, Box{t, t}
}
