package measure

import "math/big"

// Surd is an exact number a + b*sqrt2 + c*sqrt3 + d*sqrt6 with rational
// coefficients. A derived length is a surd in ticks, an area a surd in square
// ticks, a ratio of two lengths a plain number.
//
// A Surd is an immutable value: copy it freely. The zero value is 0. Compare
// with Equal or Cmp, not with ==.
type Surd struct {
	// While wide is nil, coefficient i is num[i] / (over+1), in lowest terms.
	// The denominator is kept less one so that the zero value is 0/1.
	num  [4]int64
	over int64
	// wide holds the coefficients once they no longer fit into num and over,
	// and only then, so that equal surds have equal representations.
	wide *wide
}

// radicand[i] is what stands under the root of coefficient i. As bit 0 of i
// stands for sqrt2 and bit 1 for sqrt3, the product of the roots i and j is the
// root i^j, radicand[i&j] times.
//
// The four are independent over the rationals, so a surd is zero only if all
// its coefficients are.
func radicand(i int) int64 {
	return [4]int64{1, 2, 3, 6}[i]
}

// Rational returns num/den. As nothing here panics, a zero den gives zero.
func Rational(num, den int64) Surd {
	switch {
	case den == 0:
		return Surd{}
	case den > 0 && num != minInt64:
		return reduce([4]int64{num}, den)
	}
	return FromRat(big.NewRat(num, den))
}

// FromRat returns r as a surd.
func FromRat(r *big.Rat) Surd {
	own := new(big.Rat).Set(r)
	return settle(wide{own, new(big.Rat), new(big.Rat), new(big.Rat)})
}

// Root2 returns the square root of 2.
func Root2() Surd { return Surd{num: [4]int64{0, 1, 0, 0}} }

// Root3 returns the square root of 3.
func Root3() Surd { return Surd{num: [4]int64{0, 0, 1, 0}} }

// Add returns x + y.
func (x Surd) Add(y Surd) Surd {
	if num, den, ok := addNarrow(x, y); ok {
		return reduce(num, den)
	}
	return addWide(x.widen(), y.widen())
}

// Sub returns x - y.
func (x Surd) Sub(y Surd) Surd {
	return x.Add(y.Neg())
}

// Neg returns -x.
func (x Surd) Neg() Surd {
	return x.conjugate(-1, -1, -1, -1)
}

// Sum returns the sum of xs, zero if there are none.
func Sum(xs ...Surd) Surd {
	var sum Surd
	for _, x := range xs {
		sum = sum.Add(x)
	}
	return sum
}

// Mul returns x * y.
func (x Surd) Mul(y Surd) Surd {
	if num, den, ok := mulNarrow(x, y); ok {
		return reduce(num, den)
	}
	return mulWide(x.widen(), y.widen())
}

// MulInt returns x * n.
func (x Surd) MulInt(n int64) Surd {
	return x.Mul(Rational(n, 1))
}

// Div returns x / y, exactly. It never panics: division by zero gives zero, so
// a caller that cannot rule it out must test y.IsZero first.
func (x Surd) Div(y Surd) Surd {
	return x.Mul(y.inverse())
}

// DivInt returns x / n, and zero if n is zero, as Div does.
func (x Surd) DivInt(n int64) Surd {
	return x.Mul(Rational(1, n))
}

// inverse returns 1/x, and zero for zero.
//
// The product of the other three conjugates times x is rational, which is how
// a denominator with two roots is made rational twice over.
func (x Surd) inverse() Surd {
	if term, ok := x.singleTerm(); ok {
		return x.invertTerm(term)
	}
	primitive, content := x.split()
	others := primitive.conjugate(1, -1, 1, -1).
		Mul(primitive.conjugate(1, 1, -1, -1)).
		Mul(primitive.conjugate(1, -1, -1, 1))
	norm := primitive.Mul(others)
	return others.Mul(norm.Mul(content).invertTerm(0))
}

// singleTerm returns the only coefficient of x that is not zero.
func (x Surd) singleTerm() (index int, ok bool) {
	found := 0
	for i := range 4 {
		if !x.zeroAt(i) {
			index = i
			found++
		}
	}
	return index, found == 1
}

// invertTerm returns 1/x of an x whose only coefficient that is not zero is i:
// 1/(q*sqrt(k)) = sqrt(k)/(q*k).
func (x Surd) invertTerm(i int) Surd {
	if x.wide == nil {
		if below, ok := mulInt64(x.num[i], radicand(i)); ok && below != 0 {
			var num [4]int64
			num[i] = x.over + 1
			if below < 0 {
				num[i], below = -num[i], -below
			}
			return reduce(num, below)
		}
	}
	return invertTermWide(x.widen(), i)
}

// split returns x as primitive * content, where primitive has small whole
// coefficients if x fits into machine words: it keeps the products in inverse
// small as well.
func (x Surd) split() (primitive, content Surd) {
	if x.wide != nil {
		return x, Rational(1, 1)
	}
	var common int64
	for _, n := range x.num {
		common = gcd(common, n)
	}
	if common == 0 {
		return x, Rational(1, 1)
	}
	for i, n := range x.num {
		primitive.num[i] = n / common
	}
	return primitive, Rational(common, x.over+1)
}

// Cmp returns -1, 0 or +1 as x is less than, equal to or greater than y,
// exactly.
func (x Surd) Cmp(y Surd) int {
	negative := y.Neg()
	if num, _, ok := addNarrow(x, negative); ok {
		return signNarrow(num)
	}
	return addWide(x.widen(), negative.widen()).Sign()
}

// Equal reports whether x and y are the same number.
func (x Surd) Equal(y Surd) bool {
	if x.wide == nil || y.wide == nil {
		return x == y
	}
	return x.wide.equal(y.wide)
}

// IsZero reports whether x is 0.
func (x Surd) IsZero() bool {
	return x.Equal(Surd{})
}

// Min returns the smaller of x and y.
func Min(x, y Surd) Surd {
	if y.Cmp(x) < 0 {
		return y
	}
	return x
}

// Max returns the greater of x and y.
func Max(x, y Surd) Surd {
	if y.Cmp(x) > 0 {
		return y
	}
	return x
}

// Rational returns x as a fraction in lowest terms if it is one; den > 0.
func (x Surd) Rational() (num, den *big.Int, ok bool) {
	if !x.rational() {
		return nil, nil, false
	}
	if x.wide == nil {
		return big.NewInt(x.num[0]), big.NewInt(x.over + 1), true
	}
	r := x.wide[0]
	return new(big.Int).Set(r.Num()), new(big.Int).Set(r.Denom()), true
}

// Length returns x, in ticks, as a length if it is a whole number of them.
func (x Surd) Length() (Length, bool) {
	if x.wide != nil || x.over != 0 || !x.rational() {
		return 0, false
	}
	return Length(x.num[0]), true
}

func (x Surd) rational() bool {
	return x.zeroAt(1) && x.zeroAt(2) && x.zeroAt(3)
}

// zeroAt reports whether coefficient i is zero.
func (x Surd) zeroAt(i int) bool {
	if x.wide == nil {
		return x.num[i] == 0
	}
	return x.wide[i].Sign() == 0
}

// conjugate multiplies coefficient i by sign[i], which is 1 or -1.
func (x Surd) conjugate(sign ...int64) Surd {
	if x.wide != nil {
		return x.wide.conjugate(sign)
	}
	for i, s := range sign {
		x.num[i] *= s
	}
	return x
}
