package piecing

import "yardproof/schema/measure"

// halfPair is the widths of a cut half triangle along the strip's two edges:
// the leg along the row, and what the strip's edge leaves of its sharp tip.
// Derived from geometry: the tip narrows evenly over the upright leg.
func (t Triangle60) halfPair() (wide, narrow measure.Surd) {
	upright, along := t.HalfLegs()
	return along, along.Sub(along.Mul(t.Strip()).Div(upright))
}

// HalfLengthFor is the length of strip that n half triangles take. Two lie
// head to tail, slope to slope, in the length of both their widths; the next
// two begin at a straight edge. Derived from geometry.
func (t Triangle60) HalfLengthFor(n int64) measure.Surd {
	if n <= 0 {
		return measure.Surd{}
	}
	wide, narrow := t.halfPair()
	length := wide.Add(narrow).MulInt(n / 2)
	if n%2 == 1 {
		length = length.Add(wide)
	}
	return length
}

// HalfPerStrip is how many half triangles a strip of length L gives, rounded
// down.
func (t Triangle60) HalfPerStrip(l measure.Length) int64 {
	wide, narrow := t.halfPair()
	n := 2 * wholeSteps(l, measure.Surd{}, wide.Add(narrow))
	if t.HalfLengthFor(n+1).Cmp(l.Surd()) <= 0 {
		n++
	}
	return n
}

// LengthFor is the length of strip that n triangles take.
func (t Triangle60) LengthFor(n int64) measure.Surd {
	if n <= 0 {
		return measure.Surd{}
	}
	return t.Waste().Add(t.Advance().MulInt(n))
}
