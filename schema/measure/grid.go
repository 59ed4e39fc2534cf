package measure

import "math"

// FloorTo rounds l down to a multiple of grid. A length on the grid is not
// rounded; a grid of zero or less leaves l as it is.
func FloorTo(l, grid Length) Length {
	if grid <= 0 {
		return l
	}
	rest := l % grid
	if rest < 0 {
		rest += grid
	}
	return l - rest
}

// CeilTo rounds l up to a multiple of grid. A length on the grid is not
// rounded: 27 in is 3/4 yd and stays so.
func CeilTo(l, grid Length) Length {
	down := FloorTo(l, grid)
	if down == l {
		return l
	}
	return down + grid
}

// FloorTo rounds x, in ticks, down to a multiple of grid, exactly. A grid of
// zero or less counts as one tick.
func (x Surd) FloorTo(grid Length) Length {
	grid = max(grid, Tick)
	return times(FloorDiv(x, grid.Surd()), grid)
}

// CeilTo rounds x, in ticks, up to a multiple of grid, exactly. A grid of zero
// or less counts as one tick.
func (x Surd) CeilTo(grid Length) Length {
	grid = max(grid, Tick)
	return times(CeilDiv(x, grid.Surd()), grid)
}

// NearestTo rounds x, in ticks, to the nearest multiple of grid, half way up,
// exactly. A grid of zero or less counts as one tick.
func (x Surd) NearestTo(grid Length) Length {
	return x.Add(Rational(int64(max(grid, Tick)), 2)).FloorTo(grid)
}

// times multiplies, stopping at the ends of the range rather than wrapping.
func times(n int64, grid Length) Length {
	if product, ok := mulInt64(n, int64(grid)); ok {
		return Length(product)
	}
	if n < 0 {
		return math.MinInt64
	}
	return math.MaxInt64
}
