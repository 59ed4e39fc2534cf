package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

func (s *Size) measureFlipCorners(p *Part, op plan.FlipCorners) {
	body := s.byName[op.Body.Text]
	if body == nil || !body.Known {
		return
	}
	seam := p.Seam.Allowance.Length
	u := &Unit{Each: 1, Of: []Taken{{body, 1}}, Sewn: body.Box, Keep: op.KeepBonus}
	for _, c := range op.Corners {
		f := s.byFabric[c.Fabric.Text]
		if f == nil {
			return
		}
		piece := squarePiece("corner square", f, exactly(c.Square.Surd()), c.Square, c.Square.At)
		piece.Nothing = 2 * seam
		u.Pieces = append(u.Pieces, piece)
		u.bonus(c.Square.Length, 1, seam)
	}
	p.becomes(u)
	p.Bias = body.Bias
}

// Legs are the finished legs of the corners, clockwise from the top left, and
// zero where there is none.
func Legs(op plan.FlipCorners, seam measure.Length) (legs [4]measure.Length) {
	for _, c := range op.Corners {
		legs[c.Place] = max(0, c.Square.Length-2*seam)
	}
	return legs
}

func (s *Size) measureSquareInSquare(p *Part, op plan.SquareInSquare) {
	centre, corners := s.byFabric[op.Centre.Text], s.byFabric[op.Corners.Text]
	if centre == nil || corners == nil {
		return
	}
	seam := p.Seam.Allowance.Length
	u := &Unit{Each: 1, Wanted: unfinished(op.Finished, op.Finished, seam), Trim: [2]plan.Length{op.Trim, op.Trim}, DownTo: op.DownTo, Keep: op.KeepBonus}
	if op.Flip {
		u.flippedInSquare(op, seam, centre, corners)
	} else {
		s.trianglesInSquare(u, op, seam, centre, corners)
	}
	p.becomes(u)
	op.Trim = u.Trim[0]
	s.comesTo(p, op)
}

// trianglesInSquare is a centre and corners from two squares cut once. The
// points' depth holds for a trimmed unit too: it is trimmed alike all round.
func (s *Size) trianglesInSquare(u *Unit, op plan.SquareInSquare, seam measure.Length, centre, corners *Fabric) {
	trim := either(op.Trim, op.DownTo)
	how := rounding(trim)
	fit := piecing.SquareInSquareFit(u.Wanted.Width, seam, u.cutTo(s, trim), how, how)
	inner := squarePiece("centre square", centre, fit.Centre, op.CutCentre, op.Finished.At)
	inner.Nothing = 2 * seam
	outer := squarePiece("corner square", corners, fit.Corner, op.CutCorners, op.Finished.At)
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

// flippedInSquare is a whole square with four squares flipped on its corners.
func (u *Unit) flippedInSquare(op plan.SquareInSquare, seam measure.Length, centre, corners *Fabric) {
	inner := squarePiece("centre square", centre, exactly(u.Wanted.Width), op.CutCentre, op.Finished.At)
	outer := squarePiece("corner square", corners, exactly(piecing.SquareInSquareFlip(u.Wanted.Width, seam)), op.CutCorners, op.Finished.At)
	inner.Nothing, outer.Nothing, outer.Count = 2*seam, 2*seam, 4
	u.Pieces = []Piece{inner, outer}
	u.sewn(square(inner.Width.Surd()))
	u.points(piecing.GoosePoint(inner.Width, outer.Width))
	u.bonus(outer.Width, 4, seam)
}

// flipCorners is a part with squares flipped over its corners.
type flipCorners struct {
	unitRoom
	op plan.FlipCorners
	s  *Size
}

// FlipCorners implements plan.Maker.
func (o *opening) FlipCorners(op plan.FlipCorners) {
	o.room = &flipCorners{unitRoom: unitRoom{o.p}, op: op, s: o.s}
}

// Seams implements Operation.
func (r *flipCorners) Seams() (l measure.Surd, ok bool) {
	if r.p.Unit == nil {
		return l, false
	}
	return r.p.batches(flips(r.p.Unit.Pieces))
}

// Wants implements Operation.
func (r *flipCorners) Wants() []Want {
	return []Want{{Part: r.op.Body, To: FourSided, By: r.p.quoted()}}
}

// Serves implements Operation.
func (r *flipCorners) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// squareInSquare is a square on point inside another.
type squareInSquare struct {
	unitRoom
	op plan.SquareInSquare
	s  *Size
}

// SquareInSquare implements plan.Maker.
func (o *opening) SquareInSquare(op plan.SquareInSquare) {
	o.room = &squareInSquare{unitRoom: unitRoom{o.p}, op: op, s: o.s}
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
