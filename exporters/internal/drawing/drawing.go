package drawing

// Drawing is a picture on paper. Places and sizes are in millimetres, X to the
// right and Y downwards.
type Drawing struct {
	Title  string
	About  string
	Width  float64
	Height float64
	Shapes []Shape // from the back to the front
	Texts  []Text  // before all shapes
}

// Point is a place on the paper.
type Point struct{ X, Y float64 }

// Shape is a polygon, or a line of two points.
type Shape struct {
	Points []Point
	Fill   *Fill // nil where there is only a line
	Stroke float64
	Grey   bool // the stroke is grey, not black
	Dashed bool
}

// Anchor is the part of a text that stands at its place.
type Anchor int

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)

// Text is a line of text whose middle height is at its place.
type Text struct {
	At      Point
	Text    string
	Size    float64 // of an em
	Anchor  Anchor
	Upright bool // turned to be read from the right
	Bold    bool
	Backed  bool // over a hatching: on a white ground
}

// Colour is red, green and blue.
type Colour struct{ R, G, B uint8 }

// Hatch is a kind of lines that a shape is filled with.
type Hatch int

// The hatchings. They run on from shape to shape.
const (
	NoHatch Hatch = iota
	Slash
	Dots
	Backslash
	Cross
	Level
	Vertical
	Grid
)

// Pitch is the distance from one line or dot of a hatching to the next, along
// x and along y.
const Pitch = 2.0

// HatchWidth is the width of a hatching's lines.
const HatchWidth = 0.2

// DotRadius is the radius of a hatching's dots.
const DotRadius = 0.32

// Fill is how a shape is filled.
type Fill struct {
	Ground Colour
	Hatch  Hatch
	Ink    Colour // of the hatching
}

// Lines are the lines of a hatching through one tile of Pitch by Pitch; they
// run on over its corners, so that tile fits to tile. Dots has none.
func (h Hatch) Lines() [][2]Point {
	const p, half = Pitch, Pitch / 2
	slash := [][2]Point{{{-half, half}, {half, -half}}, {{-half, p + half}, {p + half, -half}}, {{half, p + half}, {p + half, half}}}
	backslash := [][2]Point{{{half, -half}, {p + half, half}}, {{-half, -half}, {p + half, p + half}}, {{-half, half}, {half, p + half}}}
	level := [][2]Point{{{0, half}, {p, half}}}
	vertical := [][2]Point{{{half, 0}, {half, p}}}
	switch h {
	case Slash:
		return slash
	case Backslash:
		return backslash
	case Cross:
		return append(slash, backslash...)
	case Level:
		return level
	case Vertical:
		return vertical
	case Grid:
		return append(level, vertical...)
	}
	return nil
}
