package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// triangleSquare is a square of two or four triangles cut beforehand.
type triangleSquare struct {
	op plan.TriangleSquare
	p  *Part
	s  *Size
}

// TriangleSquare implements plan.Maker.
func (o *opening) TriangleSquare(op plan.TriangleSquare) {
	o.room = &triangleSquare{op: op, p: o.p, s: o.s}
}

// Measure implements Operation.
func (r *triangleSquare) Measure() {
	p := r.p
	t := &Triangle{}
	for i, name := range r.op.Of {
		q := r.s.byName[name.Text]
		if q == nil || !q.Known || q.Cut == nil {
			return
		}
		if side := q.Cut.Width.Length; i == 0 || side < t.Cut {
			t.Cut = side
		}
		t.Faces = append(t.Faces, q.Cut.Fabric.Role)
	}
	seam := p.Seam.Allowance.Length
	t.Quarter = len(r.op.Of) == 4
	r.sewn(figure.Said("c", "cut square", t.Cut, p.Name.At))
	t.Untrimmed = p.Figures.Size.Surd()
	r.op.Trim = line(r.op.Trim, r.op.DownTo, t.Untrimmed)
	p.comesTo(r.op)
	p.trimTo(t, r.op.Trim)
	t.Exact = piecing.HalfSquareCut(p.Width, seam, 2)
	if t.Quarter {
		t.Exact = piecing.QuarterSquareCut(p.Width, seam)
	}
}

// sewn is how large a square of triangles is that were cut from squares of cut size
// c, once or twice diagonally. Derived from geometry.
func (r *triangleSquare) sewn(c figure.F) {
	s := r.p.Figures.seam
	if len(r.op.Of) == 4 {
		s = s.By(2)
	}
	r.p.Figures.Size = c.Less(s.Times(figure.Root2())).Is(r.p.Name.Text, "side as sewn")
}

// Ask implements Operation.
func (r *triangleSquare) Ask() {
	for _, of := range r.op.Of {
		r.p.takes(r.s.byName[of.Text], false)
	}
}

// Covers implements Operation.
func (r *triangleSquare) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	return r.p.rectangle(seam)
}

// Seams implements Operation.
func (r *triangleSquare) Seams() (l measure.Surd, ok bool) {
	t := r.p.Triangle
	if t == nil {
		return l, false
	}
	return triangleSeams(t.Cut, r.p.Seam.Allowance.Length, len(r.op.Of)).MulInt(r.p.Made), true
}

// OnRuler implements Operation.
func (r *triangleSquare) OnRuler() []OnRuler {
	return []OnRuler{{"trim", r.op.Trim}}
}

// Seamed implements Operation.
func (r *triangleSquare) Seamed() []Seamed {
	if r.p.Triangle == nil {
		return nil
	}
	s := r.p.Seam.Allowance.Length
	nothing := piecing.QuarterSquareCut((2 * s).Surd(), s)
	if len(r.op.Of) == 2 {
		nothing = piecing.HalfSquareCut((2 * s).Surd(), s, 2)
	}
	return []Seamed{{"the square", r.p.Triangle.Cut, nothing.FloorTo(measure.Tick), r.p.Name.At}}
}

// Trims implements Operation.
func (r *triangleSquare) Trims() []Trimming {
	if r.p.Triangle == nil || !r.p.Known {
		return nil
	}
	return []Trimming{{r.op.Trim, r.p.Triangle.Untrimmed, r.op.DownTo}}
}

// Wants implements Operation.
func (r *triangleSquare) Wants() []Want {
	to := HalvedOnce
	if len(r.op.Of) == 4 {
		to = HalvedTwice
	}
	var all []Want
	for _, of := range r.op.Of {
		all = append(all, Want{Part: of, To: to, By: r.p.quoted()})
	}
	return all
}

// Serves implements Operation.
func (r *triangleSquare) Serves(w Wanted) (Misfit, bool) {
	if w == HalfSquareUnit {
		return Misfit{}, len(r.op.Of) == 2
	}
	return sewn(w)
}

// Gives implements Operation.
func (r *triangleSquare) Gives() *Giving { return nil }

// How implements Operation.
func (r *triangleSquare) How() say.Sentence {
	return say.That("sew triangles of %s", names(r.op.Of)).And(trimmedTo(r.op.Trim, r.op.DownTo))
}

// Traits implements Operation.
func (r *triangleSquare) Traits() Traits { return Traits{Sewn: true, Handed: len(r.op.Of) > 2} }

// Draft implements Operation.
func (r *triangleSquare) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	t := r.p.Triangle
	if t.Quarter {
		return r.p.drafted(d, piecing.DraftQuarterSquare(t.Untrimmed), t.roles()...)
	}
	return r.p.drafted(d, piecing.DraftHalfSquare(t.Untrimmed), t.roles()...)
}

// Lay implements Operation.
func (r *triangleSquare) Lay(l *Laying, n Turns) {
	for i, name := range r.op.Of {
		l.Cell(plan.Cell{Part: name, Turn: i * 360 / len(r.op.Of)}, n)
	}
}

// Faults implements Faulty: triangles of squares that are not of one size.
func (r *triangleSquare) Faults() []Fault {
	if r.p.Triangle == nil {
		return nil
	}
	first := r.s.byName[r.op.Of[0].Text].Cut.Width
	for _, of := range r.op.Of[1:] {
		cut := r.s.byName[of.Text].Cut.Width
		if cut.Length == first.Length {
			continue
		}
		return []Fault{{
			Kind: TriangleSizes, At: of.At, Root: true,
			Message: say.That("%q is sewn of triangles from squares of %s and of %s", r.p.Name.Text, say.Long(first), say.Long(cut)),
			Hint:    say.That("cut the squares of %q and %q to one size", r.op.Of[0].Text, of.Text),
			Related: []Place{{first.At, "one size"}, {cut.At, "the other"}},
		}}
	}
	return nil
}

// CutFor implements Resized.
func (r *triangleSquare) CutFor(side measure.Surd) measure.Surd {
	if len(r.op.Of) == 4 {
		return piecing.QuarterSquareCut(side, r.p.Seam.Allowance.Length)
	}
	return piecing.HalfSquareCut(side, r.p.Seam.Allowance.Length, 2)
}
