package derive

import (
	"yardproof/schema/measure"
)

// The seams of units are as long as what is sewn together on the line of
// stitching, from raw edge to raw edge, before anything is trimmed. All derived
// from geometry.

// batches is the seams of all batches of a unit, of which one takes so much, and
// of the units that are made of its corners.
func (p *Part) batches(each measure.Surd) (l measure.Surd, ok bool) {
	u := p.Unit
	if u.Keep {
		for _, b := range u.Bonus {
			each = each.Add(diagonal(b.Side).MulInt(b.Count * u.Each))
		}
	}
	return each.MulInt(u.Batches), p.Known
}

// diagonal is that of a square.
func diagonal(side measure.Surd) measure.Surd { return side.Mul(measure.Root2()) }

// flips is squares sewn over corners along their diagonals.
func flips(squares []Piece) (l measure.Surd) {
	for _, c := range squares {
		l = l.Add(diagonal(c.Width.Surd()).MulInt(c.Count))
	}
	return l
}

// aroundSquare is four triangles, of squares k cut once, about a square c: a pair
// on opposite sides along c, or along the triangle where it is the shorter, and
// the other pair along what then is one line, k*sqrt2 - 2s.
func aroundSquare(c, k, seam measure.Length) measure.Surd {
	long := diagonal(k.Surd()).Sub((2 * seam).Surd())
	return measure.Min(c.Surd(), long).Add(long).MulInt(2)
}

// seams of N blocks b on point in D diagonal rows. In every row N + D joins in
// all, of b + 2s each: between blocks, and with the triangle at either end. Then
// the rows, and the corners above the first and below the last: D + 1 lines that
// are (N + D)b long in all, and run on at both ends to the raw edge, which lies
// at 45 degrees s and the float away.
func (o *OnPoint) seams(seam measure.Length) measure.Surd {
	if o.Sashing != nil {
		return o.sashedSeams(seam)
	}
	n, d := o.Blocks(), o.Rows+o.OnPoint.Columns-1
	beyond := diagonal(o.Float.Add(seam.Surd())).MulInt(2)
	return o.Block.MulInt(2).Add((2 * seam).Surd()).MulInt(n + d).Add(beyond.MulInt(d + 1))
}

// sashedSeams is the seams of blocks b on point with sashes t, of which half
// lie in the diagonal rows of blocks and half in the rows of sashes between
// them and round them. The former are joined on both sides along b + 2s, the
// latter to a cornerstone at either end along t + 2s. Both sides of a row of
// sashes are joined to what lies beside it: along every block and every
// sash's end between two, and at either end of the row on one side along the
// cornerstone's t and one allowance, on the other, where a triangle's point
// lies, to the triangle's raw edge or the cornerstone's, whichever comes first.
func (o *OnPoint) sashedSeams(seam measure.Length) measure.Surd {
	s, t := seam.Surd(), o.OnPoint.Sash.Surd()
	half, rows := o.Sashes()/2, o.Rows+o.OnPoint.Columns
	joins := o.Sash.Width.MulInt(2 * half).Add(o.Stone.Width.MulInt(2 * half))
	beside := o.Block.MulInt(2 * half).Add(t.MulInt(2 * (half - rows)))
	stone := t.Add(s)
	ends := stone.Add(measure.Min(diagonal(s), stone)).MulInt(2 * rows)
	return joins.Add(beside).Add(ends)
}
