package plan

import "yardproof/schema/source"

// Hourglass is units of four triangles from two half-square units laid
// together and cut once more.
type Hourglass struct {
	HalfSquares Text    // the half-square part it is made from; empty when it is made from fabrics
	Fabrics     [2]Text // of the squares to begin with, unless a part is named
	Square      Length  // cut size of both squares; absent when it follows from the trim
	Trim        Length  // side the unit is trimmed to; absent when it is not trimmed
	DownTo      Length  // or the grid to whose next line below it is trimmed
}

// FlyingGeese is units of one large triangle, the goose, between two small
// ones, the sky.
type FlyingGeese struct {
	Goose, Sky Text
	Finished   [2]Length // width and height
	AtATime    int       // 1 by stitch and flip, or 4 from one large and four small squares
	KeepBonus  bool      // the corners cut away are sewn into units
	CutGoose   [2]Length // cut width and height; absent where geometry decides
	CutSky     Length    // cut square; absent where geometry decides
	Trim       [2]Length // width and height; absent when it is not trimmed
	DownTo     Length    // or the grid to whose next lines below it is trimmed
	At         source.Range
}

// FlipCorners is a part with squares sewn diagonally over its corners,
// trimmed and turned back.
type FlipCorners struct {
	Body      Text
	Kind      SquareKind   // of the body
	Corners   []FlipCorner // clockwise from the top left
	KeepBonus bool         // the corners cut away are sewn into units
}

// FlipCorner is the square over one corner.
type FlipCorner struct {
	Place  int // 0 to 3, clockwise from the top left
	Fabric Text
	Square Length // cut size
}

// SquareInSquare is a square on point inside another.
type SquareInSquare struct {
	Centre, Corners Text
	Finished        Length
	Flip            bool   // corners stitched and flipped; otherwise squares cut once diagonally
	KeepBonus       bool   // of the flipped corners, what is cut away is sewn into units
	CutCentre       Length // cut square; absent where geometry decides
	CutCorners      Length // cut square; absent where geometry decides
	Trim            Length // absent when it is not trimmed
	DownTo          Length // or the grid to whose next line below it is trimmed
	At              source.Range
}

// Ingredients implements Operation.
func (o Hourglass) Ingredients() []Ingredient {
	if o.HalfSquares.Given() {
		return []Ingredient{{o.HalfSquares, false}}
	}
	return []Ingredient{{o.Fabrics[0], true}, {o.Fabrics[1], true}}
}

// Make implements Operation.
func (o Hourglass) Make(m Maker) { m.Hourglass(o) }

// Ingredients implements Operation.
func (o FlyingGeese) Ingredients() []Ingredient {
	return []Ingredient{{o.Goose, true}, {o.Sky, true}}
}

// Make implements Operation.
func (o FlyingGeese) Make(m Maker) { m.FlyingGeese(o) }

// Ingredients implements Operation.
func (o FlipCorners) Ingredients() []Ingredient {
	in := []Ingredient{{o.Body, false}}
	for _, c := range o.Corners {
		in = append(in, Ingredient{c.Fabric, true})
	}
	return in
}

// Make implements Operation.
func (o FlipCorners) Make(m Maker) { m.FlipCorners(o) }

// Ingredients implements Operation.
func (o SquareInSquare) Ingredients() []Ingredient {
	return []Ingredient{{o.Centre, true}, {o.Corners, true}}
}

// Make implements Operation.
func (o SquareInSquare) Make(m Maker) { m.SquareInSquare(o) }
