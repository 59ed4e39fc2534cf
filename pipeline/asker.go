package pipeline

import (
	"fmt"
	"slices"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
	"yardproof/schema/measure"
)

// asker asks the cutting questions of one plan, within the plan's budget of work,
// and remembers which problems it asked for, for a run that does not derive the
// plan again counts them all the same.
type asker struct {
	*solved
	*purse
	problems []string
}

// Strips implements derive.Solver.
func (a *asker) Strips(p cutting.Problem, settle measure.Length) (cutting.Result, error) {
	k := "strips " + stripsKey(p, settle)
	if settle == 0 { // a question about a problem that was asked before is not another one
		a.problems = append(a.problems, k)
	}
	return ask(a, k, func(l cutting.Limits) (cutting.Result, cutting.Spent, error) {
		l.Settle = settle
		r, err := cutting.Solve(p, l)
		return r, r.Spent, err
	})
}

// Stacked implements derive.Solver.
func (a *asker) Stacked(p cutting.Problem, r cutting.Result, step, ruler measure.Length) (cutting.Layout, bool) {
	k := fmt.Sprintf("stacked %s %d %d %d %d", stripsKey(p, 0), step, ruler, r.Spent.Work, r.Length)
	type found struct {
		cutting.Layout
		ok bool
	}
	l, err := ask(a, k, func(l cutting.Limits) (f found, spent cutting.Spent, err error) {
		f.Layout, spent, f.ok = cutting.SolveStacked(p, r, step, ruler, l)
		return f, spent, nil
	})
	return l.Layout, l.ok && err == nil
}

// Straight implements derive.Solver.
func (a *asker) Straight(p cutting.Problem) measure.Length {
	bound, _ := ask(a, "straight "+stripsKey(p, 0), func(l cutting.Limits) (measure.Length, cutting.Spent, error) {
		bound, _, spent := cutting.StraightBound(p, l)
		return bound, spent, nil
	})
	return bound
}

// Lengths implements derive.Solver.
func (a *asker) Lengths(p cutting.LengthProblem) (cutting.LengthResult, error) {
	return ask(a, fmt.Sprintf("lengths %v", p), func(l cutting.Limits) (cutting.LengthResult, cutting.Spent, error) {
		r, err := cutting.SolveLengths(p, l)
		return r, r.Spent, err
	})
}

// Sheets implements derive.Solver.
func (a *asker) Sheets(p cutting.SheetProblem) (cutting.SheetResult, error) {
	k := "sheets " + key(p.Sheet, p.Pieces, p.Strips)
	a.problems = append(a.problems, k)
	return ask(a, k, func(l cutting.Limits) (cutting.SheetResult, cutting.Spent, error) {
		r, err := cutting.SolveSheets(p, l)
		return r, r.Spent, err
	})
}

// Stop implements derive.Solver.
func (a *asker) Stop() bool { return a.stop() }

// ask answers a question with what the plan's budget has for it.
func ask[R any](a *asker, key string, solve func(cutting.Limits) (R, cutting.Spent, error)) (R, error) {
	got := a.purse.ask(key, func(allowance int) answer {
		return a.solved.ask(key, allowance, func(l cutting.Limits) (any, cutting.Spent, error) { return solve(l) })
	})
	value, _ := got.value.(R)
	return value, got.err
}

// names are short names of the problems, one for each time that one was asked.
func (a *asker) names() []string {
	var names []string
	for _, k := range a.problems {
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
