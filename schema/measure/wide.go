package measure

import "math/big"

// wide holds coefficients too large for machine words. It is never written to
// once made, and may share its numbers with others.
type wide [4]*big.Rat

// widen returns the coefficients of x in either representation.
func (x Surd) widen() *wide {
	if x.wide != nil {
		return x.wide
	}
	var w wide
	for i, n := range x.num {
		w[i] = big.NewRat(n, x.over+1)
	}
	return &w
}

// settle makes a surd of w, in machine words if it fits.
func settle(w wide) Surd {
	ints, den := w.integers()
	var num [4]int64
	for i, n := range ints {
		if !n.IsInt64() || n.Int64() == minInt64 {
			return Surd{wide: &w}
		}
		num[i] = n.Int64()
	}
	if !den.IsInt64() {
		return Surd{wide: &w}
	}
	return reduce(num, den.Int64())
}

// integers returns the coefficients over their least common denominator.
func (w *wide) integers() (num [4]*big.Int, den *big.Int) {
	den = big.NewInt(1)
	for _, r := range w {
		common := new(big.Int).GCD(nil, nil, den, r.Denom())
		den.Mul(den, new(big.Int).Quo(r.Denom(), common))
	}
	for i, r := range w {
		num[i] = new(big.Int).Quo(den, r.Denom())
		num[i].Mul(num[i], r.Num())
	}
	return num, den
}

func (w *wide) equal(v *wide) bool {
	for i := range w {
		if w[i].Cmp(v[i]) != 0 {
			return false
		}
	}
	return true
}

func (w *wide) conjugate(sign []int64) Surd {
	var c wide
	for i, s := range sign {
		c[i] = w[i]
		if s < 0 {
			c[i] = new(big.Rat).Neg(w[i])
		}
	}
	return settle(c)
}

func addWide(x, y *wide) Surd {
	var sum wide
	for i := range sum {
		sum[i] = new(big.Rat).Add(x[i], y[i])
	}
	return settle(sum)
}

func mulWide(x, y *wide) Surd {
	product := wide{new(big.Rat), new(big.Rat), new(big.Rat), new(big.Rat)}
	for i := range x {
		for j := range y {
			term := new(big.Rat).Mul(x[i], y[j])
			term.Mul(term, big.NewRat(radicand(i&j), 1))
			product[i^j].Add(product[i^j], term)
		}
	}
	return settle(product)
}

// invertTermWide is invertTerm without the machine words.
func invertTermWide(x *wide, i int) Surd {
	inverse := wide{new(big.Rat), new(big.Rat), new(big.Rat), new(big.Rat)}
	if x[i].Sign() != 0 {
		inverse[i].Mul(x[i], big.NewRat(radicand(i), 1))
		inverse[i].Inv(inverse[i])
	}
	return settle(inverse)
}
