package drafting_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"yardproof/schema/measure"
)

// joinedTable is a tube whose two sides are each sewn of sets of these lengths, end
// to end: of each set shows what lies between its joins, and its seam line lies on
// that of the set before. joins are where the seams are, from the left end, by
// side.
func joinedTable(t *testing.T, sets [2][]strip, seam, beyond float64, lengths [2][]float64) (whole table, joins [2][]float64) {
	t.Helper()
	var ends [2]float64
	for side, of := range lengths {
		var all layer
		at := 0.0 // where what shows of the next set begins
		for i, length := range of {
			low, high := 0.0, length
			if i > 0 {
				low = seam
			}
			if i < len(of)-1 {
				high -= seam
			}
			set := lay(sets, seam, beyond, length)
			for fabric, cloth := range set.layers[side] {
				if cloth.IsEmpty() {
					continue
				}
				shown := must(geom.Intersection(cloth, box(low, -1, high, set.width+1))).TransformXY(func(p geom.XY) geom.XY {
					return geom.XY{X: p.X - low + at, Y: p.Y}
				})
				if all == nil {
					all = make(layer, fabrics)
				}
				if !all[fabric].IsEmpty() {
					shown = must(geom.Union(all[fabric], shown))
				}
				all[fabric] = shown
			}
			at += high - low
			if i < len(of)-1 {
				joins[side] = append(joins[side], at)
			}
			whole.width = set.width
		}
		whole.layers[side], ends[side] = all, at
	}
	whole.seam, whole.beyond, whole.length = seam, beyond, min(ends[0], ends[1])
	return whole, joins
}

// crossings are how many squares of a tube, cut from its left end, a join of
// either side crosses.
func (t table) crossings(squares int, joins [2][]float64) (n int64) {
	h := t.width - 2*t.seam + t.beyond
	for i := range squares {
		x := h + float64(i)*(h+t.beyond)
		crossed := false
		for _, at := range append(append([]float64(nil), joins[0]...), joins[1]...) {
			crossed = crossed || math.Abs(at-x) < h-1e-9 // the triangle is h wide to either side of its tip
		}
		if crossed {
			n++
		}
	}
	return n
}

// Sets are sewn end to end on the table, the tube of them cut into triangles through
// both layers and each of them opened: as many squares come out as are derived, all
// look as they are drafted, those over a join too, and no more of them have a join
// across than is said, whether the joins of the two sides lie on each other or not.
// Derived from geometry.
func TestJoinedTubeCutAndOpened(t *testing.T) {
	pair, trio, uneven := []strip{{0, 2}, {1, 2}}, []strip{{0, 1.75}, {1, 1.75}, {2, 1.75}}, []strip{{3, 1.25}, {1, 2.5}, {4, 1.5}}
	most := int64(0)
	for _, sets := range [][2][]strip{{pair, pair}, {trio, uneven}} {
		for _, tip := range []string{"far seam", "raw edge"} {
			for _, wide := range []float64{17, 20, 21.25} {
				for aside := 2; aside <= 3; aside++ {
					for _, shift := range []float64{0, 2.5} {
						most = max(most, compareJoined(t, sets, tip, wide, aside, shift))
					}
				}
			}
		}
	}
	if most == 0 {
		t.Error("no square had a join across")
	}
}

// compareJoined gives the number of squares with a join across. The second side's
// first set is longer by shift than it has to be, and its last one shorter.
func compareJoined(t *testing.T, sets [2][]strip, tip string, wide float64, aside int, shift float64) (crossed int64) {
	t.Helper()
	what := fmt.Sprintf("%d and %d strips, tip at the %s, %d of %v in, joins %v in apart", len(sets[0]), len(sets[1]), tip, aside, wide, shift)
	all := sizes("tube.plan.json", []byte(tubePlan(sets[0], sets[1], "strip for strip", tip, fmt.Sprintf(`, "joined": %d`, aside), wide)))
	if len(all) == 0 {
		t.Fatalf("%s: the plan is not in order", what)
	}
	s := all[0]
	step := s.Part("step")
	var lengths [2][]float64
	for range aside {
		lengths[0], lengths[1] = append(lengths[0], wide), append(lengths[1], wide)
	}
	lengths[1][0] += shift
	lengths[1][aside-1] -= shift
	beyond := map[string]float64{"far seam": 0, "raw edge": 0.25}[tip]
	tube, joins := joinedTable(t, sets, 0.25, beyond, lengths)
	if got := step.Tube.Yield.Length.Surd().Float(measure.In); math.Abs(got-tube.length) > 1e-9 {
		t.Fatalf("%s: %v in long on the table, derived %v", what, tube.length, got)
	}
	for _, nearFirst := range []bool{true, false} {
		far, squares := tube.cut(nearFirst)
		if len(far) == 0 || int64(len(far)) != step.Tube.Yield.Each {
			t.Fatalf("%s: %d triangles are cut, %d squares derived", what, len(far), step.Tube.Yield.Each)
		}
		for i, square := range squares {
			w, ok := drafted(s, far[i])
			if !ok {
				t.Fatalf("%s: not drafted", what)
			}
			drawnAs(t, what, square, w)
		}
		matched, apart := step.Tube.Crossed()
		most := apart
		if shift == 0 {
			most = matched
		}
		n := tube.crossings(len(far), joins)
		if crossed = max(crossed, n); n > most {
			t.Errorf("%s: %d squares have a join across, at most %d are said", what, n, most)
		}
	}
	return crossed
}
