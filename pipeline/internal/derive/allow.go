package derive

import "yardproof/pipeline/internal/figure"

// Allowing derives the size anew with no more than so many pieces taken from
// each strip set, tube, loop or strip, by the name of the part: what a pattern
// that leaves slack asks for. Parts that are not named, and those that give no
// more anyway, stay as they are.
func (s *Size) Allowing(most map[string]int64) *Size {
	return derived(s.solver, s.Plan, s.Of, most)
}

// allow lowers a part's yield to what is taken of it.
func (s *Size) allow(p *Part) {
	y := p.Yield()
	if n := s.most[p.Name.Text]; y != nil && 0 < n && n < y.Each {
		y.Each, y.Used = n, y.lengthFor(n)
		y.Told = figure.Least(y.Told, figure.Whole(n))
	}
}

// Yield is how many pieces come from one strip set, tube, loop or strip of the
// part, nil where it is cut into none.
func (p *Part) Yield() *Yield {
	switch {
	case p.Set != nil:
		return p.Set.Cut
	case p.Tube != nil:
		return &p.Tube.Yield
	case p.Loop != nil:
		return &p.Loop.Yield
	case p.Shape != nil:
		return &p.Shape.Yield
	}
	return nil
}

// Batches is how many strip sets, tubes, loops or strips of the part there
// are, rounded up; 0 where it is cut of none.
func (p *Part) Batches() int64 {
	switch {
	case p.Set != nil:
		return p.Set.Count
	case p.Tube != nil:
		return p.Tube.Count
	case p.Loop != nil:
		return p.Loop.Count
	case p.Shape != nil:
		return p.Shape.Count
	}
	return 0
}
