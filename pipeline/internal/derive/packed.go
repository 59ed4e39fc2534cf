package derive

import (
	"yardproof/pipeline/internal/cutting"
	"yardproof/schema/measure"
)

// Solver finds short cutting layouts. Equal problems must get equal answers.
type Solver interface {
	Strips(cutting.Problem) (cutting.Result, error)
	Sheets(cutting.SheetProblem) (cutting.SheetResult, error)
}

// direct solves every problem anew.
type direct struct{}

func (direct) Strips(p cutting.Problem) (cutting.Result, error) {
	return cutting.Solve(p, cutting.Limits{})
}

func (direct) Sheets(p cutting.SheetProblem) (cutting.SheetResult, error) {
	return cutting.SolveSheets(p, cutting.Limits{})
}

// Packed is the shortest layout found for a fabric, and what is known of
// shorter ones.
type Packed struct {
	cutting.Result
	Amount
	// Floor is a length of fabric that no layout of strips cut across and then
	// into pieces goes below, squaring up not counted: the proved shortest, when
	// the result is proved.
	Floor measure.Length
}

// Packed solves the fabric's cutting, once. It must only be asked of yardage
// without an error.
func (f *Fabric) Packed() *Packed {
	if f.packed != nil {
		return f.packed
	}
	r, err := f.solver.Strips(f.problem())
	if err != nil { // the plain method would have said so first
		r = cutting.Result{Layout: f.Plain, Length: f.Plain.Length}
	}
	f.packed = &Packed{Result: r, Amount: f.amount(r.Length), Floor: f.Bare(r.Bound)}
	return f.packed
}

// Stacked is a layout with a third stage, columns of pieces stacked in a strip,
// where that saves a whole step of what is bought over the packed one; ok is
// false where it does not. It costs cuts, and nothing is proved of it.
func (f *Fabric) Stacked(ruler measure.Length) (layout cutting.Layout, amount Amount, ok bool) {
	if f.Repeat.Length > 0 { // stacked pieces begin anywhere in the repeat
		return cutting.Layout{}, Amount{}, false
	}
	packed := f.Packed()
	layout, ok = cutting.SolveStacked(f.problem(), packed.Result, f.Grid, ruler, cutting.Limits{})
	if !ok {
		return cutting.Layout{}, Amount{}, false
	}
	amount = f.amount(layout.Length)
	return layout, amount, amount.Buy < packed.Buy
}

// Offcuts are what a layout of the fabric leaves at the ends of its strips.
// Pieces with a side under least are not counted.
func (f *Fabric) Offcuts(l cutting.Layout, least measure.Length) []cutting.Offcut {
	return cutting.Offcuts(f.problem(), l, least)
}

// PackedSheets solves the cutting of a precut fabric, once.
func (f *Fabric) PackedSheets() *cutting.SheetResult {
	if f.packedSheets != nil {
		return f.packedSheets
	}
	r, err := f.solver.Sheets(f.sheetProblem())
	if err != nil { // the plain method would have said so first
		r = cutting.SheetResult{Layout: f.Sheets}
	}
	f.packedSheets = &r
	return f.packedSheets
}

// PackedPacks are the whole packs that the fewest pieces found come to.
func (f *Fabric) PackedPacks() int64 {
	packs, _ := f.packs(f.PackedSheets().Layout.Count)
	return packs
}

// Zone is where a length that a pattern asks for lies. Each zone stands on a
// proof: a bound, or a layout.
type Zone int

// The zones, from too little to too much.
const (
	Impossible  Zone = iota // below a bound that holds for every way of straight cutting
	OutOfStrips             // below the proved bound of strips cut across and then into pieces
	Unsettled               // above that bound, but no layout was found that is short enough
	Unsquared               // a layout fits, but nothing is left to straighten the ends
	Tight                   // enough only with the packed layout
	Comfortable             // enough with the layout of the pattern's own instructions
	Generous                // more than is to be bought
)

// Zone tells where a length of the fabric lies. The packed layout is solved
// only when the length is too short for the pattern's own instructions.
func (f *Fabric) Zone(length measure.Length) Zone {
	switch {
	case length > f.Buy:
		return Generous
	case length >= f.Gross:
		return Comfortable
	case length < f.Bound:
		return Impossible
	}
	p := f.Packed()
	switch {
	case length >= p.Gross:
		return Tight
	case length >= f.Bare(p.Length):
		return Unsquared
	case length < p.Floor:
		return OutOfStrips
	}
	return Unsettled
}
