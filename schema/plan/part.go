package plan

import "yardproof/schema/source"

// Part is one thing that is cut or sewn, made by exactly one operation.
type Part struct {
	Name      Text // its key
	Operation Operation
	Seam      *Seam // where this part is sewn with a seam of its own
	Press     Text  // how the pattern says to press it
	Note      Text  // a remark for whoever edits the plan
	At        source.Range

	OperationAt source.Range // what the operation's key holds
}

// Operation is how a part is made: one of the types below.
type Operation interface {
	// Ingredients are the parts and fabrics the operation names, in order.
	Ingredients() []Ingredient
	// Make hands the operation to the maker's method for it.
	Make(m Maker)
}

// Ingredient is a mention of a part or fabric inside an operation.
type Ingredient struct {
	Name   Text
	Fabric bool // it must be a fabric; otherwise it must be a part
}

// Halving is how a cut square becomes triangles.
type Halving int

// The ways to halve a square.
const (
	Whole    Halving = iota
	CutOnce          // once diagonally: 2 triangles, long side on the bias
	CutTwice         // twice diagonally: 4 triangles, short sides on the bias
)

// String is the word the plan uses; a whole piece has none there.
func (h Halving) String() string { return [...]string{"whole", "once", "twice"}[h] }

// Triangles is how many come from one square; 1 for one that stays whole.
func (h Halving) Triangles() int64 { return [...]int64{1, 2, 4}[h] }

// Each is how many pieces are used of one that is cut: 1, or triangles.
func (o Cut) Each() int64 {
	if n := int64(o.Used.N); n > 0 && o.Halving != Whole {
		return n
	}
	return o.Halving.Triangles()
}

// Cut is a rectangle cut from fabric, or a square cut diagonally.
type Cut struct {
	Fabric  Text
	Width   Length // cut size, seam allowance included
	Height  Length // lies along the fabric's length when the print has a direction
	Halving Halving
	Used    Count // triangles that are used of each square; absent where all are
	Alike   Count // so many come from one print of an assorted precut; absent when they need not match
}

// WholeStrip is a strip cut right across the fabric and used whole.
type WholeStrip struct {
	Fabric Text
	Width  Length // the cut width; a precut strip's own when absent
}

// StripSet is strips sewn side by side along their length.
type StripSet struct {
	Strips  []Strip
	Of      Text   // the set of another part that segments are cut from, in place of strips
	Segment Length // cut width of the segments it is cut into; absent when used whole
	Angle   Count  // of the cuts to the strips, 45 or 60 degrees; absent when they are square
}

// Strip is one strip of a set.
type Strip struct {
	Fabric Text
	Width  Length // cut width; a precut strip's own when absent
}

// Tube is two strip sets sewn together along both long edges and cut into
// squares on the bias.
type Tube struct {
	Sets   [2]Text
	Joined Count // strip sets joined end to end into the length of each side; absent for one
	Tip    Tip
	Ends   Ends
	Trim   Length // side the opened square is trimmed to; absent when it is not trimmed
	DownTo Length // or the grid to whose next line below it is trimmed
	At     source.Range
	TipAt  source.Range
	EndsAt source.Range // where the plan states the end rule; empty when it is the default
	// EndForEnd tells that the second set is turned, so that its last strip lies
	// along the near edge.
	EndForEnd bool
}

// SetsASide is how many strip sets are joined end to end into the length of each
// side of a tube, 1 where none are joined.
func (o Tube) SetsASide() int64 { return max(1, int64(o.Joined.N)) }

// Tip is where the corner of the ruler is laid.
type Tip struct {
	RawEdge bool   // on the far raw edge; otherwise on the far seam
	Beyond  Length // or so far beyond the far seam, where the plan says a length
}

// Ends is what the first and last triangle of a tube need.
type Ends int

// The end rules.
const (
	CornersOnly Ends = iota // the outer dog ears may be lost, they are trimmed anyway
	EarsKept                // whole triangles down to the near raw edge
)

// String is the word the plan uses.
func (e Ends) String() string { return [...]string{"corners only", "ears kept"}[e] }

// HalfSquares is half-square triangle units made from two squares.
type HalfSquares struct {
	Fabrics [2]Text
	Square  Length // cut size of both squares
	AtATime int    // units from one pair: 2, 4 or 8
	Trim    Length // side the unit is trimmed to; absent when it is not trimmed
	DownTo  Length // or the grid to whose next line below it is trimmed
}

// Rows is parts sewn into rows and the rows sewn together.
type Rows struct {
	Rows [][]Cell
}

// Cell is a part at a place of a row or grid.
type Cell struct {
	Part Text
	Turn int // degrees clockwise: 0, 90, 180 or 270
	// Mirror tells that it is a mirror image, left and right exchanged before it
	// is turned.
	Mirror bool
	Kind   SquareKind // which, of a tube's squares
	At     source.Range
}

// Sideways reports whether the turn exchanges width and height.
func (c Cell) Sideways() bool { return c.Turn == 90 || c.Turn == 270 }

// Trim is a part trimmed to size.
type Trim struct {
	Part          Text
	Kind          SquareKind
	Width, Height Length
	DownTo        Length // or the grid to whose next line below either side is trimmed
}

// NotDerived is an operation of the vocabulary that yardproof cannot derive
// yet. The reader has already reported it.
type NotDerived struct {
	Name Text // the operation's key
}

// Ingredients implements Operation.
func (o Cut) Ingredients() []Ingredient { return []Ingredient{{o.Fabric, true}} }

// Make implements Operation.
func (o Cut) Make(m Maker) { m.Cut(o) }

// Ingredients implements Operation.
func (o WholeStrip) Ingredients() []Ingredient { return []Ingredient{{o.Fabric, true}} }

// Make implements Operation.
func (o WholeStrip) Make(m Maker) { m.WholeStrip(o) }

// Ingredients implements Operation.
func (o StripSet) Ingredients() []Ingredient {
	if o.Of.Given() {
		return []Ingredient{{o.Of, false}}
	}
	var in []Ingredient
	for _, s := range o.Strips {
		in = append(in, Ingredient{s.Fabric, true})
	}
	return in
}

// Make implements Operation.
func (o StripSet) Make(m Maker) { m.StripSet(o) }

// Ingredients implements Operation.
func (o Tube) Ingredients() []Ingredient {
	return []Ingredient{{o.Sets[0], false}, {o.Sets[1], false}}
}

// Make implements Operation.
func (o Tube) Make(m Maker) { m.Tube(o) }

// Ingredients implements Operation.
func (o HalfSquares) Ingredients() []Ingredient {
	return []Ingredient{{o.Fabrics[0], true}, {o.Fabrics[1], true}}
}

// Make implements Operation.
func (o HalfSquares) Make(m Maker) { m.HalfSquares(o) }

// Ingredients implements Operation.
func (o Rows) Ingredients() []Ingredient {
	var in []Ingredient
	for _, row := range o.Rows {
		for _, c := range row {
			in = append(in, Ingredient{c.Part, false})
		}
	}
	return in
}

// Make implements Operation.
func (o Rows) Make(m Maker) { m.Rows(o) }

// Ingredients implements Operation.
func (o Trim) Ingredients() []Ingredient { return []Ingredient{{o.Part, false}} }

// Make implements Operation.
func (o Trim) Make(m Maker) { m.Trim(o) }

// Ingredients implements Operation.
func (o NotDerived) Ingredients() []Ingredient { return nil }

// Make implements Operation.
func (o NotDerived) Make(m Maker) { m.NotDerived(o) }

// TriangleSquare is right triangles sewn into a square: two cut once
// diagonally, joined along their long sides, or four cut twice diagonally,
// clockwise from the top.
type TriangleSquare struct {
	Of     []Text
	Trim   Length // side the unit is trimmed to; absent when it is not trimmed
	DownTo Length // or the grid to whose next line below it is trimmed
}

// Ingredients implements Operation.
func (o TriangleSquare) Ingredients() []Ingredient {
	var in []Ingredient
	for _, t := range o.Of {
		in = append(in, Ingredient{t, false})
	}
	return in
}

// Make implements Operation.
func (o TriangleSquare) Make(m Maker) { m.TriangleSquare(o) }
