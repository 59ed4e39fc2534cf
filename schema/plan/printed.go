package plan

import (
	"math/big"

	"yardproof/schema/source"
)

// Printed is what the pattern says, as printed, for one size. Nothing in it
// is used to derive anything: it is only compared.
type Printed struct {
	Finished [2]Length
	Rounding Length // what the printed finished size is rounded to
	Measures []PrintedSize
	Parts    []PrintedCount  // how many of a part are made
	Strips   []PrintedStrips // strips to cut for a part, a border, the binding and the like
	Sets     []PrintedCount  // strip sets to sew, by strip set
	Tubes    []PrintedCount  // tubes to sew, by tube
	PerTube  []PrintedCount  // squares a tube
	PerSet   []PrintedCount  // segments a strip set
	Left     []PrintedCount  // pieces of a precut left over
	Precuts  []PrintedCount  // packs to buy, by fabric
	Fabric   []PrintedLength // length to buy, by fabric
	Setting  []PrintedCount  // sashes, setting triangles and the like, under their names in the plan
	Borders  []PrintedBorder // cut sizes, by border
	Backing  PrintedPair     // size of the pieced backing
	Batting  PrintedPair     // size of the batting to buy
	Thread   []PrintedLength // all thread of a stitch class
	At       source.Range
}

// PrintedCount is a printed whole number about something named.
type PrintedCount struct {
	Of Text
	Count
}

// PrintedStrips is how many strips the pattern says to cut for something, as
// far as it says which: all of them, those of one fabric or width, or so many
// of each fabric.
type PrintedStrips struct {
	Of Text
	Count
	Each   bool   // so many of each fabric
	Fabric Text   // absent where it is not named
	Width  Length // that they are cut; absent where it is not printed
}

// Whole reports whether the count is simply of all strips.
func (s PrintedStrips) Whole() bool { return !s.Each && !s.Fabric.Given() && !s.Width.Given() }

// PrintedLength is a printed length about something named.
type PrintedLength struct {
	Of Text
	Length
}

// PrintedSize is the size, unfinished, that a part should measure.
type PrintedSize struct {
	Of            Text
	Width, Height Length
}

// PrintedBorder is the sizes that a border's strips are cut, as far as they are
// printed.
type PrintedBorder struct {
	Of               Text
	Cut, Sides, Ends Length
}

// PrintedPair is a printed width and length.
type PrintedPair struct{ Width, Height Length }

// Given reports whether the pattern prints the pair.
func (p PrintedPair) Given() bool { return p.Width.Given() }

// Kit is what is sold as a kit and what it costs besides fabric.
type Kit struct {
	Fabrics   []Text // roles that go into the kit
	Excludes  []Text // what the kit's label says is not in it
	Minutes   Count  // of labour a kit; worked out from the cuts when absent
	Allowance Length // that each length is cut longer than what is bought; the project's when absent
	Cut       CutFor
	Things    []Thing   // what goes in besides fabric and pattern
	Label     []Claimed // what the kit's label says is in it
	Packaging Amount
	Pattern   Amount // the printed pattern that goes in
	Fixed     Amount // costs of the whole run: design, photographs, printing plates
	Price     Amount // asked
	Run       Count  // kits planned; the project's when absent
	Margin    Percent
	NeededBy  Date // when the kits have to be packed; the zero Date when the plan does not say
	At        source.Range
}

// CutFor is how much the studio cuts of a kit's fabric.
type CutFor int

// The kinds of kit.
const (
	Lengths CutFor = iota // the lengths; the buyer cuts them up
	Pieces                // every piece
)

// String is the word the plan uses.
func (c CutFor) String() string { return [...]string{"lengths", "pieces"}[c] }

// Thing is what goes into a kit besides fabric and pattern.
type Thing struct {
	Name  Text
	SKU   Text
	Count Count
	Price Amount // of one, where it is not in the price list
	At    source.Range
}

// Claimed is what a kit's label says of one fabric: a length, or packs.
type Claimed struct {
	Of     Text
	Length Length
	Packs  Count
}

// Class is a class in which the pattern is taught.
type Class struct {
	Students Count
	Fee      Amount // a student
	Kits     ClassKits
	Minutes  Count // of teaching: those of the stages where there are any
	Stages   []Stage
	Costs    Amount // of holding it once
	Lend     []Lent
	Bring    []Text
	Before   []Text // what students do beforehand
	Samples  int
	At       source.Range
}

// Stage is a part of a class.
type Stage struct {
	Name    Text
	Minutes Count
}

// ClassKits is how the students of a class come by their fabric.
type ClassKits int

// The ways.
const (
	OwnFabric    ClassKits = iota // they bring it
	KitsIncluded                  // the fee includes a kit
	KitsSold                      // each buys a kit
)

// String is the word the plan uses.
func (k ClassKits) String() string { return [...]string{"own fabric", "included", "sold"}[k] }

// Lent is a tool that the teacher lends.
type Lent struct {
	Name Text
	For  int // students that share one
}

// Amount is a sum of money in the project's currency, exact; nil when absent.
type Amount struct {
	Value *big.Rat
	At    source.Range
}

// Given reports whether the plan says the amount.
func (a Amount) Given() bool { return a.Value != nil }
