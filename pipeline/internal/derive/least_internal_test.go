package derive

import (
	"math/rand"
	"testing"

	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// A cell is one inch each way, divided by its diagonals into four: the quarters
// at its top, right, bottom and left.
type quarter struct{ x, y, at int }

// outline is what a piece covers of a cloth ruled in inches.
type outline []quarter

func (o outline) cell(x, y int, quarters ...int) outline {
	for _, at := range quarters {
		o = append(o, quarter{x, y, at})
	}
	return o
}

func rectangleOf(w, h int) (o outline) {
	for x := range w {
		for y := range h {
			o = o.cell(x, y, 0, 1, 2, 3)
		}
	}
	return o
}

// onceOf is a triangle of a square cut once, its right angle at the lower left.
func onceOf(side int) (o outline) {
	for x := range side {
		for y := range side - x - 1 {
			o = o.cell(x, y, 0, 1, 2, 3)
		}
		o = o.cell(x, side-x-1, 2, 3)
	}
	return o
}

// twiceOf is a triangle of a square cut twice, its long side below; the side is
// even.
func twiceOf(side int) (o outline) {
	for y := range side / 2 {
		o = o.cell(y, y, 2, 1)
		for x := y + 1; x < side-1-y; x++ {
			o = o.cell(x, y, 0, 1, 2, 3)
		}
		o = o.cell(side-1-y, y, 2, 3)
	}
	return o
}

// ell is a template: three cells of a box of four.
func ell() outline { return append(rectangleOf(2, 1), rectangleOf(1, 2)[4:]...) }

func (o outline) extent() (w, h int) {
	for _, q := range o {
		w, h = max(w, q.x+1), max(h, q.y+1)
	}
	return w, h
}

func (o outline) turned() (t outline) {
	_, h := o.extent()
	for _, q := range o {
		t = append(t, quarter{h - 1 - q.y, q.x, (q.at + 3) % 4})
	}
	return t
}

// packs reports whether the pieces go into a cloth of w x l, by trying every place
// in whole inches and every quarter turn.
func packs(pieces []outline, w, l int) bool {
	taken := map[quarter]bool{}
	var put func(left []outline) bool
	put = func(left []outline) bool {
		if len(left) == 0 {
			return true
		}
		o := left[0]
		for range 4 {
			o = o.turned()
			wide, high := o.extent()
			for x := 0; x+wide <= w; x++ {
			place:
				for y := 0; y+high <= l; y++ {
					for _, q := range o {
						if taken[quarter{q.x + x, q.y + y, q.at}] {
							continue place
						}
					}
					set := func(in bool) {
						for _, q := range o {
							taken[quarter{q.x + x, q.y + y, q.at}] = in
						}
					}
					set(true)
					if put(left[1:]) {
						return true
					}
					set(false)
				}
			}
		}
		return false
	}
	return put(pieces)
}

// What no cutting goes below is never more than the shortest cloth that trying
// every place finds, for rectangles, triangles of squares cut once and twice,
// and a template of known area; and it is often that very length, so that it is
// no idle bound.
func TestLeastNeverExceedsTheShortestPacking(t *testing.T) {
	r := rand.New(rand.NewSource(11))
	met := 0
	const rounds = 400
	for range rounds {
		wide := 2 + r.Intn(3)
		f := &Fabric{Fabric: &plan.Fabric{}, Width: measure.Length(wide) * measure.Inch}
		by := plan.Text{Text: "piece"}
		in := func(n int) measure.Length { return measure.Length(n) * measure.Inch }
		var pieces []outline
		for n := 1 + r.Intn(4); n > 0; n-- {
			side := 1 + r.Intn(wide)
			switch r.Intn(4) {
			case 0:
				other := 1 + r.Intn(3)
				f.need(by, in(side), in(other), 1)
				pieces = append(pieces, rectangleOf(side, other))
			case 1:
				f.needTriangles(by, in(side), 1, plan.CutOnce)
				pieces = append(pieces, onceOf(side))
			case 2:
				side = (side + 1) / 2 * 2
				if side > wide {
					side = 2
				}
				f.needTriangles(by, in(side), 1, plan.CutTwice)
				pieces = append(pieces, twiceOf(side))
			default:
				f.needWithin(Need{For: by, Across: in(2), Along: in(2), Count: 1}, measure.Area(in(3).Surd(), in(1).Surd()))
				pieces = append(pieces, ell())
			}
		}
		shortest := 1
		for !packs(pieces, wide, shortest) {
			shortest++
		}
		least := f.least().Length
		if least > in(shortest) {
			t.Fatalf("%d in wide, %+v:\nleast %v, and %d in hold them", wide, f.Needs, least, shortest)
		}
		if least > in(shortest-1) {
			met++
		}
	}
	if met < rounds/2 {
		t.Errorf("the bound meets the shortest packing in only %d of %d", met, rounds)
	}
}

// Triangles that are cut singly share squares: five of a square cut once are
// two and a half squares. With whole squares three would be needed.
func TestLeastCountsTrianglesNotSquares(t *testing.T) {
	f := &Fabric{Fabric: &plan.Fabric{}, Width: 40 * measure.Inch}
	f.needTriangles(plan.Text{Text: "half"}, 8*measure.Inch, 5, plan.CutOnce)
	if n := f.Needs[0].Count; n != 3 {
		t.Errorf("%d squares, want 3", n)
	}
	if want := measure.Rational(160, 1).Mul(measure.Area(measure.Inch.Surd(), measure.Inch.Surd())); !f.least().Area.Equal(want) {
		t.Errorf("area %s, want 160 sq in", measure.FormatArea(f.least().Area, measure.In))
	}
}
