package buyer

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// along is the length of fabric that a step's strips take; 0 for pieces, which
// may lie in the strips of others.
func (s supply) along(c step) measure.Surd {
	n := c.need
	if !n.Strip {
		n = c.strips
	}
	height := n.Along
	if s.f.Repeat.Length > 0 {
		height = measure.CeilTo(height, s.f.Repeat.Length)
	}
	return height.Surd().MulInt(n.Count)
}

// wholeStrips is the sum of the widths of all strips that are cut whole, and the
// backing.
func (s supply) wholeStrips() measure.Surd {
	sum := s.backing()
	for _, c := range s.steps {
		if c.need.Strip {
			c.need.Count = c.least()
		}
		sum = sum.Add(s.along(c))
	}
	return sum
}

// rowsAlong is the least length of the rows in which a border's strips along the
// fabric lie side by side: each row holds as many as the width, and is no shorter
// than the shortest of them. In a rectangle there are never more equal ones, as
// the points a strip's width and length apart lie in one strip each at most
// (derived from geometry).
func (s supply) rowsAlong() (sum measure.Surd) {
	for i, c := range s.steps {
		if !c.need.First || i > 0 && s.same(i-1, i) {
			continue
		}
		n, shortest := int64(0), c.need.Along
		for j := i; j < len(s.steps) && s.same(i, j); j++ {
			n, shortest = n+s.steps[j].need.Count, min(shortest, s.steps[j].need.Along)
		}
		if across := piecing.PerStrip(s.f.Width, c.need.Across); across > 0 && s.alone(i) {
			sum = shortest.Surd().MulInt(piecing.Batches(n, across))
		}
	}
	return sum
}

// alone reports whether no other thing is cut along the fabric.
func (s supply) alone(step int) bool {
	for i, c := range s.steps {
		if c.need.First && !s.same(step, i) {
			return false
		}
	}
	return true
}

// plainSum reports whether the strips' widths and the backing are all that it
// takes: there are no pieces, and no two things share a strip.
func (s supply) plainSum() bool {
	sum := s.backing()
	for _, c := range s.steps {
		if !c.need.Strip {
			return false
		}
		sum = sum.Add(s.along(c))
	}
	return sum.Equal(s.bound().Surd())
}

// holds reports whether the printed length may hold it all: strips are a plain
// sum, and of pieces as many lie in them as can.
func (s supply) holds() bool {
	have := s.f.ToCut(s.bought.Width)
	if s.wholeStrips().Add(s.rowsAlong()).Cmp(have.Surd()) > 0 {
		return false
	}
	for _, needs := range s.layouts() {
		if !s.mayHold(s.f.Taking(needs, s.panels.length), have) {
			return false
		}
	}
	return true
}

// mayHold reports whether no bound stands against a layout in a length.
func (s supply) mayHold(f *derive.Fabric, have measure.Length) bool {
	if f.Err != nil || f.Plain.Length+f.Panels <= have || f.Packed().Least <= have {
		return true
	}
	stacked := f.Stacked()
	return stacked != nil && f.ToCut(stacked.Gross) <= have
}

// layouts are what has to be laid out: everything, with pieces as they may lie,
// and the printed strips with what cannot be cut from them.
func (s supply) layouts() [][]derive.Need {
	all := [][]derive.Need{s.pieces()}
	for _, c := range s.steps {
		if c.strips.Count > 0 {
			return append(all, s.apart())
		}
	}
	return all
}

// pieces are all needs, pieces as they may lie.
func (s supply) pieces() (needs []derive.Need) {
	for _, c := range s.steps {
		needs = append(needs, c.need)
	}
	return needs
}

// apart are all strips, those that are printed for pieces among them, and of the
// other pieces those that are too large to be cut from what such strips leave.
func (s supply) apart() (needs []derive.Need) {
	tallest := measure.Length(0)
	for _, c := range s.steps {
		tallest = max(tallest, c.strips.Along)
	}
	for _, c := range s.steps {
		switch {
		case c.strips.Count > 0:
			needs = append(needs, c.strips)
		case c.need.Strip || c.upright || !c.within && min(c.need.Across, c.need.Along) > tallest:
			needs = append(needs, c.need)
		}
	}
	return needs
}

// whole is the fabric with all of it cut from it as printed: pieces for which
// strips are printed in those strips.
func (s supply) whole() *derive.Fabric {
	var needs []derive.Need
	for _, c := range s.steps {
		if c.within {
			continue
		}
		if c.strips.Count > 0 {
			c.need = c.strips
		}
		needs = append(needs, c.need)
	}
	return s.f.Taking(needs, s.panels.length)
}

// bound is what no layout of it all goes below, the backing included.
func (s supply) bound() (least measure.Length) {
	for _, needs := range s.layouts() {
		t := s.f.Taking(needs, s.panels.length)
		least = max(least, t.Packed().Least)
	}
	return least
}
