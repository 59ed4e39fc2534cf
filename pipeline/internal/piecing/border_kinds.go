package piecing

import (
	"slices"

	"yardproof/schema/measure"
)

// CorneredBorder is a border of finished width g with a square in each
// corner, round an inner quilt of unfinished size: the strips are as long as
// the inner quilt, the four squares, and the strips' width, are Border.Cut,
// g + 2s. Derived from geometry.
func CorneredBorder(inner Box, finished, s measure.Length) Border {
	b := ButtedBorder(inner, finished, s, false)
	b.Sides, b.Ends = inner.Height, inner.Width
	b.Needed = b.Sides.Add(b.Ends).MulInt(2)
	return b
}

// MitredBorder is a border of finished width g with mitred corners, round an
// inner quilt of unfinished size. Its strips are as long as seam allowance to
// the very tip takes: W + 2g + (2 + 2 sqrt2)s for a finished inner W, the
// offset of a trapezoid with 45-degree ends. Derived from geometry; practice
// adds 2 to 4 in more (common practice, no source).
func MitredBorder(inner Box, finished, s measure.Length) Border {
	b := ButtedBorder(inner, finished, s, false)
	tips := rootOf2(2 * s)
	b.Sides, b.Ends = b.Outer.Height.Add(tips), b.Outer.Width.Add(tips)
	b.Needed = b.Sides.Add(b.Ends).MulInt(2)
	return b
}

// JoinedPerSide is how many strips of length L it takes when each side's
// strip is joined for itself: the sum of JoinedStrips over the sides, never
// fewer than for one joined strip that is cut up. Both conventions are common
// practice, no source.
func JoinedPerSide(sides []measure.Surd, l, loss measure.Length) (k int64, ok bool) {
	for _, side := range sides {
		n, fits := JoinedStrips(side, l, loss)
		if !fits {
			return 0, false
		}
		k += n
	}
	return k, true
}

// OnSides is a butted border of which only the two side strips are sewn on: the
// quilt grows in width alone. Derived from geometry.
func OnSides(inner Box, finished, s measure.Length) Border {
	b := ButtedBorder(inner, finished, s, false)
	b.Ends, b.Needed, b.Outer.Height = measure.Surd{}, b.Sides.MulInt(2), inner.Height
	return b
}

// OnEnds is a butted border of which only the top and the bottom strip are sewn
// on: the quilt grows in length alone. Derived from geometry.
func OnEnds(inner Box, finished, s measure.Length) Border {
	b := ButtedBorder(inner, finished, s, true)
	b.Sides, b.Needed, b.Outer.Width = measure.Surd{}, b.Ends.MulInt(2), inner.Width
	return b
}

// Lengthened is a mitred border whose strips are each cut longer by an
// allowance, which is cut off with the mitre.
func (b Border) Lengthened(by measure.Length) Border {
	b.Sides, b.Ends = b.Sides.Add(by.Surd()), b.Ends.Add(by.Surd())
	b.Needed = b.Sides.Add(b.Ends).MulInt(2)
	return b
}

// PiecedCount is how many units of finished length go into a finished side,
// rounded down, and what remains of the side; the unit divides it when
// nothing does. Compared exactly. A unit of no length gives 0 and the side.
func PiecedCount(side, unit measure.Surd) (count int64, rest measure.Surd) {
	count = max(0, measure.FloorDiv(side, unit))
	return count, side.Sub(unit.MulInt(count))
}

// Spacer is the finished width of the narrowest plain border after which
// units of finished length divide all four sides of a finished inner quilt,
// zero when they do already. ok is false when no border of one width helps,
// because width and height do not differ by a whole number of units. Derived
// from geometry.
func Spacer(inner Box, unit measure.Surd) (width measure.Surd, ok bool) {
	if unit.Sign() <= 0 {
		return measure.Surd{}, false
	}
	reach := func(side measure.Surd) measure.Surd {
		return unit.MulInt(measure.CeilDiv(side, unit)).Sub(side)
	}
	short := reach(inner.Width)
	return short.DivInt(2), short.Equal(reach(inner.Height))
}

// Coping is the finished width of the strips that bring a panel, measured as
// cut, to a finished size: so much on each of its sides, and of its ends.
// Negative, the panel is too large and is trimmed by as much. Derived from
// geometry.
func Coping(panel, finished Box, s measure.Length) (sides, ends measure.Surd) {
	has := panel.Finished(s)
	return finished.Width.Sub(has.Width).DivInt(2), finished.Height.Sub(has.Height).DivInt(2)
}

// Lengthwise is strips cut along the fabric.
type Lengthwise struct {
	Side     int64          // strips side by side in the usable width, rounded down
	Length   measure.Surd   // of fabric
	LeftOver measure.Length // width left for other pieces all along the first of it
}

// LengthwiseStrips cuts strips of one cut width and the given lengths along
// fabric of usable width U, the longest first and as many side by side as go:
// a border's four strips ask for its longest when 4 cuts fit U. ok is false
// when not even one does. Derived from geometry.
func LengthwiseStrips(lengths []measure.Surd, cut, u measure.Length) (l Lengthwise, ok bool) {
	l.Side = PerStrip(u, cut)
	if l.Side == 0 {
		return l, false
	}
	longest := slices.SortedFunc(slices.Values(lengths), func(a, b measure.Surd) int { return b.Cmp(a) })
	l.Side = min(l.Side, int64(len(longest)))
	l.LeftOver = u - measure.Length(l.Side)*cut
	for i := 0; i < len(longest); i += int(l.Side) {
		l.Length = l.Length.Add(longest[i])
	}
	return l, true
}
