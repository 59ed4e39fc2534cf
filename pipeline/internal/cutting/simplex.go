package cutting

import "math"

// simplex is a bounded-variable revised simplex method with a dense basis
// inverse, for the small masters of strip cutting (some ten to a hundred rows).
// Every row i reads sum_j a_ij x_j - s_i = 0 with its logical variable s_i
// between bounds, so that changing a demand or branching on a strip count is a
// change of bounds and never of the matrix, and the all-logical basis is dual
// feasible whenever no cost is negative.
//
// Its floats only guide: what is claimed of a bound is computed again in
// integers from the duals. Products are converted explicitly before they are
// added, which forbids the compiler to fuse them, so that every machine takes
// the same pivots.
type simplex struct {
	rows   int
	column []sparse    // by structural variable
	cost   []float64   // by variable, logicals first
	lo, up []float64   // by variable
	place  []int       // by variable: basis row, or atLower, or atUpper
	head   []int       // by row: its basic variable
	inv    []float64   // basis inverse, row major
	x      []float64   // by row: value of its basic variable
	y      []float64   // by row: dual
	d      []float64   // by variable: reduced cost, 0 while basic
	alpha  []float64   // by variable: pivot row
	work   []float64   // by row: pivot column
	prefix []float64   // by row: running sums of the row vector of scan, from first on
	first  int         // row from which on the ones of a column run
	age    int         // pivots since the inverse was last computed afresh
	pivots int         // pivots ever, for the step count
	visits int         // columns looked at ever, for the same
	gain   float64     // what a proof of infeasibility must add to the objective
	halted func() bool // asked every so many pivots whether to give up; may be nil
}

// sparse is a matrix column: single entries, and so many ones downward from the
// simplex's first row of that kind.
type sparse struct {
	row  []int
	val  []float64
	ones int
}

const (
	atLower = -1
	atUpper = -2

	feasible  = 1e-7  // tolerated bound violation
	negative  = 1e-9  // tolerated reduced cost of the wrong sign
	pivotable = 1e-8  // least pivot element
	refactor  = 64    // pivots between fresh inverses
	patience  = 20000 // pivots in one solve before giving up
	breath    = 32    // pivots after which it is asked whether to
)

type lpStatus int

const (
	lpOptimal lpStatus = iota
	lpInfeasible
	lpStalled
)

// newSimplex has so many rows, the ones of whose columns start at row first.
func newSimplex(rows, first int) *simplex {
	s := &simplex{
		rows: rows, first: first, prefix: make([]float64, rows-first+1), head: make([]int, rows), inv: make([]float64, rows*rows),
		x: make([]float64, rows), y: make([]float64, rows), work: make([]float64, rows),
	}
	for i := 0; i < rows; i++ {
		s.addVariable(0, 0, math.Inf(1))
	}
	s.logicalBasis()
	return s
}

func (s *simplex) addVariable(cost, lo, up float64) {
	s.cost, s.lo, s.up = append(s.cost, cost), append(s.lo, lo), append(s.up, up)
	s.place = append(s.place, atLower)
	s.d, s.alpha = append(s.d, 0), append(s.alpha, 0)
}

// addColumn appends a structural variable, nonbasic at its lower bound, and
// returns its variable index.
func (s *simplex) addColumn(c sparse, cost, lo, up float64) int {
	j := len(s.cost)
	s.column = append(s.column, c)
	s.addVariable(cost, lo, up)
	return j
}

// scan prepares products of the row vector v with columns.
func (s *simplex) scan(v []float64) {
	sum := 0.0
	for i, a := range v[s.first:] {
		sum += a
		s.prefix[i+1] = sum
	}
}

// dot multiplies the row vector last scanned with a variable's column.
func (s *simplex) dot(v []float64, j int) float64 {
	if j < s.rows {
		return -v[j]
	}
	c := &s.column[j-s.rows]
	sum := s.prefix[c.ones]
	for t, i := range c.row {
		sum += float64(v[i] * c.val[t])
	}
	return sum
}

func (s *simplex) logicalBasis() {
	clear(s.inv)
	for j := range s.place {
		s.place[j] = atLower
	}
	for i := range s.head {
		s.head[i], s.place[i] = i, i
		s.inv[i*s.rows+i] = -1
	}
	s.age = 0
}

// solve finds an optimal basis from the one at hand.
func (s *simplex) solve() lpStatus {
	s.refresh()
	s.settle()
	for try := 0; try < 3; try++ {
		status := lpStalled
		switch {
		case s.primalFeasible():
			status = s.primal()
		case s.dualFeasible():
			status = s.dual()
		}
		if status == lpStalled {
			s.logicalBasis()
			s.refresh()
			s.settle()
			continue
		}
		if status == lpOptimal {
			s.multipliers()
		}
		return status
	}
	return lpStalled
}

// gaveUp asks, every so many pivots, whether to.
func (s *simplex) gaveUp(step int) bool {
	return step%breath == breath-1 && s.halted != nil && s.halted()
}

// refresh recomputes duals, reduced costs and basic values from the inverse.
func (s *simplex) refresh() {
	s.multipliers()
	s.scan(s.y)
	s.visits += len(s.d)
	for j := range s.d {
		s.d[j] = 0
		if s.place[j] < 0 {
			s.d[j] = s.cost[j] - s.dot(s.y, j)
		}
	}
	s.values()
}

// multipliers computes the duals.
func (s *simplex) multipliers() {
	n := s.rows
	clear(s.y)
	for i, b := range s.head {
		if c := s.cost[b]; c != 0 {
			row := s.inv[i*n : i*n+n]
			for t, v := range row {
				s.y[t] += float64(c * v)
			}
		}
	}
}

// settle puts every nonbasic variable at the bound its reduced cost prefers,
// among those that are finite.
func (s *simplex) settle() {
	for j := range s.d {
		if s.place[j] >= 0 {
			continue
		}
		switch {
		case math.IsInf(s.up[j], 1):
			s.place[j] = atLower
		case math.IsInf(s.lo[j], -1):
			s.place[j] = atUpper
		case s.d[j] < -negative:
			s.place[j] = atUpper
		case s.d[j] > negative:
			s.place[j] = atLower
		}
	}
	s.values()
}

// value is a nonbasic variable's value.
func (s *simplex) value(j int) float64 {
	if s.place[j] == atUpper {
		return s.up[j]
	}
	return s.lo[j]
}

// values computes the basic variables.
func (s *simplex) values() {
	n := s.rows
	clear(s.work)
	for j := range s.place {
		if s.place[j] >= 0 {
			continue
		}
		v := s.value(j)
		if v == 0 {
			continue
		}
		if j < n {
			s.work[j] -= v
			continue
		}
		c := &s.column[j-n]
		for t, i := range c.row {
			s.work[i] += float64(v * c.val[t])
		}
		for i := s.first; i < s.first+c.ones; i++ {
			s.work[i] += v
		}
	}
	for i := 0; i < n; i++ {
		sum := 0.0
		for t, v := range s.inv[i*n : i*n+n] {
			sum += float64(v * s.work[t])
		}
		s.x[i] = -sum
	}
}

func (s *simplex) primalFeasible() bool {
	for i, b := range s.head {
		if s.x[i] < s.lo[b]-feasible || s.x[i] > s.up[b]+feasible {
			return false
		}
	}
	return true
}

func (s *simplex) dualFeasible() bool {
	for j := range s.d {
		if s.place[j] < 0 && s.attractive(j) > 1e-7 {
			return false
		}
	}
	return true
}

// attractive is how much a nonbasic variable's reduced cost promises.
func (s *simplex) attractive(j int) float64 {
	switch {
	case s.lo[j] == s.up[j]:
		return 0
	case s.place[j] == atLower:
		return -s.d[j]
	}
	return s.d[j]
}

// solution reads a variable's value.
func (s *simplex) solution(j int) float64 {
	if s.place[j] >= 0 {
		return s.x[s.place[j]]
	}
	return s.value(j)
}

// invert computes the basis inverse afresh by Gauss-Jordan elimination with
// partial pivoting. A singular basis falls back to the all-logical one.
func (s *simplex) invert() {
	n := s.rows
	a := make([]float64, n*n)
	for t, b := range s.head {
		if b < n {
			a[b*n+t] = -1
			continue
		}
		c := &s.column[b-n]
		for u, i := range c.row {
			a[i*n+t] = c.val[u]
		}
		for i := s.first; i < s.first+c.ones; i++ {
			a[i*n+t] = 1
		}
	}
	clear(s.inv)
	for i := 0; i < n; i++ {
		s.inv[i*n+i] = 1
	}
	for t := 0; t < n; t++ {
		if !s.eliminate(a, t) {
			s.logicalBasis()
			return
		}
	}
	s.age = 0
}

// eliminate makes column t of a the t-th unit vector by row operations, which
// it repeats on the inverse.
func (s *simplex) eliminate(a []float64, t int) bool {
	n := s.rows
	best := t
	for i := t + 1; i < n; i++ {
		if math.Abs(a[i*n+t]) > math.Abs(a[best*n+t]) {
			best = i
		}
	}
	p := a[best*n+t]
	if math.Abs(p) < 1e-11 {
		return false
	}
	for u := 0; u < n; u++ {
		a[best*n+u], a[t*n+u] = a[t*n+u], a[best*n+u]/p
		s.inv[best*n+u], s.inv[t*n+u] = s.inv[t*n+u], s.inv[best*n+u]/p
	}
	for i := 0; i < n; i++ {
		f := a[i*n+t]
		if i == t || f == 0 {
			continue
		}
		for u := 0; u < n; u++ {
			a[i*n+u] -= float64(f * a[t*n+u])
			s.inv[i*n+u] -= float64(f * s.inv[t*n+u])
		}
	}
	return true
}
