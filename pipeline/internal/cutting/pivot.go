package cutting

import "math"

// dual runs the dual simplex method: every reduced cost has its right sign
// already, basic variables outside their bounds leave one by one. On
// lpInfeasible, ray is a row of multipliers that proves it.
func (s *simplex) dual() lpStatus {
	for step := 0; step < patience && !s.gaveUp(step); step++ {
		r, below := s.leaving()
		if r < 0 {
			return lpOptimal
		}
		s.pivotRow(r)
		q := s.dualRatio(below)
		if q < 0 {
			s.ray(r, below)
			return lpInfeasible
		}
		s.pivotColumn(q)
		if math.Abs(s.work[r]) < pivotable {
			return lpStalled
		}
		to := atUpper
		if below {
			to = atLower
		}
		s.dualStep(r, q)
		s.exchange(r, q, to)
	}
	return lpStalled
}

// leaving is the row whose basic variable is furthest outside its bounds.
func (s *simplex) leaving() (row int, below bool) {
	row = -1
	worst := feasible
	for i, b := range s.head {
		if v := s.lo[b] - s.x[i]; v > worst {
			row, worst, below = i, v, true
		}
		if v := s.x[i] - s.up[b]; v > worst {
			row, worst, below = i, v, false
		}
	}
	return row, below
}

func (s *simplex) pivotRow(r int) {
	rho := s.inv[r*s.rows : r*s.rows+s.rows]
	s.scan(rho)
	s.visits += len(s.alpha) + s.rows*s.rows/4
	for j := range s.alpha {
		s.alpha[j] = 0
		if s.place[j] < 0 && s.lo[j] != s.up[j] {
			s.alpha[j] = s.dot(rho, j)
		}
	}
}

func (s *simplex) pivotColumn(q int) {
	n := s.rows
	for i := 0; i < n; i++ {
		s.work[i] = s.dotOnce(s.inv[i*n:i*n+n], q)
	}
}

// dotOnce multiplies a row vector with one variable's column.
func (s *simplex) dotOnce(v []float64, j int) float64 {
	if j < s.rows {
		return -v[j]
	}
	c := &s.column[j-s.rows]
	sum := 0.0
	for t, i := range c.row {
		sum += float64(v[i] * c.val[t])
	}
	for _, a := range v[s.first : s.first+c.ones] {
		sum += a
	}
	return sum
}

// dualRatio is the nonbasic variable whose reduced cost reaches zero first; at
// a tie the larger pivot, then the smaller index.
func (s *simplex) dualRatio(below bool) int {
	q, best, size := -1, math.Inf(1), 0.0
	for j, a := range s.alpha {
		if s.place[j] >= 0 || s.lo[j] == s.up[j] {
			continue
		}
		// x_r falls by alpha as x_j rises.
		rises := (s.place[j] == atLower) == (a < 0)
		if math.Abs(a) < pivotable || rises != below {
			continue
		}
		ratio := math.Abs(s.d[j] / a)
		if ratio < best-1e-12 || ratio <= best+1e-12 && math.Abs(a) > size {
			q, best, size = j, min(best, ratio), math.Abs(a)
		}
	}
	return q
}

// dualStep updates the reduced costs for a pivot on (r, q).
func (s *simplex) dualStep(r, q int) {
	theta := s.d[q] / s.alpha[q]
	if theta != 0 {
		for j, a := range s.alpha {
			if a != 0 && s.place[j] < 0 {
				s.d[j] -= float64(theta * a)
			}
		}
	}
	s.d[s.head[r]] = -theta
	s.d[q] = 0
}

// primal runs the primal simplex method from a feasible basis, Dantzig's rule
// first and Bland's after a long run without progress.
func (s *simplex) primal() lpStatus {
	still := 0
	for step := 0; step < patience && !s.gaveUp(step); step++ {
		q := s.entering(still > 4*s.rows+50)
		if q < 0 {
			return lpOptimal
		}
		s.pivotColumn(q)
		r, t, to := s.primalRatio(q)
		if math.IsInf(t, 1) {
			return lpStalled // no cost is negative, so this is numerical trouble
		}
		if t > 1e-12 {
			still = 0
		} else {
			still++
		}
		if r < 0 {
			s.flip(q)
			continue
		}
		s.pivotRow(r)
		s.alpha[q] = s.work[r]
		s.dualStep(r, q)
		s.exchange(r, q, to)
	}
	return lpStalled
}

func (s *simplex) entering(first bool) int {
	q, best := -1, negative
	for j := range s.d {
		if s.place[j] >= 0 {
			continue
		}
		if v := s.attractive(j); v > best {
			if first {
				return j
			}
			q, best = j, v
		}
	}
	return q
}

// primalRatio is the row that blocks variable q first, the step t, and the
// bound the blocking variable goes to; row -1 means q reaches its other bound.
func (s *simplex) primalRatio(q int) (row int, t float64, to int) {
	row, t = -1, s.up[q]-s.lo[q]
	size := 0.0
	for i, b := range s.head {
		w := s.work[i]
		if s.place[q] == atUpper {
			w = -w
		}
		var room float64
		var side int
		switch {
		case w > pivotable:
			room, side = max(0, s.x[i]-s.lo[b])/w, atLower
		case w < -pivotable:
			room, side = max(0, s.up[b]-s.x[i])/-w, atUpper
		default:
			continue
		}
		if room < t-1e-12 || room <= t+1e-12 && math.Abs(w) > size {
			row, t, to, size = i, min(t, room), side, math.Abs(w)
		}
	}
	return row, t, to
}

// flip moves a nonbasic variable to its other bound.
func (s *simplex) flip(q int) {
	if s.place[q] == atLower {
		s.place[q] = atUpper
	} else {
		s.place[q] = atLower
	}
	s.values()
}

// exchange makes q basic in row r; the variable that leaves goes to a bound.
// The pivot column must be in work.
func (s *simplex) exchange(r, q, to int) {
	n, b := s.rows, s.head[r]
	bound := s.lo[b]
	if to == atUpper {
		bound = s.up[b]
	}
	delta := (s.x[r] - bound) / s.work[r]
	at := s.value(q) + delta
	for i := range s.x {
		s.x[i] -= float64(delta * s.work[i])
	}
	s.x[r] = at
	s.head[r], s.place[q], s.place[b] = q, r, to
	pivot := s.inv[r*n : r*n+n]
	for t := range pivot {
		pivot[t] /= s.work[r]
	}
	for i := 0; i < n; i++ {
		f := s.work[i]
		if i == r || f == 0 {
			continue
		}
		row := s.inv[i*n : i*n+n]
		for t, v := range pivot {
			row[t] -= float64(f * v)
		}
	}
	s.pivots++
	s.age++
	if s.age >= refactor {
		s.invert()
		s.refresh()
	}
}

// ray turns the duals into a proof of infeasibility: row r cannot come within
// its bounds, so any multiple of its row of the inverse may be added to the
// duals. The multiple makes the dual objective rise by gain; integers check
// what comes of it.
func (s *simplex) ray(r int, below bool) {
	s.multipliers()
	b := s.head[r]
	out, sign := s.lo[b]-s.x[r], -1.0
	if !below {
		out, sign = s.x[r]-s.up[b], 1
	}
	t := sign * s.gain / max(out, feasible)
	for i, v := range s.inv[r*s.rows : r*s.rows+s.rows] {
		s.y[i] += float64(t * v)
	}
}
