package buyer

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// supply is what she buys of a fabric, and all that she cuts from it.
type supply struct {
	r      *reader
	f      *derive.Fabric
	bought Figure
	steps  []step
	panels panels
	all    *derive.Fabric // with all of it cut, once she cannot
}

// panels are the backing's, as the printed figures have them.
type panels struct {
	length measure.Length // of fabric
	figure Figure         // that says so; none where she goes by the recipe
}

// cut cuts up a fabric, as far as she comes. It is bought as printed, and must
// be enough for the recipe: if it is not, other rules say so.
func (r *reader) cut(f *derive.Fabric) {
	s := supply{r: r, f: f, bought: r.bought(f)}
	if !s.bought.Printed() || !f.Used() || !r.size.SureOfCloth(f) {
		return
	}
	s.steps, s.panels = r.steps(f), r.panels(f)
	if !s.over() {
		return
	}
	if f.Form == plan.Precut {
		s.cutPacks()
		return
	}
	s.cutLength()
}

// bought is what is printed of a fabric.
func (r *reader) bought(f *derive.Fabric) Figure {
	if f.Form == plan.Precut {
		return figure(PacksOf, r.said.Precuts, f.Role.Text, 1)
	}
	for _, said := range r.said.Fabric {
		if said.Of.Text == f.Role.Text && said.Length.Length > 0 {
			return Figure{What: YardsOf, Name: said.Of.Text, Width: said.Length.Length, At: said.At}
		}
	}
	return Figure{}
}

// panels are the recipe's, or those of the printed backing where they take
// more. A backing may be printed as rounded as the finished size is.
func (r *reader) panels(f *derive.Fabric) panels {
	p := panels{length: f.Panels}
	b, said := r.size.Backing, r.said.Backing
	if b == nil || !b.Known || b.Said.Fabric.Text != f.Role.Text || !said.Given() {
		return p
	}
	size := piecing.Box{Width: said.Width.Surd(), Height: said.Height.Surd()}
	turned := piecing.Box{Width: size.Height, Height: size.Width}
	if r.near(size, b.Size) || !f.Directional() && r.near(turned, b.Size) {
		return p
	}
	least := panelLength(r.size, size)
	if !f.Directional() {
		least = min(least, panelLength(r.size, turned))
	}
	if least > p.length && least < beyond {
		p.length = least
		at := said.Width.At
		if size.Width.Cmp(b.Size.Width) <= 0 { // it is longer than it has to be
			at = said.Height.At
		}
		p.figure = Figure{What: BackingOf, Name: f.Role.Text, Width: said.Width.Length, Height: said.Height.Length, At: at}
	}
	return p
}

// near reports whether a printed size is no more than the other, rounded up.
func (r *reader) near(printed, size piecing.Box) bool {
	by := r.said.Rounding.Length.Surd()
	return printed.Width.Cmp(size.Width.Add(by)) < 0 && printed.Height.Cmp(size.Height.Add(by)) < 0
}

// beyond is more than any length of fabric.
const beyond = measure.Length(1) << 60

// panelLength is the fabric that a backing of a size takes.
func panelLength(s *derive.Size, size piecing.Box) measure.Length {
	way, ok := s.PanelsFor(size)
	if !ok {
		return beyond
	}
	return derive.PanelLength(way)
}

// over reports whether the printed figures take more of the fabric than the
// recipe does.
func (s supply) over() bool {
	for _, c := range s.steps {
		if c.over {
			return true
		}
	}
	return s.panels.figure.Printed()
}

// cutLength stops her where the printed length, straightened, does not hold what
// she has to cut from it.
func (s supply) cutLength() {
	zone := s.f.Zone(s.bought.Width)
	if zone < derive.TightOnBias {
		return
	}
	s.cleverly(zone < derive.Comfortable)
	if s.holds() {
		return
	}
	s.all = s.whole()
	last := len(s.steps) // the backing
	for i, c := range s.steps {
		if !c.over {
			continue
		}
		last = i
		if part := s.upTo(i); !part.holds() {
			part.stopAt(i)
			return
		}
	}
	if s.panels.figure.Printed() {
		last = len(s.steps)
	}
	s.stopAt(last)
}

// cleverly forgets the strips that are printed for pieces as the recipe has
// them, where the pattern prints a packed layout or the pieces only come out
// with one: they then share strips.
func (s supply) cleverly(tight bool) {
	for i := range s.steps {
		if c := &s.steps[i]; !c.over && (tight || s.f.Cuts == plan.PackedCuts) {
			c.strips = derive.Need{}
		}
	}
}

// upTo is the supply with no more cut from it than the first steps, up to all
// that is cut for the same thing as one of them.
func (s supply) upTo(step int) supply {
	last := step
	for last+1 < len(s.steps) && s.same(step, last+1) {
		last++
	}
	s.steps, s.panels = s.steps[:last+1], panels{}
	return s
}

// same reports whether two steps are for the same thing.
func (s supply) same(i, j int) bool {
	return i < len(s.steps) && s.steps[i].need.For == s.steps[j].need.For
}

// stopAt stops her at a step, the backing being the last.
func (s supply) stopAt(step int) {
	stop := s.stop(Cloth, step)
	have := s.f.ToCut(s.bought.Width).Surd()
	stop.Needs, stop.There = s.backing(), have
	if step < len(s.steps) {
		stop.Needs = measure.Surd{}
		for i, c := range s.steps {
			if s.same(step, i) {
				stop.Needs = stop.Needs.Add(s.along(c))
			}
		}
	}
	if s.wholeStrips().Cmp(have) <= 0 && !s.plainSum() {
		stop.Bound = measure.Max(s.bound().Surd(), s.wholeStrips().Add(s.rowsAlong()))
		s.r.stop(stop)
		return
	}
	for i, c := range s.steps {
		if l := s.along(c); !s.same(step, i) && l.Sign() > 0 {
			stop.beside(c.need.For.Text, l)
		}
	}
	if step < len(s.steps) && s.panels.length > 0 {
		stop.beside("backing", s.backing())
	}
	s.r.stop(stop)
}

// beside takes what else is cut off what is there.
func (s *Stop) beside(what string, l measure.Surd) {
	s.Beside = append(s.Beside, Use{what, l})
	s.There = s.There.Sub(l)
}

// stop is a stop at a step, with all figures that take more than the recipe.
func (s supply) stop(short Short, step int) Stop {
	stop := Stop{
		Short: short, Limit: s.bought, Figure: s.panels.figure, Fabric: s.f, Taken: s.all,
		About: derive.Quantity{Kind: derive.Cloth, Name: s.f.Role.Text},
	}
	if step < len(s.steps) {
		stop.Figure, stop.Enough = s.steps[step].figure, s.steps[step].enough
		stop.With = append(stop.With, s.panels.figure)
	}
	for i, c := range s.steps {
		if w := s.r.sets[s.r.size.Part(c.need.For.Text)]; w != nil {
			stop.With = append(stop.With, w.figures()...)
		}
		if i != step {
			stop.With = append(stop.With, c.figure)
		}
	}
	return stop
}

func (s supply) backing() measure.Surd { return s.panels.length.Surd() }
