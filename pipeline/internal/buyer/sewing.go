package buyer

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
)

// setWork is what she is told of a strip set.
type setWork struct {
	part   *derive.Part
	each   int64  // strips a set
	strips Figure // printed to be cut, all together
	limits []limit
	sets   Figure // printed to be sewn
	wanted int64  // sets, by what is made of them
	by     Figure // the figure that says so
}

// limit is a printed number of a set's strips, all of them or those of a fabric
// or width.
type limit struct {
	said Figure
	each int64 // such strips a set
}

// setWork reads what is printed of a strip set and of what is made of it.
func (r *reader) setWork(p *derive.Part) *setWork {
	w := &setWork{part: p, each: int64(len(p.Set.Strips)), wanted: p.Set.Count}
	w.strips = r.strips(p.Name.Text, p.Set.Count*w.each)
	w.limits = r.limits(w)
	w.sets = figure(SetsOf, r.said.Sets, p.Name.Text, p.Set.Count)
	if p.Set.Cut != nil {
		if p.Pool == nil { // what else is cut from its sets is nowhere printed
			w.ask(r.cutUp(p))
		}
		return w
	}
	for _, t := range r.size.Parts {
		if t.Tube == nil || !r.sure(t) {
			continue
		}
		if n := t.Tube.Takes(p); n > 0 {
			tubes, by := r.tubes(t)
			w.ask((tubes-t.Tube.Count)*n+p.Set.Count, by)
		}
	}
	return w
}

// limits are the printed numbers of a set's strips that are enough for the
// recipe.
func (r *reader) limits(w *setWork) []limit {
	if w.strips.Printed() {
		return []limit{{w.strips, w.each}}
	}
	var all []limit
	for _, f := range r.size.Fabrics {
		for _, n := range f.Needs {
			if n.For != w.part.Name {
				continue
			}
			if said, _ := r.some(f, n); said.Printed() && said.N >= n.Count && w.part.Set.Count > 0 {
				all = append(all, limit{said, n.Count / w.part.Set.Count})
			}
		}
	}
	return all
}

// ask raises the sets that are wanted.
func (w *setWork) ask(sets int64, by Figure) {
	if sets > w.part.Set.Count && by.Printed() {
		w.wanted, w.by = w.wanted+sets-w.part.Set.Count, by
	}
}

// cut is the number of sets that she cuts strips for, and the figure that says
// so.
func (w *setWork) cut() (sets int64, by Figure) {
	if w.sets.Printed() {
		return w.sets.N, w.sets
	}
	return w.wanted, w.by
}

// there is the number of sets that she can sew, as far as a printed figure
// limits it.
func (w *setWork) there() (sets int64, by Figure) {
	if w.sets.Printed() {
		return w.sets.N, w.sets
	}
	for _, l := range w.limits {
		if n := l.said.N / l.each; !by.Printed() || n < sets {
			sets, by = n, l.said
		}
	}
	return sets, by
}

// figures are all that is printed of the set, and of what is made of it.
func (w *setWork) figures() []Figure {
	all := []Figure{w.sets, w.by}
	for _, l := range w.limits {
		all = append(all, l.said)
	}
	return all
}

// yields is how many pieces she is told to get from one set or tube: what is
// printed, unless one does not give so many.
func yields(said Figure, y derive.Yield) int64 {
	if said.Printed() && said.N <= y.Each {
		return said.N
	}
	return y.Each
}

// pieces is how many of a part she is told to make: what is printed, where that
// is what the layout calls for or what comes out.
func (r *reader) pieces(p *derive.Part) (n int64, by Figure) {
	said := figure(PartsOf, r.said.Parts, p.Name.Text, 1)
	if said.N == p.Needed || said.N == p.Made {
		return max(said.N, p.Needed), said
	}
	return p.Needed, Figure{}
}

// cutUp is how many sets its segments take, at so many a set as is printed.
func (r *reader) cutUp(p *derive.Part) (sets int64, by Figure) {
	said := figure(PerSet, r.said.PerSet, p.Name.Text, 1)
	n, _ := r.pieces(p)
	return piecing.Batches(n, yields(said, *p.Set.Cut)), said
}

// tubes is how many tubes she sews: as many as are printed, or as the squares
// take at so many a tube as is printed.
func (r *reader) tubes(p *derive.Part) (tubes int64, by Figure) {
	if said := figure(TubesOf, r.said.Tubes, p.Name.Text, p.Tube.Count); said.Printed() {
		return said.N, said
	}
	said := figure(PerTube, r.said.PerTube, p.Name.Text, 1)
	n, _ := r.pieces(p)
	return max(p.Tube.Count, batches(p, n, yields(said, p.Tube.Yield))), said
}

// batches is how many sets or tubes give so many pieces at so many each; of tubes
// as many as give enough of the kind of square most wanted.
func batches(p *derive.Part, n, each int64) int64 {
	if p.Tube != nil {
		return max(p.Tube.CountAt(each), piecing.Batches(n, each))
	}
	return piecing.Batches(n, each)
}

// sew sews and cuts up a strip set or a tube, as far as she comes.
func (r *reader) sew(p *derive.Part) {
	switch w := r.sets[p]; {
	case w != nil && (r.stripsShort(w) || r.setsShort(w)):
		r.stuck[p] = true
	case p.Pool != nil:
	case w != nil && p.Set.Cut != nil:
		sets, by := w.there()
		r.piecesShort(p, sets, by, figure(PerSet, r.said.PerSet, p.Name.Text, 1), *p.Set.Cut)
	case p.Tube != nil && r.sure(p) && !r.stuck[p.Tube.Sets[0]] && !r.stuck[p.Tube.Sets[1]]:
		tubes, by := r.tubesThere(p)
		r.piecesShort(p, tubes, by, figure(PerTube, r.said.PerTube, p.Name.Text, 1), p.Tube.Yield)
	}
}

// stripsShort stops her where the printed sets take more than the printed
// strips.
func (r *reader) stripsShort(w *setWork) bool {
	sets, by := w.cut()
	for _, l := range w.limits {
		if !by.Printed() || sets*l.each <= l.said.N {
			continue
		}
		r.stop(Stop{
			Short: Strips, Figure: by, Limit: l.said, With: w.figures(), About: count(w.part), Part: w.part,
			Takes: sets * l.each, Has: l.said.N, Each: l.each, Enough: r.enough(by),
		})
		return true
	}
	return false
}

// setsShort stops her where the printed tubes or segments take more than the
// printed sets.
func (r *reader) setsShort(w *setWork) bool {
	if !w.sets.Printed() || !w.by.Printed() || w.wanted <= w.sets.N || w.part.Set.Cut != nil {
		return false
	}
	r.stop(Stop{
		Short: Sets, Figure: w.by, Limit: w.sets, With: w.figures(), About: count(w.part), Part: w.part,
		Takes: w.wanted, Has: w.sets.N, Enough: r.enough(w.by),
	})
	return true
}

// tubesThere is the number of tubes that she can sew, as far as a printed
// figure limits it.
func (r *reader) tubesThere(p *derive.Part) (tubes int64, by Figure) {
	if said := figure(TubesOf, r.said.Tubes, p.Name.Text, p.Tube.Count); said.Printed() {
		return said.N, said
	}
	for _, set := range p.Tube.Sets {
		w, n := r.sets[set], p.Tube.Takes(set)
		if w == nil || set.Set.Count != p.Tube.Count*n { // something else is made of it too
			continue
		}
		if sets, from := w.there(); from.Printed() && (!by.Printed() || sets/n < tubes) {
			tubes, by = sets/n, from
		}
	}
	return tubes, by
}

// piecesShort stops her where the sets or tubes that there are, cut up as
// printed, do not give the pieces.
func (r *reader) piecesShort(p *derive.Part, from int64, by, each Figure, y derive.Yield) {
	n, said := r.pieces(p)
	got := from * yields(each, y)
	if !by.Printed() || !each.Printed() || got >= n {
		return
	}
	at := said
	if !said.Printed() {
		at = each
	}
	r.stop(Stop{
		Short: Pieces, Figure: at, Limit: by, With: []Figure{each, said}, About: count(p), Part: p,
		Takes: n, Has: got, From: from, Each: yields(each, y), Enough: batches(p, n, yields(each, y)),
	})
}

// enough is what the recipe comes to for a printed count of sets, tubes or
// what they give.
func (r *reader) enough(f Figure) int64 {
	p := r.size.Part(f.Name)
	switch {
	case p == nil:
		return 0
	case f.What == SetsOf:
		return p.Set.Count
	case f.What == TubesOf:
		return p.Tube.Count
	case f.What == PerTube:
		return p.Tube.Yield.Each
	case f.What == PerSet:
		return p.Set.Cut.Each
	case f.What == StripsOf && p.Set != nil:
		return p.Set.Count * int64(len(p.Set.Strips))
	}
	return 0
}

func count(p *derive.Part) derive.Quantity {
	return derive.Quantity{Kind: derive.Count, Name: p.Name.Text}
}
