package cutting

import (
	"math/rand"
	"testing"
)

// A strip of 1 1/2 x 120 in, marked by nobody, leaves a panel of 38 1/2 x 120 in, whose
// 48 strips of 2 1/2 in hold 15 squares each, 720. Strips across hold 16, beside 15 that
// the long one takes: 120 and 45 strips of 2 1/2 in are 232 1/2 in. One square more takes
// another strip (worked by hand). The strip may be asked for either way round.
func TestALongStripIsCutAlongUnmarked(t *testing.T) {
	for _, turned := range []bool{false, true} {
		for squares, want := range map[int]int64{720: 960, 721: 980} {
			p := Problem{Cloth: Cloth{Width: in(320)}, Pieces: []Piece{
				{Name: "square", Across: in(20), Along: in(20), Count: squares, Turnable: true},
				{Name: "long", Across: in(12), Along: in(960), Count: 1, Turnable: turned}}}
			if turned {
				p.Pieces[1].Across, p.Pieces[1].Along = p.Pieces[1].Along, p.Pieces[1].Across
			}
			r := solved(t, p)
			if squares == 720 && r.Length != in(1860) {
				t.Errorf("strips across take %d eighths", r.Length/in(1))
			}
			l, _, ok := SolveStacked(p, r, in(1), 0, Limits{})
			if !ok || l.Length != in(want) {
				t.Errorf("%d squares take %d eighths, %v", squares, l.Length/in(1), ok)
			}
			if err := illegal(p, l); err != nil {
				t.Error(err)
			}
			if bound, _, _ := StraightBound(p, Limits{}); squares == 720 && bound != l.Length {
				t.Errorf("the bound is %d eighths", bound/in(1))
			}
		}
	}
}

// Layouts with panels are legal, no shorter than the bound, and found.
func TestPanelsAreLegal(t *testing.T) {
	r := rand.New(rand.NewSource(65))
	found := 0
	for i, p := range quilts(16, 66) {
		p.Cloth.Repeat = 0
		p.Pieces = append(p.Pieces, Piece{Name: "side", Across: in(int64(12 + r.Intn(40))), Along: in(int64(330 + r.Intn(300))), Count: 1 + r.Intn(4), Turnable: i%2 == 0})
		got, err := Solve(p, Limits{Visits: 2_000_000})
		if err != nil {
			t.Fatal(err)
		}
		var spent Spent
		l := panels(p, Limits{Visits: 2_000_000}, &spent)
		if l.Length == none {
			continue
		}
		bound, _, _ := StraightBound(p, Limits{})
		if err := illegal(p, l); err != nil || l.Length < bound {
			t.Errorf("%d: %v; length %d, bound %d", i, err, l.Length, bound)
		}
		if l.Length < got.Length {
			found++
		}
		if again := panels(p, Limits{Visits: 2_000_000}, &spent); describe(p, again, 1) != describe(p, l, 1) {
			t.Errorf("%d: another layout the second time", i)
		}
	}
	if found < 4 {
		t.Errorf("only %d layouts are shorter for a panel", found)
	}
}
