package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// triangles is a centre and corners from two squares cut once.
func (r *squareInSquare) triangles(u *Unit, seam measure.Length, centre, corners *Fabric) (wide figure.F) {
	fit := r.fit(u, seam)
	inner := squarePiece("centre square", centre, fit.Centre, r.op.CutCentre, r.op.Finished.At)
	inner.Nothing, inner.ToMark = 2*seam, true
	outer := squarePiece("corner square", corners, fit.Corner, r.op.CutCorners, r.op.Finished.At)
	outer.Nothing, outer.Count, outer.Halving = piecing.HalfSquareAdd(seam).FloorTo(measure.Tick), 2, plan.CutOnce
	u.Pieces = []Piece{inner, outer}
	wide = inner.figure().As("centre square", "").Over(figure.Root2()).Plus(outer.figure().As("corner square", "")).Less(r.p.both().Times(figure.Root2()))
	u.sewn(square(wide.Surd()))
	point := piecing.SquareInSquarePoint(u.Sewn.Width, inner.Width, seam)
	u.points(point.Sub(u.trimmedOff()))
	return wide
}

// fit is the cuts that follow from the finished size. Trimming cannot bring in the
// points of a centre that is too large, so the centre goes to the nearest mark of
// the ruler, or down to one where the nearest would cost the points; the corner
// squares make up for what it is short of, up to the lines where the unit is
// trimmed.
func (r *squareInSquare) fit(u *Unit, seam measure.Length) piecing.SquareInSquare {
	trim, mark := either(r.op.Trim, r.op.DownTo), r.s.rulerGrid()
	lines, how := u.cutTo(r.s, trim), rounding(trim)
	fit := piecing.SquareInSquareFit(u.Wanted.Width, seam, mark, piecing.Nearest, how)
	if seam.Surd().Sub(piecing.SquareInSquarePoint(u.Wanted.Width, fit.Centre.Cut, seam)).Cmp(Eased.Surd()) > 0 {
		fit.Centre = fit.Centre.With(fit.Centre.Exact.FloorTo(mark))
	}
	corner := how.Round(piecing.SquareInSquareCorner(u.Wanted.Width, fit.Centre.Cut, seam), lines)
	if how == piecing.Up {
		corner = max(corner, fit.Corner.Exact.CeilTo(lines))
	}
	fit.Corner = fit.Corner.With(corner)
	return fit
}

// flipped is a whole square with four squares flipped on its corners.
func (r *squareInSquare) flipped(u *Unit, seam measure.Length, centre, corners *Fabric) (wide figure.F) {
	inner := squarePiece("centre square", centre, exactly(u.Wanted.Width), r.op.CutCentre, r.op.Finished.At)
	outer := squarePiece("corner square", corners, r.flipFit(u, seam), r.op.CutCorners, r.op.Finished.At)
	inner.Nothing, outer.Nothing, outer.Count = 2*seam, 2*seam, 4
	u.Pieces = []Piece{inner, outer}
	u.sewn(square(inner.Width.Surd()))
	u.points(piecing.GoosePoint(inner.Width, outer.Width).Sub(u.trimmedOff()))
	u.bonus(outer.Width, 4, seam)
	return inner.figure().InWords("the body's")
}

// flipFit is the flip squares: on the nearest mark of the ruler, half way up, as a
// larger one only lets the points float.
func (r *squareInSquare) flipFit(u *Unit, seam measure.Length) piecing.Fit {
	fit, mark := exactly(piecing.SquareInSquareFlip(u.Wanted.Width, seam)), r.s.rulerGrid()
	cut := fit.Exact.NearestTo(mark)
	if fit.Exact.Sub(cut.Surd()).Cmp(Eased.Surd()) > 0 {
		cut = fit.Exact.CeilTo(mark)
	}
	return fit.With(cut)
}

// trimmedOff is what trimming takes off each side, where it does.
func (u *Unit) trimmedOff() measure.Surd {
	if !u.Trim[0].Given() {
		return measure.Surd{}
	}
	return measure.Max(measure.Surd{}, u.Sewn.Width.Sub(u.Trim[0].Surd())).DivInt(2)
}

// squareInSquare is a square on point inside another.
type squareInSquare struct {
	unitRoom
	op plan.SquareInSquare
}

// SquareInSquare implements plan.Maker.
func (o *opening) SquareInSquare(op plan.SquareInSquare) {
	o.room = &squareInSquare{unitRoom: unitRoom{o.p, o.s}, op: op}
}

// Measure implements Operation.
func (r *squareInSquare) Measure() {
	p := r.p
	centre, corners := r.s.byFabric[r.op.Centre.Text], r.s.byFabric[r.op.Corners.Text]
	if centre == nil || corners == nil {
		return
	}
	seam := p.Seam.Allowance.Length
	u := &Unit{Each: 1, Wanted: unfinished(r.op.Finished, r.op.Finished, seam), Trim: [2]plan.Length{r.op.Trim, r.op.Trim}, DownTo: r.op.DownTo, Keep: r.op.KeepBonus}
	var wide figure.F
	if r.op.Flip {
		wide = r.flipped(u, seam, centre, corners)
	} else {
		wide = r.triangles(u, seam, centre, corners)
	}
	r.becomes(u, wide)
	r.op.Trim = u.Trim[0]
	p.comesTo(r.op)
}

// Seams implements Operation.
func (r *squareInSquare) Seams() (l measure.Surd, ok bool) {
	u := r.p.Unit
	if u == nil {
		return l, false
	}
	if r.op.Flip {
		return r.p.batches(flips(u.Pieces[1:]))
	}
	return r.p.batches(aroundSquare(u.Pieces[0].Width, u.Pieces[1].Width, r.p.Seam.Allowance.Length))
}

// Wants implements Operation.
func (r *squareInSquare) Wants() []Want { return nil }

// Serves implements Operation.
func (r *squareInSquare) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// How implements Operation.
func (r *squareInSquare) How() say.Sentence {
	text := say.That("each from %s", listedPieces(r.p.Unit.Pieces))
	if r.op.Flip {
		text = text.And(say.That(", stitched over its corners and flipped"))
	}
	return text.And(trimmedTo(r.op.Trim, r.op.DownTo))
}

// Traits implements Operation.
func (r *squareInSquare) Traits() Traits { return Traits{Sewn: true, Handed: true, Cut: true} }

// Draft implements Operation.
func (r *squareInSquare) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	centre, corner := r.p.Unit.Pieces[0].Width.Surd(), r.p.Unit.Pieces[1].Width.Surd()
	if r.op.Flip {
		w = piecing.Plain(r.p.Unit.Sewn, 0)
		for c := range piecing.Corner(4) {
			w = w.Flip(c, corner, int(c)+1)
		}
	} else {
		w = piecing.DraftSquareInSquare(r.p.Width, centre, r.p.Seam.Allowance.Length)
	}
	corners := r.op.Corners.Text
	return r.p.drafted(d, w, r.op.Centre.Text, corners, corners, corners, corners)
}

// Lay implements Operation.
func (r *squareInSquare) Lay(l *Laying, n Turns) {
	centre := n
	if !r.op.Flip {
		centre = n.turned(45) // it stands on its corner
	}
	l.Place(r.op.Centre, r.p.Name, Turned, centre, Quarters.turnedAlike)
	l.Place(r.op.Corners, r.p.Name, Turned, n, Quarters.turned)
}
