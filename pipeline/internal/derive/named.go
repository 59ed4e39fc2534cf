package derive

import "yardproof/pipeline/internal/figure"

// Told is every number of the size that has a name, by which it can be asked for,
// each once: the finished size, then part by part how many are needed, how large
// one is, how many come from one set, tube, loop or strip and how many of these
// there are, then what is joined, bought and sewn. Of each its value, formula, terms
// and places are read from the figure itself.
func (s *Size) Told() []figure.F {
	n := named{seen: map[figure.F]bool{}}
	if s.Top.Known {
		n.add(s.FinishedFigure(false), s.FinishedFigure(true))
	}
	for _, p := range s.Parts {
		if p.Needed > 0 {
			n.add(p.NeededFigure())
		}
		if p.Known {
			n.add(p.Figures.Size, p.YieldFigure())
		}
		if p.Known && p.Needed > 0 {
			n.add(p.CountFigure())
		}
	}
	for _, b := range s.AllBorders() {
		n.add(b.Strips.Told, b.EndStrips.Told)
	}
	if b := s.Binding; b != nil {
		n.add(b.Strips.Told)
		if b.Bias != nil && b.Bias.Squares > 0 {
			n.add(s.BiasFigure(b))
		}
	}
	if l := s.Sleeve; l != nil {
		n.add(l.Strips.Told)
	}
	for _, f := range s.Fabrics {
		if f.Used() && f.Err == nil {
			n.add(f.BuyFigure())
		}
	}
	for _, use := range s.Thread.Uses {
		n.add(s.SeamFigure(use))
	}
	return n.all
}

// named are named numbers, each once and after it those behind it.
type named struct {
	seen map[figure.F]bool
	all  []figure.F
}

func (n *named) add(of ...figure.F) {
	for _, f := range of {
		if f = f.Itself(); !f.Known() || n.seen[f] {
			continue
		}
		n.seen[f] = true
		n.all = append(n.all, f)
		for _, t := range f.Terms() {
			n.add(t, t.Working())
		}
	}
}
