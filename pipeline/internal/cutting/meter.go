package cutting

// Steps counts the work done.
type Steps struct {
	Masters  int // linear programs of column generation
	Pivots   int // simplex pivots
	Visits   int // columns looked at by the simplex method, and like work
	Boxes    int // boxes of strip counts priced
	Nodes    int // branch and bound nodes
	Patterns int // patterns enumerated
	Rounds   int // rounds of local search
}

// Spent is what an answer has cost. Work is in the unit of Steps.Visits and
// counts what these leave out, too: tables that are filled again, and sheets that
// are compared. Where Short is false the work allowed was enough: with more, the
// answer would be the very same.
type Spent struct {
	Work  int
	Short bool
}

func (s *Spent) add(t Spent) { s.Work, s.Short = s.Work+t.Work, s.Short || t.Short }

// toll charges work that is not among the visits.
func (m *meter) toll(work int) { m.tolls += work }

// meter counts the work while it goes on, and asks whether to stop.
type meter struct {
	Steps
	tolls int         // work that is not among the visits
	most  int         // visits and tolls that nothing goes beyond
	stop  func() bool // may be nil

	limited bool // by an allowance
	short   bool // more might have been done
}

// allVisits is more than any limit.
const allVisits = 1 << 50

// newMeter goes on from what was done before of the same allowance.
func newMeter(l Limits, done *Steps, spent *Spent) *meter {
	m := &meter{Steps: *done, most: 2*l.Visits - spent.Work + done.Visits, stop: l.Stop}
	if l.limited {
		m.limited, m.most = true, m.most-l.Visits/4*3
	}
	return m
}

// leastVisits is what the smallest of searches takes, beside filling tables a few
// times.
const leastVisits = 10_000

// tooLittle reports whether the allowance is not worth beginning a search.
func (m *meter) tooLittle(in *instance) bool {
	return m.limited && m.halted(leastVisits+4*in.filling())
}

// hand adds what was done to what had been done before.
func (m *meter) hand(done *Steps, spent *Spent) {
	spent.add(Spent{Work: m.Visits - done.Visits + m.tolls, Short: m.limited && m.short})
	*done = m.Steps
}

func (s *Steps) add(t Steps) {
	s.Masters, s.Pivots, s.Visits = s.Masters+t.Masters, s.Pivots+t.Pivots, s.Visits+t.Visits
	s.Boxes, s.Nodes, s.Patterns, s.Rounds = s.Boxes+t.Boxes, s.Nodes+t.Nodes, s.Patterns+t.Patterns, s.Rounds+t.Rounds
}

// atMost is so many steps, or fewer where an allowance does not reach for them.
func (m *meter) atMost(steps int) int {
	if m.limited {
		return max(1, min(steps, m.most-m.Visits-m.tolls))
	}
	return steps
}

// cut remembers that some work was cut short of what it may be.
func (m *meter) cut(short bool) { m.short = m.short || short }

// apart does a piece of work that has a budget of its own. To reach that is no sign
// that more should be done.
func (m *meter) apart(do func()) {
	short := m.short
	do()
	m.short = short || m.Visits+m.tolls > m.most
}

// beyond reports whether more visits were done than so many, or more work than
// is allowed in all.
func (m *meter) beyond(visits int) bool {
	if m.Visits > visits || m.Visits+m.tolls > m.most {
		m.short = true
		return true
	}
	return false
}

// halted is asked in the middle of a long piece of work, which has done so much
// that is not counted yet.
func (m *meter) halted(more int) bool {
	if m.stop != nil && m.stop() {
		m.Visits = allVisits
	}
	if m.Visits+m.tolls+more > m.most {
		m.short = true
		return true
	}
	return false
}

// solve solves a linear program, unless the work is to stop.
func (m *meter) solve(lp *simplex) lpStatus {
	if m.stop != nil && m.stop() {
		m.Visits = allVisits
		return lpStalled
	}
	pivots, visits := lp.pivots, lp.visits
	lp.halted = func() bool { return m.halted(lp.visits - visits) }
	status := lp.solve()
	m.Pivots += lp.pivots - pivots
	m.Visits += lp.visits - visits
	return status
}
