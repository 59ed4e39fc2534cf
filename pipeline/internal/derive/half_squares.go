package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// halfSquares is half-square triangle units of pairs of squares.
type halfSquares struct {
	op plan.HalfSquares
	p  *Part
	s  *Size
}

// HalfSquares implements plan.Maker.
func (o *opening) HalfSquares(op plan.HalfSquares) {
	o.room = &halfSquares{op: op, p: o.p, s: o.s}
}

// Cautions implements cautioned.
func (r *halfSquares) Cautions() []string {
	if r.op.AtATime == 4 {
		return []string{"bias-edges"}
	}
	return nil
}

// Measure implements Operation.
func (r *halfSquares) Measure() {
	p := r.p
	if r.s.byFabric[r.op.Fabrics[0].Text] == nil || r.s.byFabric[r.op.Fabrics[1].Text] == nil {
		return
	}
	seam := p.Seam.Allowance.Length
	t := &Triangle{Cut: r.op.Square.Length, AtATime: r.op.AtATime, Faces: r.op.Fabrics[:]}
	r.sewn(figure.Said("c", "cut square", t.Cut, r.op.Square.At))
	t.Untrimmed = p.Figures.Size.Surd()
	r.op.Trim = line(r.op.Trim, r.op.DownTo, t.Untrimmed)
	p.comesTo(r.op)
	p.trimTo(t, r.op.Trim)
	t.Exact = piecing.HalfSquareCut(p.Width, seam, r.op.AtATime)
	p.Bias = r.op.AtATime == 4
}

// sewn is how large units are made from two squares of cut size c. Derived from
// geometry; the trade's finished + 7/8 in for two at a time at s = 1/4 in is the
// first solved for c and rounded up.
func (r *halfSquares) sewn(c figure.F) {
	s, root2 := r.p.Figures.seam, figure.Root2()
	var side figure.F
	switch r.op.AtATime {
	case 2:
		side = c.Less(s.Times(root2))
	case 4:
		side = c.OverInt(2).Less(s).Times(root2)
	case 8:
		side = c.OverInt(2).Less(s.Times(root2))
	}
	r.p.Figures.Size = side.Is(r.p.Name.Text, "side as sewn")
	r.p.Figures.Count = figure.Unknown(side)
}

// Ask implements Operation.
func (r *halfSquares) Ask() {
	p, t := r.p, r.p.Triangle
	if !p.Known {
		return
	}
	p.Figures.Count = p.inBatches("pairs of squares", p.neededTerm(), figure.Whole(int64(r.op.AtATime)))
	t.Pairs = p.Figures.Count.N()
	p.Made = t.Pairs * int64(r.op.AtATime)
	for _, role := range r.op.Fabrics {
		f := r.s.byFabric[role.Text]
		f.need(p.Name, r.op.Square.Length, r.op.Square.Length, t.Pairs)
		f.last().at(r.op.Square.At)
	}
}

// Covers implements Operation.
func (r *halfSquares) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	return r.p.rectangle(seam)
}

// Seams implements Operation.
func (r *halfSquares) Seams() (l measure.Surd, ok bool) {
	t := r.p.Triangle
	if t == nil {
		return l, false
	}
	return pairSeams(t.Cut, r.p.Seam.Allowance.Length, r.op.AtATime).MulInt(t.Pairs), true
}

// OnRuler implements Operation.
func (r *halfSquares) OnRuler() []OnRuler {
	return []OnRuler{{"square", r.op.Square}, {"trim", r.op.Trim}}
}

// Seamed implements Operation.
func (r *halfSquares) Seamed() []Seamed {
	if r.p.Triangle == nil {
		return nil
	}
	s := r.p.Seam.Allowance.Length
	nothing := piecing.HalfSquareCut((2 * s).Surd(), s, r.op.AtATime)
	return []Seamed{{"the square", r.p.Triangle.Cut, nothing.FloorTo(measure.Tick), r.op.Square.At}}
}

// Trims implements Operation.
func (r *halfSquares) Trims() []Trimming {
	if r.p.Triangle == nil || !r.p.Known {
		return nil
	}
	return []Trimming{{r.op.Trim, r.p.Triangle.Untrimmed, r.op.DownTo}}
}

// Wants implements Operation.
func (r *halfSquares) Wants() []Want { return nil }

// Serves implements Operation.
func (r *halfSquares) Serves(w Wanted) (Misfit, bool) {
	if w == HalfSquareUnit {
		return Misfit{}, true
	}
	return sewn(w)
}

// Gives implements Operation.
func (r *halfSquares) Gives() *Giving { return nil }

// How implements Operation.
func (r *halfSquares) How() say.Sentence {
	return say.That("%s of squares %s, %s and %s, %d units from each", say.Many(r.p.Triangle.Pairs, "pair"), say.AsCut(r.op.Square),
		r.op.Fabrics[0].Text, r.op.Fabrics[1].Text, r.op.AtATime).And(trimmedTo(r.op.Trim, r.op.DownTo))
}

// Traits implements Operation.
func (r *halfSquares) Traits() Traits { return Traits{Sewn: true, Cut: true} }

// Draft implements Operation.
func (r *halfSquares) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	return r.p.drafted(d, piecing.DraftHalfSquare(r.p.Triangle.Untrimmed), r.p.Triangle.roles()...)
}

// Lay implements Operation. The first fabric's square lies upright. Two at a
// time, one unit keeps its upper left half and one its lower right; the second
// fabric opens over the diagonal, so its square lies sideways to come out
// upright, and does in both. Eight at a time, both diagonals are sewn: where it
// opens upwards over one it opens downwards over the other. Four at a time, the
// units' edges are on the bias. Derived from geometry.
func (r *halfSquares) Lay(l *Laying, n Turns) {
	if r.p.Mirrored > 0 { // which half of a pair a mirror image takes is not told
		l.Untold(r.p)
		return
	}
	for i, role := range r.op.Fabrics {
		f := l.s.byFabric[role.Text]
		if f == nil {
			continue
		}
		switch {
		case r.op.AtATime == 4:
			l.Place(role, r.p.Name, Paired, n.turned(45), Quarters.around)
		case r.op.AtATime == 8 && i == 1 && f.Print == plan.OneWay:
			l.Place(role, r.p.Name, Opened, n, func(q Quarters, _ *Fabric) int64 { return (q[0] + q[1] + q[2] + q[3]) / 2 })
		case r.op.AtATime == 8:
			l.Place(role, r.p.Name, Paired, n, Quarters.around)
		default:
			l.Place(role, r.p.Name, Paired, n, Quarters.opposite)
		}
	}
}

// SizeAt implements Sized.
func (r *halfSquares) SizeAt() source.Range { return r.op.Square.At }

// CutFor implements Resized.
func (r *halfSquares) CutFor(side measure.Surd) measure.Surd {
	return piecing.HalfSquareCut(side, r.p.Seam.Allowance.Length, r.op.AtATime)
}
