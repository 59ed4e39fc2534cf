package cutting

import (
	"slices"

	"yardproof/schema/measure"
)

// rounding is how sizes go to a grid that not all of them lie on. Up, what fits
// by the grid fits by the tick, so that layouts are right. Down, what fits by the
// tick fits by the grid, so that bounds are right. Of strips only heights are rounded,
// down: layouts are then right, too, as a strip is as tall as its tallest piece.
type rounding int

const (
	exact rounding = iota
	up
	down
)

func (r rounding) to(a, unit measure.Length) measure.Length {
	if r == up {
		return ceilLength(a, unit)
	}
	return a / unit
}

// rulers are the grids that most sizes of a quilt lie on, in ticks: sixteenths,
// thirty-seconds, sixty-fourths and hundredths of an inch, a millimetre, its
// half and its tenth.
var rulers = []measure.Length{inch / 16, inch / 32, inch / 64, inch / 100, measure.Centimetre / 10, measure.Centimetre / 20, measure.Centimetre / 100}

// coarser is the grid, no finer than least, that the fewest of the lengths are
// off; of several the finest, which says most of those that are. So one length
// on no ruler costs the others nothing.
func coarser(least measure.Length, lengths []measure.Length) measure.Length {
	best, fewest := least, off(least, lengths)
	for _, unit := range rulers {
		n := off(unit, lengths)
		if unit >= least && (n < fewest || n == fewest && unit < best) {
			best, fewest = unit, n
		}
	}
	return best
}

// off is how many of the lengths are no multiple of a unit.
func off(unit measure.Length, lengths []measure.Length) int {
	n := 0
	for _, l := range lengths {
		if l%unit != 0 {
			n++
		}
	}
	return n
}

// fineHeight is the finest grid that heights are rounded down to: a tenth of a
// millimetre. They are where so many of their units and more are about the length.
const (
	fineHeight = measure.Centimetre / 100
	fineLength = 1 << 13
)

// roughHeights is the grid that heights are rounded down to: theirs, where that is
// not too fine for the length that all takes or nothing would be left of the least.
func roughHeights(unit, width measure.Length, kinds []kind, lying [][]oriented) measure.Length {
	var all area
	var heights []measure.Length
	for i, k := range kinds {
		all.add(lying[i][0].width, lying[i][0].height, k.demand)
		for _, o := range lying[i] {
			heights = append(heights, o.height)
		}
	}
	least := slices.Min(heights)
	if unit >= fineHeight || least < fineHeight || all.over(width)/unit < fineLength {
		return unit
	}
	if rough := coarser(fineHeight, heights); rough <= least {
		return rough
	}
	return fineHeight
}

// empty reports whether rounding down has left nothing of a size, so that the
// instance bounds nothing.
func (in *instance) empty() bool {
	for _, k := range in.kinds {
		for _, s := range k.shapes {
			if s.width < 1 || in.heights[s.class] < 1 {
				return true
			}
		}
	}
	return false
}
