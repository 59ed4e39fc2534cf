package derive

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Loop is a derived loop of a strip set.
type Loop struct {
	Set   *Part
	Rings int64 // in one part
	Yield Yield // rings from one loop
	Count int64 // loops to sew, rounded up
}

// loop is a strip set sewn into a loop, cut into rings and opened.
type loop struct {
	op plan.Loop
	p  *Part
	s  *Size
}

// Loop implements plan.Maker.
func (o *opening) Loop(op plan.Loop) { o.room = &loop{op: op, p: o.p, s: o.s} }

// Measure implements Operation.
func (r *loop) Measure() {
	p := r.p
	set := r.s.byName[r.op.Set.Text]
	if set == nil || !set.Known || set.Set == nil || set.Set.Cut != nil {
		return
	}
	seam, n := p.Seam.Allowance.Length, r.op.Rings()
	ring := figure.Said("cut", "cut width of a ring", r.op.Cut.Length, r.op.Cut.At)
	p.Loop = &Loop{Set: set, Rings: n, Yield: *segments(p, "rings from one loop", set.Set.Long, ring)}
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

// How implements Operation.
func (r *loop) How() say.Sentence {
	p, rings := r.p, say.That("rings of %s", say.AsCut(r.op.Cut))
	switch {
	case p.Pool == nil:
		rings = rings.And(say.That(", %d from each", p.Loop.Yield.Each))
	case p.Pool.Parts[0] != p:
		return say.That("cut from the same loops as %s into %s%s", p.Pool.Parts[0].Name.Text, rings, r.opened())
	default:
		rings = rings.And(say.That("%s: %s", p.Pool.others(), p.Pool.told("loop")))
	}
	return say.That("%s of set %s, last strip to first, cut into %s%s", say.Many(p.Loop.Count, "loop"), r.op.Set.Text, rings, r.opened())
}

// opened says where the rings of a loop are opened.
func (r *loop) opened() string {
	if len(r.op.Open) == 0 {
		return ", each opened at the loop's own seam"
	}
	var seams []string
	for _, o := range r.op.Open {
		seams = append(seams, strconv.Itoa(o.N))
	}
	return fmt.Sprintf("; %s to a part, opened at seam %s and sewn side by side", say.Many(r.p.Loop.Rings, "ring"), strings.Join(seams, ", "))
}

// Notes implements Noted.
func (r *loop) Notes() []say.Sentence {
	if r.p.Pool != nil {
		return r.p.Pool.notes(r.p)
	}
	return []say.Sentence{spare("ring", r.p.Loop.Yield)}
}

// Traits implements Operation.
func (r *loop) Traits() Traits { return Traits{Sewn: true, Handed: true} }

// Draft implements Operation: rings side by side, each the strip set turned on to
// begin after the seam it is opened at.
func (r *loop) Draft(d Drafts) (piecing.Patchwork, bool) {
	open := r.op.Open
	if len(open) == 0 {
		open = []plan.Count{{}}
	}
	var row []piecing.Patchwork
	for _, seam := range open {
		row = append(row, r.ring(d, seam.N))
	}
	return piecing.Sew([][]piecing.Patchwork{row}, r.p.Seam.Allowance.Length)
}

// ring is strips of the set's own seam in the order in which they lie once
// the ring is opened.
func (r *loop) ring(d Drafts, seam int) piecing.Patchwork {
	set := r.p.Loop.Set
	seam %= len(set.Set.Strips)
	strips := slices.Concat(set.Set.Strips[seam:], set.Set.Strips[:seam])
	return set.sewnStrips(d, strips, r.op.Cut.Surd())
}

// Lay implements Operation: opened at another seam its strips lie as before.
func (r *loop) Lay(l *Laying, n Turns) {
	l.Cell(plan.Cell{Part: r.op.Set}, n)
}

// Faults implements Faulty: rings opened at seams that the loop does not have.
func (r *loop) Faults() (all []Fault) {
	if r.p.Loop == nil {
		return nil
	}
	set := r.p.Loop.Set
	seams := len(set.Set.Strips)
	for _, o := range r.op.Open {
		if o.N <= seams {
			continue
		}
		all = append(all, Fault{
			Kind: NoSuchSeam, At: o.At, Root: true,
			Message: say.That("a ring of %q is opened at seam %d; the loop of %d strips has %d", r.p.Name.Text, o.N, seams, seams),
			Hint:    say.That("name a seam from 1 to %d", seams),
			Related: []Place{{set.Name.At, "the strip set"}},
		})
	}
	return all
}
