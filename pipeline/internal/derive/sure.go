package derive

// Sure reports whether all that a count of a part or a fabric's cloth is made of
// was counted. Where it was not, because something that is made of it is
// unknown, yields nothing or stands under a name that the plan does not have,
// what was counted is a lower bound: never enough, and never too much.
func (s *Size) Sure(q Quantity) bool {
	return !s.unsure[Quantity{}] && !s.unsure[q]
}

// SureOfCloth reports whether all that a fabric is needed for was counted, and can
// be cut.
func (s *Size) SureOfCloth(f *Fabric) bool {
	return f.Err == nil && s.Sure(Quantity{Cloth, f.Role.Text})
}

// uncounted are the counts and the cloth that could not be derived all the way;
// the empty quantity stands for all of them. A name of the recipe that stands
// for nothing may mean any part or fabric, and so may what is missing of a
// ring of parts or of a top of unknown size.
func (s *Size) uncounted() map[Quantity]bool {
	short := map[Quantity]bool{{}: !s.Top.Known || len(s.Cycle) > 0}
	for _, m := range s.Of.Strays() {
		if m.Made {
			short[Quantity{}] = true
		}
	}
	for i := len(s.Parts) - 1; i >= 0; i-- {
		p := s.Parts[i]
		if p.Derived() && !short[Quantity{Count, p.Name.Text}] {
			continue
		}
		for _, in := range p.Operation.Ingredients() {
			short[quantityOf(in)] = true
		}
	}
	for _, f := range s.Fabrics {
		if f.Missing {
			short[Quantity{Cloth, f.Role.Text}] = true
		}
	}
	return short
}

// Derived reports whether what a part takes could be worked out.
func (p *Part) Derived() bool {
	switch {
	case !p.Known:
		return false
	case p.Tube != nil:
		return p.Tube.Yield.Each > 0
	case p.Loop != nil:
		return p.Loop.Yield.Each > 0
	case p.Shape != nil:
		return p.Shape.Yield.Each > 0
	case p.Set != nil && p.Set.Cut != nil:
		return p.Set.Cut.Each > 0
	}
	return true
}
