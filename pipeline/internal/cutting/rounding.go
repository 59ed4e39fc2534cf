package cutting

import "yardproof/schema/measure"

// rounding is how sizes go to a grid that not all of them lie on. Up, what fits
// by the grid fits by the tick, so that layouts are right. Down, what fits by the
// tick fits by the grid, so that bounds are right.
type rounding int

const (
	up rounding = iota
	down
)

func (r rounding) to(a, unit measure.Length) measure.Length {
	if r == down {
		return a / unit
	}
	return ceilLength(a, unit)
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
