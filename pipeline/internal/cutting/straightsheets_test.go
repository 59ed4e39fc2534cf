package cutting

import (
	"fmt"
	"math/rand"
	"testing"
)

// verifySheetsBound re-proves a certificate with sums, products and exhaustive fillings of
// both sides of the sheet.
func verifySheetsBound(p SheetProblem, c *SheetsCertificate) error {
	wanted := 0
	for _, q := range p.Pieces {
		wanted += q.Count
	}
	for _, s := range p.Strips {
		wanted += s.Count
	}
	sum := int64(0)
	var across, along []StraightSize
	for _, s := range c.Sizes {
		wanted -= s.Count
		one := func(axis int) StraightSize {
			return StraightSize{Size: s.Size, Worth: s.Worth[axis], Turned: s.Turned[axis]}
		}
		wide, tall := one(0), one(1)
		tall.Across, tall.Along = tall.Along, tall.Across
		across, along = append(across, wide), append(along, tall)
		least := int64(-1)
		for _, w := range waysOf(wide, p.Sheet.Across) {
			if w[1] > p.Sheet.Along {
				continue
			}
			worth := s.Worth
			if w[0] != s.Across {
				worth = s.Turned
			}
			if v := worth[0] * worth[1]; least < 0 || v < least {
				least = v
			}
		}
		sum += least * int64(s.Count)
	}
	if wanted != 0 {
		return fmt.Errorf("the certificate is off by %d pieces", wanted)
	}
	if a, b := dearestLine(p.Sheet.Across, across), dearestLine(p.Sheet.Along, along); a > c.Most[0] || b > c.Most[1] {
		return fmt.Errorf("lines are worth %d and %d, the certificate says %v", a, b, c.Most)
	}
	proved := SheetAreaBound(p)
	if most := c.Most[0] * c.Most[1]; most > 0 {
		proved = max(proved, int((sum+most-1)/most))
	}
	if c.Claim > proved {
		return fmt.Errorf("the claim is %d, and %d are proved", c.Claim, proved)
	}
	return nil
}

// Worked by hand: of squares of 6 in a sheet of 10 x 10 in holds one, however it is cut,
// and of squares of 4 in four; by area nine sheets would hold 25 of the larger.
func TestStraightSheetsByHand(t *testing.T) {
	for _, c := range []struct {
		side         int64
		count, bound int
	}{{48, 9, 9}, {32, 9, 3}, {32, 8, 2}, {40, 9, 3}, {41, 9, 9}} {
		p := SheetProblem{Sheet: Sheet{in(80), in(80)}, Pieces: []Piece{{Across: in(c.side), Along: in(c.side), Count: c.count}}}
		if got, _, _ := StraightSheets(p, Limits{}); got != c.bound {
			t.Errorf("%d squares of %d eighths take %d sheets, want %d", c.count, c.side, got, c.bound)
		}
	}
}

// A search that may do nothing leaves the bound for every straight cutting.
func TestSheetsLeftOpenAreBounded(t *testing.T) {
	for _, n := range readSheets(t) {
		r, err := SolveSheets(n.problem, Limits{Visits: 1, Rounds: 1})
		if err != nil {
			t.Fatal(err)
		}
		straight, _, _ := StraightSheets(n.problem, Limits{})
		if r.Bound < straight || r.Bound > n.optimum {
			t.Errorf("%s: bound %d, of straight cutting %d, optimum %d", n.name, r.Bound, straight, n.optimum)
		}
	}
}

// Bounds hold for every layout of sheets that is found, and are proved anew.
func TestStraightSheetsHold(t *testing.T) {
	r := rand.New(rand.NewSource(67))
	above, met, tried := 0, 0, 0
	for range 300 {
		p := tinySheets(r)
		got, err := SolveSheets(p, Limits{})
		if err != nil {
			continue
		}
		bound, c, _ := StraightSheets(p, Limits{})
		if c == nil {
			continue
		}
		tried++
		if err := verifySheetsBound(p, c); err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		if bound > got.Layout.Count || bound < SheetAreaBound(p) {
			t.Fatalf("%+v: %d sheets, bound %d, area %d", p, got.Layout.Count, bound, SheetAreaBound(p))
		}
		if bound > SheetAreaBound(p) {
			above++
		}
		if bound == got.Layout.Count {
			met++
		}
	}
	t.Logf("of %d, %d are met and %d are above the area", tried, met, above)
	if above < tried/10 || met < tried*3/4 {
		t.Errorf("of %d, %d are met and %d are above the area", tried, met, above)
	}
	for _, n := range readSheets(t) {
		bound, c, _ := StraightSheets(n.problem, Limits{})
		if err := verifySheetsBound(n.problem, c); err != nil || bound > n.optimum {
			t.Errorf("%s: %v; bound %d, optimum %d", n.name, err, bound, n.optimum)
		}
		t.Logf("%s: %d of %d, area %d", n.name, bound, n.optimum, SheetAreaBound(n.problem))
		c.Claim++
		if verifySheetsBound(n.problem, c) == nil {
			t.Errorf("%s: a false claim is accepted", n.name)
		}
		if c.Claim--; c.Most[0] > 1 {
			if c.Most[0] /= 2; verifySheetsBound(n.problem, c) == nil {
				t.Errorf("%s: lines worth less are accepted", n.name)
			}
		}
	}
}
