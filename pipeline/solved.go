package pipeline

import (
	"fmt"
	"sync"

	"yardproof/pipeline/internal/cutting"
)

// solved remembers the cutting problems of a run, so that equal ones, as sizes
// and plans of a line often have, are solved once. It is safe for use by
// several goroutines; a second one to ask waits for the answer.
type solved struct {
	mu     sync.Mutex
	strips map[string]func() (cutting.Result, error)
	sheets map[string]func() (cutting.SheetResult, error)
	asked  int
}

func newSolved() *solved {
	return &solved{
		strips: map[string]func() (cutting.Result, error){},
		sheets: map[string]func() (cutting.SheetResult, error){},
	}
}

// Strips implements derive.Solver.
func (s *solved) Strips(p cutting.Problem) (cutting.Result, error) {
	return once(s, s.strips, key(p.Cloth, p.Pieces, p.Strips), func() (cutting.Result, error) {
		return cutting.Solve(p, cutting.Limits{})
	})
}

// Sheets implements derive.Solver.
func (s *solved) Sheets(p cutting.SheetProblem) (cutting.SheetResult, error) {
	return once(s, s.sheets, key(p.Sheet, p.Pieces, p.Strips), func() (cutting.SheetResult, error) {
		return cutting.SolveSheets(p, cutting.Limits{})
	})
}

func once[R any](s *solved, answers map[string]func() (R, error), key string, solve func() (R, error)) (R, error) {
	s.mu.Lock()
	s.asked++
	answer, ok := answers[key]
	if !ok {
		answer = sync.OnceValues(solve)
		answers[key] = answer
	}
	s.mu.Unlock()
	return answer()
}

// counts are the problems asked for and the different ones among them.
func (s *solved) counts() (asked, different int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.asked, len(s.strips) + len(s.sheets)
}

// key tells problems apart by everything but the names of their pieces, which
// layouts do not use.
func key(cloth any, pieces []cutting.Piece, strips []cutting.WholeStrip) string {
	k := fmt.Appendf(nil, "%v", cloth)
	for _, p := range pieces {
		k = fmt.Appendf(k, ";%d,%d,%d,%t", p.Across, p.Along, p.Count, p.Turnable)
	}
	for _, w := range strips {
		k = fmt.Appendf(k, "|%d,%d,%d", w.Height, w.Count, w.Last)
	}
	return string(k)
}
