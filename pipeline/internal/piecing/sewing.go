package piecing

import "yardproof/schema/measure"

// Beside sews rectangular work to the right of w with seam s, top edges
// together. Where heights differ the lower edge is trimmed to the smaller.
func (w Patchwork) Beside(right Patchwork, s measure.Length) Patchwork {
	a, b := w.Size(), right.Size()
	height := measure.Min(a.Height, b.Height)
	left := w.CutTo(Rectangle(Point{}, Box{a.Width.Sub(s.Surd()), height}))
	rest := right.CutTo(Rectangle(Point{X: s.Surd()}, Box{b.Width.Sub(s.Surd()), height}))
	rest = rest.Moved(Point{X: a.Width.Sub((2 * s).Surd())})
	size := Box{a.Width.Add(b.Width).Sub((2 * s).Surd()), height}
	return laidOut(size, left, rest)
}

// Below sews rectangular work below w with seam s, left edges together. Where
// widths differ the right edge is trimmed to the smaller.
func (w Patchwork) Below(lower Patchwork, s measure.Length) Patchwork {
	return w.transposed().Beside(lower.transposed(), s).transposed()
}

// transposed is the work mirrored in the diagonal from its top left, so that
// below becomes beside.
func (w Patchwork) transposed() Patchwork {
	return w.each(func(p Polygon) Polygon {
		return p.mirrored(func(q Point) Point { return Point{q.Y, q.X} })
	})
}

// laidOut is a rectangle filled by parts that lie where they belong.
func laidOut(size Box, parts ...Patchwork) Patchwork {
	whole := Patchwork{Outline: Rectangle(Point{}, size)}
	for _, p := range parts {
		whole.Patches = append(whole.Patches, p.Patches...)
	}
	return whole
}

// On sews rectangular work to a side of w with seam s.
func (w Patchwork) On(side Side, other Patchwork, s measure.Length) Patchwork {
	switch side {
	case TopSide:
		return other.Below(w, s)
	case RightSide:
		return w.Beside(other, s)
	case BottomSide:
		return w.Below(other, s)
	}
	return other.Beside(w, s)
}

// Flip sews a square of cut side q on a corner of rectangular work,
// diagonally, trims and turns it back: a triangle of leg q over the corner,
// over whatever was there.
func (w Patchwork) Flip(corner Corner, q measure.Surd, fabric int) Patchwork {
	// Drafted on the top left corner of the work turned to bring it there.
	turned := w.Turned(-int(corner))
	a, b := Point{Y: q}, Point{X: q} // the seam, the corner to its left
	size := turned.Size()
	flipped := turned.each(func(p Polygon) Polygon { return p.cut(a, b) })
	flipped.Outline = turned.Outline
	if over := Rectangle(Point{}, size).cut(b, a); over != nil {
		flipped.Patches = append(flipped.Patches, Patch{fabric, over})
	}
	return flipped.Turned(int(corner))
}

// StripSet is strips of cut width sewn one below the other, raw edge to raw
// edge, fabric i in strip i.
func StripSet(widths []measure.Length, length measure.Surd, s measure.Length) Patchwork {
	var set Patchwork
	for i, w := range widths {
		strip := Plain(Box{length, w.Surd()}, i)
		if i == 0 {
			set = strip
			continue
		}
		set = set.Below(strip, s)
	}
	return set
}
