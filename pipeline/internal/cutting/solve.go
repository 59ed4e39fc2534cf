package cutting

import "yardproof/schema/measure"

// Limits bound the work of [Solve] in counts, so that equal problems get equal
// answers on every machine. Zero fields take the defaults.
type Limits struct {
	Boxes    int // boxes of strip counts that are priced
	Patterns int // patterns enumerated at once
	Nodes    int // branch and bound nodes over one enumeration
	Rounds   int // rounds of local search
	Visits   int // columns looked at by the simplex method, and like work, in all
}

// DefaultLimits settle almost every quilt of up to eight sizes.
var defaultLimits = Limits{Boxes: 80, Patterns: 6000, Nodes: 3000, Rounds: 120, Visits: 40_000_000}

func (l Limits) withDefaults() Limits {
	d := defaultLimits
	return Limits{
		Boxes: or(l.Boxes, d.Boxes), Patterns: or(l.Patterns, d.Patterns),
		Nodes: or(l.Nodes, d.Nodes), Rounds: or(l.Rounds, d.Rounds), Visits: or(l.Visits, d.Visits),
	}
}

func or(v, otherwise int) int {
	if v == 0 {
		return otherwise
	}
	return v
}

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

func (s *Steps) solve(lp *simplex) lpStatus {
	pivots, visits := lp.pivots, lp.visits
	status := lp.solve()
	s.Pivots += lp.pivots - pivots
	s.Visits += lp.visits - visits
	return status
}

// Status says what a [Result] proves.
type Status int

const (
	// Gap: a shorter set of strips, down to the bound, is not excluded.
	Gap Status = iota
	// Proved: no set of strips, each cut across the cloth and then into
	// pieces, is shorter. Other ways of cutting may be; for those only
	// [AreaBound] holds.
	Proved
)

func (s Status) String() string {
	if s == Proved {
		return "proved"
	}
	return "gap"
}

// Result is a layout with what is known about shorter ones. Length and Bound
// are in ticks, without squaring up; Bound holds for strips only. Certificate is
// nil where the sizes share too fine a grid for more than [AreaBound]; a Bound
// above its claim is that bound too.
type Result struct {
	Layout      Layout
	Length      measure.Length
	Bound       measure.Length
	Status      Status
	Certificate *Certificate
	Steps       Steps

	best plan
}

// Solve finds a short layout of strips, each cut across the cloth and then
// into pieces (two-stage guillotine cutting), and a lower bound on all of that
// kind: never longer than [Plain] or first-fit decreasing height, and proved
// shortest where the limits allow. The error is that of Plain.
func Solve(p Problem, limits Limits) (Result, error) {
	if err := p.check(); err != nil {
		return Result{}, err
	}
	in, err := newInstance(p)
	if err != nil {
		return Result{}, err
	}
	limits = limits.withDefaults()
	var r Result
	best, bound, scaling := solveStrips(in, limits, &r.Steps)
	r.best = best
	r.Layout = in.layout(p, best)
	r.Length = r.Layout.Length
	r.Bound = AreaBound(p)
	if !in.coarse {
		r.Certificate = in.certificate(p, bound, scaling)
		r.Bound = max(r.Bound, r.Certificate.Claim)
	}
	if r.Bound == r.Length {
		r.Status = Proved
	}
	return r, nil
}

// proved is a bound in normalised units with its proof.
type proved struct {
	bound int64
	proof *Proof
}

// solveStrips runs the methods in the order of their cost until one closes the
// gap between the best plan and the best bound.
func solveStrips(in *instance, limits Limits, steps *Steps) (plan, proved, scaling) {
	if len(in.kinds) == 0 {
		return nil, proved{0, &Proof{Kind: ProofEmpty}}, scaling{scale: 1}
	}
	demand := in.demands()
	s := newSearch(in, demand, limits, steps, in.startPlan(demand))
	m := s.master()
	t := newTree(s, m)
	t.run(1, min(300, limits.Patterns), min(100, limits.Nodes))
	best := t.finish()
	if best.bound < s.length {
		s.dive(m.pool)
		s.budget = limits.Visits / 4
		best = s.climb(m, best, min(1500, limits.Patterns))
	}
	if best.bound < s.length {
		s.budget = limits.Visits / 4 * 3
		s.localSearch(limits.Rounds)
		s.budget = limits.Visits
		best = s.climb(m, best, limits.Patterns)
	}
	if in.sheets == nil && len(in.heights) > 1 {
		s.fewestStrips()
		s.best = in.fewestPatterns(s.best, demand)
	}
	return s.best, best, s.scaling
}

// climb raises the bound by refuting ever larger aims, or meets one with a
// plan. The aims grow in doubling steps; it stops at the first that the limits
// leave open.
func (s *search) climb(m *master, best proved, patterns int) proved {
	for stride := 1; best.bound < s.length; stride *= 2 {
		aim := best.bound
		for n := 1; n < stride; n++ {
			aim = min(s.sums.from(aim+1), s.sums.below(s.length))
		}
		s.setAim(aim)
		t := newTree(s, m)
		t.run(s.limits.Boxes, patterns, s.limits.Nodes)
		got := t.finish()
		if got.bound > best.bound {
			best = got
		}
		if t.pending() || s.spent() {
			break
		}
	}
	s.setAim(s.length)
	return best
}
