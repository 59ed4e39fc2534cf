package cutting

import (
	"math/bits"

	"yardproof/schema/measure"
)

// AreaBound is a length that no straight cutting of the problem can go below,
// in ticks, rounded up: the area of everything over the usable width, or the
// longest extent that some piece is forced to have along the fabric, whichever
// is more. It also holds for layouts that are not strips. It is exact integer
// arithmetic; a problem that [Plain] refuses has the bound 0.
func AreaBound(p Problem) measure.Length {
	if p.check() != nil {
		return 0
	}
	var a area
	var longest measure.Length
	for _, q := range p.Pieces {
		if q.Count == 0 {
			continue
		}
		a.add(q.Across, q.Along, q.Count)
		longest = max(longest, shortestAlong(q, p.Cloth.Width))
	}
	for _, s := range p.Strips {
		full, part := s.split(p.Cloth.Width)
		a.add(p.Cloth.Width, s.Height, full)
		if part > 0 {
			a.add(part, s.Height, 1)
		}
		if s.Count > 0 {
			longest = max(longest, s.Height)
		}
	}
	return max(a.over(p.Cloth.Width), longest)
}

// shortestAlong is the least extent of a piece along the fabric among the
// orientations that fit, or 0 where none does.
func shortestAlong(q Piece, width measure.Length) measure.Length {
	var least measure.Length
	for _, turned := range q.orientations() {
		across, along := q.sides(turned)
		if across <= width && (least == 0 || along < least) {
			least = along
		}
	}
	return least
}

// SheetAreaBound is a number of sheets that no cutting can do without: the area
// of everything over the area of a sheet, rounded up. A problem that
// [PlainPieces] refuses has the bound 0.
func SheetAreaBound(p SheetProblem) int {
	if _, err := PlainPieces(p); err != nil {
		return 0
	}
	var a area
	for _, q := range p.Pieces {
		a.add(q.Across, q.Along, q.Count)
	}
	for _, s := range p.Strips {
		full, part := s.split(p.Sheet.Across)
		a.add(p.Sheet.Across, s.Height, full)
		if part > 0 {
			a.add(part, s.Height, 1)
		}
	}
	return int(ceilLength(a.over(p.Sheet.Across), p.Sheet.Along))
}

// area is a sum of rectangles in square ticks, 128 bits wide: with sides up to
// 2^36 and a million pieces no sum leaves it.
type area struct{ hi, lo uint64 }

func (a *area) add(w, h measure.Length, count int) {
	hi, lo := bits.Mul64(uint64(w), uint64(h))
	chi, clo := bits.Mul64(lo, uint64(count))
	chi += hi * uint64(count)
	var carry uint64
	a.lo, carry = bits.Add64(a.lo, clo, 0)
	a.hi, _ = bits.Add64(a.hi, chi, carry)
}

// over divides by a width and rounds up.
func (a area) over(width measure.Length) measure.Length {
	w := uint64(width)
	if a.hi >= w {
		return 1<<63 - 1
	}
	q, r := bits.Div64(a.hi, a.lo, w)
	if r > 0 {
		q++
	}
	if q > 1<<63-1 {
		return 1<<63 - 1
	}
	return measure.Length(q)
}
