package buyer

import (
	"cmp"
	"slices"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// step is one thing that she cuts from a fabric.
type step struct {
	need   derive.Need // as the printed figures have it
	figure Figure      // that says how many; none where she goes by the recipe
	over   bool        // it is more than the recipe takes
	enough int64       // the count that the recipe comes to
	// Of pieces the strips that are printed for them, of at least that width; the
	// need is still the pieces.
	strips derive.Need
	// Of pieces among several that come from printed strips of one width: they are
	// cut from those that another step remembers, or, as their print has to stand
	// upright, are not.
	within, upright bool
}

// steps are what she cuts from a fabric in strips and pieces, in the order of
// the work: parts, what goes between them, borders, and what finishes the
// quilt.
func (r *reader) steps(f *derive.Fabric) []step {
	var all []step
	for _, n := range f.Needs {
		all = append(all, r.step(f, n))
	}
	for i := range r.size.Top.Borders {
		if b := &r.size.Top.Borders[i]; b.Said.Fabric.Text == f.Role.Text {
			all = r.beyond(all, b)
		}
	}
	slices.SortStableFunc(all, func(a, b step) int { return cmp.Compare(r.turn(a.need), r.turn(b.need)) })
	return all
}

// turn is when in the work something is cut.
func (r *reader) turn(n derive.Need) int {
	last := len(r.size.Parts)
	if at, ok := r.order[n.For.Text]; ok {
		return at
	}
	switch {
	case r.border(n.For.Text) != nil:
		return last + 1
	case n.For.Text == "binding", n.For.Text == "sleeve", n.For.Text == "label":
		return last + 2
	}
	return last
}

// border finds a border of the top.
func (r *reader) border(name string) *derive.Border {
	for i := range r.size.Top.Borders {
		if b := &r.size.Top.Borders[i]; b.Said.Name.Text == name {
			return b
		}
	}
	return nil
}

// step is a need as the printed figures have it.
func (r *reader) step(f *derive.Fabric, n derive.Need) step {
	s := step{need: n, enough: n.Count}
	p := r.size.Part(n.For.Text)
	some, width := r.some(f, n)
	switch {
	case some.Printed() && n.Strip && some.N >= n.Count:
		s.raise(some)
	case some.Printed() && !n.Strip && !n.First:
		s.cutFrom(f, some, width)
	case r.stripsShared(&s, f): // and pieces of other lengths are cut from them
	case p != nil && r.sets[p] != nil:
		r.stripsOfSet(&s, r.sets[p])
	case p != nil && p.Set != nil: // not sure
	case !n.Strip && n.First:
		r.alongOfBorder(&s)
	case !n.Strip:
		r.stripsOfPieces(&s, f)
	case p == nil && r.border(n.For.Text) != nil:
		r.stripsOfBorder(&s, r.border(n.For.Text))
	default:
		s.raise(r.strips(n.For.Text, n.Count))
	}
	return s
}

// raise takes the printed number of strips for the recipe's. What is printed
// beyond it is cut whole.
func (s *step) raise(said Figure) {
	s.figure = said
	if said.N > s.need.Count {
		s.need.Count, s.need.Last, s.over = said.N, 0, true
	}
}

// beyond adds the strips that are printed beyond those of a border whose figure
// is of several lengths or widths. Of all that they may be they take the least.
func (r *reader) beyond(all []step, b *derive.Border) []step {
	lengths := b.Lengths()
	recipe, least := int64(len(lengths)), derive.Need{First: true, Fixed: true, Across: b.Cut}
	switch {
	case recipe == 0:
		return all
	case b.Along != nil:
		least.Along = measure.Min(lengths[0], lengths[recipe-1]).FloorTo(measure.Tick)
	case b.Said.Copes():
		recipe, least = b.Strips.Count+b.EndStrips.Count, derive.Need{Strip: true, Across: b.Strips.Each, Along: min(b.Cut, b.EndCut)}
	default:
		return all
	}
	said := r.strips(b.Said.Name.Text, recipe)
	if said.N <= recipe || r.size.Part(b.Said.Name.Text) != nil || !b.Known {
		return all
	}
	least.For, least.Count = b.Said.Name, said.N-recipe
	return append(all, step{need: least, figure: said, over: true, enough: recipe})
}

// least is the number of strips that are surely cut whole for it: the last one
// of a joined length may be shared with another, unless the number is printed.
func (s step) least() int64 {
	if s.need.Last > 0 && !s.figure.Printed() {
		return s.need.Count - 1
	}
	return s.need.Count
}

// stripsOfSet takes the printed strips, sets or tubes for the recipe's. Where a
// set is of several fabrics or widths, only whole sets' strips tell how many
// are of which.
func (r *reader) stripsOfSet(s *step, w *setWork) {
	if w.part.Set.Count == 0 || s.need.Count%w.part.Set.Count != 0 {
		return
	}
	each := s.need.Count / w.part.Set.Count
	sets, by := w.cut()
	strips := sets * each
	if w.strips.Printed() {
		by = w.strips
		if strips = by.N / w.each * each; each == w.each {
			strips = by.N
		}
	}
	enough := r.enough(by)
	if strips > s.need.Count && by.Printed() {
		s.need.Count, s.figure, s.over, s.enough = strips, by, true, enough
	}
}

// stripsOfBorder takes the printed strips for the recipe's, or where none are
// printed those that the printed lengths take.
func (r *reader) stripsOfBorder(s *step, b *derive.Border) {
	if b.Said.Copes() { // of two widths; see beyond
		s.figure = r.strips(b.Said.Name.Text, b.Strips.Count+b.EndStrips.Count)
		return
	}
	said := r.strips(b.Said.Name.Text, b.Strips.Count)
	if said.Printed() {
		s.raise(said)
		return
	}
	l, by := r.lengths(b)
	if by.Printed() {
		by.N, _ = l.strips(b)
		s.raise(by)
		s.figure.N = 0
	}
}

// alongOfBorder takes the printed lengths of a border that is cut along the
// fabric for the recipe's.
func (r *reader) alongOfBorder(s *step) {
	b := r.border(s.need.For.Text)
	if b == nil {
		return
	}
	l, by := r.lengths(b)
	if !by.Printed() {
		return
	}
	long, short := measure.Max(l.sides, l.ends).FloorTo(measure.Tick), measure.Min(l.sides, l.ends).FloorTo(measure.Tick)
	was := measure.Max(b.Sides, b.Ends)
	now := short
	if was.Cmp(s.need.Along.Surd()) <= 0 {
		now = long
	}
	if now > s.need.Along {
		s.need.Along, s.figure, s.over = now, by, true
	}
}

// stripsOfPieces remembers the strips that are printed for pieces, in the way of
// lying that takes the narrowest: she cuts no narrower ones.
func (r *reader) stripsOfPieces(s *step, f *derive.Fabric) {
	if r.needs(s.need.For) != 1 {
		return // the figure does not say how many are of which
	}
	said := r.strips(s.need.For.Text, 1)
	s.cutFrom(f, said, 0)
}

// cutFrom remembers strips that are printed for pieces, of a width where one is
// printed. They are more than the recipe takes where another way of lying takes
// less cloth.
func (s *step) cutFrom(f *derive.Fabric, said Figure, width measure.Length) {
	strip := derive.Need{}
	least := beyond
	for _, l := range ownStrips(f, s.need) {
		if cloth := l.Along * measure.Length(l.Count); cloth < least {
			least, s.enough = cloth, l.Count
		}
		if l.Count <= said.N && (width == 0 || width == l.Along) && (strip.Count == 0 || l.Along < strip.Along) {
			strip = l
		}
	}
	if strip.Count == 0 {
		return
	}
	strip.Count = said.N
	s.strips, s.figure, s.over = strip, said, strip.Along.Surd().MulInt(strip.Count).Cmp(least.Surd()) > 0
}

// needs is how many different things are cut for a part, of all fabrics.
func (r *reader) needs(by plan.Text) (n int) {
	for _, f := range r.size.Fabrics {
		for _, need := range f.Needs {
			if need.For == by {
				n++
			}
		}
	}
	return n
}

// ownStrips are the strips that pieces take by themselves, in each way that they
// may lie.
func ownStrips(f *derive.Fabric, n derive.Need) (ways []derive.Need) {
	width, height := f.Width, measure.Length(0)
	if f.Form == plan.Precut {
		width, height = f.StripLength().Length, f.StripWidth().Length
	}
	try := func(across, along measure.Length) {
		if each := piecing.PerStrip(width, across); each > 0 && (height == 0 || along <= height) {
			ways = append(ways, derive.Need{For: n.For, Strip: true, Across: width, Along: along, Count: piecing.Batches(n.Count, each)})
		}
	}
	try(n.Across, n.Along)
	if f.Turnable(n) || n.Stood {
		try(n.Along, n.Across)
	}
	return ways
}
