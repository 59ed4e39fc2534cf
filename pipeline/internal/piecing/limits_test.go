package piecing

import (
	"testing"

	"yardproof/schema/measure"
)

// A tip short of the far seam: three 2 1/2-in strips at 1/4 in, tip 1/4 in
// short. Height and safe advance are both T - 2s + e = 5 3/4 in, so five squares
// need 5 * 5.75 + 5.75 = 34.5 in of tube and a tick less gives four. Derived from
// geometry.
func TestTipShortOfTheSeam(t *testing.T) {
	tube := Tube{Width: 13 * measure.Inch / 2, Seam: measure.Inch / 4, Beyond: -measure.Inch / 4}
	want := 23 * measure.Inch / 4
	if tube.Height() != want || tube.Advance() != want || tube.Stub() != 0 {
		t.Errorf("height %v, advance %v, stub %v, want %v, the same and none", tube.Height(), tube.Advance(), tube.Stub(), want)
	}
	need := 69 * measure.Inch / 2
	if at, below := tube.Yield(need, false), tube.Yield(need-1, false); at != 5 || below != 4 {
		t.Errorf("%d squares from 34 1/2 in and %d from a tick less, want 5 and 4", at, below)
	}
}

func TestGroupsOfOne(t *testing.T) {
	if groups, left := Groups(5, 1); groups != 5 || left != 0 {
		t.Errorf("five in ones are %d and %d", groups, left)
	}
	if groups, left := Groups(5, 0); groups != 0 || left != 5 {
		t.Errorf("five in nothings are %d and %d", groups, left)
	}
}
