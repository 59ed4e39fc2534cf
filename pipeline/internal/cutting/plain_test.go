package cutting

import (
	"errors"
	"testing"

	"yardproof/schema/measure"
)

// in is a length in eighths of an inch, as ticks.
func in(eighths int64) measure.Length { return measure.Length(eighths * 203200 / 8) }

func TestPlainTakesTheBetterOrientation(t *testing.T) {
	// 31 sashes 2 1/2 x 10 1/2 in at 40 in: 16 side by side need 2 strips of
	// 10 1/2 in, 21 in; the other way round 11 strips, 27 1/2 in (worked by hand).
	p := Problem{Cloth: Cloth{Width: in(320)}, Pieces: []Piece{{Name: "sash", Across: in(84), Along: in(20), Count: 31, Turnable: true}}}
	l, err := Plain(p)
	if err != nil || l.Length != in(168) || l.Strips() != 2 {
		t.Fatalf("got %+v, %v", l, err)
	}
	p.Pieces[0].Turnable = false
	if l, _ = Plain(p); l.Length != in(220) {
		t.Fatalf("directional: got %+v", l)
	}
}

func TestPlainMergesEqualSizes(t *testing.T) {
	p := Problem{Cloth: Cloth{Width: in(320)}, Pieces: []Piece{
		{Name: "a", Across: in(20), Along: in(20), Count: 10}, {Name: "b", Across: in(20), Along: in(20), Count: 6, Turnable: true}}}
	l, err := Plain(p)
	if err != nil || l.Length != in(20) {
		t.Fatalf("16 squares of 2 1/2 in fill one 40-in strip: got %+v, %v", l, err)
	}
	if len(l.Rows) != 1 || len(l.Rows[0].Cuts) != 2 {
		t.Fatalf("the names must stay apart: %+v", l.Rows)
	}
}

func TestPlainTieGoesToTheTallerStrip(t *testing.T) {
	// Eight bars of 2 x 4 in at 8 in: two strips of 4 in or four of 2 in, 8 in
	// of cloth either way.
	p := Problem{Cloth: Cloth{Width: in(64)}, Pieces: []Piece{{Name: "bar", Across: in(32), Along: in(16), Count: 8, Turnable: true}}}
	l, err := Plain(p)
	if err != nil || l.Length != in(64) || l.Strips() != 2 {
		t.Fatalf("got %+v, %v", l, err)
	}
}

func TestPlainRepeatAndWholeStrips(t *testing.T) {
	p := Problem{Cloth: Cloth{Width: in(320), Repeat: in(24)},
		Pieces: []Piece{{Name: "square", Across: in(20), Along: in(20), Count: 17}},
		Strips: []WholeStrip{{Name: "binding", Height: in(20), Count: 3, Last: in(80)}}}
	l, err := Plain(p)
	if err != nil || l.Length != in(5*24) {
		t.Fatalf("got %+v, %v", l, err)
	}
	if len(l.Rows[1].Parts) != 1 || l.Rows[1].Parts[0] != (Part{0, in(80)}) {
		t.Fatalf("the last binding strip is used in part: %+v", l.Rows)
	}
}

func TestTooWideNamesThePiece(t *testing.T) {
	p := Problem{Cloth: Cloth{Width: in(320)}, Pieces: []Piece{{Name: "ok", Across: 5, Along: 5, Count: 1},
		{Name: "big", Across: in(321), Along: in(8), Count: 1}}}
	var e *TooWide
	if _, err := Plain(p); !errors.As(err, &e) || e.Piece != 1 || e.Needs != in(321) {
		t.Fatalf("got %v", err)
	}
	p.Pieces[1].Turnable = true
	if _, err := Plain(p); err != nil {
		t.Fatalf("turned it fits: %v", err)
	}
	p.Pieces[1].Across = in(320)
	p.Pieces[1].Turnable = false
	if _, err := Plain(p); err != nil {
		t.Fatalf("exactly the width fits: %v", err)
	}
}

func TestUnusableNumbersAreRefused(t *testing.T) {
	for _, p := range []Problem{
		{},
		{Cloth: Cloth{Width: 8, Repeat: -1}},
		{Cloth: Cloth{Width: 8}, Pieces: []Piece{{Across: 0, Along: 1, Count: 1}}},
		{Cloth: Cloth{Width: 8}, Pieces: []Piece{{Across: 1, Along: 1, Count: -1}}},
		{Cloth: Cloth{Width: 8}, Strips: []WholeStrip{{Height: 1, Count: 1, Last: 9}}},
	} {
		var e *Unusable
		if _, err := Plain(p); !errors.As(err, &e) {
			t.Errorf("%+v: got %v", p, err)
		}
	}
}

func TestAreaBoundRoundsUpAndHolds(t *testing.T) {
	p := Problem{Cloth: Cloth{Width: 10}, Pieces: []Piece{{Across: 3, Along: 3, Count: 4}}}
	if got := AreaBound(p); got != 4 { // 36/10
		t.Errorf("got %d, want 4", got)
	}
	p.Pieces[0].Count = 1
	if got := AreaBound(p); got != 3 {
		t.Errorf("the piece is 3 long: got %d", got)
	}
	huge := Problem{Cloth: Cloth{Width: maxSide}, Pieces: []Piece{{Across: maxSide, Along: maxSide, Count: maxCount}}}
	if got, want := AreaBound(huge), maxSide*maxCount; got != want {
		t.Errorf("128-bit area: got %d, want %d", got, want)
	}
}

func TestPlainPiecesFatQuarter(t *testing.T) {
	// 18 x 21 in: 30 squares of 3 1/2; 18 x 20 only 25 (worked by hand).
	for _, c := range []struct {
		along measure.Length
		count int
		want  int
	}{{in(168), 30, 1}, {in(168), 31, 2}, {in(160), 25, 1}, {in(160), 26, 2}} {
		p := SheetProblem{Sheet: Sheet{in(144), c.along}, Pieces: []Piece{{Name: "s", Across: in(28), Along: in(28), Count: c.count}}}
		l, err := PlainPieces(p)
		if err != nil || l.Count != c.want {
			t.Errorf("%+v: got %+v, %v", c, l, err)
		}
	}
}

func TestPlainPiecesWholeStripsOfARoll(t *testing.T) {
	p := SheetProblem{Sheet: Sheet{in(336), in(20)}, Strips: []WholeStrip{{Name: "set", Height: in(20), Count: 12}}}
	if l, err := PlainPieces(p); err != nil || l.Count != 12 {
		t.Fatalf("got %+v, %v", l, err)
	}
	p.Strips[0].Height = in(10)
	if l, err := PlainPieces(p); err != nil || l.Count != 6 {
		t.Fatalf("two half-height strips a roll strip: got %+v, %v", l, err)
	}
	p.Strips[0].Height = in(21)
	var e *TooWide
	if _, err := PlainPieces(p); !errors.As(err, &e) || e.Strip != 0 {
		t.Fatalf("got %v", err)
	}
}
