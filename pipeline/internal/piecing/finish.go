package piecing

import "yardproof/schema/measure"

// Border is a butted border of finished width g round an inner quilt of
// unfinished width and height, sewn on in two pairs.
type Border struct {
	Cut    measure.Length // g + 2s
	Sides  measure.Surd   // cut length of each of the two side strips; 0 where it has none
	Ends   measure.Surd   // cut length of the top and of the bottom strip; 0 where it has none
	Needed measure.Surd   // all strips together
	Outer  Box            // unfinished size once the border is on
}

// Lengths are the cut lengths of its strips, one for each: the sides, then the
// ends.
func (b Border) Lengths() []measure.Surd {
	var all []measure.Surd
	for _, length := range []measure.Surd{b.Sides, b.Ends} {
		if length.Sign() > 0 {
			all = append(all, length, length)
		}
	}
	return all
}

// ButtedBorder works out a butted border. The pair sewn on first is as long
// as the inner quilt, the second reaches over the first. Derived from
// geometry.
func ButtedBorder(inner Box, finished, s measure.Length, endsFirst bool) Border {
	grown := (2 * finished).Surd()
	b := Border{Cut: finished + 2*s, Outer: Box{inner.Width.Add(grown), inner.Height.Add(grown)}}
	if endsFirst {
		b.Ends, b.Sides = inner.Width, b.Outer.Height
	} else {
		b.Sides, b.Ends = inner.Height, b.Outer.Width
	}
	b.Needed = b.Sides.Add(b.Ends).MulInt(2)
	return b
}

// Backing is panels of fabric sewn side by side to cover a width.
type Backing struct {
	Lengthwise bool         // panels run along the quilt's length
	Panels     int64        // p
	Each       measure.Surd // length of each panel
	Length     measure.Surd // all panels
	Size       Box          // what has to be covered
}

// BackingPanels covers size with panels of usable width U, sewn with
// allowance b: the smallest p with p*U - 2(p-1)b >= the width to cover, rounded
// up. ok is false when a panel is no wider than its own seams. Derived from
// geometry.
func BackingPanels(size Box, u, b measure.Length, lengthwise bool) (Backing, bool) {
	cover, run := size.Width, size.Height
	if !lengthwise {
		cover, run = size.Height, size.Width
	}
	p, ok := JoinedStrips(cover, u, 2*b)
	if !ok {
		return Backing{}, false
	}
	return Backing{Lengthwise: lengthwise, Panels: p, Each: run, Length: run.MulInt(p), Size: size}, true
}

// Grown is a finished size with an overhang on every side.
func Grown(finished Box, overhang measure.Length) Box {
	both := (2 * overhang).Surd()
	return Box{finished.Width.Add(both), finished.Height.Add(both)}
}

// BindingLength is the way round a finished quilt and an allowance for
// corners and the last join: 2(W+H) + allowance.
func BindingLength(finished Box, allowance measure.Length) measure.Surd {
	return finished.Width.Add(finished.Height).MulInt(2).Add(allowance.Surd())
}
