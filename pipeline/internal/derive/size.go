package derive

import (
	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// Size is everything derived from one size of a plan.
type Size struct {
	Plan    *plan.Plan
	Of      *plan.Size
	Parts   []*Part // ingredients before what is made of them
	Cycle   []*Part // parts made of themselves, which have no place in that order
	Top     Top
	Backing *Backing
	Batting *Batting
	Binding *Binding
	Sleeve  *Sleeve
	Bed     *Bed
	Thread  *Thread
	Fabrics []*Fabric

	byName   map[string]*Part
	byFabric map[string]*Fabric
	users    map[string][]*Part // the parts that are made of a part
	solver   Solver
	web      web
	most     map[string]int64  // pieces that are taken from one set, tube, loop or strip, by part; see Allowing
	ways     []*Size           // once asked for
	sold     *Size             // in its articles, once asked for
	unsure   map[Quantity]bool // the counts and the cloth that could not be derived all the way
	soldBy   *plan.PriceList
}

// Part finds a derived part by name, nil when there is none.
func (s *Size) Part(name string) *Part { return s.byName[name] }

// Fabric finds a derived fabric by role, nil when there is none.
func (s *Size) Fabric(role string) *Fabric { return s.byFabric[role] }

// Part is one part of the recipe and what was derived of it.
type Part struct {
	*plan.Part
	Room        Operation // its operation, at work on it
	Seam        plan.Seam // the part's own, or the plan's
	Known       bool      // the size could be worked out
	piecing.Box           // unfinished size, when known
	Needed      int64     // how many the layout calls for: the sum of Calls
	Calls       []Call    // who asks for it, the top first, then what is made last
	needed      figure.F  // once it is asked for
	Figures     Figures
	Made        int64  // how many come out of whole strips, sets, tubes and pairs
	Mirrored    int64  // how many of the needed ones are mirror images
	kinds       kinds  // of a tube's squares: which of the needed ones are said to be near or far
	taking      taking // the tubes whose squares in it take turns
	Bias        bool   // its outer edges are on the bias

	// At most one of these is set, by the part's operation.
	Cut      *Cut
	Set      *Set
	Tube     *Tube
	Triangle *Triangle
	Unit     *Unit
	Shape    *Shape
	Recut    *Recut
	Loop     *Loop
	Chain    *Chain
	Mosaic   *Mosaic
	Rows     *piecing.Assembly
	Setting  *Setting
	Borders  []Border
	Subcut   *Subcut // of segments and rings
	Pool     *Pool   // of what is cut from strip sets or loops that other parts are cut from, too
}

// Yield is how many pieces come from one strip, set or tube, and how far its
// length may drift before that number changes.
type Yield struct {
	Told   figure.F       // pieces from one
	Each   int64          // the same, rounded down
	Length measure.Length // usable length there is
	Used   measure.Length // the shortest length that gives Each
	Next   measure.Length // the shortest length that gives one more
	Joined int64          // strips or sets that are joined end to end into that length; 0 where it is one

	lengthFor func(n int64) measure.Length // the shortest length that gives n
}

// newYield is the yield of a length that gives so many pieces.
func newYield(told figure.F, length measure.Length, lengthFor func(n int64) measure.Length) Yield {
	n := told.N()
	return Yield{Told: told, Each: n, Length: length, Used: lengthFor(n), Next: lengthFor(n + 1), lengthFor: lengthFor}
}

// Rest is what is left over of the length.
func (y Yield) Rest() measure.Length { return y.Length - y.Used }

// Slack is how much shorter the strips may be before a piece is lost: what is
// left over, by each of those that are joined, rounded down to a tick.
func (y Yield) Slack() measure.Length { return y.Rest() / measure.Length(max(1, y.Joined)) }

// Cut is a derived piece cut from fabric.
type Cut struct {
	Fabric        *Fabric // nil where there is none of that name
	Width, Height plan.Length
	Halving       plan.Halving
	Squares       int64 // to cut, of one that is halved
}

// Set is a derived strip set.
type Set struct {
	Wide   figure.F       // its width T
	Long   figure.F       // length of its shortest strip, L
	Width  measure.Length // across the strips, raw edge to raw edge
	Length measure.Length // of its shortest strip
	Strips []Strip
	Cut    *Yield         // segments from one set; nil when it is used whole
	Slant  *piecing.Slant // of segments that are cut at an angle
	Of     *Part          // the set that is cut; nil when the strips are the part's own
	Free   bool           // fewer sets might do than were found
	Count  int64          // sets to sew, rounded up; those of a pool stand with its first part
}

// Strip is one strip of a set.
type Strip struct {
	Fabric *Fabric
	Width  measure.Length
	At     plan.Text    // the fabric as the set names it
	Said   source.Range // where the plan says its width; empty of a precut strip's own
}

// Tube is a derived tube.
type Tube struct {
	piecing.Tube
	of     *Part
	Sets   [2]*Part
	Lie    [2][]Strip // each set's strips from the near edge
	Ends   plan.Ends
	EndsAt source.Range // where the plan says how its ends are counted; empty where it does not
	Aside  int64        // sets joined end to end into the length of each side, 1 where none are
	Yield  Yield        // squares from one tube
	High   figure.F     // height of the triangle, h
	Count  int64        // tubes to sew, rounded up
	Kinds  Kinds        // of its squares
	index  int          // among the tubes of the size
}

// Triangle is derived half- or quarter-square units: what the squares give,
// before any trimming.
type Triangle struct {
	Untrimmed measure.Surd   // side as sewn
	Cut       measure.Length // cut size of the squares; the smaller where they differ
	Exact     measure.Surd   // cut size that would give the trimmed size exactly
	AtATime   int            // units from a pair of squares; 0 when sewn from cut triangles
	Quarter   bool           // of four triangles, from squares cut twice
	Pairs     int64          // pairs of squares, rounded up
	Faces     []plan.Text    // fabrics of its triangles; of two, the upper left one first, of four, the top one and on clockwise
}

// roles are the fabrics of the triangles.
func (t *Triangle) roles() []string {
	var roles []string
	for _, f := range t.Faces {
		roles = append(roles, f.Text)
	}
	return roles
}

// Top is the quilt top.
type Top struct {
	Known       bool
	Setting     *Setting         // the middle, without borders
	Blocks      []Block          // which parts stand in the grid, in order of first appearance
	Grid        piecing.Assembly // unfinished, without borders
	Borders     []Border
	piecing.Box // unfinished, with borders
	Finished    piecing.Box
	told        [2]figure.F // its width and length, once they are asked for
}

// Block is a part that stands in the grid itself.
type Block struct {
	Part     *Part
	Count    int64
	Mirrored int64 // of them, as mirror images
	kinds    kinds // of them, said to be near or far squares
}

// Joined is strips joined end to end to a length.
type Joined struct {
	Told   figure.F       // strips
	Need   measure.Surd   // length wanted
	Each   measure.Length // usable length of one strip
	Loss   measure.Length // that each join costs
	Count  int64          // strips, rounded up
	Length measure.Length // that so many strips give
	OK     bool           // false when the strips are shorter than their joins
}

// Backing is the derived backing.
type Backing struct {
	Said *plan.Backing
	piecing.Backing
	Known bool
}

// Need is one thing to be cut from a fabric.
type Need struct {
	For       plan.Text    // the part or border, or "binding", "sleeve" or "label"
	At        source.Range // where the plan says its size, or else what it is for
	Strip     bool         // a strip across the fabric, used whole
	Across    measure.Length
	Along     measure.Length
	Count     int64
	Halving   plan.Halving
	Used      int64          // triangles that are used of each square; 0 where all are
	Alike     int            // of assorted prints: so many come from one
	Fixed     bool           // it may not be turned, whatever the print
	Last      measure.Length // of a joined length: how much of its last strip is used, 0 for all
	First     bool           // cut lengthwise, before anything else
	Within    *measure.Surd  // area of what is wanted from within each, in square ticks; nil where it is the piece itself
	Free      bool           // that might be cut from cloth of another shape
	OnBias    *OnBias        // nil where it is not cut on the bias
	InLengths bool           // cut in lengths from strips as wide as it is high
	Stood     bool           // a log that stands along the fabric for its print's sake
}

// fixedShape reports whether what is wanted is cut in the very shape that is laid
// out.
func (n Need) fixedShape() bool { return !n.Free }

// Turnable reports whether what is cut may lie either way round.
func (f *Fabric) Turnable(n Need) bool {
	return !n.Strip && !n.Fixed && !f.Directional() && !f.Matched()
}

// Matched reports whether the fabric is precut pieces of which the same place of
// the print is cut each time.
func (f *Fabric) Matched() bool { return f.Form == plan.Precut && f.Repeat.Length > 0 }

// Reserved is how much of a precut piece is taken for a height: where the print
// is matched, whole repeats, rounded up, but no more than there is.
func (f *Fabric) Reserved(height measure.Length) measure.Length {
	if there := f.StripWidth().Length; f.Matched() && height <= there {
		return min(measure.CeilTo(height, f.Repeat.Length), there)
	}
	return height
}

// Fabric is one fabric of the size and what it takes.
type Fabric struct {
	*plan.Fabric
	Needs []Need
	// Missing tells that something is cut from it that could not be counted: strips
	// too short to be joined, a backing wider than its panels go.
	Missing bool
	Err     error // a piece fits in no allowed way: *cutting.TooWide or *cutting.Unusable

	// Yardage. Lengths along the fabric.
	Width   measure.Length // usable, after shrinkage
	Layout  cutting.Layout // as the pattern's instructions are: the plain method's or the packed one
	Amount                 // what that layout takes
	width   figure.F       // once it is asked for; see longFigure
	bought  figure.F       // once it is asked for
	Plain   cutting.Layout // the plain method's
	Panels  measure.Length // of the backing, rounded up to a tick
	Least   Least          // below which no straight cutting can go
	packed  *Packed
	stacked *Stacked
	biasCut *BiasCut
	ruler   measure.Length // longest of those named

	line, biasGrid measure.Length // steps of cut sizes, and of what bias strips are cut from
	printed        measure.Length // what the pattern asks for, 0 where it prints nothing

	bare bare

	// Precut.
	Sheets      cutting.SheetLayout // as the pattern's instructions are
	PlainSheets cutting.SheetLayout // the plain method's
	Packs       int64               // rounded up
	Left        int64               // pieces left over

	solver       Solver
	packedSheets *cutting.SheetResult
}

// Used reports whether anything is cut from the fabric.
func (f *Fabric) Used() bool { return len(f.Needs) > 0 || f.Panels > 0 }
