package cutting

import (
	"cmp"
	"slices"

	"yardproof/schema/measure"
)

// Offcut is a rectangle left at the end of a strip, so many of one size.
type Offcut struct {
	Width  measure.Length
	Height measure.Length
	Count  int
}

// Offcuts lists what a layout leaves at the ends of its strips, tallest first,
// and of the panels beside lengthwise pieces, where neither side is less than
// least. It does not count what is trimmed from pieces lower than their strip.
func Offcuts(p Problem, l Layout, least measure.Length) []Offcut {
	var all []Offcut
	add := func(width, height measure.Length, count int) {
		if width > 0 && width >= least && height > 0 && height >= least {
			all = append(all, Offcut{width, height, count})
		}
	}
	for _, r := range l.Rows {
		left, below := p.Cloth.Width-r.used(p.Pieces), r.Height
		for _, q := range r.Panel {
			add(left-q.used(p.Pieces), q.Height, q.Repeat)
			below -= q.Height * measure.Length(q.Repeat)
		}
		if r.Strip < 0 {
			add(left, below, r.Repeat)
		}
	}
	slices.SortFunc(all, func(a, b Offcut) int {
		return cmp.Or(cmp.Compare(b.Height, a.Height), cmp.Compare(b.Width, a.Width))
	})
	var out []Offcut
	for _, o := range all {
		if n := len(out); n > 0 && out[n-1].Width == o.Width && out[n-1].Height == o.Height {
			out[n-1].Count += o.Count
			continue
		}
		out = append(out, o)
	}
	return out
}

// used is the width that a row's cuts, parts and columns take.
func (r Row) used(pieces []Piece) measure.Length {
	sum := measure.Length(0)
	for _, c := range r.Cuts {
		across, _ := pieces[c.Piece].sides(c.Turned)
		sum += across * measure.Length(c.Count)
	}
	for _, q := range r.Parts {
		sum += q.Width
	}
	for _, s := range r.Stacks {
		sum += s.Width * measure.Length(s.Count)
	}
	return sum
}
