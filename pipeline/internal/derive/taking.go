package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// Taking is the fabric with other needs, and another length of backing panels,
// cut from it.
func (f *Fabric) Taking(needs []Need, panels measure.Length) *Fabric {
	g := &Fabric{Fabric: f.Fabric, solver: f.solver, printed: f.printed, ruler: f.ruler, line: f.line, biasGrid: f.biasGrid, Width: f.Width, Needs: needs, Panels: panels}
	for _, n := range needs {
		g.mustCut(n)
	}
	g.cut()
	return g
}

// ToCut is what a bought length of the fabric leaves to be cut, once it is
// washed and one end of it is squared up; rounded down to a tick, and never
// below 0.
func (f *Fabric) ToCut(bought measure.Length) measure.Length {
	return max(0, shrunk(bought, f.ShrinkLength)-f.SquaringUp.Length)
}

// PanelsFor is the backing's panels for another size to cover, the way that
// takes less fabric. ok is false where no way covers it, or the backing is not
// sewn of a fabric that is sold by length.
func (s *Size) PanelsFor(size piecing.Box) (way piecing.Backing, ok bool) {
	if s.Backing == nil || !s.Backing.Known {
		return piecing.Backing{}, false
	}
	return s.panels(s.Backing.Said, size)
}
