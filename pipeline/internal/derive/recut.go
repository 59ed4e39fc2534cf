package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Recut is a derived part that was cut up and sewn again.
type Recut struct {
	Of       *Part
	Piece    piecing.Box      // as cut, before it is turned
	Assembly piecing.Assembly // of the pieces as turned
}

// Loop is a derived loop of a strip set.
type Loop struct {
	Set   *Part
	Rings int64 // in one part
	Yield Yield // rings from one loop
	Count int64 // loops to sew, rounded up
}

// Chain is derived strips sewn end to end.
type Chain struct {
	Fabric *Fabric
	Width  measure.Length  // cut width of the strips
	Steps  []piecing.Chain // as joined, and after every fold
	Joined Joined          // for all that are needed, cut from one joined strip
}

// recut is a sewn part cut up and sewn again.
type recut struct {
	op plan.Recut
	p  *Part
	s  *Size
}

// Recut implements plan.Maker.
func (o *opening) Recut(op plan.Recut) { o.room = &recut{op: op, p: o.p, s: o.s} }

// TellSize implements sizeTold.
func (r *recut) TellSize() *report.Work {
	if r.p.Recut == nil {
		return nil
	}
	return r.s.once(r.p.Name.Text+", width as sewn", r.tellWidth)
}

func (r *recut) tellWidth() *report.Work {
	s, c := r.s, r.p.Recut
	return &report.Work{
		Formula: "sum of the pieces of a row - 2s for each seam", Value: s.surd(r.p.Width),
		Terms: []report.Term{
			term("", c.Of.Name.Text+", width", because(s.surd(c.Of.Width), s.SizeWork(c.Of)), r.op.Part.At),
			term("", "pieces across", report.N(int64(r.op.Across.N)), r.op.Across.At),
			term("", "width of a piece", s.surd(c.Piece.Width), r.op.At),
			term("", "height of a piece", s.surd(c.Piece.Height), r.op.At),
			s.seamTerm(r.p.Seam),
		},
	}
}

// Carries implements Carrier.
func (r *recut) Carries() plan.Cell { return r.op.Carries() }

// Measure implements Operation.
func (r *recut) Measure() {
	p := r.p
	of := r.s.byName[r.op.Part.Text]
	if of == nil || !of.Known {
		return
	}
	piece, ok := piecing.Recut(of.Box, int64(r.op.Across.N), int64(r.op.Down.N))
	if !ok {
		return
	}
	var rows [][]piecing.Box
	for down := range r.op.Down.N {
		var row []piecing.Box
		for across := range r.op.Across.N {
			b := piece
			if turn := r.op.Turn(down, across); turn == 90 || turn == 270 {
				b = b.Turned()
			}
			row = append(row, b)
		}
		rows = append(rows, row)
	}
	seam := p.Seam.Allowance.Length
	p.Recut = &Recut{Of: of, Piece: piece, Assembly: piecing.Assemble(rows, seam)}
	p.Box, p.Bias = p.Recut.Assembly.Box, of.Bias
	left := piece.Finished(seam)
	p.Known = left.Width.Sign() > 0 && left.Height.Sign() > 0
}

// Ask implements Operation.
func (r *recut) Ask() { r.p.takes(r.s.byName[r.op.Part.Text], false) }

// Covers implements Operation.
func (r *recut) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	return r.p.rectangle(seam)
}

// Seams implements Operation.
//
// The pieces are joined into rows and the rows to each other.
func (r *recut) Seams() (l measure.Surd, ok bool) {
	if r.p.Recut == nil {
		return l, false
	}
	a := r.p.Recut.Assembly
	l = a.Width.MulInt(int64(r.op.Down.N - 1))
	for _, h := range a.RowHeights {
		l = l.Add(h.MulInt(int64(r.op.Across.N - 1)))
	}
	return l.MulInt(r.p.Made), true
}

// OnRuler implements Operation.
func (r *recut) OnRuler() []OnRuler { return nil }

// Seamed implements Operation.
func (r *recut) Seamed() []Seamed { return nil }

// Trims implements Operation.
func (r *recut) Trims() []Trimming { return nil }

// Wants implements Operation.
func (r *recut) Wants() []Want {
	return []Want{{Part: r.op.Part, To: FourSided, By: r.p.quoted()}}
}

// Serves implements Operation.
func (r *recut) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// Gives implements Operation.
func (r *recut) Gives() *Giving { return nil }

// loop is a strip set sewn into a loop, cut into rings and opened.
type loop struct {
	op plan.Loop
	p  *Part
	s  *Size
}

// Loop implements plan.Maker.
func (o *opening) Loop(op plan.Loop) { o.room = &loop{op: op, p: o.p, s: o.s} }

// TellYield implements yieldTold.
func (r *loop) TellYield() *report.Work {
	if r.p.Loop == nil {
		return nil
	}
	return r.s.once(r.p.Name.Text+", rings from one loop", r.tellRings)
}

func (r *loop) tellRings() *report.Work {
	return &report.Work{
		Formula: "floor(L / cut)", Value: report.N(r.p.Loop.Yield.Each),
		Terms: []report.Term{
			term("L", "usable length of the shortest strip", r.s.length(r.p.Loop.Yield.Length), r.p.Loop.Set.Set.lengthAt()),
			term("cut", "cut width of a ring", r.s.length(r.op.Cut.Length), r.op.Cut.At),
		},
	}
}

// Measure implements Operation.
func (r *loop) Measure() {
	p := r.p
	set := r.s.byName[r.op.Set.Text]
	if set == nil || !set.Known || set.Set == nil || set.Set.Cut != nil {
		return
	}
	seam, n := p.Seam.Allowance.Length, r.op.Rings()
	p.Loop = &Loop{Set: set, Rings: n, Yield: *segments(set.Set.Length, r.op.Cut.Length)}
	p.Subcut = &Subcut{Width: r.op.Cut.Length, Each: n, From: set, how: "loop of " + r.op.Set.Text}
	width := measure.Length(n)*r.op.Cut.Length - 2*measure.Length(n-1)*seam
	p.Known = r.op.Cut.Length > 2*seam
	p.Box = piecing.Box{Width: width.Surd(), Height: set.Set.Width.Surd()}
}

// Ask implements Operation: the pool asks.
func (r *loop) Ask() {}

// Covers implements Operation.
func (r *loop) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	return r.p.rectangle(seam)
}

// Seams implements Operation.
//
// Every loop is closed along its strips, and the rings of each part are joined.
func (r *loop) Seams() (l measure.Surd, ok bool) {
	p := r.p.Loop
	if p == nil {
		return l, false
	}
	return p.Set.Set.Length.Surd().MulInt(p.Count).Add(r.p.Height.MulInt((p.Rings - 1) * r.p.Made)), true
}

// OnRuler implements Operation.
func (r *loop) OnRuler() []OnRuler {
	return []OnRuler{{"ring", r.op.Cut}}
}

// Seamed implements Operation.
func (r *loop) Seamed() []Seamed {
	return []Seamed{{"the ring", r.op.Cut.Length, 2 * r.p.Seam.Allowance.Length, r.op.Cut.At}}
}

// Trims implements Operation.
func (r *loop) Trims() []Trimming { return nil }

// Wants implements Operation.
func (r *loop) Wants() []Want {
	return []Want{{Part: r.op.Set, To: WholeSet, By: "loop " + r.p.quoted()}}
}

// Serves implements Operation.
func (r *loop) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// Gives implements Operation.
func (r *loop) Gives() *Giving {
	if r.p.Loop == nil {
		return nil
	}
	return &Giving{"ring", "loop", r.op.Cut.At}
}

// chain is strips sewn end to end and folded.
type chain struct {
	op plan.Chain
	p  *Part
	s  *Size
}

// Chain implements plan.Maker.
func (o *opening) Chain(op plan.Chain) { o.room = &chain{op: op, p: o.p, s: o.s} }

// TellCount implements countTold.
func (r *chain) TellCount() *report.Work {
	if r.p.Chain == nil {
		return r.s.NeededWork(r.p)
	}
	return r.s.JoinedWork(r.p.Name.Text, r.p.Chain.Joined, r.op.At)
}

// Measure implements Operation.
func (r *chain) Measure() {
	p := r.p
	f := r.s.byFabric[r.op.Fabric.Text]
	if f == nil {
		return
	}
	seam, width := p.Seam.Allowance.Length, f.stripWidth(r.op.Width)
	first := piecing.Chain{Length: r.op.Length.Surd(), Width: width, Strips: 1}
	c := &Chain{Fabric: f, Width: width, Steps: first.Halvings(r.op.Folds.N, seam)}
	c.Joined = join(r.op.Length.Surd(), f.stripLength(), joinLoss(r.op.Joins, width, seam))
	last := c.Steps[len(c.Steps)-1]
	p.Chain, p.Known = c, c.Joined.OK && last.Width > 2*seam && last.Length.Cmp((2*seam).Surd()) > 0
	p.Box = piecing.Box{Width: last.Length, Height: last.Width.Surd()}
}

// Ask implements Operation: it joins what all the chains take, and cuts them from it.
func (r *chain) Ask() {
	p, c := r.p, r.p.Chain
	if c == nil || !p.Known {
		return
	}
	c.Joined = join(r.op.Length.Surd().MulInt(p.Needed), c.Fabric.stripLength(), c.Joined.Loss)
	c.Fabric.needJoined(p.Name, c.Width, c.Joined)
}

// Covers implements Operation.
func (r *chain) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	return r.p.rectangle(seam)
}

// Seams implements Operation.
//
// Strips are joined end to end, and every fold of every chain is sewn along the
// edge: half of what was folded.
func (r *chain) Seams() (l measure.Surd, ok bool) {
	c := r.p.Chain
	if c == nil {
		return l, false
	}
	l = joinSeams(r.op.Joins, c.Width, c.Joined.Count)
	for _, step := range c.Steps[1:] {
		l = l.Add(step.Length.MulInt(r.p.Made))
	}
	return l, true
}

// OnRuler implements Operation.
func (r *chain) OnRuler() []OnRuler {
	return []OnRuler{{"strip width", r.op.Width}}
}

// Seamed implements Operation.
func (r *chain) Seamed() []Seamed {
	if r.p.Chain == nil {
		return nil
	}
	return []Seamed{{"a strip", r.p.Chain.Width, 2 * r.p.Seam.Allowance.Length, r.op.At}}
}

// Trims implements Operation.
func (r *chain) Trims() []Trimming { return nil }

// Wants implements Operation.
func (r *chain) Wants() []Want { return nil }

// Serves implements Operation.
func (r *chain) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// Gives implements Operation.
func (r *chain) Gives() *Giving { return nil }
