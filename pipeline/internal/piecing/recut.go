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

// Loop is a strip set whose last strip is sewn to its first. It is cut across
// into rings, and each ring unpicked at one seam.
type Loop struct {
	Strips []measure.Length // cut widths
	Seam   measure.Length
}

// Around is the way round the loop: T - 2s, a set of the same strips with one
// seam more. A ring cut open anywhere but at a seam is so long. Derived from
// geometry.
func (l Loop) Around() measure.Length { return SetWidth(l.Strips, l.Seam) - 2*l.Seam }

// Opened is the strips of a ring unpicked at the seam before strip first, in
// order, by their place in Strips: the same arrangement turned on by first.
// The segment is as long as the set is wide, SetWidth. Any whole number counts
// round the loop.
func (l Loop) Opened(first int) []int {
	n := len(l.Strips)
	order := make([]int, n)
	for i := range order {
		order[i] = ((first+i)%n + n) % n
	}
	return order
}

// Staircase is the openings of rings that shift by step from each to the
// next: the first strips of so many rings.
func (l Loop) Staircase(rings, step int) []int {
	var firsts []int
	if len(l.Strips) == 0 {
		return nil
	}
	n := len(l.Strips)
	at := 0
	for range rings {
		firsts = append(firsts, at)
		at = ((at+step)%n + n) % n
	}
	return firsts
}

// Chain is strips sewn end to end, folded in half, sewn along the long edge
// and cut at the fold, over and over.
type Chain struct {
	Length measure.Surd   // left at this step
	Width  measure.Length // raw edge to raw edge
	Strips int64          // one above the other
}

// ChainOf is n strips of length L and cut width w end to end, each join
// costing loss (w on the diagonal, 2s straight), with trim cut off the first
// so that joins do not meet: JoinedLength less trim.
func ChainOf(n int64, l, w, loss, trim measure.Length) Chain {
	return Chain{Length: max(0, JoinedLength(n, l, loss)-trim).Surd(), Width: w, Strips: 1}
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
