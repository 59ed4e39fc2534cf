package plan

import (
	"math/big"

	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// Shape is triangles of 60 degrees cut side by side from strips.
type Shape struct {
	Fabric   Text
	Half     bool   // the right-angled half that ends a row
	Finished Length // height of the triangle
	Blunt    bool   // tips cut off at the seam allowance; otherwise they reach through it
	At       source.Range
}

// Template is a piece cut round a template. Its outline is not known: only
// the box that it is cut from is counted.
type Template struct {
	Fabric   Text
	Box      [2]Length // width and height
	Area     *big.Rat  // in square units of the plan; nil when it is not given
	AreaAt   source.Range
	Grain    Grain
	Finished [2]Length // that it fills in its block; absent when that is its box, seam allowances included
}

// AreaIn is the area in square ticks; zero when it is not given.
func (o Template) AreaIn(u measure.Unit) measure.Surd {
	if o.Area == nil {
		return measure.Surd{}
	}
	one := measure.Inch
	if u == measure.Cm {
		one = measure.Centimetre
	}
	return measure.FromRat(o.Area).Mul(measure.Area(one.Surd(), one.Surd()))
}

// Grain is how the box of a template lies on the fabric.
type Grain int

// The ways to lie.
const (
	AnyGrain    Grain = iota
	GrainAlong        // its height along the selvages
	GrainAcross       // its height across them
	GrainBias         // its sides at 45 degrees to them
)

// String is the word the plan uses; a template without one has none there.
func (g Grain) String() string { return [...]string{"any", "along", "across", "bias"}[g] }

// Ingredients implements Operation.
func (o Shape) Ingredients() []Ingredient { return []Ingredient{{o.Fabric, true}} }

// Ingredients implements Operation.
func (o Template) Ingredients() []Ingredient { return []Ingredient{{o.Fabric, true}} }

// shape is a triangle; the other shapes are refused by name.
func (r *reader) shape(m jsontree.Member) Operation {
	n := m.Value
	kind := n.Get("kind")
	s := Shape{
		At: n.Range, Fabric: text(n.Get("fabric")), Half: word(kind) == "half triangle 60",
		Finished: r.length("finished", n.Get("finished"), positive), Blunt: word(n.Get("tips")) == "blunted",
	}
	switch word(kind) {
	case "hexagon", "diamond 60", "diamond 45":
		r.later(kind.Range, "how hexagons and diamonds are set together is", "sew the block from triangles, or give each piece as a template")
		return NotDerived{Name: Text{m.Key, m.KeyRange}}
	}
	return s
}

func (r *reader) template(n *jsontree.Node) Operation {
	t := Template{
		Fabric: text(n.Get("fabric")), Box: r.pair("box", n.Get("box")), Finished: r.pair("finished", n.Get("finished")),
		Grain: pick(word(n.Get("grain")), AnyGrain, GrainAlong, GrainAcross, GrainBias),
	}
	if area := n.Get("area"); area != nil && area.Kind == jsontree.Number {
		if x, ok := new(big.Rat).SetString(area.Text); ok {
			t.Area, t.AreaAt = x, area.Range
		}
	}
	return t
}
