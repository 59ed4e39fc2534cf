package derive

import (
	"slices"

	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// SeamLength is how long the seams of one thing are, raw edge to raw edge.
type SeamLength struct {
	Of     string // a part, "rows", a border, "backing", "binding" or "sleeve"
	Class  string // ISO 4915 number, "" when the plan gives none
	Length measure.Surd
}

// seams lists the length of every seam of the size, in the order of sewing.
// unknown are the parts whose seams cannot be told.
func (s *Size) seams() (all []SeamLength, unknown []string) {
	add := func(of, class string, l measure.Surd) {
		if l.Sign() > 0 {
			all = append(all, SeamLength{of, class, l})
		}
	}
	for _, p := range s.Parts {
		if p.Needed == 0 {
			continue
		}
		l, ok := p.Room.Seams()
		if !ok {
			unknown = append(unknown, p.Name.Text)
			continue
		}
		add(p.Name.Text, p.Seam.Stitch.Text, l)
	}
	rows, ok := s.setSeams(s.Of.Layout.Setting, s.Top.Setting, s.Of.Seam.Allowance.Length)
	add("rows", s.Of.Seam.Stitch.Text, rows)
	if !ok {
		unknown = append(unknown, "the layout")
	}
	for _, b := range s.Top.Borders {
		class := s.Of.Seam.Stitch.Text
		if b.Said.Seam != nil {
			class = b.Said.Seam.Stitch.Text
		}
		add("border "+b.Said.Name.Text, class, b.seams())
	}
	s.finishSeams(add)
	return all, unknown
}

// joinSeams is the seam length of strips joined end to end: across the strip,
// or on its diagonal.
func joinSeams(j plan.Joins, width measure.Length, strips int64) measure.Surd {
	each := width.Surd()
	if j == plan.Diagonal {
		each = each.Mul(measure.Root2())
	}
	return each.MulInt(max(0, strips-1))
}

// finishSeams are sewn in lockstitch where the plan's seam is an overlocked
// one, as nobody overlocks a binding.
func (s *Size) finishSeams(add func(string, string, measure.Surd)) {
	class := s.Of.Seam.Stitch.Text
	if s.Of.Seam.Overlocked() {
		class = "301"
	}
	if b := s.Backing; b != nil && b.Known {
		add("backing", class, b.Each.MulInt(b.Panels-1))
	}
	if b := s.Binding; b != nil {
		add("binding", class, b.Round.Add(bindingJoins(b)))
	}
	if l := s.Sleeve; l != nil && l.Strips.OK {
		add("sleeve", class, l.Each.MulInt(l.Pieces).Add(joinSeams(plan.Straight, l.Said.Cut.Length, l.Strips.Count)))
	}
}

// bindingJoins: a square for continuous bias is sewn along its side twice,
// once to a parallelogram and once to a tube.
func bindingJoins(b *Binding) measure.Surd {
	w := b.Said.Cut.Length
	switch {
	case b.Bias == nil:
		return joinSeams(b.Said.Joins, w, b.Strips.Count)
	case b.Said.Kind == plan.ContinuousBias:
		return b.Bias.Square.Surd().MulInt(2 * b.Bias.Squares).Add(joinSeams(plan.Diagonal, w, b.Bias.Squares))
	}
	return joinSeams(plan.Diagonal, w, b.Bias.Strips)
}

// slanted reports whether a row is of 60-degree shapes.
func (s *Size) slanted(row []plan.Cell) bool {
	return slices.ContainsFunc(row, func(c plan.Cell) bool {
		p := s.byName[c.Part.Text]
		return p != nil && p.Shape != nil && p.Shape.Kind.Triangular()
	})
}

// pairSeams is the seams of one pair of squares c: beside the diagonal on both
// its sides, where the line at distance s is c*sqrt2 - 2s long; for four at a
// time all round at s from the edge; for eight beside both diagonals. Derived
// from geometry.
func pairSeams(c, s measure.Length, atATime int) measure.Surd {
	beside := c.Surd().Mul(measure.Root2()).Sub((2 * s).Surd())
	switch atATime {
	case 4:
		return (4 * c).Surd()
	case 8:
		return beside.MulInt(4)
	}
	return beside.MulInt(2)
}

// triangleSeams is the seams of one square of two triangles cut once from
// squares c, or of four cut twice: two pairs along their short sides, each
// c/sqrt2 - s long at the seam, then the pairs along the diagonal, which has
// lost a seam. Derived from geometry.
func triangleSeams(c, s measure.Length, triangles int) measure.Surd {
	diagonal := c.Surd().Mul(measure.Root2())
	if triangles == 2 {
		return diagonal.Sub((2 * s).Surd())
	}
	short := diagonal.DivInt(2).Sub(s.Surd())
	return short.MulInt(2).Add(diagonal).Sub((4 * s).Surd())
}
