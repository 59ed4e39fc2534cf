package plan

import (
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// Layout is how the blocks become the quilt top.
type Layout struct {
	Setting
	Borders []Border // from the inside out
	At      source.Range
}

// Joins is how strips are joined end to end.
type Joins int

// The two joins.
const (
	Diagonal Joins = iota // each join costs a strip width of length
	Straight              // each join costs two seam allowances
)

// String is the word the plan uses.
func (j Joins) String() string { return [...]string{"diagonal", "straight"}[j] }

// Finish is what turns a top into a quilt.
type Finish struct {
	Backing *Backing
	Batting *Batting
	Binding *Binding
	Sleeve  *Sleeve
	Label   *Label
	At      source.Range
}

// Direction is which way the backing's panels run.
type Direction int

// The ways a backing's panels may run.
const (
	Either     Direction = iota // whichever needs less fabric
	Lengthwise                  // panels run along the quilt's length: vertical seams
	Crosswise                   // panels run across the quilt: horizontal seams
)

// String is the word the plan uses.
func (d Direction) String() string { return [...]string{"either", "lengthwise", "crosswise"}[d] }

// Backing is the back of the quilt, of one or more panels of usable width.
type Backing struct {
	Fabric   Text
	Overhang Length // beyond the top on every side
	Seam     Length // allowance of the panels' seams
	Panels   Direction
	At       source.Range
}

// Batting is the layer between.
type Batting struct {
	Overhang Length
	Package  [2]Length // width and length of the packaged sheet; absent when cut to need
	Roll     Length    // width of the batting off the roll; absent when not sold so
	Grid     measure.Length
	At       source.Range
}

// Binding is the strip sewn round the quilt's edge.
type Binding struct {
	Kind      BindingKind
	Square    Length // side of the square a bias binding is cut from; absent when it is to be derived
	Single    bool   // folded single; otherwise double
	Finished  Length // width on the front, and depth of its seam; the plan's seam allowance when not said
	Curved    bool   // the quilt's edge has curves
	CurvedAt  source.Range
	Fabric    Text
	Cut       Length // width of the cut strip
	Joins     Joins
	Allowance Length // added to the way round for corners and the last join
	At        source.Range
}
