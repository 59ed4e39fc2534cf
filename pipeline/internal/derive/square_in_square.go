package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// triangles is a centre and corners from two squares cut once. The
// points' depth holds for a trimmed unit too: it is trimmed alike all round.
func (r *squareInSquare) triangles(u *Unit, seam measure.Length, centre, corners *Fabric) {
	trim := either(r.op.Trim, r.op.DownTo)
	how := rounding(trim)
	fit := piecing.SquareInSquareFit(u.Wanted.Width, seam, u.cutTo(r.s, trim), how, how)
	inner := squarePiece("centre square", centre, fit.Centre, r.op.CutCentre, r.op.Finished.At)
	inner.Nothing = 2 * seam
	outer := squarePiece("corner square", corners, fit.Corner, r.op.CutCorners, r.op.Finished.At)
	outer.Nothing, outer.Count, outer.Halving = piecing.HalfSquareAdd(seam).FloorTo(measure.Tick), 2, plan.CutOnce
	u.Pieces = []Piece{inner, outer}
	u.sewn(square(piecing.SquareInSquareUnit(inner.Width, outer.Width, seam)))
	side := u.Sewn.Width
	if u.Trim[0].Given() {
		side = u.Trim[0].Surd()
	}
	point := piecing.SquareInSquarePoint(side, inner.Width, seam)
	u.Point = &point
}

// flipped is a whole square with four squares flipped on its corners.
func (r *squareInSquare) flipped(u *Unit, seam measure.Length, centre, corners *Fabric) {
	inner := squarePiece("centre square", centre, exactly(u.Wanted.Width), r.op.CutCentre, r.op.Finished.At)
	outer := squarePiece("corner square", corners, exactly(piecing.SquareInSquareFlip(u.Wanted.Width, seam)), r.op.CutCorners, r.op.Finished.At)
	inner.Nothing, outer.Nothing, outer.Count = 2*seam, 2*seam, 4
	u.Pieces = []Piece{inner, outer}
	u.sewn(square(inner.Width.Surd()))
	u.points(piecing.GoosePoint(inner.Width, outer.Width))
	u.bonus(outer.Width, 4, seam)
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

// TellSize implements sizeTold.
func (r *squareInSquare) TellSize() *report.Work {
	if r.op.Flip {
		return r.tellWidth("the body's")
	}
	return r.tellWidth("centre square / sqrt2 + corner square - 2s x sqrt2")
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
	if r.op.Flip {
		r.flipped(u, seam, centre, corners)
	} else {
		r.triangles(u, seam, centre, corners)
	}
	p.becomes(u)
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
