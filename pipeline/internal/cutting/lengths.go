package cutting

import "yardproof/schema/measure"

// Wanted is a length to be cut some number of times from stock: a kit's
// yardage from bolts, short strips from the strips of a roll.
type Wanted struct {
	Name   string
	Length measure.Length
	Count  int
}

// LengthProblem asks for lengths from equal stock lengths (one-dimensional
// cutting stock).
type LengthProblem struct {
	Stock  measure.Length
	Wanted []Wanted
}

// LengthCut is so many of one wanted length.
type LengthCut struct {
	Wanted int // index into the problem's Wanted
	Count  int
}

// CutStock is a run of stock lengths that are cut alike.
type CutStock struct {
	Repeat int
	Cuts   []LengthCut
}

// LengthResult is a cutting plan with what is known about fewer stock lengths.
// The certificate counts stock lengths as strips of height one.
type LengthResult struct {
	Stocks      []CutStock
	Count       int
	Bound       int
	Status      Status
	Certificate *Certificate
	Steps       Steps
}

// SolveLengths finds the fewest stock lengths: strip cutting in which all
// pieces are one tick high and the strip is the stock. The error is a
// *[TooWide] or an *[Unusable].
func SolveLengths(p LengthProblem, limits Limits) (LengthResult, error) {
	r, err := Solve(p.strips(), limits)
	if err != nil {
		return LengthResult{}, err
	}
	out := LengthResult{
		Count: r.Layout.Strips(), Bound: int(r.Bound), Status: r.Status,
		Certificate: r.Certificate, Steps: r.Steps,
	}
	for _, row := range r.Layout.Rows {
		s := CutStock{Repeat: row.Repeat}
		for _, c := range row.Cuts {
			s.Cuts = append(s.Cuts, LengthCut{c.Piece, c.Count})
		}
		out.Stocks = append(out.Stocks, s)
	}
	return out, nil
}

// strips states the problem as one of strips.
func (p LengthProblem) strips() Problem {
	q := Problem{Cloth: Cloth{Width: p.Stock}}
	for _, w := range p.Wanted {
		q.Pieces = append(q.Pieces, Piece{Name: w.Name, Across: w.Length, Along: 1, Count: w.Count})
	}
	return q
}
