package piecing

import (
	"slices"

	"yardproof/schema/measure"
)

// Untold stands for the fabric of a patch of which only the box round it is known,
// as of a piece cut from a template or of a mosaic.
const Untold = -1

// Patch is one piece of fabric as it shows on the right side.
type Patch struct {
	Fabric  int // by its place in the caller's list
	Outline Polygon
}

// Patchwork is sewn work seen from its right side, with what later seams will
// take still showing: an outline and the patches that fill it. Whatever is
// drafted by the functions of this package is sewn and cut with exact
// corners, so that its size is proved by its making.
//
// A Patchwork is a value and is not changed once made. Its outline is a
// rectangle with the top left corner at the origin unless a function says
// otherwise.
type Patchwork struct {
	Outline Polygon
	Patches []Patch
}

// Plain is a rectangle of one fabric.
func Plain(b Box, fabric int) Patchwork {
	return shape(Rectangle(Point{}, b), fabric)
}

func shape(outline Polygon, fabric int) Patchwork {
	return Patchwork{outline, []Patch{{fabric, outline}}}
}

// Size is the least upright rectangle round the work.
func (w Patchwork) Size() Box {
	_, size := w.Outline.Bounds()
	return size
}

// Closed reports whether the patches fill the outline exactly: each lies
// inside it, no two overlap, and their areas add up to its own. A picture that
// does not close is wrong.
func (w Patchwork) Closed() bool {
	var sum measure.Surd
	for _, p := range w.Patches {
		area := p.Outline.Area()
		if area.Sign() <= 0 || !p.Outline.Overlap(w.Outline).Area().Equal(area) {
			return false
		}
		sum = sum.Add(area)
	}
	return len(w.Patches) > 0 && sum.Equal(w.Outline.Area()) && w.apart()
}

// apart reports whether no two patches overlap. Patches are compared from
// left to right, each only with those that begin before it ends and that are
// neither above nor below it.
func (w Patchwork) apart() bool {
	type extent struct {
		Polygon
		low, high Point
	}
	var all []extent
	for _, p := range w.Patches {
		corner, size := p.Outline.Bounds()
		all = append(all, extent{p.Outline, corner, corner.plus(Point{size.Width, size.Height})})
	}
	slices.SortFunc(all, func(a, b extent) int { return a.low.X.Cmp(b.low.X) })
	for i, a := range all {
		for _, b := range all[i+1:] {
			if b.low.X.Cmp(a.high.X) >= 0 {
				break
			}
			level := b.low.Y.Cmp(a.high.Y) < 0 && a.low.Y.Cmp(b.high.Y) < 0
			if level && a.Overlap(b.Polygon) != nil {
				return false
			}
		}
	}
	return true
}

// AreaOf is how much of a fabric shows, in square ticks.
func (w Patchwork) AreaOf(fabric int) measure.Surd {
	var sum measure.Surd
	for _, p := range w.Patches {
		if p.Fabric == fabric {
			sum = sum.Add(p.Outline.Area())
		}
	}
	return sum
}

// LooksLike reports whether two closed works of one outline show the same
// fabric everywhere, however it is pieced.
func (w Patchwork) LooksLike(v Patchwork) bool {
	for _, p := range w.Patches {
		for _, q := range v.Patches {
			if p.Fabric != q.Fabric && p.Outline.Overlap(q.Outline) != nil {
				return false
			}
		}
	}
	return w.Size() == v.Size()
}

// each is the work with every outline changed by f.
func (w Patchwork) each(f func(Polygon) Polygon) Patchwork {
	changed := Patchwork{Outline: f(w.Outline)}
	for _, p := range w.Patches {
		if outline := f(p.Outline); outline != nil {
			changed.Patches = append(changed.Patches, Patch{p.Fabric, outline})
		}
	}
	return changed
}

// Moved is the work shifted.
func (w Patchwork) Moved(by Point) Patchwork {
	return w.each(func(p Polygon) Polygon { return p.each(by.plus) })
}

// AtOrigin is the work shifted so that the rectangle round it begins at the
// origin.
func (w Patchwork) AtOrigin() Patchwork {
	corner, _ := w.Outline.Bounds()
	return w.Moved(Point{}.minus(corner))
}

// Turned is the work turned clockwise by quarter turns, back at the origin.
// Any whole number of them is meant.
func (w Patchwork) Turned(quarters int) Patchwork {
	for range (quarters%4 + 4) % 4 {
		w = w.each(func(p Polygon) Polygon {
			return p.each(func(q Point) Point { return Point{q.Y.Neg(), q.X} })
		})
	}
	return w.AtOrigin()
}

// TurnedBy is the work turned clockwise about the origin by an eighth of a
// turn (45 degrees) or a sixth (60), where it comes to lie. Any other angle
// leaves it.
func (w Patchwork) TurnedBy(a Angle) Patchwork {
	sin := a.sine()
	cos := sin.Mul(a.cotangent())
	if sin.IsZero() {
		return w
	}
	return w.each(func(p Polygon) Polygon {
		return p.each(func(q Point) Point {
			return Point{q.X.Mul(cos).Sub(q.Y.Mul(sin)), q.X.Mul(sin).Add(q.Y.Mul(cos))}
		})
	})
}

// Mirrored is the work with left and right exchanged, at the origin.
func (w Patchwork) Mirrored() Patchwork {
	return w.each(func(p Polygon) Polygon {
		return p.mirrored(func(q Point) Point { return Point{q.X.Neg(), q.Y} })
	}).AtOrigin()
}

// InFabrics is the work with fabric i exchanged for fabrics[i]; those beyond
// the list stay.
func (w Patchwork) InFabrics(fabrics ...int) Patchwork {
	changed := Patchwork{Outline: w.Outline}
	for _, p := range w.Patches {
		if p.Fabric >= 0 && p.Fabric < len(fabrics) {
			p.Fabric = fabrics[p.Fabric]
		}
		changed.Patches = append(changed.Patches, p)
	}
	return changed
}

// CutTo is what a cut along a convex outline leaves, where it lies. The
// outline lies inside the work, or what is outside it is lost.
func (w Patchwork) CutTo(outline Polygon) Patchwork {
	return w.each(outline.within)
}

// within is the part of p inside the outline.
func (outline Polygon) within(p Polygon) Polygon { return p.Overlap(outline) }

// Trimmed is the work trimmed to a size, the same off opposite sides, as a
// unit is trimmed on its diagonal. It may not be smaller already.
func (w Patchwork) Trimmed(to Box) Patchwork {
	corner, size := w.Outline.Bounds()
	off := Point{size.Width.Sub(to.Width).DivInt(2), size.Height.Sub(to.Height).DivInt(2)}
	return w.CutTo(Rectangle(corner.plus(off), to)).AtOrigin()
}

// TrimmedDown is Trimmed; ok is false where the work is smaller already.
func (w Patchwork) TrimmedDown(to Box) (trimmed Patchwork, ok bool) {
	size := w.Size()
	if size.Width.Cmp(to.Width) < 0 || size.Height.Cmp(to.Height) < 0 {
		return w, false
	}
	return w.Trimmed(to), true
}

// Finished is what shows once seams of allowance s are sewn all round, at the
// origin. ok is false as for Inset.
func (w Patchwork) Finished(s measure.Length) (Patchwork, bool) {
	inner, ok := w.Outline.Inset(s)
	if !ok {
		return Patchwork{}, false
	}
	finished := w.CutTo(inner)
	finished.Outline = inner
	return finished.AtOrigin(), true
}

// Split is rectangular work cut into equal pieces, so many across and so many
// down, row by row, each at the origin: Recut with its patches. None for no
// pieces.
func (w Patchwork) Split(across, down int64) [][]Patchwork {
	piece, ok := Recut(w.Size(), across, down)
	if !ok {
		return nil
	}
	var rows [][]Patchwork
	for r := range down {
		var row []Patchwork
		for c := range across {
			corner := Point{piece.Width.MulInt(c), piece.Height.MulInt(r)}
			row = append(row, w.CutTo(Rectangle(corner, piece)).AtOrigin())
		}
		rows = append(rows, row)
	}
	return rows
}
