package measure

// Length is a length in whole ticks of 1/203200 in (1/8000 mm).
//
// 203200 = 2^6 * 5^2 * 127 is the least number of ticks an inch must have for
// 1/64 in, 0.01 in and 0.01 mm all to be whole, given that 1 in = 25.4 mm
// exactly (NIST Handbook 44, Appendix C).
type Length int64

// Exact units of length (NIST Handbook 44, Appendix C; NIST SP 811, Appendix B).
const (
	Tick Length = 1
	Inch Length = 203200
	Foot        = 12 * Inch
	Yard        = 36 * Inch

	Millimetre Length = 8000
	Centimetre        = 10 * Millimetre
	Metre             = 100 * Centimetre
)

// MaxLength is the longest length ParseLength accepts: 100,000 in, about 2.5 km.
const MaxLength = 100_000 * Inch

// Unit is the unit a plan is written in.
type Unit int

// The units of a plan.
const (
	In Unit = iota // inches; fabric is sold in yards
	Cm             // centimetres; fabric is sold in metres
)

// String returns "in" or "cm".
func (u Unit) String() string {
	if u == Cm {
		return "cm"
	}
	return "in"
}

// ParseUnit reads "in" or "cm", exactly as written.
func ParseUnit(text string) (Unit, bool) {
	switch text {
	case "in":
		return In, true
	case "cm":
		return Cm, true
	}
	return In, false
}

// Length returns one unit as a length.
func (u Unit) Length() Length {
	if u == Cm {
		return Centimetre
	}
	return Inch
}

// On reports whether l is a whole multiple of grid. Nothing lies on a grid of
// zero or less.
func (l Length) On(grid Length) bool {
	return grid > 0 && l%grid == 0
}

// Surd returns l as a surd, in ticks.
func (l Length) Surd() Surd {
	return Rational(int64(l), 1)
}
