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

// Toward is the way in which a figure is rounded that is printed with fewer places
// than it has.
type Toward int

// What there is or is to spare is rounded down, what is to be bought or cut up,
// and what is only looked at to the nearest, half away from zero.
const (
	Nearest Toward = iota
	Up
	Down
)

// AsCut prints a length that is to be cut, or that is needed: as Format does, but
// never less than it is.
func (l Length) AsCut(u Unit) string { return l.Rounded(u, Up) }

// AsThere prints a length that there is, or is to spare, or that nothing goes
// below: as Format does, but never more than it is.
func (l Length) AsThere(u Unit) string { return l.Rounded(u, Down) }

// Format prints l with its unit: "2 1/2 in", "3.3 in", "6.5 cm". Inches are a
// mixed fraction if l lies on 1/64 in. What is neither that nor a decimal of at
// most 4 places is rounded half up, to 4 places of an inch or 3 of a
// centimetre, and marked: "about 0.2362 in".
func (l Length) Format(u Unit) string { return l.Rounded(u, Nearest) }

// Rounded prints l as Format does, rounded in some direction where it has to be.
func (l Length) Rounded(u Unit, t Toward) string {
	return l.bare(u, t) + " " + u.String()
}

// Bare prints l as Format does, without the unit.
func (l Length) Bare(u Unit) string { return l.bare(u, Nearest) }

// BareRounded prints l as Rounded does, without the unit.
func (l Length) BareRounded(u Unit, t Toward) string { return l.bare(u, t) }

func (l Length) bare(u Unit, t Toward) string {
	if u == In && l.On(Inch/64) {
		return mixed(l, Inch, 64)
	}
	return decimalOrAbout(ratio(l, u.Length()), u.places(), t)
}

func (u Unit) places() int {
	if u == Cm {
		return cmPlaces
	}
	return inchPlaces
}

// FormatBox prints width x height: "30 x 40 in", or "30 in square".
func FormatBox(w, h Surd, u Unit) string {
	a, b := w.Format(u), h.Format(u)
	if a == b {
		return a + " square"
	}
	if x, ok := w.Length(); ok {
		a = x.Bare(u)
	}
	return a + " x " + b
}

// FormatFabric prints a length of fabric as it is sold. In inches that is yards
// with a fraction whose denominator is 2, 3, 4, 6, 8, 12 or 16, if there is one
// ("1 1/4 yd", "2/3 yd"); in centimetres it is metres ("1.1 m"). What is sold in
// the steps of the other unit is printed in that: 150 cm in a plan in inches is
// "1.5 m", 2/3 yd in one in centimetres "2/3 yd". Anything else is rounded up to 3 places ("about 1.028 yd"), so that no
// less is bought than is needed.
func FormatFabric(l Length, u Unit) string { return RoundedFabric(l, u, Up) }

// RoundedFabric prints as FormatFabric does, rounded in some direction where it
// has to be: down what there is.
func RoundedFabric(l Length, u Unit, t Toward) string {
	inYards := fabricYards(l)
	switch {
	case u == Cm && (inYards == "" || l.On(Millimetre)):
		return decimalOrAbout(ratio(l, Metre), fabricPlaces, t) + " m"
	case inYards != "":
		return inYards
	case l.On(Centimetre):
		return decimalOrAbout(ratio(l, Metre), fabricPlaces, t) + " m"
	}
	return about(ratio(l, Yard), fabricPlaces, t) + " yd"
}

// fabricYards are yards with a fraction of the trade, empty where there is none.
func fabricYards(l Length) string {
	for _, parts := range []Length{16, 12} {
		if l.On(Yard / parts) {
			return mixed(l, Yard, parts) + " yd"
		}
	}
	return ""
}

// FormatCut prints a length that is to be cut from a bolt: as FormatFabric does
// where that is exact, or else as it is read off a ruler ("86 in"), of the other
// unit if need be ("70 cm" of what is sold by the yard). What is on neither is
// rounded up.
func FormatCut(l Length, u Unit) string {
	asSold := fabricYards(l)
	if u == Cm {
		asSold = FormatFabric(l, u)
	}
	for _, text := range []string{asSold, l.Format(u)} {
		if text != "" && !strings.HasPrefix(text, "about ") {
			return text
		}
	}
	switch {
	case u == In && l.On(Millimetre):
		return l.Format(Cm)
	case u == Cm && l.On(Inch/64):
		return l.Format(In)
	}
	return l.Rounded(u, Up)
}

// Format prints x, in ticks, as Length.Format does if it is a whole number of
// ticks. Any other length is rounded half up to 4 places of an inch or 3 of a
// centimetre: "about 8.4853 in", "about 21.553 cm".
func (x Surd) Format(u Unit) string { return x.Rounded(u, Nearest) }

// Rounded prints x as Format does, rounded in some direction where it has to be.
func (x Surd) Rounded(u Unit, t Toward) string {
	if l, ok := x.Length(); ok {
		return l.Rounded(u, t)
	}
	return about(x.in(u), u.places(), t) + " " + u.String()
}

// AsCut prints as Length.AsCut does.
func (x Surd) AsCut(u Unit) string { return x.Rounded(u, Up) }

// AsThere prints as Length.AsThere does.
func (x Surd) AsThere(u Unit) string { return x.Rounded(u, Down) }

// Decimal prints x, in ticks, as a decimal number of units, rounded half away
// from zero to 0 to 18 places, exactly.
func (x Surd) Decimal(u Unit, places int) string {
	return x.in(u).Number(places)
}

// Number prints x, a plain number, as a decimal rounded half away from zero to
// 0 to 18 places, exactly.
func (x Surd) Number(places int) string { return x.NumberToward(places, Nearest) }

// NumberToward prints x, a plain number, as a decimal rounded in some direction to
// 0 to 18 places, exactly.
func (x Surd) NumberToward(places int, t Toward) string {
	places = min(max(places, 0), 18)
	scaled := x.MulInt(tenTo(places))
	var digits *big.Int
	switch half := Rational(1, 2); {
	case t == Down:
		digits = floorExact(scaled)
	case t == Up:
		digits = floorExact(scaled.Neg())
		digits.Neg(digits)
	case x.Sign() < 0:
		digits = floorExact(scaled.Neg().Add(half))
		digits.Neg(digits)
	default:
		digits = floorExact(scaled.Add(half))
	}
	text := pointed(new(big.Int).Abs(digits), places)
	if digits.Sign() < 0 {
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
func decimalOrAbout(x Surd, places int, t Toward) string {
	scaled := x.MulInt(tenTo(exactPlaces))
	if _, den, ok := scaled.Rational(); !ok || !den.IsInt64() || den.Int64() != 1 {
		return about(x, places, t)
	}
	text := strings.TrimRight(x.Number(exactPlaces), "0")
	return strings.TrimSuffix(text, ".")
}

func about(x Surd, places int, t Toward) string {
	return "about " + x.NumberToward(places, t)
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
