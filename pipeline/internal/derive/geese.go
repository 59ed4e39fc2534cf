package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// four is one large square and four small ones. Any other shape than
// twice as wide as high leaves the unit without pieces.
func (r *flyingGeese) four(u *Unit, seam measure.Length, goose, sky *Fabric) (wide figure.F) {
	trim := either(r.op.Trim[0], r.op.DownTo)
	g, ok := piecing.FourGeese(*u.Wanted, seam, u.cutTo(r.s, trim), rounding(trim))
	if !ok {
		return wide
	}
	both := (2 * seam).Surd()
	large := squarePiece("goose square", goose, g.Large, r.op.CutGoose[0], r.op.Finished[0].At)
	large.Nothing = piecing.QuarterSquareCut(both, seam).FloorTo(measure.Tick)
	if seam.Surd().Sub(piecing.GoosePoint(g.Large.Cut, g.Small.Cut)).Cmp((Eased).Surd()) > 0 { // a sky square that is too small brings the point out
		g.Small = g.Small.With((g.Large.Cut.Surd().DivInt(2).Add(seam.Surd())).CeilTo(u.cutTo(r.s, trim)))
	}
	small := squarePiece("sky square", sky, g.Small, r.op.CutSky, r.op.Finished[1].At)
	small.Nothing, small.Count = piecing.HalfSquareCut(both, seam, 2).FloorTo(measure.Tick), 4
	u.Pieces, u.Each = []Piece{large, small}, 4
	u.sewn(piecing.Geese4Unit(large.Width, small.Width, seam))
	u.points(piecing.GoosePoint(large.Width, small.Width))
	return large.figure().As("goose square", "").Less(r.p.both().Times(figure.Root2()))
}

// one is a rectangle with a square flipped on either side.
func (r *flyingGeese) one(u *Unit, seam measure.Length, goose, sky *Fabric) (wide figure.F) {
	g, ok := piecing.OneGoose(*u.Wanted, seam)
	if !ok {
		return wide
	}
	body := Piece{What: "goose rectangle", Fabric: goose, Exact: g.Body, Nothing: 2 * seam, Count: 1, At: r.op.Finished[0].At}
	body.Width, body.Height = r.op.Finished[0].Length+2*seam, r.op.Finished[1].Length+2*seam
	if r.op.CutGoose[0].Given() {
		body.Width, body.Height, body.At, body.Said = r.op.CutGoose[0].Length, r.op.CutGoose[1].Length, r.op.CutGoose[0].At, true
	}
	flip := squarePiece("sky square", sky, exactly(g.Square), r.op.CutSky, r.op.Finished[1].At)
	flip.Nothing, flip.Count = 2*seam, 2
	u.Pieces, u.Each = []Piece{body, flip}, 1
	u.sewn(piecing.Box{Width: body.Width.Surd(), Height: body.Height.Surd()})
	u.points(piecing.GoosePoint(body.Width, flip.Width))
	u.bonus(flip.Width, 2, seam)
	return body.figure().InWords("the rectangle's")
}

// points notes how deep the points lie inside the raw edge. Where the unit is
// trimmed, that is the deepest that trimming can leave them: it takes away and adds
// nothing.
func (u *Unit) points(depth measure.Surd) { u.Point = &depth }

// bonus notes what so many flipped squares of a size leave.
func (u *Unit) bonus(flip measure.Length, count int64, seam measure.Length) {
	for i := range u.Bonus {
		if u.Bonus[i].Square == flip {
			u.Bonus[i].Count += count
			return
		}
	}
	u.Bonus = append(u.Bonus, Bonus{Square: flip, Side: piecing.BonusUnit(flip, seam), Count: count})
}

// flyingGeese is units of a goose between two skies.
type flyingGeese struct {
	unitRoom
	op plan.FlyingGeese
}

// FlyingGeese implements plan.Maker.
func (o *opening) FlyingGeese(op plan.FlyingGeese) {
	o.room = &flyingGeese{unitRoom: unitRoom{o.p, o.s}, op: op}
}

// Measure implements Operation.
func (r *flyingGeese) Measure() {
	p := r.p
	goose, sky := r.s.byFabric[r.op.Goose.Text], r.s.byFabric[r.op.Sky.Text]
	if goose == nil || sky == nil {
		return
	}
	seam := p.Seam.Allowance.Length
	u := &Unit{Wanted: unfinished(r.op.Finished[0], r.op.Finished[1], seam), Trim: r.op.Trim, DownTo: r.op.DownTo, Keep: r.op.KeepBonus}
	var wide figure.F
	if r.op.AtATime == 4 {
		wide = r.four(u, seam, goose, sky)
	} else {
		wide = r.one(u, seam, goose, sky)
	}
	if wide.Known() {
		r.becomes(u, wide)
		r.op.Trim = u.Trim
		p.comesTo(r.op)
	}
}

// Seams implements Operation.
func (r *flyingGeese) Seams() (l measure.Surd, ok bool) {
	u := r.p.Unit
	if u == nil {
		return l, false
	}
	if r.op.AtATime == 4 {
		seam := r.p.Seam.Allowance.Length
		return r.p.batches(pairSeams(u.Pieces[0].Width, seam, 2).Add(pairSeams(u.Pieces[1].Width, seam, 2).MulInt(2)))
	}
	return r.p.batches(flips(u.Pieces[1:]))
}

// Wants implements Operation.
func (r *flyingGeese) Wants() []Want { return nil }

// Serves implements Operation.
func (r *flyingGeese) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// How implements Operation.
func (r *flyingGeese) How() say.Sentence {
	u, trim := r.p.Unit, trimmedBy(r.op.Trim, r.op.DownTo)
	if r.op.AtATime == 4 {
		return say.That("%s of %s, 4 units from each", say.Many(u.Batches, "lot"), listedPieces(u.Pieces)).And(trim)
	}
	return say.That("each from %s, stitched over its ends and flipped", listedPieces(u.Pieces)).And(trim)
}

// Traits implements Operation.
func (r *flyingGeese) Traits() Traits { return Traits{Sewn: true, Handed: true, Cut: true} }

// Draft implements Operation. Singly, its sky squares are as large as the plan
// cuts them, which need not be as high as the goose.
func (r *flyingGeese) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	u := r.p.Unit
	w = piecing.DraftGoose(u.Sewn)
	if r.op.AtATime == 1 {
		square := u.Pieces[1].Width.Surd()
		w = piecing.Plain(u.Sewn, 0).Flip(piecing.TopLeft, square, 1).Flip(piecing.TopRight, square, 2)
	}
	goose, known := d.Fabric(r.op.Goose.Text)
	sky, also := d.Fabric(r.op.Sky.Text)
	if !known || !also {
		return w, false
	}
	point := piecing.GoosePoint(u.Pieces[0].Width, u.Pieces[1].Width)
	return atPoint(w.InFabrics(goose, sky, sky), r.p.Box, point.Sub(r.p.Seam.Allowance.Length.Surd()))
}

// atPoint trims a goose as it is trimmed on the table: the same off both
// ends, and off the top no more than lies above its seam allowance, so that
// the point comes to lie on the seam as far as the work allows it.
func atPoint(w piecing.Patchwork, to piecing.Box, above measure.Surd) (piecing.Patchwork, bool) {
	size := w.Size()
	if size.Width.Cmp(to.Width) < 0 || size.Height.Cmp(to.Height) < 0 {
		return w, false
	}
	top := measure.Max(measure.Surd{}, measure.Min(above, size.Height.Sub(to.Height)))
	left := size.Width.Sub(to.Width).DivInt(2)
	return w.CutTo(piecing.Rectangle(piecing.Point{X: left, Y: top}, to)).AtOrigin(), true
}

// Lay implements Operation. The goose and its sky may each be laid upright when
// they are made singly. Of four from one large square, the geese come out a
// quarter turn apart, and the two skies of a small square in two of them: half of
// the units can have both upright, or all where they are turned all four ways.
func (r *flyingGeese) Lay(l *Laying, n Turns) {
	if r.op.AtATime == 1 {
		l.Place(r.op.Goose, r.p.Name, Turned, n, Quarters.turned)
		l.Place(r.op.Sky, r.p.Name, Turned, n, Quarters.turned)
		return
	}
	l.Place(r.op.Goose, r.p.Name, Around, n, Quarters.around)
	l.Place(r.op.Sky, r.p.Name, Around, n, func(q Quarters, f *Fabric) int64 {
		return min(q.around(f), (q[0]+q[1]+q[2]+q[3]+1)/2)
	})
}

// Faults implements Faulty: geese that are not twice as wide as high.
func (r *flyingGeese) Faults() []Fault {
	w, h := r.op.Finished[0], r.op.Finished[1]
	if w.Length == 2*h.Length {
		return nil
	}
	return []Fault{{
		Kind: GeeseShape, At: source.Range{Start: w.At.Start, End: h.At.End}, Root: true,
		Message: say.That("%q is to finish %s, and flying geese are twice as wide as high", r.p.Name.Text, say.By(w.Length, h)),
		Hint:    say.That("make it %s", say.By(2*h.Length, h)),
	}}
}
