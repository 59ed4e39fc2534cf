package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// cut is a piece cut from fabric, whole or halved.
type cut struct {
	op plan.Cut
	p  *Part
	s  *Size
}

// Cut implements plan.Maker.
func (o *opening) Cut(op plan.Cut) { o.room = &cut{op: op, p: o.p, s: o.s} }

// Measure implements Operation.
func (r *cut) Measure() {
	c := &Cut{Fabric: r.s.byFabric[r.op.Fabric.Text], Width: r.op.Width, Height: r.op.Height, Halving: r.op.Halving}
	r.p.Cut, r.p.Known = c, c.Fabric != nil
	r.p.Box = piecing.Box{Width: c.Width.Surd(), Height: c.Height.Surd()}
	// Cut once, the long side is on the bias; cut twice, the short sides.
	r.p.Bias = r.op.Halving != plan.Whole
}

// Ask implements Operation.
func (r *cut) Ask() {
	p, c, f := r.p, r.p.Cut, r.p.Cut.Fabric
	if f == nil {
		return
	}
	each := r.op.Each()
	if c.Halving != plan.Whole {
		c.Squares = piecing.Batches(p.Needed, each)
		p.Made = c.Squares * each
	}
	f.needCut(p.Name, c.Width.Length, c.Height.Length, p.Needed, c.Halving)
	need := f.last()
	need.at(c.Width.At)
	if each < c.Halving.Triangles() {
		need.Used, need.Count = each, c.Squares
	}
	if n := int64(r.op.Alike.N); f.Assorted && n > 1 { // whole groups come from one print each
		need.Alike, need.Count = r.op.Alike.N, piecing.Batches(need.Count, n)*n
	}
}

// Covers implements Operation.
//
// A triangle of a square c cut once has finished legs of c - (2 + sqrt2)s, of one
// cut twice a long side of c - (2 + 2 sqrt2)s. Derived from geometry.
func (r *cut) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	side := r.op.Width.Surd()
	switch r.op.Halving {
	case plan.CutOnce:
		legs := side.Sub(piecing.HalfSquareAdd(seam))
		return exactArea(measure.Area(legs, legs).DivInt(2))
	case plan.CutTwice:
		long := side.Sub(piecing.QuarterSquareAdd(seam))
		return exactArea(measure.Area(long, long).DivInt(4))
	case plan.Whole:
	}
	return r.p.rectangle(seam)
}

// Seams implements Operation: it is only cut.
func (r *cut) Seams() (l measure.Surd, ok bool) { return l, true }

// OnRuler implements Operation.
func (r *cut) OnRuler() []OnRuler {
	return []OnRuler{{"cut width", r.op.Width}, {"cut height", r.op.Height}}
}

// Seamed implements Operation.
func (r *cut) Seamed() []Seamed {
	if r.op.Halving != plan.Whole {
		return nil
	}
	both := 2 * r.p.Seam.Allowance.Length
	return []Seamed{{"the width", r.op.Width.Length, both, r.op.Width.At}, {"the height", r.op.Height.Length, both, r.op.Height.At}}
}

// Trims implements Operation.
func (r *cut) Trims() []Trimming { return nil }

// Wants implements Operation.
func (r *cut) Wants() []Want { return nil }

// Serves implements Operation.
func (r *cut) Serves(w Wanted) (Misfit, bool) {
	m := Misfit{Cut: true, Halving: r.op.Halving}
	if h := w.Halving(); h != plan.Whole {
		return m, r.op.Halving == h
	}
	return m, r.op.Halving == plan.Whole && (w == FourSided || w == InRow)
}

// Gives implements Operation.
func (r *cut) Gives() *Giving { return nil }

// How implements Operation: the cut list says it.
func (r *cut) How() say.Sentence { return say.Sentence{} }

// Traits implements Operation.
func (r *cut) Traits() Traits { return Traits{Handed: true, Cut: true} }

// Draft implements Operation: a triangle has no size of its own to stand in a row
// with.
func (r *cut) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	fabric, ok := d.Fabric(r.op.Fabric.Text)
	return piecing.Plain(r.p.Box, fabric), ok && r.op.Halving == plan.Whole
}

// Lay implements Operation. Which half of a square a mirror image takes is not
// told.
func (r *cut) Lay(l *Laying, n Turns) {
	op := r.op
	if r.p.Mirrored > 0 && op.Each() > 1 { // one used of each square may be any of it
		l.Untold(r.p)
		return
	}
	way, wrong := Halves, Quarters.around
	switch {
	case op.Each() < op.Halving.Triangles():
		wrong = chosen(op)
	case op.Halving == plan.CutOnce:
		wrong = Quarters.opposite
	case op.Halving == plan.Whole:
		way, wrong = Turned, Quarters.turned
	}
	l.Place(op.Fabric, r.p.Name, way, n, wrong)
}

// chosen is where so many triangles of each square are used, and may be any of
// them: a square gives one for each way that it points, once as good as two
// where the print is two-way. As many as there are squares can point one way;
// the others stand wrong. Of one triangle a square none does, as the square
// is cut for it. Derived from geometry.
func chosen(op plan.Cut) Wrongly {
	return func(n Quarters, f *Fabric) (wrong int64) {
		squares := piecing.Batches(n[0]+n[1]+n[2]+n[3], op.Each())
		if f.Print == plan.TwoWay {
			return max(0, n[0]+n[2]-2*squares) + max(0, n[1]+n[3]-2*squares)
		}
		for _, k := range n {
			wrong += max(0, k-squares)
		}
		return wrong
	}
}

// SizeAt implements Sized.
func (r *cut) SizeAt() source.Range { return r.op.Width.At }
