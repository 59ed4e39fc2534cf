package figure

import (
	"math/big"
	"strconv"
	"strings"

	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// ExactPlaces is how many decimals a number may have and still be written out:
// 1/64 in has six.
const ExactPlaces = 6

// about marks a rounded number.
const about = "about "

// Places that a number which is not written out is rounded to.
const (
	inchPlaces   = 4
	otherPlaces  = 3 // centimetres, yards, metres
	sharePlaces  = 2
	numberPlaces = 4
	// finerThanMinor is how many places more than the minor unit a price gets.
	finerThanMinor = 2
)

// Unit is the unit that a cell's number is in: "in", "cm", "yd", "m", the code
// of the currency, "%", or nothing for text and plain numbers.
func Unit(c report.Cell, currency measure.Currency) string {
	switch c.Kind {
	case report.Length:
		return c.Unit.String()
	case report.Fabric:
		return FabricUnit(c.Unit)
	case report.Money:
		return currency.Code()
	case report.Share:
		return "%"
	}
	return ""
}

// FabricUnit is what fabric is sold by where patterns are in u.
func FabricUnit(u measure.Unit) string {
	if u == measure.Cm {
		return "m"
	}
	return "yd"
}

// Value is the plain number of a count, money, share or number cell. It is nil
// for other kinds and for a formula that came out as text.
func Value(c report.Cell) *big.Rat {
	switch {
	case c.Kind == report.Count:
		return new(big.Rat).SetInt64(c.Int)
	case c.Kind != report.Money && c.Kind != report.Share && c.Kind != report.Number:
		return nil
	case c.Expr != nil:
		return c.Expr.Value
	}
	return c.Number
}

// Measured is the number of a length or fabric cell in its unit (Unit).
func Measured(c report.Cell) measure.Surd {
	if c.Expr != nil {
		return measure.FromRat(c.Expr.Value)
	}
	return c.Exact.DivInt(int64(Scale(c)))
}

// Scale is the length of one unit of a length or fabric cell.
func Scale(c report.Cell) measure.Length {
	switch {
	case c.Kind != report.Fabric:
		return c.Unit.Length()
	case c.Unit == measure.Cm:
		return measure.Metre
	}
	return measure.Yard
}

// Words is the text of a cell that holds no number: text, a formula that came
// out as text, or nothing.
func Words(c report.Cell) string {
	if c.Kind != report.Text && c.Expr != nil {
		return c.Expr.Text
	}
	return c.Text
}

// IsNumber reports whether a cell holds a number rather than words or nothing.
func IsNumber(c report.Cell) bool {
	if c.Kind == report.Length || c.Kind == report.Fabric {
		return c.Expr == nil || c.Expr.Value != nil
	}
	return Value(c) != nil
}

// Role is the word for the part a row plays in its table.
func Role(style report.RowStyle) string {
	switch style {
	case report.Group:
		return "group"
	case report.Total:
		return "total"
	case report.Alert:
		return "alert"
	}
	return "body"
}

// Text is a cell as a person reads it: "2 1/2 in", "1 1/4 yd", "USD 6.00",
// "25 %".
func Text(c report.Cell, currency measure.Currency) string {
	switch {
	case !IsNumber(c):
		return Words(c)
	case c.Kind == report.Length:
		return c.Exact.Rounded(c.Unit, c.Toward)
	case c.Kind == report.Fabric:
		if l, ok := Measured(c).MulInt(int64(Scale(c))).Length(); ok {
			return measure.RoundedFabric(l, c.Unit, c.Toward)
		}
		return Decimal(c, currency) + " " + Unit(c, currency)
	case c.Kind == report.Money && currency.Code() != "":
		amount, rounded := strings.CutPrefix(Decimal(c, currency), about)
		if rounded {
			return about + currency.Code() + " " + amount
		}
		return currency.Code() + " " + amount
	case c.Kind == report.Share:
		return Decimal(c, currency) + " %"
	}
	return Decimal(c, currency)
}

// Decimal is the number of a cell in its unit (Unit) as a plain decimal, of
// money with every digit of the minor unit; "about 8.4853" when at most
// ExactPlaces decimals do not hold it, rounded the way of the
// cell.
func Decimal(c report.Cell, currency measure.Currency) string {
	switch c.Kind {
	case report.Length, report.Fabric:
		return ofSurd(Measured(c), aboutPlaces(c), c.Toward)
	case report.Count:
		return strconv.FormatInt(c.Int, 10)
	}
	value := Value(c)
	switch {
	case value == nil:
		return ""
	case c.Kind == report.Money:
		return ofRat(value, currency.Digits(), currency.Digits()+finerThanMinor)
	case c.Kind == report.Share:
		return ofRat(new(big.Rat).Mul(value, big.NewRat(100, 1)), 0, sharePlaces)
	}
	return ofRat(value, 0, numberPlaces)
}

func aboutPlaces(c report.Cell) int {
	if c.Kind == report.Length && c.Unit == measure.In {
		return inchPlaces
	}
	return otherPlaces
}

// ofSurd writes a length out if decimals hold it, else rounded.
func ofSurd(x measure.Surd, rounded int, t measure.Toward) string {
	if num, den, ok := x.Rational(); ok {
		r := new(big.Rat).SetFrac(num, den)
		if places, exact := r.FloatPrec(); exact && places <= ExactPlaces {
			return r.FloatString(places)
		}
	}
	return about + x.NumberToward(rounded, t)
}

// Shown is the number of a length or fabric cell as a spreadsheet is to show it
// with so many decimals: rounded the cell's way, or as it is where that is the
// nearest anyway.
func Shown(c report.Cell, places int) measure.Surd {
	x := Measured(c)
	if c.Toward == measure.Nearest || c.Expr != nil {
		return x
	}
	r, _ := new(big.Rat).SetString(x.NumberToward(places, c.Toward))
	return measure.FromRat(r)
}

// ofRat writes r with at least some decimals if it can be written out, else
// rounded.
func ofRat(r *big.Rat, atLeast, rounded int) string {
	places, exact := r.FloatPrec()
	if !exact || places > ExactPlaces {
		return about + r.FloatString(rounded)
	}
	return r.FloatString(max(places, atLeast))
}

// Unproved is the mark on everything that is written of a plan with errors.
func Unproved(subject string) string {
	return "NOT PROVED: " + subject + " has errors. Do not print, cut or buy from these figures."
}
