package cutting

import (
	"errors"
	"testing"
)

func TestPanelBesideLengthwiseBordersIsUsed(t *testing.T) {
	// Four borders of 5 x 60 in leave a panel of 20 x 60 in: 24 strips of 2 1/2
	// in hold 8 squares each, 192. Eight more take half a strip (worked by hand).
	p := Problem{Cloth: Cloth{Width: in(320)}, Pieces: []Piece{{Name: "square", Across: in(20), Along: in(20), Count: 192}}}
	long := []LongStrip{{Name: "border", Width: in(40), Length: in(480), Count: 4}}
	r, err := SolveBeside(p, long, Limits{})
	if err != nil || r.Length != in(480) || r.Bound != in(480) {
		t.Fatalf("got %+v, %v", r, err)
	}
	p.Pieces[0].Count = 200
	r, err = SolveBeside(p, long, Limits{})
	if err != nil || r.Length != in(500) {
		t.Fatalf("got %+v, %v", r, err)
	}
}

func TestBesideIsLegal(t *testing.T) {
	for i, p := range quilts(20, 9) {
		long := []LongStrip{{Name: "side", Width: in(28), Length: in(500), Count: 2}, {Name: "top", Width: in(28), Length: in(400), Count: i % 5}}
		r, err := SolveBeside(p, long, Limits{Visits: 1_000_000})
		if err != nil {
			t.Fatal(err)
		}
		panel, below := p, p
		panel.Cloth.Width, panel.Strips = r.PanelWidth, nil
		panel.Pieces = counted(p, r.Panel)
		below.Pieces = counted(p, r.Below)
		if err := illegal(panel, r.Panel); err != nil {
			t.Errorf("%d panel: %v", i, err)
		}
		if err := illegal(below, r.Below); err != nil {
			t.Errorf("%d below: %v", i, err)
		}
		for j, q := range p.Pieces {
			if panel.Pieces[j].Count+below.Pieces[j].Count != q.Count {
				t.Errorf("%d: piece %d is cut %d and %d times, wanted %d", i, j, panel.Pieces[j].Count, below.Pieces[j].Count, q.Count)
			}
		}
		if r.Panel.Length > r.Reach || r.Length != r.Reach+r.Below.Length || r.Bound > r.Length {
			t.Errorf("%d: %+v", i, r)
		}
	}
}

// counted is the problem's pieces with the counts of a layout.
func counted(p Problem, l Layout) []Piece {
	out := append([]Piece(nil), p.Pieces...)
	for i := range out {
		out[i].Count = 0
	}
	for _, r := range l.Rows {
		for _, c := range r.Cuts {
			out[c.Piece].Count += c.Count * r.Repeat
		}
	}
	return out
}

func TestLongStripsTooWideInAll(t *testing.T) {
	p := Problem{Cloth: Cloth{Width: in(320)}}
	var e *TooWide
	if _, err := SolveBeside(p, []LongStrip{{Name: "border", Width: in(81), Length: in(8), Count: 4}}, Limits{}); !errors.As(err, &e) || e.Needs != in(324) {
		t.Errorf("got %v", err)
	}
	if r, err := SolveBeside(p, []LongStrip{{Name: "border", Width: in(80), Length: in(8), Count: 4}}, Limits{}); err != nil || r.Length != in(8) {
		t.Errorf("exactly the width fits: %+v, %v", r, err)
	}
}

func TestOffcutsAreNamed(t *testing.T) {
	// Eight squares of 4 1/2 in leave 4 in of a 40-in strip; the ninth leaves
	// 35 1/2 in of the next.
	p := Problem{Cloth: Cloth{Width: in(320)}, Pieces: []Piece{{Name: "square", Across: in(36), Along: in(36), Count: 9}}}
	got := Offcuts(p, solved(t, p).Layout, 0)
	if len(got) != 2 || got[0] != (Offcut{in(284), in(36), 1}) || got[1] != (Offcut{in(32), in(36), 1}) {
		t.Errorf("got %+v", got)
	}
	if got = Offcuts(p, solved(t, p).Layout, in(33)); len(got) != 1 {
		t.Errorf("4 in is less than the least: %+v", got)
	}
}
