package slip

import (
	"slices"

	"yardproof/schema/measure"
)

// weighLength is how unlikely it is that a length was meant to be x: a value is the
// likelier, the coarser the lines that it stands on and the more of its fellows share
// it, and the likelier wrong, the fewer do.
func (s *search) weighLength(v *value, x measure.Length) int {
	weight := 4 + 2*s.fineness(x) - s.fineness(v.length)
	if v.Keys[0] == "seam" {
		weight += 3 // the plan's seams are sewn in every quilt of the studio
	}
	was, is := 0, 0
	for _, f := range s.values {
		if f == v || f.length == 0 || f.key != v.key {
			continue
		}
		near := 1
		if f.sibling(v) {
			near = 2
		}
		switch f.length {
		case v.length:
			was += near
		case x:
			is += near
		}
	}
	return weight + 2*min(was, 4) - 2*min(is, 4) + s.way(v, x)
}

// way is how unlikely it is that one length was written for another, by how they
// differ.
func (s *search) way(v *value, x measure.Length) int {
	a := s.Plan.Sizes[0].Seam.Allowance.Length
	d := max(x-v.length, v.length-x)
	if slices.ContainsFunc(transposed(v.Node.Text), func(text string) bool {
		y, err := measure.ParseLength(text, s.Plan.Units)
		return err == nil && y == x
	}) {
		return -3
	}
	weight := int(min(6, d/(2*s.step())))
	if d == a || d == 2*a || d == s.step() {
		weight--
	}
	return weight
}

// sibling reports whether two values stand in the same list, or in objects that do.
func (v *value) sibling(w *value) bool {
	n := len(v.Keys)
	if len(w.Keys) != n || n < 2 {
		return false
	}
	differ := 0
	for i := range v.Keys {
		if v.Keys[i] != w.Keys[i] {
			differ++
		}
	}
	return differ == 1
}

// fineness is 0 of a length on the unit or its half, 1 on its quarter, and more the finer
// its line is.
func (s *search) fineness(x measure.Length) int {
	u := s.Plan.Units.Length()
	for i, line := range []measure.Length{u / 2, u / 4, u / 8, u / 16} {
		if x.On(line) {
			return i
		}
	}
	if s.Plan.Units == measure.Cm && x.On(measure.Millimetre) {
		return 2
	}
	return 5
}
