package jsontable

import (
	"bytes"
	"encoding/json"
	"math/big"
	"strings"

	"yardproof/exporters/internal/figure"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// aboutPlaces is how many decimals an approximate value has.
const aboutPlaces = 12

// number is a cell that holds a number.
type number struct {
	Kind    string `json:"kind"`
	Text    string `json:"text"`              // as a person reads it
	Exact   string `json:"exact,omitempty"`   // "5/2 in", "6*sqrt2 in", "10/3"
	About   string `json:"about,omitempty"`   // a length as a decimal of its unit
	Decimal string `json:"decimal,omitempty"` // any other number that a decimal holds
	Name    string `json:"name,omitempty"`
	Input   bool   `json:"input,omitempty"`
	Marked  bool   `json:"marked,omitempty"` // it stands out
	Why     int    `json:"why,omitempty"`
}

func (w writer) cell(c report.Cell) any {
	switch {
	case c.Kind == report.Empty || c.Kind == report.Box:
		return nil
	case !figure.IsNumber(c):
		return figure.Words(c)
	}
	n := number{
		Kind: kind(c.Kind), Text: figure.Text(c, w.currency),
		Name: c.Name, Input: c.Input, Marked: c.Marked(), Why: w.workings.Number(c.Why),
	}
	if value := figure.Value(c); value != nil {
		n.Decimal, n.Exact = decimal(value, w.leastPlaces(c))
		return n
	}
	n.Exact = exactLength(c, figure.Unit(c, w.currency))
	n.About = shortest(figure.Measured(c).Number(aboutPlaces))
	return n
}

// shortest drops the zeros that end a decimal.
func shortest(decimal string) string {
	return strings.TrimSuffix(strings.TrimRight(decimal, "0"), ".")
}

func kind(k report.CellKind) string {
	switch k {
	case report.Count:
		return "count"
	case report.Length:
		return "length"
	case report.Fabric:
		return "fabric"
	case report.Money:
		return "money"
	case report.Share:
		return "share"
	}
	return "number"
}

func (w writer) leastPlaces(c report.Cell) int {
	if c.Kind == report.Money {
		return w.currency.Digits()
	}
	return 0
}

// decimal writes a value out if a decimal holds it, else as a fraction.
func decimal(value *big.Rat, least int) (text, fraction string) {
	places, exact := value.FloatPrec()
	if !exact || places > aboutPlaces {
		return "", value.RatString()
	}
	return value.FloatString(max(places, least)), ""
}

// exactLength prints a length in its own unit. A Surd prints itself in inches,
// so it is scaled until an inch stands for the unit.
func exactLength(c report.Cell, unit string) string {
	return figure.Measured(c).MulInt(int64(measure.Inch)).String() + " " + unit
}

// object is a JSON object that keeps its order.
type object []member

type member struct {
	name  string
	value any
}

// MarshalJSON writes the members in order.
func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		if err := appendMember(&b, m); err != nil {
			return nil, err
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

func appendMember(b *bytes.Buffer, m member) error {
	encoder := json.NewEncoder(b)
	encoder.SetEscapeHTML(false)
	if err := encoder.Encode(m.name); err != nil {
		return err
	}
	b.WriteByte(':')
	return encoder.Encode(m.value)
}
