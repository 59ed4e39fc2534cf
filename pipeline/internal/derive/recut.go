package derive

import (
	"strconv"
	"strings"

	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Recut is a derived part that was cut up and sewn again.
type Recut struct {
	Of       *Part
	Piece    piecing.Box      // as cut, before it is turned
	Assembly piecing.Assembly // of the pieces as turned
}

// recut is a sewn part cut up and sewn again.
type recut struct {
	op plan.Recut
	p  *Part
	s  *Size
}

// Recut implements plan.Maker.
func (o *opening) Recut(op plan.Recut) { o.room = &recut{op: op, p: o.p, s: o.s} }

// wide is how wide it is sewn together, unfinished.
func (r *recut) wide() figure.F {
	c := r.p.Recut
	of := c.Of.side(false)
	across := figure.Counted("", "pieces across", int64(r.op.Across.N), r.op.Across.At)
	piece := of.As("w", "width of what is cut").Over(across.As("n", "pieces across"))
	high := figure.Given(figure.Length, c.Piece.Height, "as high as it is cut", c.Of.side(true))
	wide := figure.Given(figure.Length, r.p.Width, "sum of the pieces of a row - 2s for each seam", of, across, high, r.p.Figures.seam)
	return wide.Is(r.p.Name.Text, "width as sewn").Telling(of.As("", c.Of.Name.Text+", width").Where(r.op.Part.At), across,
		piece.As("", "width of a piece").Where(r.op.At), high.As("", "height of a piece").Where(r.op.At), r.p.Figures.seam)
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
	p.Figures.Size = r.wide()
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

// How implements Operation.
func (r *recut) How() say.Sentence {
	piece := r.p.Recut.Piece
	text := say.That("cut %s into %d across by %d down, each %s x %s", r.op.Part.Text, r.op.Across.N, r.op.Down.N, say.AsCut(piece.Width), say.AsCut(piece.Height))
	if len(r.op.Turns) == 0 {
		return text.And(say.That(", and sew them together again"))
	}
	var rows []string
	for row := range r.op.Down.N {
		var turns []string
		for c := range r.op.Across.N {
			turns = append(turns, strconv.Itoa(r.op.Turn(row, c))+"°")
		}
		rows = append(rows, strings.Join(turns, ", "))
	}
	return text.And(say.That("; turn them %s and sew them together again", strings.Join(rows, " / ")))
}

// Traits implements Operation.
func (r *recut) Traits() Traits { return Traits{Sewn: true, Handed: true} }

// Draft implements Operation.
func (r *recut) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	if w, ok = d.Alone(r); !ok {
		return w, false
	}
	rows := w.Split(int64(r.op.Across.N), int64(r.op.Down.N))
	for i := range rows {
		for c := range rows[i] {
			rows[i][c] = rows[i][c].Turned(r.op.Turn(i, c) / 90)
		}
	}
	return piecing.Sew(rows, r.p.Seam.Allowance.Length)
}

// Lay implements Operation.
func (r *recut) Lay(l *Laying, n Turns) {
	for row := range r.op.Down.N {
		for c := range r.op.Across.N {
			l.Cell(plan.Cell{Part: r.op.Part, Turn: r.op.Turn(row, c)}, n)
		}
	}
}

// Faults implements Faulty: pieces that do not fit together again.
func (r *recut) Faults() []Fault {
	cut := r.p.Recut
	if cut == nil {
		return nil
	}
	piece := say.That("%s x %s", say.AsThere(cut.Piece.Width), say.AsThere(cut.Piece.Height))
	f := Fault{Kind: RecutPieces, At: r.op.At, Root: true, Related: []Place{{cut.Of.Name.At, "what is cut up"}}}
	switch {
	case !r.p.Known:
		f.Message = say.That("%q is cut into pieces of %s and their seams take %s", r.op.Part.Text, piece, say.AsCut(2*r.p.Seam.Allowance.Length))
		f.Hint = say.That("cut fewer pieces")
	case cut.stepped():
		f.Message = say.That("%q is cut into pieces of %s, which are not square, and some of a row or column are turned on their side", r.op.Part.Text, piece)
		f.Hint = say.That("turn them by 180 degrees, or cut square pieces")
	default:
		return nil
	}
	return []Fault{f}
}

// stepped reports whether the pieces of some row differ in height, or the rows
// in width.
func (r *Recut) stepped() bool {
	a := r.Assembly
	for i := range a.RowHeights {
		if a.Tallest[i].Sub(a.RowHeights[i]).Cmp(Eased.Surd()) > 0 || a.RowWidths[i].Sub(a.Width).Cmp(Eased.Surd()) > 0 {
			return true
		}
	}
	return false
}

// Places implements Seating.
func (r *recut) Places() []plan.Cell { return r.op.Places() }
