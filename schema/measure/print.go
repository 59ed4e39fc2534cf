package measure

import (
	"math/big"
	"strconv"
	"strings"
)

// Places printed of a length, fabric length or area that is not exact.
const (
	inchPlaces   = 4
	cmPlaces     = 3
	fabricPlaces = 3
	areaPlaces   = 2
	// exactPlaces is how many places an exact decimal may have before it is
	// easier to read as an 'about'.
	exactPlaces = 4
)

// Format prints l with its unit: "2 1/2 in", "3.3 in", "6.5 cm". Inches are a
// mixed fraction if l lies on 1/64 in. What is neither that nor a decimal of at
// most 4 places is rounded half up, to 4 places of an inch or 3 of a
// centimetre, and marked: "about 0.2362 in".
func (l Length) Format(u Unit) string {
	return l.Bare(u) + " " + u.String()
}

// Bare prints l as Format does, without the unit.
func (l Length) Bare(u Unit) string {
	if u == In && l.On(Inch/64) {
		return mixed(l, Inch, 64)
	}
	return decimalOrAbout(ratio(l, u.Length()), u.places())
}

func (u Unit) places() int {
	if u == Cm {
		return cmPlaces
	}
	return inchPlaces
}

// FormatFabric prints a length of fabric as it is sold. In inches that is yards
// with a fraction whose denominator is 2, 3, 4, 6, 8, 12 or 16, if there is one
// ("1 1/4 yd", "2/3 yd"), else rounded half up to 3 places ("about 1.028 yd").
// In centimetres it is metres ("1.1 m").
func FormatFabric(l Length, u Unit) string {
	if u == Cm {
		return decimalOrAbout(ratio(l, Metre), fabricPlaces) + " m"
	}
	for _, parts := range []Length{16, 12} {
		if l.On(Yard / parts) {
			return mixed(l, Yard, parts) + " yd"
		}
	}
	return about(ratio(l, Yard), fabricPlaces) + " yd"
}

// FormatCut prints a length that is to be cut from a bolt: as FormatFabric does
// where that is exact, or else as it is read off a ruler ("86 in").
func FormatCut(l Length, u Unit) string {
	if sold := FormatFabric(l, u); !strings.HasPrefix(sold, "about ") {
		return sold
	}
	return l.Format(u)
}

// Format prints x, in ticks, as Length.Format does if it is a whole number of
// ticks. Any other length is rounded half up to 4 places of an inch or 3 of a
// centimetre: "about 8.4853 in", "about 21.553 cm".
func (x Surd) Format(u Unit) string {
	if l, ok := x.Length(); ok {
		return l.Format(u)
	}
	return about(x.in(u), u.places()) + " " + u.String()
}

// Decimal prints x, in ticks, as a decimal number of units, rounded half away
// from zero to 0 to 18 places, exactly.
func (x Surd) Decimal(u Unit, places int) string {
	return x.in(u).Number(places)
}

// Number prints x, a plain number, as a decimal rounded half away from zero to
// 0 to 18 places, exactly.
func (x Surd) Number(places int) string {
	places = min(max(places, 0), 18)
	size := x
	if x.Sign() < 0 {
		size = x.Neg()
	}
	digits := floorExact(size.MulInt(tenTo(places)).Add(Rational(1, 2)))
	text := pointed(digits, places)
	if x.Sign() < 0 && digits.Sign() != 0 {
		return "-" + text
	}
	return text
}

// Float returns x, in ticks, in units, as the nearest float64. It is for
// drawing and for spreadsheet cells, never for a verdict.
func (x Surd) Float(u Unit) float64 {
	return x.in(u).nearest()
}

// String prints x, in ticks, exactly and in inches, for debugging: "6*sqrt2",
// "1/2 - 3/4*sqrt6".
func (x Surd) String() string {
	var text strings.Builder
	for i, r := range x.in(In).widen() {
		if r.Sign() != 0 {
			writeTerm(&text, r, i)
		}
	}
	if text.Len() == 0 {
		return "0"
	}
	return text.String()
}

func writeTerm(text *strings.Builder, r *big.Rat, i int) {
	switch {
	case text.Len() > 0 && r.Sign() < 0:
		text.WriteString(" - ")
	case text.Len() > 0:
		text.WriteString(" + ")
	case r.Sign() < 0:
		text.WriteString("-")
	}
	text.WriteString(new(big.Rat).Abs(r).RatString())
	if i > 0 {
		text.WriteString("*sqrt" + strconv.FormatInt(radicand(i), 10))
	}
}

// in returns x, in ticks, as a number of units.
func (x Surd) in(u Unit) Surd {
	return x.DivInt(int64(u.Length()))
}

// nearest returns the float64 nearest to x.
func (x Surd) nearest() float64 {
	num, den := x.integers()
	if x.rational() {
		return quotient(num[0], den)
	}
	for precision := uint(firstPrecision); ; precision *= 2 {
		low, high := enclose(num, precision)
		below := new(big.Int).Lsh(den, precision)
		if f := quotient(low, below); f == quotient(high, below) {
			return f
		}
	}
}

func quotient(n, d *big.Int) float64 {
	f, _ := new(big.Rat).SetFrac(n, d).Float64()
	return f
}

func ratio(l, unit Length) Surd {
	return l.Surd().DivInt(int64(unit))
}

// mixed prints l, which lies on unit/parts, as a mixed fraction of unit in
// lowest terms: "2 1/2".
func mixed(l, unit, parts Length) string {
	sign := ""
	if l < 0 {
		sign = "-"
	}
	size := magnitude(int64(l))
	whole, rest := size/uint64(unit), size%uint64(unit)
	if rest == 0 {
		return sign + strconv.FormatUint(whole, 10)
	}
	num, den := int64(rest)/int64(unit/parts), int64(parts)
	common := gcd(num, den)
	fraction := strconv.FormatInt(num/common, 10) + "/" + strconv.FormatInt(den/common, 10)
	if whole == 0 {
		return sign + fraction
	}
	return sign + strconv.FormatUint(whole, 10) + " " + fraction
}

// decimalOrAbout prints the number x exactly if exactPlaces suffice, else
// rounded to places and marked.
func decimalOrAbout(x Surd, places int) string {
	scaled := x.MulInt(tenTo(exactPlaces))
	if _, den, ok := scaled.Rational(); !ok || !den.IsInt64() || den.Int64() != 1 {
		return about(x, places)
	}
	text := strings.TrimRight(x.Number(exactPlaces), "0")
	return strings.TrimSuffix(text, ".")
}

func about(x Surd, places int) string {
	return "about " + x.Number(places)
}

// pointed prints n, which is not negative, with a decimal point before its last
// places digits.
func pointed(n *big.Int, places int) string {
	digits := n.String()
	if places == 0 {
		return digits
	}
	if missing := places + 1 - len(digits); missing > 0 {
		digits = strings.Repeat("0", missing) + digits
	}
	point := len(digits) - places
	return digits[:point] + "." + digits[point:]
}

// tenTo returns 10^places; places is 0 to 18.
func tenTo(places int) int64 {
	power := int64(1)
	for range places {
		power *= 10
	}
	return power
}
