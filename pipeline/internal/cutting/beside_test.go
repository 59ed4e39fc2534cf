package cutting

import (
	"errors"
	"slices"
	"testing"
)

// besides is so many squares of 2 1/2 in and four lengthwise borders of 5 x 60
// in, on 40 in of cloth.
func besides(squares int) Problem {
	return Problem{Cloth: Cloth{Width: in(320)}, Pieces: []Piece{
		{Name: "square", Across: in(20), Along: in(20), Count: squares},
		{Name: "border", Across: in(40), Along: in(480), Count: 4, Lengthwise: true}}}
}

func TestPanelBesideLengthwiseBordersIsUsed(t *testing.T) {
	// Four borders of 5 x 60 in leave a panel of 20 x 60 in: 24 strips of 2 1/2
	// in hold 8 squares each, 192. Eight more take half a strip (worked by hand).
	r := solved(t, besides(192))
	if r.Length != in(480) || r.Status != Proved || len(r.Layout.Rows) != 1 || len(r.Layout.Rows[0].Panel) == 0 {
		t.Errorf("got %+v", r)
	}
	if r = solved(t, besides(200)); r.Length != in(500) || r.Bound > in(500) {
		t.Errorf("eight squares more: %+v", r)
	}
	plain, err := Plain(besides(192))
	if err != nil || plain.Length != in(480+12*20) {
		t.Errorf("the plain method cuts nothing beside: %d, %v", plain.Length, err)
	}
}

func TestLengthwisePiecesTakeSeveralBands(t *testing.T) {
	// Three of 11 in fit the width of 40 in; the fourth leaves 29 in beside it, of
	// which 24 strips hold 11 squares each (worked by hand).
	p := besides(264)
	p.Pieces[1].Across = in(88)
	r := solved(t, p)
	if err := illegal(p, r.Layout); err != nil || r.Length != in(960) {
		t.Errorf("%v, %d", err, r.Length)
	}
}

func TestBesideIsLegal(t *testing.T) {
	used := 0
	for i, p := range quilts(20, 9) {
		p.Pieces = append(slices.Clone(p.Pieces), Piece{Name: "side", Across: in(28), Along: in(500), Count: 2, Lengthwise: true},
			Piece{Name: "top", Across: in(28), Along: in(400), Count: i % 5, Lengthwise: true})
		r, err := Solve(p, Limits{Visits: 1_000_000})
		if err != nil {
			t.Fatal(err)
		}
		if err := illegal(p, r.Layout); err != nil {
			t.Errorf("%d: %v", i, err)
		}
		plain, err := Plain(p)
		if err != nil || r.Length > plain.Length || r.Bound > r.Length || r.Bound < AreaBound(p) {
			t.Errorf("%d: length %d, bound %d, plain %d, %v", i, r.Length, r.Bound, plain.Length, err)
		}
		if r.Layout.Rows[0].Panel != nil {
			used++
		}
		if _, _, ok := SolveStacked(p, r, in(36), 0, Limits{}); ok {
			t.Errorf("%d: stacked beside lengthwise pieces", i)
		}
	}
	if used == 0 {
		t.Error("no panel was used: nothing is tested")
	}
}

func TestLengthwisePiecesTooWide(t *testing.T) {
	p := besides(0)
	p.Pieces[1].Across = in(324)
	var e *TooWide
	if _, err := Solve(p, Limits{}); !errors.As(err, &e) || e.Needs != in(324) {
		t.Errorf("got %v", err)
	}
	if p.Pieces[1].Across = in(320); solved(t, p).Length != in(4*480) {
		t.Error("exactly the width fits")
	}
	var u *Unusable
	if p.Pieces[1].Turnable = true; !errors.As(p.check(), &u) {
		t.Error("a lengthwise piece cannot be turned")
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

func TestOffcutsOfAPanelAreNamed(t *testing.T) {
	// Of the panel of 20 x 60 in, ten squares take one strip of eight and one of
	// two, which leaves 15 in; 55 in of the panel are left.
	p := besides(10)
	got := Offcuts(p, solved(t, p).Layout, 0)
	if len(got) != 2 || got[0] != (Offcut{in(160), in(440), 1}) || got[1] != (Offcut{in(120), in(20), 1}) {
		t.Errorf("got %+v", got)
	}
}

func TestTheEndOfABindingComesFromThePanel(t *testing.T) {
	// Five strips of 2 1/2 in are used whole and 10 in of the sixth, which the
	// panel of 20 in holds (worked by hand).
	p := besides(0)
	p.Strips = []WholeStrip{{Name: "binding", Height: in(20), Count: 6, Last: in(80)}}
	r := solved(t, p)
	if err := illegal(p, r.Layout); err != nil || r.Length != in(480+5*20) || len(r.Layout.Rows[0].Panel) != 1 {
		t.Errorf("%v, %+v", err, r.Layout)
	}
	p.Strips[0].Last = in(161)
	if r = solved(t, p); r.Length != in(480+6*20) {
		t.Errorf("an eighth too wide for the panel: %d", r.Length)
	}
}
