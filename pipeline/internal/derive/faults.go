package derive

import (
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// Faulty is an operation that knows of faults of its own.
type Faulty interface {
	Faults() []Fault
}

// Fault is something wrong with a part that only its room knows of.
type Fault struct {
	Kind          FaultKind
	At            source.Range
	Message, Hint say.Sentence
	Root          bool // what its part's size decides may follow from it
	Slight        bool // too little to be more than noted
	Related       []Place
}

// Place is a place of the plan, and what stands there.
type Place struct {
	At   source.Range
	Says string
}

// FaultKind is the name of the rule that a fault breaks.
type FaultKind string

// The kinds of faults.
const (
	ChainJoins       FaultKind = "piecing/chain-joins"
	CornersOverlap   FaultKind = "piecing/corners-overlap"
	GeeseShape       FaultKind = "piecing/geese-shape"
	MosaicArea       FaultKind = "piecing/mosaic-area"
	NoSuchSeam       FaultKind = "piecing/no-such-seam"
	RecutPieces      FaultKind = "piecing/recut-pieces"
	ShapeStrip       FaultKind = "piecing/shape-strip"
	SquaresExchanged FaultKind = "piecing/squares-exchanged"
	TemplateArea     FaultKind = "piecing/template-area"
	TipOffTube       FaultKind = "piecing/tip-off-tube"
	TriangleSizes    FaultKind = "piecing/triangle-sizes"
	TubeWidths       FaultKind = "piecing/tube-widths"
)

// FaultKinds lists the kinds, by name.
func FaultKinds() []FaultKind {
	return []FaultKind{ChainJoins, CornersOverlap, GeeseShape, MosaicArea, NoSuchSeam, RecutPieces, ShapeStrip, SquaresExchanged, TemplateArea, TipOffTube, TriangleSizes, TubeWidths}
}

// Eased is how much lower a part may be than its neighbours and still be eased in:
// this project's own, after common practice.
const Eased = measure.Inch / 16
