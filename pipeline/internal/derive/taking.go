package derive

import (
	"slices"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Taking is the fabric with other needs, and another length of backing panels,
// cut from it.
func (f *Fabric) Taking(needs []Need, panels measure.Length) *Fabric {
	return f.taking(needs, panels, f.Fabric)
}

// taking is Taking of a fabric that is otherwise told.
func (f *Fabric) taking(needs []Need, panels measure.Length, of *plan.Fabric) *Fabric {
	g := &Fabric{Fabric: of, solver: f.solver, printed: f.printed, ruler: f.ruler, line: f.line, biasGrid: f.biasGrid, Needs: needs, Panels: panels}
	g.Width = shrunk(of.UsableWidth.Length, of.ShrinkWidth)
	for _, n := range needs {
		g.mustCut(n)
	}
	g.cut()
	return g
}

// LogsAcross is the fabric with all logs cut along the strips, as logs commonly
// are (common practice, no source): its print then lies on its side in those right
// and left of a centre. It is nil where all are cut so anyway, or do not fit so.
func (f *Fabric) LogsAcross() *Fabric {
	if !slices.ContainsFunc(f.Needs, func(n Need) bool { return n.Stood }) {
		return nil
	}
	needs := slices.Clone(f.Needs)
	for i, n := range needs {
		if n.Stood {
			needs[i].Across, needs[i].Along, needs[i].InLengths, needs[i].Stood = n.Along, n.Across, true, false
		}
	}
	if g := f.Taking(needs, f.Panels); g.Err == nil {
		return g
	}
	return nil
}

// Changed is a fabric of the size as it would be if that alone were changed, and
// whether all that is cut from it is counted then. Where only pieces are cut from
// it, of which its width decides nothing, nothing else need be derived anew.
func (s *Size) Changed(f *Fabric, change func(*plan.Fabric)) (changed *Fabric, sure bool) {
	if f.inPieces() {
		of := *f.Fabric
		change(&of)
		g := f.taking(f.Needs, 0, &of)
		return g, g.Err == nil && s.Sure(Quantity{Cloth, f.Role.Text})
	}
	of := *s.Of
	of.Fabrics = slices.Clone(s.Of.Fabrics)
	for i := range of.Fabrics {
		if of.Fabrics[i].Role.Text == f.Role.Text {
			change(&of.Fabrics[i])
		}
	}
	again := s.Again(&of)
	changed = again.Fabric(f.Role.Text)
	return changed, again.SureOfCloth(changed)
}

// inPieces reports whether the fabric is cut into pieces alone: not into strips
// used whole, strips joined end to end, panels, or cloth cut on the bias.
func (f *Fabric) inPieces() bool {
	return f.Panels == 0 && !f.Missing && len(f.Needs) > 0 && !slices.ContainsFunc(f.Needs, func(n Need) bool {
		return n.Strip || n.First || n.Free || n.Last > 0 || n.OnBias != nil || n.Within != nil
	})
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
