package pipeline

import (
	"context"
	"fmt"
	"slices"
	"sync"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
	"yardproof/schema/measure"
)

// solved remembers the cutting problems of a run, so that equal ones, as sizes
// and plans of a line often have, are solved once. It is safe for use by
// several goroutines; a second one to ask waits for the answer.
//
// Once its context is done it answers with that error: what is derived then is
// given up.
type solved struct {
	ctx    context.Context
	mu     sync.Mutex
	strips map[string]func() (cutting.Result, error)
	sheets map[string]func() (cutting.SheetResult, error)
}

func newSolved(ctx context.Context) *solved {
	return &solved{
		ctx:    ctx,
		strips: map[string]func() (cutting.Result, error){},
		sheets: map[string]func() (cutting.SheetResult, error){},
	}
}

// Strips implements derive.Solver.
func (s *solved) Strips(p cutting.Problem, settle measure.Length) (cutting.Result, error) {
	return once(s, s.strips, stripsKey(p, settle), func() (cutting.Result, error) {
		return cutting.Solve(p, cutting.Limits{Settle: settle, Stop: s.Stop})
	})
}

// stripsKey is that of a problem, or of the one question about it.
func stripsKey(p cutting.Problem, settle measure.Length) string {
	k := key(p.Cloth, p.Pieces, p.Strips)
	if settle > 0 {
		k += fmt.Sprintf("?%d", settle)
	}
	return k
}

// Lengths implements derive.Solver. Sets and loops that several widths share are
// few and small: they are not remembered.
func (s *solved) Lengths(p cutting.LengthProblem) (cutting.LengthResult, error) {
	return cutting.SolveLengths(p, cutting.Limits{Stop: s.Stop})
}

// Sheets implements derive.Solver.
func (s *solved) Sheets(p cutting.SheetProblem) (cutting.SheetResult, error) {
	return once(s, s.sheets, key(p.Sheet, p.Pieces, p.Strips), func() (cutting.SheetResult, error) {
		return cutting.SolveSheets(p, cutting.Limits{Stop: s.Stop})
	})
}

// Stop implements derive.Solver.
func (s *solved) Stop() bool { return s.ctx.Err() != nil }

func once[R any](s *solved, answers map[string]func() (R, error), key string, solve func() (R, error)) (answer R, err error) {
	defer func() {
		if s.Stop() {
			err = s.ctx.Err() // the answer may be less than it could be
		}
	}()
	s.mu.Lock()
	known, ok := answers[key]
	if !ok {
		known = sync.OnceValues(solve)
		answers[key] = known
	}
	s.mu.Unlock()
	if s.Stop() {
		return answer, s.ctx.Err()
	}
	return known()
}

// asker asks for one plan and remembers which problems it asked for, for a run
// that does not derive the plan again counts them all the same.
type asker struct {
	*solved
	keys []string
}

// Strips implements derive.Solver.
func (a *asker) Strips(p cutting.Problem, settle measure.Length) (cutting.Result, error) {
	if settle == 0 { // a question about a problem that was asked before is not another one
		a.keys = append(a.keys, "strips "+stripsKey(p, settle))
	}
	return a.solved.Strips(p, settle)
}

// Sheets implements derive.Solver.
func (a *asker) Sheets(p cutting.SheetProblem) (cutting.SheetResult, error) {
	a.keys = append(a.keys, "sheets "+key(p.Sheet, p.Pieces, p.Strips))
	return a.solved.Sheets(p)
}

// names are short names of the problems, one for each time that one was asked.
func (a *asker) names() []string {
	var names []string
	for _, k := range a.keys {
		names = append(names, store.Sum([]byte(k))[:24])
	}
	slices.Sort(names)
	return names
}

// cuttings counts the problems that the plans ask for, and the different ones
// among them.
func (l *line) cuttings() report.Cuttings {
	different := map[string]bool{}
	var c report.Cuttings
	for _, p := range l.plans {
		c.Asked += len(p.asked)
		for _, name := range p.asked {
			different[name] = true
		}
	}
	c.Solved = len(different)
	return c
}

// key tells problems apart by everything but the names of their pieces, which
// layouts do not use.
func key(cloth any, pieces []cutting.Piece, strips []cutting.WholeStrip) string {
	k := fmt.Appendf(nil, "%v", cloth)
	for _, p := range pieces {
		k = fmt.Appendf(k, ";%d,%d,%d,%t,%d,%t,%t", p.Across, p.Along, p.Count, p.Turnable, p.Together, p.Lengthwise, p.InLengths)
	}
	for _, w := range strips {
		k = fmt.Appendf(k, "|%d,%d,%d", w.Height, w.Count, w.Last)
	}
	return string(k)
}
