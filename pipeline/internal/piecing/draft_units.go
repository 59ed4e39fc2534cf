package piecing

import "yardproof/schema/measure"

// square is a box with equal sides.
func square(side measure.Surd) Box { return Box{side, side} }

// DraftHalfSquare is a half-square unit of unfinished side u: fabric 0 above
// the diagonal from the bottom left, fabric 1 below it.
func DraftHalfSquare(u measure.Surd) Patchwork {
	outline := Rectangle(Point{}, square(u))
	low, high := outline[3], outline[1]
	return Patchwork{outline, []Patch{{0, outline.cut(high, low)}, {1, outline.cut(low, high)}}}
}

// DraftQuarterSquare is a quarter-square unit of unfinished side u: fabrics 0
// to 3 clockwise from the top. An hourglass has 0, 1, 0, 1 (InFabrics).
func DraftQuarterSquare(u measure.Surd) Patchwork {
	w := Patchwork{Outline: Rectangle(Point{}, square(u))}
	middle := Point{u.DivInt(2), u.DivInt(2)}
	for i, corner := range w.Outline {
		w.Patches = append(w.Patches, Patch{i, Polygon{corner, w.Outline[(i+1)%4], middle}})
	}
	return w
}

// DraftGoose is a flying goose of unfinished size, pointing up: fabric 0 the
// goose, 1 the sky on the left, 2 on the right. Within the top allowance the
// sky sewn last lies over the other.
func DraftGoose(u Box) Patchwork {
	return Plain(u, 0).Flip(TopLeft, u.Height, 1).Flip(TopRight, u.Height, 2)
}

// DraftSquareInSquare is a square in a square of unfinished side u whose
// centre was cut as a square of side centre, and finishes centre - 2s: fabric
// 0 the centre, 1 to 4 the corners clockwise from the top left. Opposite
// corners are sewn first, the other two over them.
func DraftSquareInSquare(u, centre measure.Surd, s measure.Length) Patchwork {
	leg := u.Sub(centre.Sub((2 * s).Surd()).Div(measure.Root2()))
	w := Plain(square(u), 0)
	for _, c := range []Corner{TopLeft, BottomRight, TopRight, BottomLeft} {
		w = w.Flip(c, leg, int(c)+1)
	}
	return w
}

// DraftLogs is a log block with its seam allowance: fabric 0 the centre, then
// 1, 2, ... in the order of List.
func DraftLogs(l Logs, s measure.Length) Patchwork {
	w := Plain(Box{plus2s(l.Centre.Width, s), plus2s(l.Centre.Height, s)}, 0)
	for i, log := range l.List(s) {
		b := Box{log.Cut, log.CutWidth.Surd()}
		if log.Side%2 == 1 {
			b = b.Turned()
		}
		w = w.On(log.Side, Plain(b, i+1), s)
	}
	return w
}

// DraftTubeSquare is the square that opens from a tube: upper and lower are its
// two strip sets, each lying with the raw edge of the opening seam at the top
// and at least 2h long (StripSet; turned by two quarters for a square that
// opens from the other side of the tube). Upper shows above the diagonal from
// the bottom left, along which the seam runs, and the strips lie along it.
func DraftTubeSquare(t Tube, upper, lower Patchwork) Patchwork {
	h := t.Height().Surd()
	left, right := Point{X: h.Neg()}, Point{X: h}
	below := Polygon{left, right, {Y: h}}
	half := func(set Patchwork) Patchwork {
		return set.Moved(Point{h.Neg(), t.Seam.Surd().Neg()}).CutTo(below)
	}
	mirrored := half(upper).each(func(p Polygon) Polygon {
		return p.mirrored(func(q Point) Point { return Point{q.X, q.Y.Neg()} })
	})
	opened := Patchwork{Outline: Polygon{left, {Y: h.Neg()}, right, {Y: h}}}
	opened.Patches = append(mirrored.Patches, half(lower).Patches...)
	return opened.TurnedBy(Degrees45).Turned(-1)
}
