package plan

import (
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// Mosaic is shapes and other parts sewn together as the pattern draws them. How
// they fit is not known, only how many there are and what they cover.
type Mosaic struct {
	Pieces   []MosaicPiece
	Finished [2]Length // width and height
	Trimmed  bool      // pieces reach over the edges and are trimmed off there
	At       source.Range
}

// MosaicPiece is how many of a part go into one mosaic.
type MosaicPiece struct {
	Part  Text
	Count Count
}

// Ingredients implements Operation.
func (o Mosaic) Ingredients() []Ingredient {
	var in []Ingredient
	for _, p := range o.Pieces {
		in = append(in, Ingredient{p.Part, false})
	}
	return in
}

// Make implements Operation.
func (o Mosaic) Make(m Maker) { m.Mosaic(o) }

func (r *reader) mosaic(n *jsontree.Node) Operation {
	m := Mosaic{Finished: r.pair("finished", n.Get("finished")), Trimmed: word(n.Get("edges")) == "trimmed", At: n.Range}
	for _, p := range members(n.Get("pieces")) {
		m.Pieces = append(m.Pieces, MosaicPiece{Part: Text{p.Key, p.KeyRange}, Count: count(p.Value)})
	}
	return m
}
