package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Binding is the derived binding.
type Binding struct {
	Said   *plan.Binding
	Round  measure.Surd // the way round the finished quilt
	Strips Joined       // of a straight binding; of a bias one only what it needs
	Bias   *Bias        // of a bias binding
}

// Bias is the squares that a bias binding is cut from.
type Bias struct {
	Square  measure.Length // side
	Squares int64          // equal squares, joined where there are several
	Loops   int64          // round each square's tube, of a continuous binding
	Strips  int64          // from all squares, of single strips
	Length  measure.Surd   // that they give, joined
	ByArea  measure.Surd   // that their area would give: an upper bound
	OK      bool           // they give what is needed
}

// mostSquares is how many squares are tried before a bias binding is given up.
const mostSquares = 12

func (s *Size) bind(b *plan.Binding) *Binding {
	d := &Binding{Said: b, Round: piecing.BindingLength(s.Top.Finished, 0)}
	need := piecing.BindingLength(s.Top.Finished, b.Allowance.Length)
	d.Strips.Need = need
	by := plan.Text{Text: "binding", At: b.At}
	f := s.byFabric[b.Fabric.Text]
	if b.Kind != plan.StraightGrain {
		d.Bias = s.bias(b, f, need)
		if f != nil && d.Bias.Squares > 0 {
			f.needBias(by, d, s.Of.Seam.Allowance.Length)
		}
		if f != nil && !d.Bias.OK {
			f.Missing = true
		}
		return d
	}
	if f == nil {
		return d
	}
	round := s.round().Plus(figure.Said("allowance", "for corners and the last join", b.Allowance.Length, b.Allowance.At))
	d.Strips = s.join("binding", round.Where(b.At), f, b.Joins, figure.Said("w", "cut width of the binding", b.Cut.Length, b.Cut.At), s.Of.Seam)
	f.needJoined(by, b.Cut.Length, d.Strips)
	return d
}

// bias takes the square that the plan says, or the fewest squares that the
// fabric holds, each as small as is enough.
func (s *Size) bias(b *plan.Binding, f *Fabric, need measure.Surd) *Bias {
	if b.Square.Given() {
		d := s.biasFrom(b, b.Square.Length, 1)
		d.OK = d.Length.Cmp(need) >= 0
		return d
	}
	if f == nil {
		return &Bias{}
	}
	grid := biasGrid(s.Plan.Units)
	widest := measure.FloorTo(f.holds(), grid)
	for n := int64(1); n <= mostSquares; n++ {
		if s.biasFrom(b, widest, n).Length.Cmp(need) >= 0 {
			return s.smallestBias(b, need, n, widest, grid)
		}
	}
	d := s.biasFrom(b, widest, mostSquares)
	d.Squares = 0
	return d
}

// needBias asks for the squares that a bias binding is cut from. Where the plan
// says no square, its strips might be cut from cloth of another shape: what is
// known is then the area of the strips alone.
func (f *Fabric) needBias(by plan.Text, d *Binding, seam measure.Length) {
	n := Need{For: by, Across: d.Bias.Square, Along: d.Bias.Square, Count: d.Bias.Squares}
	strips := measure.Area(d.Strips.Need, d.Said.Cut.Surd())
	f.needWithin(n, strips.DivInt(n.Count))
	added := &f.Needs[len(f.Needs)-1]
	added.Free, added.OnBias = !d.Said.Square.Given(), &OnBias{Width: d.Said.Cut.Length, Joined: d.Strips.Need, Seam: seam}
}

// biasGrid is the step in which squares for bias are derived: 1/2 in or 1 cm.
func biasGrid(u measure.Unit) measure.Length {
	if u == measure.Cm {
		return measure.Centimetre
	}
	return measure.Inch / 2
}

// holds is the side of the largest square that can be cut of the fabric.
func (f *Fabric) holds() measure.Length {
	if f.Form == plan.Precut {
		return f.StripWidth().Length
	}
	return f.Width
}

// smallestBias tries the sides up to the one known to be enough: with single
// strips a larger square may give less, as it brings another join.
func (s *Size) smallestBias(b *plan.Binding, need measure.Surd, n int64, enough, grid measure.Length) *Bias {
	a, _ := piecing.BiasSquareByArea(need.DivInt(n), b.Cut.Length, grid) // nothing smaller can do
	if b.Kind == plan.ContinuousBias {                                   // more stays more
		each := need.Add(b.Cut.Surd().MulInt(n - 1)).DivInt(n)
		a, _ = piecing.BiasSquare(each, b.Cut.Length, s.Of.Seam.Allowance.Length, grid)
	}
	for ; a < enough; a += grid {
		if d := s.biasFrom(b, a, n); d.Length.Cmp(need) >= 0 {
			d.OK = true
			return d
		}
	}
	d := s.biasFrom(b, enough, n)
	d.OK = true
	return d
}

// biasFrom is what n squares of a side give. Continuous strips of several
// squares are joined like straight ones on the diagonal, each join costing the
// strip's width.
func (s *Size) biasFrom(b *plan.Binding, a measure.Length, n int64) *Bias {
	d := &Bias{Square: a, Squares: n, ByArea: piecing.BiasByArea(a, b.Cut.Length).MulInt(n)}
	seam := s.Of.Seam.Allowance.Length
	if b.Kind == plan.ContinuousBias {
		var each measure.Surd
		d.Loops, each = piecing.ContinuousBias(a, b.Cut.Length, seam)
		if d.Loops > 0 {
			d.Length = each.MulInt(n).Sub(b.Cut.Surd().MulInt(n - 1))
		}
		return d
	}
	d.Strips, d.Length = biasStrips(a, b.Cut.Length, seam, n)
	return d
}

// biasStrips is piecing.BiasStrips of n squares joined by piecing.JoinedBias,
// without a list of what may be millions of threads: a square has m pairs of
// strips, m = floor(a*sqrt2 / 2w), which together are 2m(a*sqrt2 - m*w) long.
// Derived from geometry.
func biasStrips(a, w, s measure.Length, n int64) (strips int64, length measure.Surd) {
	if a <= 0 || w <= 0 {
		return 0, measure.Surd{}
	}
	diagonal := a.Surd().Mul(measure.Root2())
	m := measure.FloorDiv(diagonal, (2 * w).Surd())
	if m == 0 {
		return 0, measure.Surd{}
	}
	strips = 2 * m * n
	each := diagonal.Sub(w.Surd().MulInt(m)).MulInt(2 * m)
	joins := (2 * s).Surd().Mul(measure.Root2()).MulInt(strips - 1)
	return strips, each.MulInt(n).Sub(joins)
}

// BiasFigure is how long the bias binding is that its squares give: sewn to tubes
// and cut round, or in single strips.
func (s *Size) BiasFigure(b *Binding) figure.F {
	seam := seamFigure(s.Of.Seam)
	a := figure.Given(figure.Length, b.Bias.Square.Surd(), "the smallest that is enough")
	if b.Said.Square.Given() {
		a = figure.Said("A", "side of the square", b.Bias.Square, b.Said.Square.At)
	}
	a = a.As("A", "side of the square")
	w := figure.Said("w", "cut width of the binding", b.Said.Cut.Length, b.Said.Cut.At)
	n := figure.Given(figure.Count, measure.Rational(b.Bias.Squares, 1), "as few as are enough").As("", "squares, each further one joined at the cost of w")
	need := s.round().Plus(figure.Said("allowance", "for corners and the last join", b.Said.Allowance.Length, b.Said.Allowance.At)).As("", "needed").Where(b.Said.At)
	words := "A x sqrt2 - (2i+1)w twice for i = 0, 1, ... while at least w, less 2s x sqrt2 for each join"
	long := figure.Given(figure.Length, b.Bias.Length, words, a, w, seam, n)
	if b.Said.Kind == plan.ContinuousBias {
		inside := a.Less(seam.By(2))
		each := inside.Over(w.Times(figure.Root2())).Floor().Times(inside).Times(figure.Root2())
		long = n.Times(each).Less(n.Less(one).Times(w)).InWords(each.Formula())
	}
	return long.Is("binding", "length of the bias").Telling(a, w, seam, n, need)
}
