package cutting

import "yardproof/schema/measure"

// Certificate lets anyone check a bound with integers only. It claims that no
// set of strips, each cut across the cloth and then into pieces, is shorter
// than Claim (in ticks, whole strips included).
//
// The proof is a tree over boxes of strip counts: Z_k is the number of strips
// of height Heights[k] or more, and in a plan shorter than the claim each lies
// between 0 and the claim over its height. A leaf gives integer duals. With
// them every strip of height h_k that fits the cloth is worth no more than
// Scale*h_k/Unit - (Class[0] + ... + Class[k]), where its worth is the sum of
// Item over its pieces; so a plan in the leaf's box is at least
//
//	sum_i count_i*Item[i] + sum_k min(Class[k]*lo_k, Class[k]*up_k)
//
// long, in units of Unit/Scale ticks.
//
// Where heights share too fine a grid they are rounded down in the proof to whole
// multiples of Unit, so that no strip is taller in it than it is.
type Certificate struct {
	Claim   measure.Length
	Whole   measure.Length   // length of the strips used whole, which share nothing
	Heights []measure.Length // of strips, ascending
	Sizes   []Size
	Unit    measure.Length // that heights are rounded down to
	Scale   int64
	Root    *Proof
}

// Size is a kind of piece in a [Certificate]: all pieces of one size.
type Size struct {
	Across   measure.Length
	Along    measure.Length
	Turnable bool
	Count    int
	Together int // in sheets: only multiples of it from one sheet count
}

// ProofKind says how a [Proof] deals with its box.
type ProofKind int

const (
	// ProofEmpty: no strip counts in the box belong to a shorter plan, since
	// Z falls with height and sum (h_k-h_(k-1)) Z_k is the length.
	ProofEmpty ProofKind = iota
	// ProofDuals: Item and Class bound the box from below.
	ProofDuals
	// ProofStrips splits on Z_At <= Value (Low) or more (High).
	ProofStrips
	// ProofFixing: Low need only consider maximal strips whose cost exceeds
	// their worth by no more than the claim exceeds the bound of Item and
	// Class; any other strip makes a plan too long.
	ProofFixing
	// ProofPattern splits on how often one maximal strip is used: of class
	// At with counts Pattern, at most Value times (Low) or more (High); a side
	// that earlier fixing has excluded is called empty.
	ProofPattern
)

// Proof is a node of a certificate's tree.
type Proof struct {
	Kind    ProofKind
	Item    []int64
	Class   []int64
	At      int
	Pattern []int
	Value   int64
	Low     *Proof
	High    *Proof
}

// LengthCertificate proves a bound on cost as [Certificate] does one on length:
// Z_t is the number of lengths cut from Stocks[t] alone, the cost of one is its
// Cost over Unit, and a length of stock is worth no more than Scale times that
// less Class[t]. Stocks that a better one without limit makes idle, or that hold
// nothing, are not listed.
type LengthCertificate struct {
	Claim  int64
	Stocks []Stock // dearer ones later
	Sizes  []Size  // Across is the length wanted
	Unit   int64
	Scale  int64
	Root   *Proof
}
