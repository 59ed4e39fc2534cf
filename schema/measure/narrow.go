package measure

import (
	"math"
	"math/bits"
)

// minInt64 has no positive counterpart. It is kept out of a surd's num, so that
// negation cannot overflow.
const minInt64 = math.MinInt64

// addNarrow adds in machine words, not in lowest terms. It reports false if
// either surd is wide or the sum overflows.
func addNarrow(x, y Surd) (num [4]int64, den int64, ok bool) {
	if x.wide != nil || y.wide != nil {
		return num, 0, false
	}
	den, ok = x.over+1, true
	if x.over != y.over {
		common := gcd(den, y.over+1)
		scaleX, scaleY := (y.over+1)/common, den/common
		var okX, okY, okDen bool
		x.num, okX = scale(x.num, scaleX)
		y.num, okY = scale(y.num, scaleY)
		den, okDen = mulInt64(den, scaleX)
		ok = okX && okY && okDen
	}
	for i := range num {
		sum, okSum := addInt64(x.num[i], y.num[i])
		num[i] = sum
		ok = ok && okSum
	}
	return num, den, ok
}

func scale(num [4]int64, by int64) (scaled [4]int64, ok bool) {
	ok = true
	for i, n := range num {
		product, okProduct := mulInt64(n, by)
		scaled[i] = product
		ok = ok && okProduct
	}
	return scaled, ok
}

// mulNarrow multiplies in machine words, not in lowest terms. It reports false
// if either surd is wide or the product overflows.
func mulNarrow(x, y Surd) (num [4]int64, den int64, ok bool) {
	if x.wide != nil || y.wide != nil {
		return num, 0, false
	}
	den, ok = mulInt64(x.over+1, y.over+1)
	for i := range x.num {
		for j := range y.num {
			if x.num[i] == 0 || y.num[j] == 0 {
				continue
			}
			term, okTerm := mulInt64(x.num[i], y.num[j])
			term, okRoot := mulInt64(term, radicand(i&j))
			sum, okSum := addInt64(num[i^j], term)
			num[i^j] = sum
			ok = ok && okTerm && okRoot && okSum
		}
	}
	return num, den, ok
}

// reduce returns num/den in lowest terms; den > 0.
func reduce(num [4]int64, den int64) Surd {
	common := den
	for _, n := range num {
		if common == 1 {
			break
		}
		common = gcd(common, n)
	}
	if common > 1 {
		den /= common
		for i := range num {
			num[i] /= common
		}
	}
	return Surd{num: num, over: den - 1}
}

// signNarrow returns the sign of num[0] + num[1]*sqrt2 + num[2]*sqrt3 +
// num[3]*sqrt6.
//
// The floating-point sum decides only when its error cannot matter. With
// u = 2^-53, a term passes through at most six roundings: of its integer, its
// root, their product, and three additions. So the sum is off by less than
// (1+u)^6 - 1 < 7u times the exact sum of magnitudes, and the computed sum of
// magnitudes is off by as little. The bound used, 16u, is twice what that asks
// for. Fused multiply-add only removes roundings, and nothing comes near
// overflow or underflow.
func signNarrow(num [4]int64) int {
	if num[1] == 0 && num[2] == 0 && num[3] == 0 {
		return signInt64(num[0])
	}
	sum, magnitude := floatSum(num)
	const bound = 16.0 / (1 << 53)
	if math.Abs(sum) > bound*magnitude {
		if sum < 0 {
			return -1
		}
		return 1
	}
	return signExact(Surd{num: num})
}

// floatSum returns num[0] + num[1]*sqrt2 + num[2]*sqrt3 + num[3]*sqrt6 and the
// sum of the magnitudes of its terms, both in floating point.
func floatSum(num [4]int64) (sum, magnitude float64) {
	const root6 = 2.449489742783178098197284074705891391965947480656670128432692567
	for i, root := range [4]float64{1, math.Sqrt2, math.Sqrt(3), root6} {
		term := float64(num[i]) * root
		sum += term
		magnitude += math.Abs(term)
	}
	return sum, magnitude
}

func signInt64(n int64) int {
	switch {
	case n < 0:
		return -1
	case n > 0:
		return 1
	}
	return 0
}

// addInt64 adds, reporting false if the sum would leave -(2^63-1)..2^63-1.
func addInt64(a, b int64) (int64, bool) {
	sum := a + b
	overflow := (sum > a) != (b > 0)
	return sum, !overflow && sum != minInt64
}

// mulInt64 multiplies, reporting false if the product would leave
// -(2^63-1)..2^63-1.
func mulInt64(a, b int64) (int64, bool) {
	high, low := bits.Mul64(magnitude(a), magnitude(b))
	return a * b, high == 0 && low <= math.MaxInt64
}

func magnitude(n int64) uint64 {
	if n < 0 {
		return -uint64(n)
	}
	return uint64(n)
}

// gcd returns the greatest common divisor of |a| and |b|; neither is minInt64.
func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	if a < 0 {
		return -a
	}
	return a
}
