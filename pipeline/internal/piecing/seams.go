package piecing

import "yardproof/schema/measure"

// ScantSeam is where to stitch so that a pressed fold that takes up tau of
// width at each seam lets the draft come out: s - tau/2. An instruction to the
// sewer; formulas use the drafted s. Derived from geometry.
func ScantSeam(s, tau measure.Length) measure.Surd {
	return s.Surd().Sub(tau.Surd().DivInt(2))
}

// PressedWidth is the width of n strips of cut width w, stitched at seam
// stitch and pressed, each fold taking tau: n*w - 2(n-1)stitch - (n-1)tau.
// Derived from geometry.
func PressedWidth(n int64, w measure.Length, stitch measure.Surd, tau measure.Length) measure.Surd {
	if n < 1 {
		return measure.Surd{}
	}
	seam := stitch.MulInt(2).Add(tau.Surd())
	return w.Surd().MulInt(n).Sub(seam.MulInt(n - 1))
}

// RowLoss is what a row of m pieces comes out smaller by when each seam is too
// wide by d: 2(m-1)d. Negative d makes it larger. Derived from geometry.
func RowLoss(m int64, d measure.Length) measure.Length {
	return 2 * measure.Length(max(0, m-1)) * d
}

// SeamUsed is the seam that an overlock takes from the fabric: its bite, from
// the cut edge to the needle line farther from it, and what the knife trims
// off. The bite is a machine setting; ISO 4915 names the class, not a width.
func SeamUsed(bite, trimmed measure.Length) measure.Length { return bite + trimmed }
