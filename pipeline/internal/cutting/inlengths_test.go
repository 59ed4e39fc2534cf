package cutting

import (
	"math/rand"
	"testing"

	"yardproof/schema/measure"
)

// Logs of one width share strips of that width, and no other: the plain method
// never takes more than each length from strips of its own, all strips are as
// wide as logs are, and the layout is legal. The solver is never longer.
func TestLogsAreCutEndToEnd(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	saved := 0
	for range 400 {
		p := Problem{Cloth: Cloth{Width: 40}}
		wide := map[measure.Length]bool{}
		for n := 2 + r.Intn(6); n > 0; n-- {
			q := Piece{Across: measure.Length(2 + r.Intn(38)), Along: measure.Length(2 + r.Intn(2)), Count: 1 + r.Intn(20), Turnable: r.Intn(2) == 0, InLengths: true}
			wide[q.Along] = true
			p.Pieces = append(p.Pieces, q)
		}
		got, err := Plain(p)
		if err != nil {
			t.Fatal(err)
		}
		if err := illegal(p, got); err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		own := measure.Length(0)
		for _, q := range p.Pieces {
			own += q.Along * measure.Length(ceilDiv(q.Count, int(p.Cloth.Width/q.Across)))
		}
		for _, row := range got.Rows {
			if !wide[row.Height] {
				t.Fatalf("a strip %d wide", row.Height)
			}
		}
		if got.Length > own {
			t.Fatalf("%+v: %d, and %d with each length from its own strips", p, got.Length, own)
		}
		if got.Length < own {
			saved++
		}
		if s := solved(t, p); s.Length > got.Length {
			t.Fatalf("%+v: %d packed, %d plain", p, s.Length, got.Length)
		}
		sheets := SheetProblem{Sheet: Sheet{40, 7}, Pieces: p.Pieces}
		l, err := PlainPieces(sheets)
		if err != nil {
			t.Fatal(err)
		}
		if err := illegalSheets(sheets, l); err != nil {
			t.Fatalf("%+v: %v", sheets, err)
		}
	}
	if saved < 200 {
		t.Errorf("strips were shared in only %d", saved)
	}
}

// A log longer than the cloth is wide is cut along it, as before.
func TestALogTooLongForAStripIsCutAlongTheCloth(t *testing.T) {
	p := Problem{Cloth: Cloth{Width: 40}, Pieces: []Piece{
		{Across: 41, Along: 2, Count: 3, Turnable: true, InLengths: true}, {Across: 38, Along: 2, Count: 1, Turnable: true, InLengths: true}}}
	l, err := Plain(p)
	if err != nil || l.Length != 43 || illegal(p, l) != nil {
		t.Errorf("%+v, %v", l, err)
	}
}
