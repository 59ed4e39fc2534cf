package report

import "yardproof/schema/measure"

// Picture is a drawing to scale, without a page: places are in the plan's
// unit, X to the right and Y downwards, and are for drawing only. Every size
// that it says in words comes from an exact value.
type Picture struct {
	ID     string // file-name safe, unique within its plan: "quilt-throw"
	Title  string
	About  string // what it shows, in sentences, for those who cannot see it
	Unit   measure.Unit
	Panels []Panel
	Legend []Key
	Plain  bool // drawn without its title and legend: a small one, beside what says them
}

// Panel is one drawing of a picture. All panels of a picture are to one scale.
type Panel struct {
	Caption    []string // lines below it
	Width      float64  // of what is drawn, from (0, 0)
	Height     float64
	Shapes     []Shape
	Dimensions []Dimension
}

// Key says what a letter and a tone stand for.
type Key struct {
	Letter string
	Name   string
	Tone   int    // fills of one tone look alike, of different tones as different as there are ways to fill
	Colour string // as printed, "#rrggbb"; empty where the plan gives none
}

// ShapeKind is what a shape stands for.
type ShapeKind int

// The kinds of shape.
const (
	Patch    ShapeKind = iota // a piece of fabric, filled by its key
	LeftOver                  // fabric that is not used
	Outline                   // a line round something, not filled
	Seam                      // where a seam will run, not filled
)

// Shape is a convex polygon, clockwise as seen.
type Shape struct {
	Kind   ShapeKind
	Key    int // of a patch: index into the picture's Legend
	Points []Point
	Labels []string // what to write in it, the first that fits; may be empty
}

// Point is a place in a panel.
type Point struct{ X, Y float64 }

// Edge is a side of a panel.
type Edge int

// The edges that sizes stand along.
const (
	Top Edge = iota
	Right
	Bottom
	Left
)

// Dimension is a size along an edge of a panel.
type Dimension struct {
	Edge     Edge
	Tier     int // 0 is nearest to what is drawn
	From, To float64
	Text     string // as the ruler reads it
	Mark     bool   // a mark at To and no line from From: a running length
}
