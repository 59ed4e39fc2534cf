package words

import (
	"math/big"

	"yardproof/schema/measure"
)

func (s *statement) numbers() []*number {
	var all []*number
	if s.count != nil {
		all = append(all, s.count)
	}
	for _, d := range s.dims {
		all = append(all, d...)
	}
	return all
}

// wrong are the numbers of a statement that a figure does not agree with.
func wrong(s *statement, f *figure) []*number {
	var out []*number
	if s.count != nil && !s.count.counts(f.count) {
		out = append(out, s.count)
	}
	for _, d := range s.dims {
		dims := f.dims
		if len(d) > 1 && len(dims) == 1 && !f.long.IsZero() {
			dims = []measure.Surd{dims[0], f.long}
		}
		out = append(out, wrongDims(d, dims)...)
	}
	return out
}

// wrongDims are those of one or two lengths that no length of the figure agrees
// with, either way round.
func wrongDims(d []*number, dims []measure.Surd) []*number {
	if len(d) == 1 {
		for _, x := range dims {
			if d[0].measures(x) {
				return nil
			}
		}
		return d
	}
	if len(dims) < 2 {
		return d
	}
	a, b := wrongPair(d, dims[0], dims[1]), wrongPair(d, dims[1], dims[0])
	if len(b) < len(a) {
		return b
	}
	return a
}

func wrongPair(d []*number, x, y measure.Surd) []*number {
	var out []*number
	if !d[0].measures(x) {
		out = append(out, d[0])
	}
	if !d[1].measures(y) {
		out = append(out, d[1])
	}
	if len(out) == 2 && out[0] == out[1] {
		out = out[:1]
	}
	return out
}

// counts reports whether a number is a count, or a range that holds it.
func (n *number) counts(count int64) bool {
	x := big.NewRat(count, 1)
	if n.most != nil {
		return n.value.Cmp(x) <= 0 && x.Cmp(n.most) <= 0
	}
	return n.value.Cmp(x) == 0
}

// measures reports whether a number is a length exactly, or where the text says
// 'about', its rounding to the step that the number is spelt in.
func (n *number) measures(x measure.Surd) bool {
	switch {
	case !n.isLength():
		return false
	case n.most != nil:
		return n.length().Cmp(x) <= 0 && x.Cmp(n.ticks(n.most)) <= 0
	case n.least || n.atMost:
		return n.bounds(x)
	case n.about:
		return n.rounds(x)
	}
	return n.length().Equal(x)
}

// bounds reports whether the number is a length rounded up, where the text says 'at
// least', or down, where it says 'no more than', by less than the step that it is
// spelt in.
func (n *number) bounds(x measure.Surd) bool {
	over := n.length().Sub(x)
	if n.atMost {
		over = over.Neg()
	}
	return over.Sign() >= 0 && over.Cmp(n.ticks(n.step)) < 0 || n.about && n.rounds(x)
}

// rounds reports whether the number is no further from a length than half the step
// that it is spelt in.
func (n *number) rounds(x measure.Surd) bool {
	half := n.ticks(new(big.Rat).Quo(n.step, big.NewRat(2, 1)))
	off := n.length().Sub(x)
	if off.Sign() < 0 {
		off = off.Neg()
	}
	return off.Cmp(half) <= 0
}

// converts reports whether a number is another in other units, rounded to the step
// that it is spelt in; a length of fabric may be rounded up instead, and to whole
// tens of centimetres.
func (n *number) converts(of *number) bool {
	step := new(big.Rat).Set(n.step)
	fabric := of.unit >= measure.Yard || n.unit >= measure.Yard
	if fabric && n.unit == measure.Centimetre {
		step.SetInt64(10)
	}
	off := n.length().Sub(of.length())
	if (fabric || of.length().Cmp((measure.Metre/2).Surd()) >= 0) && off.Sign() > 0 {
		return off.Cmp(n.ticks(step)) < 0
	}
	if off.Sign() < 0 {
		off = off.Neg()
		if short := (5 * measure.Centimetre).Surd(); fabric && off.Cmp(short) > 0 {
			return false // half a step of a metre is half a metre too little
		}
	}
	return off.MulInt(2).Cmp(n.ticks(step)) <= 0
}

// short reports whether a length is in units that no fabric is bought in.
func (n *number) short() bool {
	return n.unit == measure.Inch || (n.unit == measure.Centimetre || n.unit == measure.Millimetre) && n.length().Cmp((20*measure.Centimetre).Surd()) < 0
}
