package cutting

import "testing"

// Strips of one height are cut from the same sheets, whoever asked for them:
// three and four of 2 1/2 in are the seven that 18 in give. Derived from geometry.
func TestStripsOfOneHeightShareSheets(t *testing.T) {
	p := SheetProblem{Sheet: Sheet{in(8 * 20), in(8 * 18)}, Strips: []WholeStrip{
		{Name: "rail", Height: in(20), Count: 3}, {Name: "post", Height: in(24), Count: 1}, {Name: "step", Height: in(20), Count: 4},
	}}
	for want, steps := range map[int]int{2: 4, 3: 5} {
		p.Strips[2].Count = steps
		l, err := PlainPieces(p)
		if err != nil || l.Count != want {
			t.Errorf("%d sheets for %d and 3 strips of one height and another, want %d (%v)", l.Count, steps, want, err)
		}
		if err := illegalSheets(p, l); err != nil {
			t.Error(err)
		}
	}
}
