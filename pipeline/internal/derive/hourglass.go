package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// hourglass is units of four triangles.
type hourglass struct {
	unitRoom
	op plan.Hourglass
}

// Hourglass implements plan.Maker.
func (o *opening) Hourglass(op plan.Hourglass) {
	o.room = &hourglass{unitRoom: unitRoom{o.p, o.s}, op: op}
}

// Measure implements Operation.
func (r *hourglass) Measure() {
	p := r.p
	u := &Unit{Each: 2, Trim: [2]plan.Length{r.op.Trim, r.op.Trim}, DownTo: r.op.DownTo}
	wide := figure.F{}
	if r.op.HalfSquares.Given() {
		wide = r.ofUnits(u)
	} else {
		wide = r.ofSquares(u)
	}
	if wide.Known() {
		r.becomes(u, wide)
		r.op.Trim = u.Trim[0]
		p.comesTo(r.op)
	}
}

// ofSquares is made from two squares of cut size c: c - 2s x sqrt2. Derived from
// geometry.
func (r *hourglass) ofSquares(u *Unit) (wide figure.F) {
	a, b := r.s.byFabric[r.op.Fabrics[0].Text], r.s.byFabric[r.op.Fabrics[1].Text]
	if a == nil || b == nil {
		return wide
	}
	seam := r.p.Seam.Allowance.Length
	fit := piecing.QuarterSquareFit(r.op.Trim.Surd(), seam, u.cutTo(r.s, r.op.Trim), piecing.Up)
	if !r.op.Trim.Given() {
		fit = exactly(r.op.Square.Surd()) // without a size to come to, the cut is what it is
	}
	for _, f := range []*Fabric{a, b} {
		c := squarePiece("square", f, fit, r.op.Square, r.op.Trim.At)
		c.Nothing = piecing.QuarterSquareCut((2 * seam).Surd(), seam).FloorTo(measure.Tick)
		u.Pieces = append(u.Pieces, c)
	}
	wide = u.Pieces[0].figure().As("c", "cut square").Less(r.p.both().Times(figure.Root2()))
	u.sewn(square(wide.Surd()))
	return wide
}

// ofUnits lays two half-square units together: each side loses
// s x sqrt2 to the second cut.
func (r *hourglass) ofUnits(u *Unit) (wide figure.F) {
	half := r.s.byName[r.op.HalfSquares.Text]
	if half == nil || !half.Known || !half.serves(HalfSquareUnit) {
		return wide
	}
	u.Of = []Taken{{half, 2}}
	wide = half.side(false).As("half-square unit", "").Less(r.p.Figures.seam.Times(figure.Root2()))
	u.sewn(square(wide.Surd()))
	return wide
}

// Seams implements Operation.
//
// Two half-square units laid together are sewn on either side of the diagonal
// that crosses their seams; before that, where the unit is made from squares, a
// pair of these.
func (r *hourglass) Seams() (l measure.Surd, ok bool) {
	u := r.p.Unit
	if u == nil {
		return l, false
	}
	seam := r.p.Seam.Allowance.Length
	if len(u.Pieces) > 0 {
		l = pairSeams(u.Pieces[0].Width, seam, 2)
	}
	half := piecing.HourglassHalf(u.Sewn.Width, seam)
	return r.p.batches(l.Add(diagonal(half).Sub((2 * seam).Surd()).MulInt(2)))
}

// Wants implements Operation.
func (r *hourglass) Wants() []Want {
	if !r.op.HalfSquares.Given() {
		return nil
	}
	return []Want{{Part: r.op.HalfSquares, To: HalfSquareUnit, By: "hourglass units " + r.p.quoted()}}
}

// Serves implements Operation.
func (r *hourglass) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// How implements Operation.
func (r *hourglass) How() say.Sentence {
	pairs, trim := say.Many(r.p.Unit.Batches, "pair"), trimmedTo(r.op.Trim, r.op.DownTo)
	if r.op.HalfSquares.Given() {
		return say.That("%s of %s, laid together with the fabrics opposite and cut once more, 2 units from each", pairs, r.op.HalfSquares.Text).And(trim)
	}
	return say.That("%s of squares %s, %s and %s, sewn and cut twice over, 2 units from each", pairs,
		say.AsCut(r.p.Unit.Pieces[0].Width), r.op.Fabrics[0].Text, r.op.Fabrics[1].Text).And(trim)
}

// Traits implements Operation.
func (r *hourglass) Traits() Traits { return Traits{Sewn: true, Handed: true, Cut: true} }

// Draft implements Operation.
func (r *hourglass) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	a, b := r.op.Fabrics[0].Text, r.op.Fabrics[1].Text
	if r.op.HalfSquares.Given() {
		faces := r.p.Unit.Of[0].Part.Triangle.roles()
		a, b = faces[0], faces[1]
	}
	return r.p.drafted(d, piecing.DraftQuarterSquare(r.p.Unit.Sewn.Width), a, b, a, b)
}

// Lay implements Operation. Each fabric's square gives four triangles. Cut and
// turned as they are sewn, those of one unit lie above and below, those of the
// other right and left, all upright; where the units show the fabric on the same
// sides, half of them are turned by a quarter. A unit is as good turned by a
// half.
func (r *hourglass) Lay(l *Laying, n Turns) {
	fabrics := r.op.Fabrics[:]
	if r.op.HalfSquares.Given() {
		half := r.p.Unit.Of[0].Part.Triangle
		if half.AtATime != 2 {
			l.Untold(r.p)
			return
		}
		fabrics = half.Faces
	}
	for _, role := range fabrics {
		l.Place(role, r.p.Name, Crossed, n, Quarters.crossed)
	}
}
