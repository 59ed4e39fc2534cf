package buyer

import (
	"slices"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// strips finds the printed number of all of a thing's strips.
func (r *reader) strips(name string, least int64) Figure {
	for _, said := range r.said.Strips {
		if said.Of.Text == printedAs(name) && said.Whole() && int64(said.N) >= least {
			return stripsFigure(said)
		}
	}
	return Figure{}
}

func stripsFigure(said plan.PrintedStrips) Figure {
	return Figure{What: StripsOf, Name: said.Of.Text, N: int64(said.N), Of: said.Fabric.Text, Width: said.Width.Length, At: said.At}
}

// printedAs is the name under which strips for something are printed: for the
// setting triangles they are those of their squares.
func printedAs(name string) string {
	switch name {
	case "side triangles":
		return "side_squares"
	case "corner triangles":
		return "corner_squares"
	}
	return name
}

// some finds the printed number of strips of one need alone, where the figure
// names its fabric or width and there is no other need that it may be about;
// the width is 0 where it names none.
func (r *reader) some(f *derive.Fabric, n derive.Need) (said Figure, width measure.Length) {
	for _, s := range r.said.Strips {
		if s.Of.Text != printedAs(n.For.Text) || s.Whole() || !about(s, f, n) {
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

// stripsShared remembers at a need the strips of one fabric and width from which
// pieces of several lengths are cut, such as a log cabin's, and reports whether the
// pattern prints them. They are more than the recipe takes where lengths that share
// strips come out with fewer. A print that stands upright keeps pieces out of
// strips across of which there are too few for all.
func (r *reader) stripsShared(s *step, f *derive.Fabric) bool {
	n := s.need
	if n.Strip || n.First {
		return false
	}
	for _, said := range r.said.Strips {
		if said.Of.Text != printedAs(n.For.Text) || said.Fabric.Text != f.Role.Text {
			continue
		}
		width := said.Width.Length
		if n.Stood && width == n.Across && width != n.Along {
			all, ok := r.fewest(f, n.For, width, true)
			s.upright = ok && int64(said.N) < all
			s.within = !s.upright
			return true
		}
		enough, ok := r.fewest(f, n.For, width, false)
		if width != n.Along || !ok {
			continue
		}
		first := slices.IndexFunc(f.Needs, func(m derive.Need) bool {
			return m.For == n.For && !m.Strip && !m.First && m.Along == width
		})
		if s.within = f.Needs[first] != n; !s.within {
			s.strips = derive.Need{For: n.For, Strip: true, Across: f.StripLength().Length, Along: width, Count: int64(said.N)}
			s.figure, s.enough, s.over = stripsFigure(said), enough, int64(said.N) > enough
		}
		return true
	}
	return false
}

// fewest is the fewest strips of a width that something takes of a fabric, in any
// way of lying in which it takes some, or in which it takes no others.
func (r *reader) fewest(f *derive.Fabric, by plan.Text, width measure.Length, alone bool) (least int64, ok bool) {
	for _, of := range r.size.StripWays(by) {
		for _, way := range of.Ways {
			if at := way.At(width); of.Fabric == f && at > 0 && (!alone || len(way.Strips) == 1) && (!ok || at < least) {
				least, ok = at, true
			}
		}
	}
	return least, ok
}

// about reports whether a printed number of strips may be about a need.
func about(s plan.PrintedStrips, f *derive.Fabric, n derive.Need) bool {
	switch {
	case s.Fabric.Given() && s.Fabric.Text != f.Role.Text, n.First:
		return false
	case !s.Width.Given() || s.Width.Length == n.Along:
		return true
	}
	return !n.Strip && (f.Turnable(n) || n.Stood) && s.Width.Length == n.Across
}
