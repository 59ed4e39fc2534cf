package plan

import (
	"math/big"
	"slices"

	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// Price is one article of the price list and what it costs.
type Price struct {
	SKU         string
	Description string
	Unit        PriceUnit
	Amount      *big.Rat // for one unit, in the list's currency, exact
	Breaks      []Break  // lower prices for more, by what they are from; none when there is one price

	File *source.File // where it stands
	At   source.Range

	Width  measure.Length // usable, across the fabric; zero when the list does not say
	Repeat measure.Length // of the print along the fabric; zero when the list does not say
	Dated  Date           // of the price; the zero Date when the list does not say

	// How it is bought. Empty or zero where the list does not say.
	Supplier string
	Bolts    []measure.Length // lengths of the bolts on offer, shortest first
	Loss     Percent          // of a bolt that is not usable
	Minimum  *big.Rat         // least order in the price's unit; nil for any
	Multiple *big.Rat         // orders are multiples of it, in the price's unit; nil for any
	LeadDays int              // from order to delivery
	LeadSaid bool             // the list says how many these are

	Discontinued bool
	Substitute   string // the sku to take instead
}

// Break is the price of one unit where at least so many are bought.
type Break struct {
	From   *big.Rat // in the price's unit
	Amount *big.Rat
}

// For is the price of one unit where so many are bought: that of the highest
// break that is reached.
func (p Price) For(quantity *big.Rat) *big.Rat {
	amount := p.Amount
	for _, b := range p.Breaks {
		if quantity.Cmp(b.From) >= 0 {
			amount = b.Amount
		}
	}
	return amount
}

// PriceUnit is what a price is for.
type PriceUnit string

// The units of a price.
const (
	PerYard      PriceUnit = "yd"
	PerMetre     PriceUnit = "m"
	PerHalfMetre PriceUnit = "half-m"
	PerPack      PriceUnit = "pack"
	PerRoll      PriceUnit = "roll" // of strips, as a pack, or of batting
	PerSpool     PriceUnit = "spool"
	PerEach      PriceUnit = "each"
)

// PriceUnits are the units that a price can be for, as a list writes them.
func PriceUnits() []PriceUnit {
	return []PriceUnit{PerYard, PerMetre, PerHalfMetre, PerPack, PerRoll, PerSpool, PerEach}
}

// Length is the length of fabric that a price by length is for; zero of a price
// by the piece.
func (u PriceUnit) Length() measure.Length {
	switch u {
	case PerYard:
		return measure.Yard
	case PerMetre:
		return measure.Metre
	case PerHalfMetre:
		return measure.Metre / 2
	}
	return 0
}

// Fits reports whether the price is for a unit that fabric of a form is sold in.
func (p Price) Fits(form Form) bool {
	switch p.Unit {
	case PerYard, PerMetre, PerHalfMetre:
		return form == Yardage
	case PerPack, PerRoll, PerEach:
		return form == Precut
	}
	return false
}

// PriceList is a studio's price list, by article, of one file or several.
type PriceList struct {
	Currency measure.Currency
	prices   []Price
	bySKU    map[string]int
}

// NewPriceList is a list without prices. Read adds them.
func NewPriceList(c measure.Currency) *PriceList {
	return &PriceList{Currency: c, bySKU: map[string]int{}}
}

// Find is the price of an article; false when the list has none. The list may
// be nil.
func (l *PriceList) Find(sku string) (Price, bool) {
	if l == nil {
		return Price{}, false
	}
	i, ok := l.bySKU[sku]
	if !ok {
		return Price{}, false
	}
	return l.prices[i], true
}

// Only is a list of the prices of some articles, and of what is to be taken
// instead of them, which is all that a plan with these may look at. Places are
// left out: nothing about a plan may depend on where a row stands. The list may
// be nil, and the result is nil then.
func (l *PriceList) Only(skus []string) *PriceList {
	if l == nil {
		return nil
	}
	some := NewPriceList(l.Currency)
	for _, sku := range skus {
		for depth := 0; depth <= maxSubstitutes; depth++ {
			p, ok := l.Find(sku)
			if _, twice := some.bySKU[sku]; !ok || twice {
				break
			}
			p.At, p.File = source.Range{}, nil
			some.add(p)
			sku = p.Substitute
		}
	}
	return some
}

// maxSubstitutes is how long a chain of substitutes is followed.
const maxSubstitutes = 3

func (l *PriceList) add(p Price) {
	l.bySKU[p.SKU] = len(l.prices)
	l.prices = append(l.prices, p)
}

// All are the prices in the order in which they were read.
func (l *PriceList) All() []Price { return slices.Clone(l.prices) }
