package buyer

import (
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
