package derive

import (
	"strings"

	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Legs are the finished legs of the corners, clockwise from the top left, and
// zero where there is none.
func Legs(op plan.FlipCorners, seam measure.Length) (legs [4]measure.Length) {
	for _, c := range op.Corners {
		legs[c.Place] = max(0, c.Square.Length-2*seam)
	}
	return legs
}

// flipCorners is a part with squares flipped over its corners.
type flipCorners struct {
	unitRoom
	op plan.FlipCorners
}

// FlipCorners implements plan.Maker.
func (o *opening) FlipCorners(op plan.FlipCorners) {
	o.room = &flipCorners{unitRoom: unitRoom{o.p, o.s}, op: op}
}

// Carries implements Carrier.
func (r *flipCorners) Carries() plan.Cell { return r.op.Carries() }

// Cells implements celled.
func (r *flipCorners) Cells() [][]plan.Cell { return alone(r.op.Body) }

// Measure implements Operation.
func (r *flipCorners) Measure() {
	p := r.p
	body := r.s.byName[r.op.Body.Text]
	if body == nil || !body.Known {
		return
	}
	seam := p.Seam.Allowance.Length
	u := &Unit{Each: 1, Of: []Taken{{body, 1}}, Sewn: body.Box, Keep: r.op.KeepBonus}
	for _, c := range r.op.Corners {
		f := r.s.byFabric[c.Fabric.Text]
		if f == nil {
			return
		}
		piece := squarePiece("corner square", f, exactly(c.Square.Surd()), c.Square, c.Square.At)
		piece.Nothing = 2 * seam
		u.Pieces = append(u.Pieces, piece)
		u.bonus(c.Square.Length, 1, seam)
	}
	r.becomes(u, body.side(false).InWords("the body's"))
	p.Bias = body.Bias
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

// How implements Operation.
func (r *flipCorners) How() say.Sentence {
	over := "all corners"
	if len(r.op.Corners) < 4 {
		var corners []string
		for _, c := range r.op.Corners {
			corners = append(corners, [...]string{"top left", "top right", "bottom right", "bottom left"}[c.Place])
		}
		over = strings.Join(corners, ", ")
	}
	return say.That("each from %s with %s, stitched over %s and flipped", r.op.Body.Text, listedPieces(r.p.Unit.Pieces), over)
}

// Traits implements Operation.
func (r *flipCorners) Traits() Traits { return Traits{Sewn: true, Handed: true, Cut: true} }

// Draft implements Operation.
func (r *flipCorners) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	if w, ok = d.Alone(r); !ok {
		return w, false
	}
	for _, c := range r.op.Corners {
		fabric, ok := d.Fabric(c.Fabric.Text)
		if !ok {
			return w, false
		}
		w = w.Flip(piecing.Corner(c.Place), c.Square.Surd(), fabric)
	}
	return w, true
}

// Lay implements Operation.
func (r *flipCorners) Lay(l *Laying, n Turns) {
	l.Cell(plan.Cell{Part: r.op.Body}, n)
	for _, c := range r.op.Corners {
		l.Place(c.Fabric, r.p.Name, Turned, n, Quarters.turned)
	}
}

// Faults implements Faulty: corners that reach into each other.
func (r *flipCorners) Faults() []Fault {
	if r.p.Unit == nil || !r.p.Known {
		return nil
	}
	seam := r.p.Seam.Allowance.Length
	finished, legs := r.p.Unit.Sewn.Finished(seam), Legs(r.op, seam)
	if piecing.FlipCornersFit(finished, legs) {
		return nil
	}
	var sizes []say.Sentence
	for _, c := range r.op.Corners {
		sizes = append(sizes, say.That("%s", say.Long(legs[c.Place])))
	}
	return []Fault{{
		Kind: CornersOverlap, At: r.op.Corners[0].Square.At, Root: true,
		Message: say.That("the corners of %q finish with legs of %s and overlap: the part finishes at %s", r.p.Name.Text,
			say.List(", ", sizes...), say.Size(finished.Width, finished.Height)),
		Hint: say.That("two equal corners of a side are cut at most %s", say.AsThere(largestFlip(finished, seam, r.s.rulerGrid()))),
	}}
}

// largestFlip is the largest square for equal corners on the shorter side,
// down to the ruler's grid.
func largestFlip(finished piecing.Box, seam, grid measure.Length) measure.Length {
	return measure.FloorTo(piecing.FlipSquare(measure.Min(finished.Width, finished.Height).DivInt(2).FloorTo(measure.Tick), seam), grid)
}

// Places implements Seating.
func (r *flipCorners) Places() []plan.Cell { return r.op.Places() }
