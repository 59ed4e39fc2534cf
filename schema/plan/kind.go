package plan

import (
	"slices"

	"yardproof/schema/jsontree"
)

// SquareKind is which of the two kinds of squares of a tube is meant.
type SquareKind int

// The kinds.
const (
	EitherKind SquareKind = iota // the plan does not say
	NearKind                     // opened along the near seam: the sets' first strips lie along the diagonal
	FarKind                      // opened along the far seam: the last strips do
)

// String is the word the plan uses; where it does not say there is none.
func (k SquareKind) String() string { return [...]string{"either", "near", "far"}[k] }

// Carries is the part that the operation takes, of which a square of a tube remains
// one, with the kind that it says.
func (o Trim) Carries() Cell { return Cell{Part: o.Part, Kind: o.Kind, At: o.Part.At} }

// Carries is the part that the operation takes, of which a square of a tube remains
// one, with the kind that it says.
func (o Bordered) Carries() Cell { return Cell{Part: o.Part, Kind: o.Kind, At: o.Part.At} }

// Carries is the part that the operation takes, of which a square of a tube remains
// one, with the kind that it says.
func (o Recut) Carries() Cell { return Cell{Part: o.Part, Kind: o.Kind, At: o.Part.At} }

// Carries is the part that the operation takes, of which a square of a tube remains
// one, with the kind that it says.
func (o FlipCorners) Carries() Cell { return Cell{Part: o.Body, Kind: o.Kind, At: o.Body.At} }

// Places are the parts that stand in it, as the plan writes them.
func (o Trim) Places() []Cell { return []Cell{o.Carries()} }

// Places are the parts that stand in it, as the plan writes them.
func (o Bordered) Places() []Cell { return append([]Cell{o.Carries()}, bordersPlaces(o.Borders)...) }

// Places are the parts that stand in it, as the plan writes them.
func (o Recut) Places() []Cell { return []Cell{o.Carries()} }

// Places are the parts that stand in it, as the plan writes them.
func (o FlipCorners) Places() []Cell { return []Cell{o.Carries()} }

// Places are the parts that stand in it, as the plan writes them.
func (o Rows) Places() []Cell { return slices.Concat(o.Rows...) }

// Places are the parts that stand in it, as the plan writes them.
func (o Setting) Places() []Cell {
	if o.Grid == nil {
		return nil
	}
	return append(slices.Concat(o.Grid.Blocks...), slices.Concat(o.Grid.Between...)...)
}

// Places are the parts of the layout and its borders, as the plan writes them.
func (l *Layout) Places() []Cell { return append(l.Setting.Places(), bordersPlaces(l.Borders)...) }

func bordersPlaces(of []Border) (all []Cell) {
	for i := range of {
		all = append(all, of[i].Unit(), of[i].CornerBlock())
	}
	return all
}

// Unit is the part that a pieced border repeats, as it stands along the top.
func (b *Border) Unit() Cell { return Cell{Part: b.Part, Kind: b.Kind, At: b.Part.At} }

// CornerBlock is the part in the border's corners, as it stands at the top left.
func (b *Border) CornerBlock() Cell {
	return Cell{Part: b.CornerPart, Kind: b.CornerKind, At: b.CornerPart.At}
}

func squareKind(n *jsontree.Node) SquareKind { return squareKindOf(n.Get("kind")) }

func squareKindOf(n *jsontree.Node) SquareKind {
	return pick(word(n), EitherKind, NearKind, FarKind)
}
