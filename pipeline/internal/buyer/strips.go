package buyer

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// strips finds the printed number of all of a thing's strips.
func (r *reader) strips(name string, least int64) Figure {
	for _, said := range r.said.Strips {
		if said.Of.Text == name && said.Whole() && int64(said.N) >= least {
			return stripsFigure(said)
		}
	}
	return Figure{}
}

func stripsFigure(said plan.PrintedStrips) Figure {
	return Figure{What: StripsOf, Name: said.Of.Text, N: int64(said.N), At: said.At}
}

// some finds the printed number of strips of one need alone, where the figure
// names its fabric or width and there is no other need that it may be about;
// the width is 0 where it names none.
func (r *reader) some(f *derive.Fabric, n derive.Need) (said Figure, width measure.Length) {
	for _, s := range r.said.Strips {
		if s.Of.Text != n.For.Text || s.Whole() || !about(s, f, n) {
			continue
		}
		others := 0
		for _, g := range r.size.Fabrics {
			if g != f && s.Each {
				continue
			}
			for _, m := range g.Needs {
				if m.For == n.For && m != n && about(s, g, m) {
					others++
				}
			}
		}
		if others == 0 {
			return stripsFigure(s), s.Width.Length
		}
	}
	return Figure{}, 0
}

// about tells whether a printed number of strips may be about a need.
func about(s plan.PrintedStrips, f *derive.Fabric, n derive.Need) bool {
	switch {
	case s.Fabric.Given() && s.Fabric.Text != f.Role.Text, n.First:
		return false
	case !s.Width.Given() || s.Width.Length == n.Along:
		return true
	}
	return !n.Strip && f.Turnable(n) && s.Width.Length == n.Across
}

// stripsOfWidth remembers strips of a width that are printed for pieces. She
// cuts them at that width, though the pieces might take less cloth the other
// way round.
func (s *step) stripsOfWidth(f *derive.Fabric, said Figure, width measure.Length) {
	n := s.need
	across := n.Across
	if width != n.Along {
		across = n.Along
	}
	each := piecing.PerStrip(f.StripLength().Length, across)
	if f.Form == plan.Yardage {
		each = piecing.PerStrip(f.Width, across)
	}
	if each == 0 {
		return
	}
	if most := piecing.Batches(n.Count, each); said.N >= most {
		s.strips = derive.Need{For: n.For, Strip: true, Across: across, Along: width, Count: said.N}
		s.figure, s.over, s.enough = said, true, most
	}
}
