package say

import (
	"fmt"

	"yardproof/schema/measure"
)

// Measured is an exact length, rational or not.
type Measured interface {
	Format(u measure.Unit) string  // rounded to the nearest figure of the unit
	AsCut(u measure.Unit) string   // rounded up
	AsThere(u measure.Unit) string // rounded down
}

// figure reads as a function of the unit says.
type figure func(u measure.Unit) string

// In implements Figure.
func (f figure) In(u measure.Unit) string { return f(u) }

// Long is a length, rounded to the nearest figure of the unit where it is none.
func Long(l Measured) Figure { return figure(l.Format) }

// AsCut is a length that something takes, rounded up.
func AsCut(l Measured) Figure { return figure(l.AsCut) }

// AsThere is a length that there is, rounded down.
func AsThere(l Measured) Figure { return figure(l.AsThere) }

// By is two sides with the unit said once: "2 1/2 x 4 1/2 in". Each is rounded to
// the nearest figure of the unit where it is none.
func By(width measure.Length, height Measured) Figure {
	return figure(func(u measure.Unit) string { return width.Bare(u) + " x " + height.Format(u) })
}

// CutBy is By for sides that are cut, rounded up.
func CutBy(width measure.Length, height Measured) Figure {
	return figure(func(u measure.Unit) string { return width.BareRounded(u, measure.Up) + " x " + height.AsCut(u) })
}

// ThereBy is By for sides that there are, rounded down.
func ThereBy(width measure.Length, height Measured) Figure {
	return figure(func(u measure.Unit) string { return width.BareRounded(u, measure.Down) + " x " + height.AsThere(u) })
}

// Size is By for sides that may be on no ruler, and then each has its unit.
func Size(width, height measure.Surd) Figure {
	w, exact := width.Length()
	if h, ok := height.Length(); ok && exact {
		return By(w, h)
	}
	return figure(func(u measure.Unit) string { return width.Format(u) + " x " + height.Format(u) })
}

// Area is an area given in square ticks, rounded to the nearest figure of the
// unit where it is none.
func Area(a measure.Surd) Figure {
	return figure(func(u measure.Unit) string { return measure.FormatArea(a, u) })
}

// Within is a length rounded down to what can still be seen, 1/64 in or 0.1 mm,
// or in words what is less than that: a format for either with one string. Common
// practice, no source.
func Within(l measure.Length, format, less string) Figure {
	return figure(func(u measure.Unit) string {
		least := measure.Inch / 64
		if u == measure.Cm {
			least = measure.Millimetre / 10
		}
		if l < least {
			return fmt.Sprintf(less, least.Format(u))
		}
		return fmt.Sprintf(format, measure.FloorTo(l, least).AsThere(u))
	})
}
