package measure

import (
	"math"
	"math/big"
)

// firstPrecision is how many bits after the point the first try at a sign, a
// floor or a float takes; every further try takes twice as many.
const firstPrecision = 64

// Sign returns -1, 0 or +1, exactly.
func (x Surd) Sign() int {
	if x.wide == nil {
		return signNarrow(x.num)
	}
	return signExact(x)
}

// signExact narrows an interval round x until it excludes zero, which ends
// because x is zero only if its coefficients are.
func signExact(x Surd) int {
	if x.IsZero() {
		return 0
	}
	num, _ := x.integers()
	for precision := uint(firstPrecision); ; precision *= 2 {
		low, high := enclose(num, precision)
		switch {
		case low.Sign() > 0:
			return 1
		case high.Sign() < 0:
			return -1
		}
	}
}

// floorExact returns the greatest whole number not above x.
func floorExact(x Surd) *big.Int {
	num, den := x.integers()
	if x.rational() {
		return floorQuo(num[0], den)
	}
	// x is irrational, so some interval round it holds no whole number.
	for precision := uint(firstPrecision); ; precision *= 2 {
		low, high := enclose(num, precision)
		below := new(big.Int).Lsh(den, precision)
		floor := floorQuo(low, below)
		if floor.Cmp(floorQuo(high, below)) == 0 {
			return floor
		}
	}
}

// enclose returns whole numbers with
//
//	low <= 2^precision * (num[0] + num[1]*sqrt2 + num[2]*sqrt3 + num[3]*sqrt6) <= high
//
// and high - low <= 3.
func enclose(num [4]*big.Int, precision uint) (low, high *big.Int) {
	low = new(big.Int).Lsh(num[0], precision)
	high = new(big.Int).Set(low)
	for i := 1; i < 4; i++ {
		square := new(big.Int).Mul(num[i], num[i])
		square.Mul(square, big.NewInt(radicand(i)))
		down := square.Sqrt(square.Lsh(square, 2*precision))
		up := new(big.Int).Add(down, big.NewInt(1))
		switch num[i].Sign() {
		case 1:
			low.Add(low, down)
			high.Add(high, up)
		case -1:
			low.Sub(low, up)
			high.Sub(high, down)
		}
	}
	return low, high
}

// floorQuo returns n/d rounded down; d > 0.
func floorQuo(n, d *big.Int) *big.Int {
	// Euclidean division rounds down when the divisor is positive.
	return new(big.Int).Div(n, d)
}

// integers returns the coefficients of x over their least common denominator.
func (x Surd) integers() (num [4]*big.Int, den *big.Int) {
	if x.wide != nil {
		return x.wide.integers()
	}
	for i, n := range x.num {
		num[i] = big.NewInt(n)
	}
	return num, big.NewInt(x.over + 1)
}

// FloorDiv returns x/y rounded down to a whole number, exactly: how many y fit
// into x. y must be positive; nothing fits otherwise, and the result is 0.
// Results beyond an int64 stop at its ends.
func FloorDiv(x, y Surd) int64 {
	if y.Sign() <= 0 {
		return 0
	}
	if n, ok := floorDivNarrow(x, y); ok {
		return n
	}
	return saturate(floorExact(x.Div(y)))
}

// CeilDiv returns x/y rounded up to a whole number, exactly: how many y it
// takes to cover x. y must be positive; otherwise no number of them covers a
// positive x, and the result is math.MaxInt64 for it and 0 for any other.
// Results beyond an int64 stop at its ends.
func CeilDiv(x, y Surd) int64 {
	if y.Sign() <= 0 {
		if x.Sign() > 0 {
			return math.MaxInt64
		}
		return 0
	}
	floor := FloorDiv(x.Neg(), y)
	if floor == minInt64 {
		return math.MaxInt64
	}
	return -floor
}

// floorDivNarrow divides in machine words, y > 0. It reports false if it cannot.
func floorDivNarrow(x, y Surd) (int64, bool) {
	if x.wide != nil || y.wide != nil {
		return 0, false
	}
	if !x.rational() || !y.rational() {
		return floorDivRoots(x, y)
	}
	dividend, okX := mulInt64(x.num[0], y.over+1)
	divisor, okY := mulInt64(y.num[0], x.over+1)
	if !okX || !okY {
		return 0, false
	}
	floor := dividend / divisor
	if dividend%divisor < 0 {
		floor--
	}
	return floor, true
}

// floorDivRoots guesses the quotient in floating point and proves the guess, or
// the number next to it, in exact arithmetic: n*y <= x < (n+1)*y. It reports
// false if the guess is unproven.
func floorDivRoots(x, y Surd) (int64, bool) {
	guess := math.Floor(x.approximate() / y.approximate())
	if !(math.Abs(guess) < 1<<52) { // also if it is not a number
		return 0, false
	}
	for n := int64(guess) - 1; n <= int64(guess)+1; n++ {
		if x.Cmp(y.MulInt(n+1)) < 0 {
			return n, x.Cmp(y.MulInt(n)) >= 0
		}
	}
	return 0, false
}

// approximate returns x, which is not wide, in floating point.
func (x Surd) approximate() float64 {
	sum, _ := floatSum(x.num)
	return sum / float64(x.over+1)
}

func saturate(n *big.Int) int64 {
	switch {
	case n.IsInt64():
		return n.Int64()
	case n.Sign() < 0:
		return math.MinInt64
	}
	return math.MaxInt64
}
