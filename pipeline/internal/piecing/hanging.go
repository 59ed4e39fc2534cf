package piecing

import "yardproof/schema/measure"

// Sleeve is a hanging sleeve: a strip folded lengthwise into a tube and sewn
// along the back's top edge.
type Sleeve struct {
	Cut    measure.Length // width: 2*depth + 2s
	Pieces int64          // more than one when the quilt is wider than the limit
	Each   measure.Surd   // cut length of each piece, hems included
	Strips int64          // of usable width U, joined straight, for all pieces
}

// SleeveRule is how a show or a studio wants its sleeves. A sleeve of 4 in
// finished depth is cut 8 1/2 in by one guild's show rule, 9 in by another's,
// and the first wants it in two when the quilt is wider than 90 in.
type SleeveRule struct {
	Depth   measure.Length // finished, flat
	Shorter measure.Length // than the finished quilt: 1 to 2 in in those rules
	Hem     measure.Length // added to each end of a piece; 0 where Shorter includes it
	Widest  measure.Length // quilt for one piece; 0 for no limit
}

// HangingSleeve works out the sleeve for a quilt of finished width. The width
// is derived from geometry. ok is false when a strip of usable width u cannot
// be joined to the length.
func HangingSleeve(width measure.Surd, r SleeveRule, u, s measure.Length) (h Sleeve, ok bool) {
	h = Sleeve{Cut: 2*r.Depth + 2*s, Pieces: 1}
	if r.Widest > 0 && width.Cmp(r.Widest.Surd()) > 0 {
		h.Pieces = 2
	}
	run := width.Sub(r.Shorter.Surd())
	h.Each = run.DivInt(h.Pieces).Add((2 * r.Hem).Surd())
	// Pieces are cut one after the other from one joined strip.
	h.Strips, ok = JoinedStrips(h.Each.MulInt(h.Pieces), u, 2*s)
	return h, ok
}

// SleeveDepth is the finished depth, flat, of a sleeve cut w: (w - 2s)/2.
func SleeveDepth(w, s measure.Length) measure.Surd { return (w - 2*s).Surd().DivInt(2) }

// BedQuilt is the finished size of a quilt for a mattress: width and two
// drops by length, one drop and, where pillows are tucked in, the tuck (about
// 14 in in a published table; an input). Mattress sizes are published in
// tables that differ by an inch, so they are inputs too. Derived from geometry.
func BedQuilt(mattress Box, drop, tuck measure.Length) Box {
	return Box{mattress.Width.Add((2 * drop).Surd()), mattress.Height.Add((drop + tuck).Surd())}
}

// BeforeDrawIn is the size that comes out at size once quilting, or washing,
// has drawn it in by the fraction p of each side: size/(1-p). 1 to 3 % for
// quilting is from memory, an input. A fraction of 1 or more, or below none,
// leaves the size as it is.
func BeforeDrawIn(size Box, p measure.Surd) Box {
	left := one().Sub(p)
	if left.Sign() <= 0 || p.Sign() < 0 {
		return size
	}
	return Box{size.Width.Div(left), size.Height.Div(left)}
}

// FitsEitherWay reports whether a batting, or any rectangle, covers another
// lying as it is and turned by a quarter.
func FitsEitherWay(has, wanted Box) (straight, turned bool) {
	covers := func(b Box) bool {
		return b.Width.Cmp(wanted.Width) >= 0 && b.Height.Cmp(wanted.Height) >= 0
	}
	return covers(has), covers(has.Turned())
}
