package piecing

import "yardproof/schema/measure"

// Tube is two strip sets of equal width, right sides together and sewn along
// both long edges, cut into right triangles that open into squares.
//
// Put y = 0 on the near raw edge: the near seam is at s, the far seam at T-s,
// the far raw edge at T. A square ruler is laid with its corner, the tip,
// towards the far edge and both its edges at 45 degrees to the strips. The
// triangle under it, cut through both layers, opens along the near seam into
// a square; the next triangle points the other way. All formulas of this
// file are derived from geometry and checked against placed polygons.
type Tube struct {
	Width  measure.Length // T
	Seam   measure.Length // s
	Beyond measure.Length // e: how far the tip lies beyond the far seam, 0 there, s on the raw edge
}

// Height is the triangle's height above its opening seam: h = T - 2s + e.
func (t Tube) Height() measure.Length { return t.Width - 2*t.Seam + t.Beyond }

// Side is the unfinished side of the opened square: h*sqrt2. Not on any
// ruler: tubes are trimmed, or printed as nominal.
func (t Tube) Side() measure.Surd { return t.Height().Surd().Mul(measure.Root2()) }

// CutLength is the length of each sloping cut, tip to near raw edge:
// (h+s)*sqrt2. A ruler that spans it needs no sliding.
func (t Tube) CutLength() measure.Surd {
	return (t.Height() + t.Seam).Surd().Mul(measure.Root2())
}

// Advance is the distance from one tip to the next along the tube:
// a = T - 2s + 2e, as neighbouring triangles share a sloping cut. For a tip
// short of the far seam (e < 0) the gaps alternate and T - 2s + e is the safe
// figure.
func (t Tube) Advance() measure.Length {
	if t.Beyond < 0 {
		return t.Height()
	}
	return t.Height() + t.Beyond
}

// Stub is the stitched length of the far seam left across a tip: 2e, to be
// unpicked before the square opens flat.
func (t Tube) Stub() measure.Length { return max(0, 2*t.Beyond) }

// first is the length of tube that the first triangle needs: its base on the
// opening seam, or down to the near raw edge when the ears are kept.
func (t Tube) first(earsKept bool) measure.Length {
	if earsKept {
		return 2 * (t.Height() + t.Seam)
	}
	return 2 * t.Height()
}

// Yield is how many squares a tube of length L gives, rounded down:
// 1 + floor((L - 2h)/a), none when L < 2h. With the ears kept whole the first
// triangle needs 2(h+s).
func (t Tube) Yield(l measure.Length, earsKept bool) int64 {
	if t.Height() <= 0 || l < t.first(earsKept) {
		return 0
	}
	return 1 + int64((l-t.first(earsKept))/t.Advance())
}

// LengthFor is the shortest tube that gives n squares: 2h + (n-1)a, or
// 2(h+s) + (n-1)a with the ears kept.
func (t Tube) LengthFor(n int64, earsKept bool) measure.Length {
	if n <= 0 {
		return 0
	}
	return t.first(earsKept) + measure.Length(n-1)*t.Advance()
}

// Crossed is how many of n squares of one tube are crossed by a seam at most,
// where its sides are joined of shorter sets at so many places along it: two at
// each. Triangles that point the same way stand apart, each over a length of its
// own, so that a line across the tube meets one that points up and one that
// points down. Derived from geometry.
func Crossed(joins, n int64) int64 { return min(2*joins, n) }

// Orientations is how n squares of one tube divide into the two kinds: the
// first cut and every second after it open along one long seam of the tube, the
// others along the other. Which of the two the first opens along is the
// cutter's choice, tube by tube.
func Orientations(n int64) (first, second int64) { return n - n/2, n / 2 }

// TubesFor is how many tubes of so many squares each give at least near and far
// squares of the two kinds and free ones of either, rounded up: as many as all
// of them take, and as many as the kind most wanted takes at the larger half of
// a tube each. 0 where a tube gives nothing.
func TubesFor(near, far, free, each int64) int64 {
	if each <= 0 {
		return 0
	}
	more, _ := Orientations(each)
	return max(Batches(near+far+free, each), Batches(max(near, far), more))
}

// Starts is how many of a number of tubes are begun so that their first square
// is a near one, the others with a far one, for at least near and far squares:
// half of them, rounded up, where that does. ok is false where no choice does.
func Starts(tubes, near, far, each int64) (first int64, ok bool) {
	more, less := Orientations(each)
	if more == less {
		return (tubes + 1) / 2, max(near, far) <= tubes*more
	}
	low, high := max(0, near-tubes*less), tubes-max(0, far-tubes*less)
	return min(max((tubes+1)/2, low), high), low <= high
}
