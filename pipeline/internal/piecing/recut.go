package piecing

import "yardproof/schema/measure"

// Recut is the size of the pieces of a sewn part cut into equal pieces, so
// many across and so many down: W/across by H/down. Cutting loses nothing, but
// each piece has raw edges on all sides, and sewing them together again costs
// every cut a seam of 2s. ok is false for no pieces. Derived from geometry.
func Recut(part Box, across, down int64) (piece Box, ok bool) {
	if across < 1 || down < 1 {
		return Box{}, false
	}
	return Box{part.Width.DivInt(across), part.Height.DivInt(down)}, true
}

// Chain is strips sewn end to end, folded in half, sewn along the long edge
// and cut at the fold, over and over.
type Chain struct {
	Length measure.Surd   // left at this step
	Width  measure.Length // raw edge to raw edge
	Strips int64          // one above the other
}

// Halved is the chain folded end to end and sewn along its long edge with
// seam s: half as long, twice the strips, 2w - 2s wide. The cut at the fold
// loses nothing. Derived from geometry.
func (c Chain) Halved(s measure.Length) Chain {
	return Chain{Length: c.Length.DivInt(2), Width: 2*c.Width - 2*s, Strips: 2 * c.Strips}
}

// Halvings is the chain and every step after it, so many folds.
func (c Chain) Halvings(folds int, s measure.Length) []Chain {
	steps := []Chain{c}
	for range folds {
		c = c.Halved(s)
		steps = append(steps, c)
	}
	return steps
}
