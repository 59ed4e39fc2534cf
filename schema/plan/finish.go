package plan

import "yardproof/schema/source"

// BindingKind is how a binding lies on the fabric it is cut from.
type BindingKind int

// The kinds of binding.
const (
	StraightGrain  BindingKind = iota // strips across the fabric, joined
	ContinuousBias                    // one strip, round and round a square sewn to a tube
	BiasStrips                        // strips cut from a square, joined on the straight grain
)

// String is the word the plan uses.
func (k BindingKind) String() string {
	return [...]string{"straight", "continuous bias", "bias strips"}[k]
}

// Sleeve is a hanging sleeve: a strip folded lengthwise and sewn along the top
// edge of the back.
type Sleeve struct {
	Fabric  Text
	Cut     Length // height, twice the depth with its seams
	Shorter Length // than the finished quilt is wide
	Hem     Length // added to each end of a piece
	Widest  Length // quilt for a sleeve of one piece; absent for no limit
	At      source.Range
}

// Bed is the bed a quilt is for.
type Bed struct {
	Mattress [2]Length // width and length
	Drop     Length    // at both sides and the foot
	Tuck     Length    // at the head
	DrawIn   Percent   // of the quilt's size, by quilting or washing
	Within   Length    // that the quilt may differ
	At       source.Range
}

// Label is a piece of fabric sewn on the back.
type Label struct {
	Fabric        Text
	Width, Height Length // cut size
	At            source.Range
}
