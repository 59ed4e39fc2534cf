package buyer

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// lengths are what a border's strips are cut to.
type lengths struct{ sides, ends measure.Surd }

// lengths are the printed lengths of a border's strips where they are more than
// the recipe's, and the figure that is most so. Only mitred strips may be longer:
// more is cut off with the mitre. Of any other border such a figure is wrong
// by itself.
func (r *reader) lengths(b *derive.Border) (l lengths, by Figure) {
	l = lengths{b.Sides, b.Ends}
	if b.Said.Corners != plan.Mitred || !b.Known {
		return l, by
	}
	for _, said := range r.said.Borders {
		if said.Of.Text != b.Said.Name.Text {
			continue
		}
		var over measure.Surd
		raise := func(what What, to *measure.Surd, x plan.Length) {
			more := x.Surd().Sub(*to)
			if !x.Given() || more.Sign() <= 0 {
				return
			}
			*to = x.Surd()
			if more.Cmp(over) > 0 {
				over, by = more, Figure{What: what, Name: said.Of.Text, Width: x.Length, At: x.At}
			}
		}
		raise(SidesOf, &l.sides, said.Sides)
		raise(EndsOf, &l.ends, said.Ends)
	}
	return l, by
}

// all is the length of all strips together.
func (l lengths) all() measure.Surd { return l.sides.Add(l.ends).MulInt(2) }

// strips is how many strips give the lengths, as the border is joined.
func (l lengths) strips(b *derive.Border) (n int64, ok bool) {
	if b.Said.EachSide {
		return piecing.JoinedPerSide(piecing.Border{Sides: l.sides, Ends: l.ends}.Lengths(), b.Strips.Each, b.Strips.Loss)
	}
	return piecing.JoinedStrips(l.all(), b.Strips.Each, b.Strips.Loss)
}

// join stops her where the printed strips of a border, joined, do not give the
// printed lengths.
func (r *reader) join(b *derive.Border) {
	l, by := r.lengths(b)
	if !by.Printed() || b.Along != nil || b.Said.Copes() || !b.Strips.OK || r.size.Part(b.Said.Name.Text) != nil {
		return
	}
	said := r.strips(b.Said.Name.Text, b.Strips.Count)
	takes, ok := l.strips(b)
	if !said.Printed() || !ok || takes <= said.N {
		return
	}
	s := Stop{
		Short: Length, Figure: by, Limit: said, Border: b,
		About: derive.Quantity{Kind: derive.Finish, Name: b.Said.Name.Text},
		Takes: takes, Has: said.N, Needs: l.all(), Least: b.Sides,
	}
	if by.What == EndsOf {
		s.Least = b.Ends
	}
	s.There = piecing.JoinedLength(said.N, b.Strips.Each, b.Strips.Loss).Surd()
	r.stop(s)
}
