package pipeline

import (
	"context"
	"fmt"
	"sync"

	"yardproof/pipeline/internal/cutting"
	"yardproof/schema/measure"
)

// solved remembers the cutting problems of a run, so that equal ones, as sizes
// and plans of a line often have, are solved once. It is safe for use by
// several goroutines; a second one to ask waits for the answer.
//
// Once its context is done it answers with that error: what is derived then is
// given up.
type solved struct {
	ctx   context.Context
	mu    sync.Mutex
	known map[string]*remembered
}

// remembered are the answers to one question, each with what was allowed for it.
type remembered struct {
	mu      sync.Mutex
	answers []answer
}

// answer is what somebody who asks with such an allowance gets, whoever asked
// before. One for which less was enough is the same with any more.
type answer struct {
	allowance int
	spent     cutting.Spent
	value     any
	err       error
}

func (a answer) serves(allowance int) bool {
	return a.allowance == allowance || !a.spent.Short && a.allowance < allowance
}

func newSolved(ctx context.Context) *solved {
	return &solved{ctx: ctx, known: map[string]*remembered{}}
}

func (s *solved) stop() bool { return s.ctx.Err() != nil }

// ask answers a question, from memory where it was asked before.
func (s *solved) ask(key string, allowance int, solve func(cutting.Limits) (any, cutting.Spent, error)) answer {
	s.mu.Lock()
	r := s.known[key]
	if r == nil {
		r = &remembered{}
		s.known[key] = r
	}
	s.mu.Unlock()
	r.mu.Lock()
	defer r.mu.Unlock()
	for _, a := range r.answers {
		if a.serves(allowance) {
			return a
		}
	}
	if s.stop() {
		return answer{err: s.ctx.Err()}
	}
	a := answer{allowance: allowance}
	a.value, a.spent, a.err = solve(cutting.Limits{Allowance: allowance, Stop: s.stop})
	if s.stop() { // the answer may be less than it could be
		return answer{err: s.ctx.Err()}
	}
	r.answers = append(r.answers, a)
	return a
}

// question is one about strips, or about what is cut of them.
func stripsKey(p cutting.Problem, settle measure.Length) string {
	k := key(p.Cloth, p.Pieces, p.Strips)
	if settle > 0 {
		k += fmt.Sprintf("?%d", settle)
	}
	return k
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
