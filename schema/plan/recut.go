package plan

import (
	"strconv"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// Recut is a sewn part cut up into equal pieces, which are turned and sewn
// together again.
type Recut struct {
	Part         Text
	Kind         SquareKind
	Across, Down Count
	Turns        []int // degrees clockwise, row by row from the top left; empty when none is turned
	At           source.Range
}

// Turn is how far the piece of a row and column, from 0, is turned.
func (o Recut) Turn(row, column int) int {
	if i := row*o.Across.N + column; i < len(o.Turns) {
		return o.Turns[i]
	}
	return 0
}

// Loop is a strip set whose last strip is sewn to its first, cut across into
// rings, each ring opened at a seam and the opened rings sewn side by side.
type Loop struct {
	Set  Text
	Cut  Length  // cut width of the rings
	Open []Count // the seam at which each is opened: 1 after the first strip, and so on; the last joins the last strip to the first
	At   source.Range
}

// Rings is how many rings go into one part: one where the plan names no seams.
func (o Loop) Rings() int64 { return max(1, int64(len(o.Open))) }

// Chain is strips sewn end to end, and the chain folded in half, sewn along
// its edge and cut at the fold, so many times.
type Chain struct {
	Fabric Text
	Width  Length // cut width; a precut strip's own when absent
	Length Length // that the chain is cut to, before it is folded
	Joins  Joins
	Folds  Count
	At     source.Range
}

// Ingredients implements Operation.
func (o Recut) Ingredients() []Ingredient { return []Ingredient{{o.Part, false}} }

// Make implements Operation.
func (o Recut) Make(m Maker) { m.Recut(o) }

// Ingredients implements Operation.
func (o Loop) Ingredients() []Ingredient { return []Ingredient{{o.Set, false}} }

// Make implements Operation.
func (o Loop) Make(m Maker) { m.Loop(o) }

// Ingredients implements Operation.
func (o Chain) Ingredients() []Ingredient { return []Ingredient{{o.Fabric, true}} }

// Make implements Operation.
func (o Chain) Make(m Maker) { m.Chain(o) }

func (r *reader) recut(n *jsontree.Node) Operation {
	c := Recut{Part: text(n.Get("part")), Kind: squareKind(n), At: n.Range, Across: Count{N: 1}, Down: Count{N: 1}}
	if pieces := items(n.Get("pieces")); len(pieces) == 2 {
		c.Across, c.Down = count(pieces[0]), count(pieces[1])
	}
	turns := n.Get("turns")
	for _, turn := range items(turns) {
		c.Turns = append(c.Turns, count(turn).N)
	}
	if want := c.Across.N * c.Down.N; turns != nil && len(c.Turns) != want {
		r.report(OutOfRange, turns.Range, strconv.Itoa(len(c.Turns))+" turns are given for "+strconv.Itoa(want)+" pieces", "give one turn for each piece, row by row")
	}
	return c
}

func (r *reader) loop(n *jsontree.Node) Operation {
	l := Loop{Set: text(n.Get("set")), Cut: r.length("cut", n.Get("cut"), positive), At: n.Range}
	for _, seam := range items(n.Get("open")) {
		l.Open = append(l.Open, count(seam))
	}
	return l
}

func (r *reader) chain(n *jsontree.Node) Operation {
	c := Chain{
		Fabric: text(n.Get("strips")), Width: r.length("width", n.Get("width"), positive),
		Length: r.length("length", n.Get("length"), positive), Joins: pick(word(n.Get("joins")), Diagonal, Straight),
		Folds: count(n.Get("folds")), At: n.Range,
	}
	if !c.Length.Given() {
		r.report(Missing, n.Range, "the length of the chain is not given", "add \"length\": what the chain is cut to before it is folded")
	}
	return c
}
