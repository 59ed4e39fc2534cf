package piecing

import "yardproof/schema/measure"

// BiasPanel is a rectangle of cloth from which bias strips of a cut width are
// cut side by side at 45 degrees, Strips of them from edge to edge. The
// triangles left at its ends, with legs of its height, give shorter ones.
// Derived from geometry.
type BiasPanel struct {
	High   measure.Length
	Width  measure.Length // cut width of the strips
	Strips int64          // from edge to edge
}

// Wide is how wide the panel is: its height for the slant and w sqrt2 for each
// strip from edge to edge.
func (b BiasPanel) Wide() measure.Surd { return b.High.Surd().Add(rootOf2(b.Width).MulInt(b.Strips)) }

// Fitting is how many strips from edge to edge a cloth of usable width u gives,
// none where it is narrower than the panel is high: floor((u - h) / (w sqrt2)).
func (b BiasPanel) Fitting(u measure.Length) int64 {
	if u < b.High || b.Width <= 0 {
		return 0
	}
	return measure.FloorDiv((u - b.High).Surd(), rootOf2(b.Width))
}

// Joined is the length of all strips of so many panels joined on the straight
// grain with seam s: h sqrt2 from edge to edge, and those of a square of side h.
func (b BiasPanel) Joined(panels int64, s measure.Length) measure.Surd {
	short := BiasStrips(b.High, b.Width)
	count := panels * (b.Strips + int64(len(short)))
	if count == 0 {
		return measure.Surd{}
	}
	one := rootOf2(b.High).MulInt(b.Strips).Add(measure.Sum(short...))
	return one.MulInt(panels).Sub(rootOf2(2 * s).MulInt(count - 1))
}

// Pieces is how many straight-ended pieces of a length the panel gives: those of
// its strips from edge to edge, and of its corners.
func (b BiasPanel) Pieces(length measure.Length) int64 {
	return b.Strips*b.PerStrip(length) + b.InCorners(length)
}

// PerStrip is how many straight-ended pieces of a length a strip from edge to edge
// gives: floor((h sqrt2 - w) / l).
func (b BiasPanel) PerStrip(length measure.Length) int64 {
	if b.Width <= 0 || length <= 0 {
		return 0
	}
	return max(0, measure.FloorDiv(rootOf2(b.High).Sub(b.Width.Surd()), length.Surd()))
}

// InCorners is how many straight-ended pieces of a length the strips of both
// triangles give: floor((h sqrt2 - 2(i+1)w) / l) each, i = 0, 1, ... That is, of
// each triangle floor((h sqrt2 - kl) / 2w) strips give a k-th piece.
func (b BiasPanel) InCorners(length measure.Length) int64 {
	if b.Width <= 0 || length <= 0 {
		return 0
	}
	n := int64(0)
	for left := rootOf2(b.High).Sub(length.Surd()); left.Cmp((2 * b.Width).Surd()) >= 0; left = left.Sub(length.Surd()) {
		n += 2 * measure.FloorDiv(left, (2*b.Width).Surd())
	}
	return n
}

// Short is how many strips of its triangles are at least a length long, straight
// ended: 2 floor((h sqrt2 - l) / 2w).
func (b BiasPanel) Short(length measure.Length) int64 {
	left := rootOf2(b.High).Sub(length.Surd())
	if b.Width <= 0 || left.Sign() < 0 {
		return 0
	}
	return 2 * measure.FloorDiv(left, (2*b.Width).Surd())
}
