package plan

import (
	"math/big"

	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// Project is the studio's own settings, from yardproof.json at the root of
// the pattern folder. The zero Project with DefaultsFor a unit serves where
// there is none.
type Project struct {
	File *source.File // nil when there is no project file
	Tree *jsontree.Node

	Studio     Text
	Currency   measure.Currency
	LabourRate Amount // an hour
	Rates      Rates
	Spoilage   Percent // kits spoiled, as a share of those made well
	Payment    Payment
	Wholesale  Percent // what a shop pays, as a share of the price
	Margin     Percent
	Run        Count
	PriceLists []ListSource
	PriceAge   int // days after which a dated price is stale
	Landed     []Landed
	Stock      *ListSource // nil where the project names no stock list
	Edition    *ListSource // the line as last published; nil where the project names none
	Rulers     []Ruler
	Thread     Thread
	Exclude    []Glob // of files and folders below the project file's that are not looked at
	Rules      []RuleLevel
	Exceptions []Exception
	Defaults   *jsontree.Node // nil when the project changes none
}

// Rates are minutes that each act of cutting a kit takes; nil where the project
// does not say.
type Rates struct {
	Length  *big.Rat // to cut one length of fabric
	Strip   *big.Rat // to cut one strip
	Cut     *big.Rat // to cut one piece from a strip
	Setting *big.Rat // to go over to another cut width
	Pack    *big.Rat // to pack one kit
	At      source.Range
}

// Given reports whether the project says any rates.
func (r Rates) Given() bool { return r.At != source.Range{} }

// Landed is what an order from a supplier costs besides its goods.
type Landed struct {
	Supplier string
	Freight  Amount
	Fees     Amount
	Duty     Percent // of the goods' cost
	ByLength bool    // freight and fees are shared by length rather than by value

	// A usual order, over which kits bear freight and fees: its goods' cost, or its
	// length where they are shared by that. Neither is given where kits are costed at
	// the list's prices.
	Usual       Amount
	UsualLength Length

	At      source.Range // of the supplier
	ShareAt source.Range // of how freight and fees are shared
}

// InKits reports whether kits bear the landed cost.
func (l Landed) InKits() bool {
	return l.Usual.Given() && l.Usual.Value.Sign() > 0 || l.UsualLength.Length > 0
}

// LandedFrom is what orders from a supplier cost besides their goods; false where
// the project says nothing of it.
func (p *Project) LandedFrom(supplier string) (Landed, bool) {
	for _, l := range p.Landed {
		if l.Supplier == supplier {
			return l, true
		}
	}
	return Landed{}, false
}

// Payment is what it costs to be paid for one kit.
type Payment struct {
	Share Percent // of the price
	Each  Amount
}

// RuleLevel sets a rule's level for this project.
type RuleLevel struct {
	Rule  Text
	Level Text // error, warning, note or off
}

// Exception is a finding the studio has looked at and accepts.
type Exception struct {
	Rule    Text
	Plan    Text // plan id
	Pointer Text // JSON pointer into the plan; empty for anywhere in it
	Reason  Text
	Until   Date // the last day on which it holds; the zero Date for good
	UntilAt source.Range
	At      source.Range
}

// Defaults are what a plan need not say. They depend on the plan's unit.
type Defaults struct {
	UsableWidth      measure.Length // 40 in, the careful figure for 42-44 in fabric; 100 cm. Common practice, no source
	SquaringUp       measure.Length // 1 in; 3 cm
	Grid             measure.Length // 1/8 yd; 10 cm
	Cushion          measure.Length // none
	CutAllowance     measure.Length // none
	Overhang         measure.Length // 4 in; 10 cm
	BackingSeam      measure.Length // 1/2 in; 1.25 cm
	BindingAllowance measure.Length // 10 in; 25 cm
	FinishedRounding measure.Length // 1/4 in; 0.5 cm
	RulerGrid        measure.Length // 1/8 in; 1 mm
	TrimGrid         measure.Length // of cuts whose unit is trimmed afterwards: the ruler grid where a project states one, else 1/8 in; 0.5 cm. Common practice, no source
	UsefulOffcut     measure.Length // 2 in; 5 cm. Common practice, no source
}

// DefaultsFor are the defaults of plans in a unit.
func DefaultsFor(u measure.Unit) Defaults {
	if u == measure.Cm {
		return Defaults{
			UsableWidth:      100 * measure.Centimetre,
			SquaringUp:       3 * measure.Centimetre,
			Grid:             10 * measure.Centimetre,
			Overhang:         10 * measure.Centimetre,
			BackingSeam:      measure.Centimetre * 5 / 4,
			BindingAllowance: 25 * measure.Centimetre,
			FinishedRounding: measure.Centimetre / 2,
			RulerGrid:        measure.Millimetre,
			TrimGrid:         measure.Centimetre / 2,
			UsefulOffcut:     5 * measure.Centimetre,
		}
	}
	return Defaults{
		UsableWidth:      40 * measure.Inch,
		SquaringUp:       measure.Inch,
		Grid:             measure.Yard / 8,
		Overhang:         4 * measure.Inch,
		BackingSeam:      measure.Inch / 2,
		BindingAllowance: 10 * measure.Inch,
		FinishedRounding: measure.Inch / 4,
		RulerGrid:        measure.Inch / 8,
		TrimGrid:         measure.Inch / 8,
		UsefulOffcut:     2 * measure.Inch,
	}
}
