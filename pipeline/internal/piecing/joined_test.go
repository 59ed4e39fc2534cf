package piecing_test

import (
	"math/rand/v2"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// opened lays sets that are sewn end to end, opened and pressed, side by side on
// the table, in inches: the seam line of each, s from its left raw edge, lies on
// the seam line of the one before, s from its right raw edge, and both allowances
// are behind. It gives the whole and where the seams are. Nothing in it comes from
// the formulas under test.
func opened(t testing.TB, sets int, length, width, s float64) (whole geom.Geometry, seams []float64) {
	t.Helper()
	left, shows := 0.0, 0.0
	for i := range sets {
		right := left + length
		if i < sets-1 {
			right -= s
			seams = append(seams, right)
		}
		set := polygon(geom.XY{X: shows}, geom.XY{X: right}, geom.XY{X: right, Y: width}, geom.XY{X: shows, Y: width})
		if i == 0 {
			whole = set
		} else {
			whole = joined(t, whole, set)
		}
		left, shows = right-s, right
	}
	return whole, seams
}

// The length of joined sets is what they measure when they are laid out, and the
// shortest strips for a length are no longer than it takes.
func TestJoinedSetsAgainstPolygons(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 11))
	for range 40 {
		sets := 1 + random.IntN(6)
		l, s := inch*measure.Length(9+random.IntN(36))+measure.Length(random.Int64N(int64(inch))), inch/8+measure.Length(random.Int64N(int64(inch/4)))
		whole, _ := opened(t, sets, inches(l), 6.5, inches(s))
		left, right := extent(whole)
		got := piecing.JoinedLength(int64(sets), l, 2*s)
		agree(t, "length of joined sets", got.Surd(), right-left)
		if from := piecing.JoinedFrom(got, int64(sets), 2*s); from != l {
			t.Errorf("%d sets of %d joined to %d: strips of %d", sets, l, got, from)
		}
		if sets > 1 && (piecing.JoinedFrom(got+1, int64(sets), 2*s) != l+1 || piecing.JoinedFrom(got-1, int64(sets), 2*s) != l) {
			t.Errorf("%d sets of %d: strips for a tick more or less", sets, l)
		}
	}
}

// Tubes of joined sets, by triangles placed one after the other along what the
// sets measure, opened: as many fit as the formula says, and a join crosses two
// of them at most, wherever the first is begun. Some are crossed by no join.
func TestJoinedTubesAgainstPolygons(t *testing.T) {
	random := rand.New(rand.NewPCG(12, 36))
	two := false
	for _, r := range rows() {
		tube := tubeOf(r.n, quarter, r.raw)
		for sets := 2; sets <= 3; sets++ {
			l := 24*inch + measure.Length(random.Int64N(int64(18*inch)))
			whole, seams := opened(t, sets, inches(l), inches(tube.Width), inches(quarter))
			_, right := extent(whole)
			length := piecing.JoinedLength(int64(sets), l, 2*quarter)
			for _, ears := range []bool{false, true} {
				ends := flat(tube).place(t, 40, ears)
				comparePlaced(t, r.String()+", joined", tube, ends, length, ears)
				comparePlaced(t, r.String()+", joined", tube, ends, length+tube.Advance(), ears)
			}
			most := crossedAtMost(t, flat(tube), seams, right)
			if most > 2 {
				t.Errorf("%v, %d sets: a join crosses %d squares", r, sets, most)
			}
			two = two || most == 2
		}
	}
	if !two {
		t.Error("no join crosses two squares")
	}
	for _, c := range []struct{ joins, n, want int64 }{{0, 12, 0}, {1, 12, 2}, {2, 12, 4}, {2, 3, 3}, {6, 12, 12}} {
		if got := piecing.Crossed(c.joins, c.n); got != c.want {
			t.Errorf("%d joins cross %d of %d squares, want %d", c.joins, got, c.n, c.want)
		}
	}
}

// crossedAtMost is the most squares of a tube that one join crosses, with the
// first triangle begun at several places along it.
func crossedAtMost(t testing.TB, f flatTube, seams []float64, right float64) (most int) {
	t.Helper()
	tip := f.width - f.seam + f.beyond
	advance := tip - f.seam + max(f.beyond, 0)
	for begin := range 7 {
		first := tip - f.seam + float64(begin)*advance/7
		for _, seam := range seams {
			before := polygon(geom.XY{X: -right, Y: -1}, geom.XY{X: seam, Y: -1}, geom.XY{X: seam, Y: f.width + 1}, geom.XY{X: -right, Y: f.width + 1})
			crossed := 0
			for i := range int(right / advance) {
				half := f.half(first+float64(i)*advance, i%2 == 0)
				if part := overlap(t, half, before); part > touching && half.Area()-part > touching {
					crossed++
				}
			}
			most = max(most, crossed)
		}
	}
	return most
}
