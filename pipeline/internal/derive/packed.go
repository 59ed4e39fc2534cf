package derive

import (
	"strings"

	"slices"

	"yardproof/pipeline/internal/cutting"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Solver finds short cutting layouts. Equal problems must get equal answers.
type Solver interface {
	// Strips looks for the shortest strips or, where settle is positive, only
	// whether so much is enough; see [cutting.Limits].
	Strips(p cutting.Problem, settle measure.Length) (cutting.Result, error)
	Sheets(cutting.SheetProblem) (cutting.SheetResult, error)
	// Stacked looks for more rounds of cuts that save a step; see [cutting.SolveStacked].
	Stacked(p cutting.Problem, r cutting.Result, step, ruler measure.Length) (cutting.Layout, bool)
	// Straight is what no straight cutting goes below; see [cutting.StraightBound].
	Straight(p cutting.Problem) measure.Length
	// Stop tells that nobody waits for an answer any more.
	Stop() bool
	Lengths(cutting.LengthProblem) (cutting.LengthResult, error)
}

// direct solves every problem anew.
type direct struct{}

func (direct) Strips(p cutting.Problem, settle measure.Length) (cutting.Result, error) {
	return cutting.Solve(p, cutting.Limits{Settle: settle})
}

func (direct) Lengths(p cutting.LengthProblem) (cutting.LengthResult, error) {
	return cutting.SolveLengths(p, cutting.Limits{})
}

func (direct) Stacked(p cutting.Problem, r cutting.Result, step, ruler measure.Length) (cutting.Layout, bool) {
	l, _, ok := cutting.SolveStacked(p, r, step, ruler, cutting.Limits{})
	return l, ok
}

func (direct) Sheets(p cutting.SheetProblem) (cutting.SheetResult, error) {
	return cutting.SolveSheets(p, cutting.Limits{})
}

func (direct) Straight(p cutting.Problem) measure.Length {
	bound, _, _ := cutting.StraightBound(p, cutting.Limits{})
	return bound
}

func (direct) Stop() bool { return false }

// Packed is the shortest layout found for a fabric, and what is known of
// shorter ones.
type Packed struct {
	cutting.Result
	Amount
	// Least is a length that no layout of strips cut across and then into pieces
	// goes below, squaring up not counted: the proved shortest, when the result is
	// proved. What may be cut from cloth of another shape than is laid out counts
	// in it by its area alone, and so does a backing that shares the fabric, whose
	// panels leave cloth beside them. Floor is that before shrinkage.
	Least, Floor measure.Length
}

// Solve solves every cutting of the size that a cut list may show.
func (s *Size) Solve() {
	for _, f := range s.Fabrics {
		switch {
		case f.solver.Stop() || f.Err != nil || !f.Used() || !s.SureOfCloth(f):
		case f.Form == plan.Yardage:
			f.Stacked()
		default:
			f.PackedSheets()
		}
	}
}

// Packed solves the fabric's cutting, once. It must only be asked of yardage
// without an error.
func (f *Fabric) Packed() *Packed {
	if f.packed != nil {
		return f.packed
	}
	r, err := f.solver.Strips(f.problem(), 0)
	if err != nil { // the plain method would have said so first
		r = cutting.Result{Layout: f.Plain, Length: f.Plain.Length}
	}
	if ask := f.printedStrips(); err == nil && !f.Loose() && r.Certificate != nil && r.Bound <= ask && ask < r.Length {
		r = f.settle(r, ask)
	}
	least := f.leastStrips(r.Bound)
	f.packed = &Packed{Result: r, Amount: f.AmountOf(r.Length), Least: least, Floor: unshrunk(least, f.ShrinkLength)}
	return f.packed
}

// leastStrips is the bound on what must be cut as it is laid out, or the bound
// that holds for every way of cutting where that is more.
func (f *Fabric) leastStrips(strips measure.Length) measure.Length {
	if f.Loose() {
		strips = 0
		if r, err := f.solver.Strips(f.problemOf(Need.fixedShape), 0); err == nil {
			strips = r.Bound
		}
	}
	return max(f.Least.net, strips)
}

// Straight is a length of strips that no straight cutting of what is laid out goes
// below, stacked or in any other number of rounds: no less than the area takes. In
// ticks, squaring up not counted.
func (f *Fabric) Straight() measure.Length { return f.solver.Straight(f.problem()) }

// StraightFloor is a length of cloth, before shrinkage, that no straight cutting goes
// below. What may be cut in another shape than is laid out counts by its area alone.
func (f *Fabric) StraightFloor() measure.Length {
	want := func(Need) bool { return true }
	if f.Loose() {
		want = Need.fixedShape
	}
	return unshrunk(max(f.Least.net, f.solver.Straight(f.problemOf(want))), f.ShrinkLength)
}

// Loose reports whether something is laid out in a shape that it need not be cut
// in.
func (f *Fabric) Loose() bool {
	return slices.ContainsFunc(f.Needs, func(n Need) bool { return n.Free && n.Count > 0 })
}

// printedStrips is the length of strips that the printed length leaves after
// shrinkage, the backing's panels and squaring up, rounded down.
func (f *Fabric) printedStrips() measure.Length {
	return shrunk(f.printed, f.ShrinkLength) - f.Panels - f.SquaringUp.Length
}

// settle works once more on a gap in which the printed length lies, with that
// one question, and keeps the better layout and the better bound.
func (f *Fabric) settle(r cutting.Result, ask measure.Length) cutting.Result {
	again, err := f.solver.Strips(f.problem(), ask)
	if err != nil {
		return r
	}
	best := r
	if again.Length < r.Length {
		best = again
	}
	if best.Bound = max(r.Bound, again.Bound); again.Bound > r.Bound {
		best.Certificate = again.Certificate
	} else {
		best.Certificate = r.Certificate
	}
	if best.Bound == best.Length {
		best.Status = cutting.Proved
	}
	best.Spent.Short = again.Spent.Short // of the question that decides
	return best
}

// CanBeCut reports whether a layout is known that a length is enough for, by the
// method of the pattern's instructions or packed. It solves no more than that one
// question.
func (f *Fabric) CanBeCut(length measure.Length) bool {
	switch {
	case f.Err != nil || length < f.Least.Length:
		return false
	case length >= f.Gross:
		return true
	case f.Cuts == plan.PlainCuts: // whose customer has no other layout
		return false
	case f.packed != nil:
		return length >= f.packed.Gross
	}
	strips := shrunk(length, f.ShrinkLength) - f.Panels - f.SquaringUp.Length
	if strips <= 0 {
		return false
	}
	r, err := f.solver.Strips(f.problem(), strips)
	return err == nil && length >= f.AmountOf(r.Length).Gross
}

// Stacked is a layout with more rounds of cuts: columns of pieces stacked in a strip,
// or a panel beside what is cut along the fabric.
type Stacked struct {
	cutting.Layout
	Amount
}

// Panelled reports whether a panel is used beside what is cut along the fabric.
func (s *Stacked) Panelled() bool {
	return slices.ContainsFunc(s.Rows, func(r cutting.Row) bool { return len(r.Panel) > 0 })
}

// Rounds says how the layout is cut otherwise than in strips and pieces from them.
func (s *Stacked) Rounds() string {
	if s.Panelled() {
		return "with panels used beside what is cut along the fabric"
	}
	return "with a third round of cuts"
}

// Stacked is nil where it neither saves a whole step of what is bought over the
// packed layout nor makes the printed length enough. It costs cuts, and nothing
// is proved of it.
func (f *Fabric) Stacked() *Stacked {
	if f.stacked == nil {
		l := f.stack()
		f.stacked = &l
	}
	packed, s := f.Packed(), f.stacked
	if s.Length == 0 || s.Buy >= packed.Buy && (f.printed < s.Gross || f.printed >= packed.Gross) {
		return nil
	}
	return s
}

// stack looks for a stacked layout shorter than the packed one.
func (f *Fabric) stack() Stacked {
	if f.Repeat.Length > 0 { // stacked pieces begin anywhere in the repeat
		return Stacked{}
	}
	packed, step := f.Packed(), f.Grid
	if f.printed > 0 && f.printed < packed.Gross {
		step = measure.Tick // it need not save a step to be enough
	}
	layout, ok := f.solver.Stacked(f.problem(), packed.Result, step, f.ruler)
	if !ok {
		return Stacked{}
	}
	return Stacked{layout, f.AmountOf(layout.Length)}
}

// longestRuler is the longest cut that one of the rulers guides, 0 without any.
func longestRuler(rulers []plan.Ruler) measure.Length {
	longest := measure.Length(0)
	for _, r := range rulers {
		longest = max(longest, r.Length.Length)
	}
	return longest
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
		r = cutting.SheetResult{Layout: f.PlainSheets}
	}
	f.packedSheets = &r
	return f.packedSheets
}

// PackedPacks are the whole packs that the fewest pieces found come to.
func (f *Fabric) PackedPacks() int64 {
	packs, _ := f.PacksOf(f.PackedSheets().Layout.Count)
	return packs
}

// CutList is the title of the sheet that a size's cutting layouts are printed on.
func (s *Size) CutList() string { return strings.TrimSuffix("Layouts "+s.Called(), " the quilt") }

// Zone is where a length that a pattern asks for lies. Each zone stands on a
// proof: a bound, or a layout.
type Zone int

// The zones, from too little to too much.
const (
	Impossible   Zone = iota // below a bound that holds for every way of cutting
	PlainShort               // too little for the plain method, which is all that the pattern prints
	OutOfStrips              // below the proved bound of strips cut across and then into pieces
	Unsettled                // above that bound, but no layout was found that is short enough
	Unsquared                // a layout fits, but nothing is left to straighten the ends
	TightOnBias              // enough only with bias strips cut side by side
	TightStacked             // enough only with the stacked layout
	Tight                    // enough only with the packed layout
	Comfortable              // enough with the layout of the pattern's own instructions
	Generous                 // more than is to be bought
)

// Zone tells where a length of the fabric lies. The packed layout is solved
// only when the length is too short for the pattern's own instructions.
func (f *Fabric) Zone(length measure.Length) Zone {
	switch {
	case length > f.Buy:
		return Generous
	case length >= f.Gross:
		return Comfortable
	case length < f.Least.Length:
		return Impossible
	case f.Cuts == plan.PlainCuts:
		return PlainShort
	}
	p := f.Packed()
	if length >= p.Gross {
		return Tight
	}
	s, b := f.Stacked(), f.BiasCut()
	switch {
	case s != nil && length >= s.Gross:
		return TightStacked
	case b != nil && length >= b.Gross:
		return TightOnBias
	case length >= f.Bare(p.Length), s != nil && length >= f.Bare(s.Length), b != nil && length >= f.Bare(b.Length):
		return Unsquared
	case length < p.Floor:
		return OutOfStrips
	}
	return Unsettled
}

// Straightens is what a length leaves to straighten the ends once it is washed and
// the shortest layout known of what is cut from it is taken off; rounded down to a
// tick, and negative where the layout does not fit.
func (f *Fabric) Straightens(length measure.Length) measure.Length {
	shortest := f.Layout.Length
	if f.Cuts != plan.PlainCuts && len(f.Needs) > 0 {
		shortest = min(shortest, f.Packed().Length)
		if s := f.Stacked(); s != nil {
			shortest = min(shortest, s.Length)
		}
		if b := f.BiasCut(); b != nil {
			shortest = min(shortest, b.Length)
		}
	}
	return shrunk(length, f.ShrinkLength) - shortest - f.Panels
}

// printedLength is what a size prints of a fabric, 0 where nothing.
func printedLength(of *plan.Size, role string) measure.Length {
	if of.Printed == nil {
		return 0
	}
	for _, said := range of.Printed.Fabric {
		if said.Of.Text == role {
			return said.Length.Length
		}
	}
	return 0
}
