package plan

import (
	"math/big"

	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// Shape is triangles, hexagons or diamonds cut side by side from strips.
type Shape struct {
	Fabric   Text // absent where it is cut from a strip set
	Set      Text // the strip set that triangles are cut from; absent where it is a fabric
	Kind     ShapeKind
	Finished Length // height of a triangle, side of a hexagon or diamond
	Strip    Length // cut width of the strip for hexagons and diamonds; absent where geometry decides
	Blunt    bool   // tips of triangles cut off at the seam allowance; otherwise they reach through it
	At       source.Range
}

// ShapeKind is what is cut from a strip.
type ShapeKind int

// The shapes.
const (
	Triangle60     ShapeKind = iota // equilateral
	HalfTriangle60                  // the right-angled half that ends a row
	Hexagon                         // regular
	Diamond60                       // a rhombus with points of 60 degrees
	Diamond45                       // and one of 45
)

// Triangular reports whether it is a triangle, or half of one, which are sewn into
// rows.
func (k ShapeKind) Triangular() bool { return k <= HalfTriangle60 }

// String is the word the plan uses.
func (k ShapeKind) String() string {
	return [...]string{"triangle 60", "half triangle 60", "hexagon", "diamond 60", "diamond 45"}[k]
}

// Noun is what one is called in a sentence.
func (k ShapeKind) Noun() string {
	return [...]string{"triangle", "half triangle", "hexagon", "diamond", "diamond"}[k]
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
	Applique bool      // sewn on top of other pieces: it covers nothing more
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
func (o Shape) Ingredients() []Ingredient {
	if o.Set.Given() {
		return []Ingredient{{o.Set, false}}
	}
	return []Ingredient{{o.Fabric, true}}
}

// Make implements Operation.
func (o Shape) Make(m Maker) { m.Shape(o) }

// Ingredients implements Operation.
func (o Template) Ingredients() []Ingredient { return []Ingredient{{o.Fabric, true}} }

// Make implements Operation.
func (o Template) Make(m Maker) { m.Template(o) }

func (r *reader) shape(n *jsontree.Node) Operation {
	s := Shape{
		At: n.Range, Fabric: text(n.Get("fabric")), Set: text(n.Get("set")), Finished: r.length("finished", n.Get("finished"), positive),
		Kind:  pick(word(n.Get("kind")), Triangle60, HalfTriangle60, Hexagon, Diamond60, Diamond45),
		Strip: r.length("strip", n.Get("strip"), positive), Blunt: word(n.Get("tips")) == "blunted",
	}
	if s.Set.Given() && s.Kind != Triangle60 {
		r.report(OutOfRange, s.Set.At, "only whole triangles of 60 degrees are cut from a strip set", "cut it from a fabric, or make the shape a triangle")
	}
	if s.Strip.Given() && s.Kind.Triangular() {
		r.report(OutOfRange, s.Strip.At, "the strip of a triangle follows from its height and its tips", "remove \"strip\"")
	}
	return s
}

func (r *reader) template(n *jsontree.Node) Operation {
	t := Template{
		Fabric: text(n.Get("fabric")), Box: r.pair("box", n.Get("box")), Finished: r.pair("finished", n.Get("finished")),
		Grain:    pick(word(n.Get("grain")), AnyGrain, GrainAlong, GrainAcross, GrainBias),
		Applique: yes(n.Get("applique")),
	}
	if area := n.Get("area"); area != nil && area.Kind == jsontree.Number {
		if x, ok := new(big.Rat).SetString(area.Text); ok {
			t.Area, t.AreaAt = x, area.Range
		}
	}
	return t
}
