package cutting

import (
	"fmt"
	"testing"

	"yardproof/schema/measure"
)

type namedSheets struct {
	name    string
	problem SheetProblem
	optimum int
}

// readSheets reads testdata/cutting/fixed-pieces.txt: invented, in eighths of
// an inch, optima by an integer program when they were made.
func readSheets(t testing.TB) []namedSheets {
	var all []namedSheets
	for _, f := range fields(t, "../../../testdata/cutting/fixed-pieces.txt") {
		eighths := func(s string) measure.Length { return in(int64(integer(t, s))) }
		switch f[0] {
		case "inst":
			all = append(all, namedSheets{name: f[1], optimum: integer(t, f[3])})
		case "bin":
			all[len(all)-1].problem.Sheet = Sheet{eighths(f[1]), eighths(f[2])}
		default:
			p := &all[len(all)-1].problem
			p.Pieces = append(p.Pieces, Piece{Name: f[0] + "x" + f[1], Across: eighths(f[0]), Along: eighths(f[1]),
				Count: integer(t, f[2]), Turnable: f[3] == "1"})
		}
	}
	return all
}

func TestFixedPiecesAreSolvedToTheirOptimum(t *testing.T) {
	for _, n := range readSheets(t) {
		t.Run(n.name, func(t *testing.T) {
			r, err := SolveSheets(n.problem, Limits{})
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("%+v", r.Steps)
			if r.Layout.Count != n.optimum || r.Status != Proved {
				t.Errorf("%d sheets, bound %d, %v; the optimum is %d", r.Layout.Count, r.Bound, r.Status, n.optimum)
			}
			if err := illegalSheets(n.problem, r.Layout); err != nil {
				t.Error(err)
			}
		})
	}
}

// illegalSheets recounts a layout of sheets from the problem alone.
func illegalSheets(p SheetProblem, l SheetLayout) error {
	pieces := make([]int, len(p.Pieces))
	whole := make([]int, len(p.Strips))
	parts := make([]int, len(p.Strips))
	count := 0
	for _, s := range l.Sheets {
		count += s.Repeat
		y := measure.Length(0)
		var placed []rect
		if err := unmatched(p, s); err != nil {
			return err
		}
		for _, r := range s.Rows {
			for n := 0; n < r.Repeat; n++ {
				row, err := placeSheetRow(p, s.Turned, r, y)
				if err != nil {
					return err
				}
				placed = append(placed, row...)
				y += r.Height
			}
			for _, c := range r.Cuts {
				pieces[c.Piece] += c.Count * r.Repeat * s.Repeat
			}
			for _, q := range r.Parts {
				if q.Width == p.Sheet.Across {
					whole[q.Strip] += r.Repeat * s.Repeat
				} else {
					parts[q.Strip] += r.Repeat * s.Repeat
				}
			}
			if r.Strip >= 0 {
				whole[r.Strip] += r.Repeat * s.Repeat
			}
		}
		if err := overlap(placed, rect{0, 0, p.Sheet.Across, p.Sheet.Along}); err != nil {
			return err
		}
	}
	if count != l.Count {
		return fmt.Errorf("%d sheets, the layout says %d", count, l.Count)
	}
	for i, q := range p.Pieces {
		if pieces[i] != q.Count {
			return fmt.Errorf("piece %d is cut %d times, wanted %d", i, pieces[i], q.Count)
		}
	}
	for i, s := range p.Strips {
		full, part := s.Count, 0
		if s.Count > 0 && s.Last > 0 && s.Last < p.Sheet.Across {
			full, part = s.Count-1, 1
		}
		if whole[i] != full || parts[i] != part {
			return fmt.Errorf("strip %d is cut %d times whole, %d in part", i, whole[i], parts[i])
		}
	}
	return nil
}

// unmatched reports pieces that must match and are not all on one sheet.
func unmatched(p SheetProblem, s CutSheet) error {
	count := make([]int, len(p.Pieces))
	for _, r := range s.Rows {
		for _, c := range r.Cuts {
			count[c.Piece] += c.Count * r.Repeat
		}
	}
	for i, n := range count {
		if k := p.Pieces[i].Together; k > 1 && n%k != 0 {
			return fmt.Errorf("a sheet has %d of piece %d, of which %d must match", n, i, k)
		}
	}
	return nil
}

// placeSheetRow places the rectangles of one row in the sheet's own axes and
// checks that none is taller than its row.
func placeSheetRow(p SheetProblem, turned bool, r Row, y measure.Length) ([]rect, error) {
	var row []rect
	x := measure.Length(0)
	put := func(across, along measure.Length) error {
		high := along
		if turned {
			high = across
			row = append(row, rect{y, x, across, along})
			x += along
		} else {
			row = append(row, rect{x, y, across, along})
			x += across
		}
		if high > r.Height {
			return fmt.Errorf("%d x %d is taller than its row of %d", across, along, r.Height)
		}
		return nil
	}
	var err error
	if r.Strip >= 0 {
		err = put(p.Sheet.Across, p.Strips[r.Strip].Height)
	}
	for _, q := range r.Parts {
		err = put(q.Width, p.Strips[q.Strip].Height)
	}
	for _, c := range r.Cuts {
		q := p.Pieces[c.Piece]
		if c.Turned && !q.Turnable {
			return nil, fmt.Errorf("cut %+v must not be turned", c)
		}
		w, h := q.Across, q.Along
		if c.Turned {
			w, h = h, w
		}
		for n := 0; n < c.Count && err == nil; n++ {
			err = put(w, h)
		}
	}
	return row, err
}
