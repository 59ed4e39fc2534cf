package derive

import (
	"yardproof/schema/plan"
)

// Of derives a size of a plan. It never fails: what cannot be worked out is
// left unknown, together with all that depends on it.
func Of(p *plan.Plan, size *plan.Size) *Size { return With(direct{}, p, size) }

// Again derives a size that differs from this one, such as in the width of a
// fabric.
func (s *Size) Again(of *plan.Size) *Size { return With(s.solver, s.Plan, of) }

// With is Of with a solver that may remember answers.
func With(solver Solver, p *plan.Plan, size *plan.Size) *Size {
	return derived(solver, p, size, nil)
}

func derived(solver Solver, p *plan.Plan, size *plan.Size, most map[string]int64) *Size {
	s := &Size{Plan: p, Of: size, solver: solver, most: most, byName: map[string]*Part{}, byFabric: map[string]*Fabric{}, users: map[string][]*Part{}}
	for i := range size.Fabrics {
		f := &Fabric{Fabric: &size.Fabrics[i], solver: solver, printed: printedLength(size, size.Fabrics[i].Role.Text), ruler: longestRuler(size.Tools.Rulers)}
		f.line, f.biasGrid = p.Defaults.RulerGrid, biasGrid(p.Units)
		f.Width = shrunk(f.UsableWidth.Length, f.ShrinkWidth)
		s.Fabrics = append(s.Fabrics, f)
		s.byFabric[f.Role.Text] = f
	}
	s.order()
	for _, p := range s.Parts {
		p.Room.Measure()
		s.allow(p)
		s.note(p)
	}
	s.layTop()
	s.count()
	s.takeTurns()
	s.finish()
	for _, f := range s.Fabrics {
		f.cut()
	}
	s.Thread = s.sewn()
	s.unsure = s.uncounted()
	return s
}

// note remembers a part as a user of its ingredients.
func (s *Size) note(p *Part) {
	seen := map[string]bool{}
	for _, in := range p.Operation.Ingredients() {
		if name := in.Name.Text; !in.Fabric && !seen[name] {
			seen[name] = true
			s.users[name] = append(s.users[name], p)
		}
	}
}

// order lists the parts so that ingredients come first; parts that are made
// of themselves go to Cycle instead, with all that is made of them.
func (s *Size) order() {
	const (
		unseen = iota
		open
		done
	)
	state, usual := map[string]int{}, seamFigure(s.Of.Seam)
	for i := range s.Of.Parts {
		p := &s.Of.Parts[i]
		part := &Part{Part: p, Seam: s.Of.Seam, Figures: Figures{seam: usual}}
		if p.Seam != nil {
			part.Seam, part.Figures.seam = *p.Seam, seamFigure(*p.Seam)
		}
		part.Room = s.open(part)
		s.byName[p.Name.Text] = part
	}
	var visit func(p *Part) bool
	visit = func(p *Part) (ok bool) {
		switch state[p.Name.Text] {
		case done:
			return true
		case open:
			return false
		}
		state[p.Name.Text] = open
		ok = true
		for _, in := range p.Operation.Ingredients() {
			if q := s.byName[in.Name.Text]; q != nil && !in.Fabric {
				ok = visit(q) && ok
			}
		}
		if !ok {
			return false // stays open: it cannot be made
		}
		state[p.Name.Text] = done
		s.Parts = append(s.Parts, p)
		return true
	}
	for i := range s.Of.Parts {
		if p := s.byName[s.Of.Parts[i].Name.Text]; !visit(p) {
			s.Cycle = append(s.Cycle, p)
		}
	}
}
