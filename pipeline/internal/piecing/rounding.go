package piecing

import "yardproof/schema/measure"

// Rounding is the direction in which a derived length goes to a ruler grid.
type Rounding int

// The directions: up for what is trimmed later and for setting triangles,
// nearest for what is not trimmed (then the error is told), down for a size to
// trim to, which the unit must contain. Common practice, no source.
const (
	Up Rounding = iota
	Nearest
	Down
)

// Round takes x to a multiple of grid. A length on the grid is not rounded.
func (r Rounding) Round(x measure.Surd, grid measure.Length) measure.Length {
	switch r {
	case Nearest:
		return x.NearestTo(grid)
	case Down:
		return x.FloorTo(grid)
	}
	return x.CeilTo(grid)
}

// Fit is a cut size as geometry asks for it and as a ruler gives it, and what
// the difference leaves in the unit.
type Fit struct {
	Exact measure.Surd   // the cut size that leaves nothing over
	Cut   measure.Length // the cut size that is used
	Left  measure.Surd   // what the unit comes out larger than wanted; smaller if negative

	gain measure.Surd // what the unit grows by for each tick that the cut does
}

// fit rounds a cut size whose unit grows by gain for each tick of it.
func fit(exact, gain measure.Surd, grid measure.Length, r Rounding) Fit {
	return Fit{Exact: exact, gain: gain}.With(r.Round(exact, grid))
}

// With is the same piece cut at c instead, exactly: what a printed cut size
// leaves.
func (f Fit) With(c measure.Length) Fit {
	f.Cut = c
	f.Left = c.Surd().Sub(f.Exact).Mul(f.gain)
	return f
}

// Over is what the cut exceeds the exact size by, negative when it is short.
func (f Fit) Over() measure.Surd { return f.Cut.Surd().Sub(f.Exact) }

// Across is what the error left sums to over n units of a row.
func (f Fit) Across(n int64) measure.Surd { return f.Left.MulInt(n) }
