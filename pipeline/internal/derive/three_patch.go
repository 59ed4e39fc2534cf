package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// threePatch is units of one triangle that fills half and two that fill a quarter
// each.
type threePatch struct {
	unitRoom
	op plan.ThreePatch
}

// ThreePatch implements plan.Maker.
func (o *opening) ThreePatch(op plan.ThreePatch) {
	o.room = &threePatch{unitRoom: unitRoom{o.p, o.s}, op: op}
}

// Measure implements Operation.
func (r *threePatch) Measure() {
	p, op := r.p, r.op
	half := r.s.byFabric[op.Half.Text]
	quarters := [2]*Fabric{r.s.byFabric[op.Quarters[0].Text], r.s.byFabric[op.Quarters[1].Text]}
	if half == nil || quarters[0] == nil || quarters[1] == nil {
		return
	}
	seam := p.Seam.Allowance.Length
	u := &Unit{Each: 1, Wanted: unfinished(op.Finished, op.Finished, seam), Trim: [2]plan.Length{op.Trim, op.Trim}, DownTo: op.DownTo}
	trim := either(op.Trim, op.DownTo)
	fit := piecing.ThreePatchFit(u.Wanted.Width, seam, u.cutTo(r.s, trim), rounding(trim))
	if r.exchanged(fit) {
		return // nobody would sew it
	}
	both := (2 * seam).Surd()
	large := squarePiece("half square", half, fit.Half, op.CutHalf, op.Finished.At)
	large.Nothing, large.Halving = piecing.HalfSquareCut(both, seam, 2).FloorTo(measure.Tick), plan.CutOnce
	u.Pieces = []Piece{large}
	for _, f := range quarters {
		c := squarePiece("quarter square", f, fit.Quarter, op.CutQuarters, op.Finished.At)
		c.Nothing, c.Halving = piecing.QuarterSquareCut(both, seam).FloorTo(measure.Tick), plan.CutTwice
		u.Pieces = append(u.Pieces, c)
	}
	r.batched(u)
	wide := r.wide(u)
	u.sewn(square(wide.Surd()))
	r.becomes(u, wide)
	r.op.Trim = u.Trim[0]
	p.comesTo(r.op)
}

// wide is how wide a unit is, unfinished: what comes out of the smaller, half - s x
// sqrt2 or quarter - 2s x sqrt2. The larger sticks out beyond it. Derived from geometry.
func (r *threePatch) wide(u *Unit) figure.F {
	half, quarter, root2 := u.Pieces[0].figure().As("half", ""), u.Pieces[1].figure().As("quarter", ""), figure.Root2()
	return figure.Least(half.Less(r.p.Figures.seam.Times(root2)), quarter.Less(r.p.both().Times(root2)))
}

// batched notes what one batch takes: a triangle of each square for one unit, or
// whole squares for four, of which half are mirror images: two of the half, one of
// each quarter. Derived from geometry.
func (r *threePatch) batched(u *Unit) {
	for i := range u.Pieces {
		if r.op.Pairs {
			u.Pieces[i].Halving = plan.Whole
		} else {
			u.Pieces[i].Triangles = 1
		}
	}
	if r.op.Pairs {
		u.Each, u.Hands, u.Pieces[0].Count = 4, r.handed(), 2
	}
}

// handed reports whether a mirror image differs: with two quarters of one fabric it
// is the unit itself.
func (r *threePatch) handed() bool { return r.op.Quarters[0].Text != r.op.Quarters[1].Text }

// Seams implements Operation. From triangles, the two quarters along a short side,
// and these along the half's long side. In pairs, on either side of a diagonal: a
// pair of quarters, then each of its two units on a half. What is sewn to a piece
// of another size is sewn as far as the shorter goes. Derived from geometry.
func (r *threePatch) Seams() (l measure.Surd, ok bool) {
	u := r.p.Unit
	if u == nil {
		return l, false
	}
	seam := r.p.Seam.Allowance.Length
	half, quarter := u.Pieces[0].Width.Surd(), u.Pieces[1].Width
	side := measure.Min(half, quarter.Surd().Sub(diagonal(seam.Surd())))
	across := diagonal(side).Sub((2 * seam).Surd())
	if r.op.Pairs {
		return r.p.batches(pairSeams(quarter, seam, 2).Add(across.MulInt(4)))
	}
	short := diagonal(quarter.Surd()).DivInt(2).Sub(seam.Surd())
	return r.p.batches(short.Add(across))
}

// Wants implements Operation.
func (r *threePatch) Wants() []Want { return nil }

// Serves implements Operation.
func (r *threePatch) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// How implements Operation.
func (r *threePatch) How() say.Sentence {
	u, q, trim := r.p.Unit, r.op.Quarters, trimmedTo(r.op.Trim, r.op.DownTo)
	half, quarter := say.AsCut(u.Pieces[0].Width), say.AsCut(u.Pieces[1].Width)
	if r.op.Pairs {
		return say.That("%s of squares %s, %s and %s, sewn and cut into 2 half-square units each; each of these laid on a square %s of %s, sewn and cut: 4 units from each pair, 2 of them mirror images",
			say.Many(u.Batches, "pair"), quarter, q[0].Text, q[1].Text, half, r.op.Half.Text).And(trim)
	}
	return say.That("each from a triangle of %s, of a square %s cut once diagonally, and one each of %s and %s, of squares %s cut twice diagonally",
		r.op.Half.Text, half, q[0].Text, q[1].Text, quarter).And(trim)
}

// Traits implements Operation.
func (r *threePatch) Traits() Traits { return Traits{Sewn: true, Handed: r.handed(), Cut: true} }

// Draft implements Operation.
func (r *threePatch) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	return r.p.drafted(d, piecing.DraftThreePatch(r.p.Unit.Sewn.Width), r.op.Half.Text, r.op.Quarters[0].Text, r.op.Quarters[1].Text)
}

// Lay implements Operation. Of triangles, a half's square gives one for either
// corner, a quarter's one for each side. How the units of a pair, which are mirror
// images, show a print is not told, nor which triangles a mirror image takes.
func (r *threePatch) Lay(l *Laying, n Turns) {
	if r.op.Pairs || r.p.Mirrored > 0 {
		l.Untold(r.p)
		return
	}
	l.Place(r.op.Half, r.p.Name, Halves, n, Quarters.opposite)
	for _, role := range r.op.Quarters {
		l.Place(role, r.p.Name, Halves, n, Quarters.around)
	}
}

// exchanged reports whether the squares that the plan cuts would do if they were
// exchanged, and as they are do not: the quarters are short.
func (r *threePatch) exchanged(fit piecing.ThreePatch) bool {
	half, quarter := r.op.CutHalf, r.op.CutQuarters
	reaches := func(cut plan.Length, exact measure.Surd) bool { return (cut.Length + Eased).Surd().Cmp(exact) >= 0 }
	return half.Given() && quarter.Given() && !reaches(quarter, fit.Quarter.Exact) &&
		reaches(quarter, fit.Half.Exact) && reaches(half, fit.Quarter.Exact)
}

// Faults implements Faulty: the squares of the half and the quarters are exchanged.
func (r *threePatch) Faults() []Fault {
	s := r.p.Seam.Allowance.Length
	fit := piecing.ThreePatchFit(unfinished(r.op.Finished, r.op.Finished, s).Width, s, r.s.rulerGrid(), piecing.Nearest)
	if !r.exchanged(fit) {
		return nil
	}
	half, quarter := r.op.CutHalf, r.op.CutQuarters
	return []Fault{{
		Kind: SquaresExchanged, At: quarter.At, Root: true,
		Message: say.That("the squares of %q are exchanged: the quarters' is %s, and cut twice diagonally it has to be %s; the half's is %s, and cut once it has to be %s", r.p.Name.Text,
			say.Long(quarter), say.AsCut(fit.Quarter.Exact), say.Long(half), say.AsCut(fit.Half.Exact)),
		Hint:    say.That("cut the quarters from squares of %s and the half from one of %s", say.Long(half), say.Long(quarter)),
		Related: []Place{{half.At, "the half's square"}},
	}}
}
