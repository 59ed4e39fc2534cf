package plan

// Maker is whoever does something of its own for each operation. A recipe
// type hands itself to the method of its name, so that a type that no method
// is there for does not compile, nor does a Maker that lacks one.
type Maker interface {
	Cut(Cut)
	WholeStrip(WholeStrip)
	StripSet(StripSet)
	Tube(Tube)
	HalfSquares(HalfSquares)
	TriangleSquare(TriangleSquare)
	Hourglass(Hourglass)
	ThreePatch(ThreePatch)
	FlyingGeese(FlyingGeese)
	FlipCorners(FlipCorners)
	SquareInSquare(SquareInSquare)
	Logs(Logs)
	Shape(Shape)
	Template(Template)
	Mosaic(Mosaic)
	Rows(Rows)
	Trim(Trim)
	Bordered(Bordered)
	Setting(Setting)
	Recut(Recut)
	Loop(Loop)
	Chain(Chain)
	NotDerived(NotDerived)
}
