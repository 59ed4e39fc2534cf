package derive

import (
	"yardproof/pipeline/internal/cutting"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Called is how a size is called in a sentence: a size that is the pattern's only
// one, and is named so, is the quilt.
func (s *Size) Called() string {
	if name := s.Of.Name.Text; name != "only" || len(s.Plan.Sizes) > 1 {
		return name
	}
	return "the quilt"
}

// BuyIn is what to buy of a fabric by the length for a reader whose shop sells in a
// unit: the need before shrinkage, rounded up to the step that fabric is sold in
// there, and the studio's cushion.
func (s *Size) BuyIn(f *Fabric, u measure.Unit) measure.Length {
	if u == s.Plan.Units {
		return f.Buy
	}
	return measure.CeilTo(f.Gross, plan.DefaultsFor(u).Grid) + f.Cushion
}

// Spare is what is left at the ends of strips, and which piece of the same fabric,
// the largest by area, it is enough for, should one be miscut.
type Spare struct {
	cutting.Offcut
	For  *Need // nil where it is enough for none
	Each int64 // of those pieces, from one
}

// Spares are what a layout leaves, largest first, as far as neither side is less than
// the plan's useful offcut.
func (f *Fabric) Spares(l cutting.Layout, least measure.Length) []Spare {
	var all []Spare
	for _, o := range f.Offcuts(l, least) {
		s := Spare{Offcut: o}
		for i := range f.Needs {
			n := &f.Needs[i]
			if n.Strip || n.Along <= 0 || n.Across <= 0 {
				continue
			}
			each := int64(o.Width/n.Across) * int64(o.Height/n.Along)
			if f.Turnable(*n) {
				each = max(each, int64(o.Width/n.Along)*int64(o.Height/n.Across))
			}
			if each > 0 && (s.For == nil || n.Across.Surd().Mul(n.Along.Surd()).Cmp(s.For.Across.Surd().Mul(s.For.Along.Surd())) > 0) {
				s.For, s.Each = n, each
			}
		}
		all = append(all, s)
	}
	return all
}
