package cutting

import (
	"slices"

	"yardproof/schema/measure"
)

// Limits bound the work of [Solve] in counts, so that equal problems get equal
// answers on every machine. Zero fields take the defaults.
//
// Settle, where positive, is the only question asked: whether so much is enough,
// in ticks without squaring up or, for sheets and stock lengths, in pieces. The
// work stops as soon as a layout needs no more or the bound is above it.
//
// Stop is asked before each linear program and every so often within one. Once it
// says so the work ends as if the limits were reached: whoever is interrupted has no
// use for the answer, which is a layout all the same.
type Limits struct {
	Boxes    int // boxes of strip counts that are priced
	Patterns int // patterns enumerated at once
	Nodes    int // branch and bound nodes over one enumeration, 16 times that at the last try
	Rounds   int // rounds of local search
	Visits   int // columns looked at by the simplex method, and like work, in all
	Settle   measure.Length
	Stop     func() bool // may be nil

	// Allowance, where positive, is all the work that may be spent, in the unit of
	// Spent.Work; about a quarter more may be. [Spent] says whether it was enough.
	Allowance int

	limited bool // Visits are fewer for the allowance
}

// defaultLimits settle almost every quilt of up to eight sizes within less than
// half a second; what they leave open of more sizes takes less than one.
func defaultLimits(sizes int) Limits {
	l := Limits{Boxes: 160, Patterns: 6000, Nodes: 3000, Rounds: 600, Visits: 38_000_000}
	if sizes > 8 {
		l.Visits = 90_000_000
	}
	return l
}

func (l Limits) withDefaults(sizes int) Limits {
	d := defaultLimits(sizes)
	l.Boxes, l.Patterns, l.Nodes = or(l.Boxes, d.Boxes), or(l.Patterns, d.Patterns), or(l.Nodes, d.Nodes)
	l.Rounds, l.Visits = or(l.Rounds, d.Rounds), or(l.Visits, d.Visits)
	return l.within(l.Allowance)
}

// within are the limits where so much work is allowed.
func (l Limits) within(allowance int) Limits {
	if allowance > 0 && allowance < l.Visits {
		l.Visits, l.limited = allowance, true
	}
	return l
}

func or(v, otherwise int) int {
	if v == 0 {
		return otherwise
	}
	return v
}

// Status says what a [Result] proves.
type Status int

const (
	// Gap: a shorter set of strips, down to the bound, is not excluded.
	Gap Status = iota
	// Proved: no set of strips, each cut across the cloth and then into
	// pieces, is shorter. Other ways of cutting may be; for those only
	// [StraightBound] holds.
	Proved
)

func (s Status) String() string {
	if s == Proved {
		return "proved"
	}
	return "gap"
}

// Result is a layout with what is known about shorter ones. Length and Bound
// are in ticks, without squaring up; Bound holds for strips only. A Bound above
// the claim of the Certificate is [AreaBound].
type Result struct {
	Layout      Layout
	Length      measure.Length
	Bound       measure.Length
	Status      Status
	Certificate *Certificate
	Steps       Steps
	Spent       Spent

	best plan
}

// Solve finds a short layout of strips, each cut across the cloth and then
// into pieces (two-stage guillotine cutting), and a lower bound on all of that
// kind: never longer than [Plain] or first-fit decreasing height, and proved
// shortest where the limits allow. The error is that of Plain.
//
// Lengthwise pieces may be cut first and the panel beside them be used, which is
// neither of these: the bound is then [StraightBound], there is no certificate, and
// the layout is the shorter of the two kinds.
func Solve(p Problem, limits Limits) (Result, error) {
	if err := p.check(); err != nil {
		return Result{}, err
	}
	if slices.ContainsFunc(p.Pieces, func(q Piece) bool { return q.Lengthwise && q.Count > 0 }) {
		return solveBeside(p, limits)
	}
	in, err := newInstance(p, exact)
	if err != nil {
		return Result{}, err
	}
	var r Result
	r.strips(p, in, limits.withDefaults(len(in.kinds)))
	r.shorten(Plain(p))
	r.Bound = max(r.Bound, AreaBound(p))
	if r.Bound == r.Length {
		r.Status = Proved
	}
	return r, nil
}

// strips looks for the shortest strips. Where heights share too fine a grid they are
// rounded down first: so few lengths are then to be told apart that a proof comes
// soon, and what rounding hides is small. The rest of the work goes to that.
func (r *Result) strips(p Problem, in *instance, limits Limits) {
	whole := wholeRows(p).Length
	if limits.Settle > 0 {
		limits.Settle -= whole
	}
	rough, _ := newInstance(p, down) // it could be made as it is
	if rough.unitH == in.unitH {
		r.search(p, in, limits, known{})
		return
	}
	r.search(p, rough, limits.first(), known{})
	start := known{rough.exactly(r.best, in), int64(ceilLength(r.Bound-whole, in.unitH))}
	if r.Bound+measure.Length(r.best.strips())*rough.unitH < r.Length || limits.settled(*r, whole) {
		r.best = start.best
		return
	}
	r.search(p, in, limits, start)
}

// first leaves some of the work for a second search.
func (l Limits) first() Limits {
	l.Visits = l.Visits / 4 * 3
	return l
}

// settled reports whether a result answers all that is asked.
func (l Limits) settled(r Result, whole measure.Length) bool {
	return r.Length == r.Bound || l.Settle > 0 && (r.Length-whole <= l.Settle || r.Bound-whole > l.Settle)
}

// known is what an earlier search has found: a plan, and a bound.
type known struct {
	best  plan
	bound int64
}

// search runs a search over an instance and takes what is better of it.
func (r *Result) search(p Problem, in *instance, limits Limits, start known) {
	limits.Settle /= max(1, in.unitH)
	best, bound, scaling := solveStrips(in, limits, start, &r.Steps, &r.Spent)
	l := in.layout(p, best)
	if r.best == nil || l.Length < r.Length {
		r.Layout, r.Length = l, l.Length
	}
	r.best = best
	if r.Certificate == nil || bound.bound > start.bound {
		r.Certificate = in.certificate(p, bound, scaling)
		r.Bound = r.Certificate.Claim
	}
}

// exactly moves a plan to the same instance with its heights as they are.
func (in *instance) exactly(p plan, to *instance) plan {
	p = slices.Clone(p)
	for t := range p {
		p[t].class = to.classOf(int64(in.rowHeight(p[t].pattern) / to.unitH))
	}
	return to.tidy(p, to.demands())
}

// shorten takes another layout if it is shorter.
func (r *Result) shorten(l Layout, err error) {
	if err == nil && l.Length < r.Length {
		r.Layout, r.Length, r.best = l, l.Length, nil
	}
}

// proved is a bound in normalised units with its proof.
type proved struct {
	bound int64
	proof *Proof
}

// solveStrips runs the methods in the order of their cost until one closes the
// gap between the best plan and the best bound. Small enumerations settle most
// problems at once.
func solveStrips(in *instance, limits Limits, before known, done *Steps, spent *Spent) (plan, proved, scaling) {
	if len(in.kinds) == 0 {
		return nil, proved{0, &Proof{Kind: ProofEmpty}}, scaling{scale: 1}
	}
	steps := newMeter(limits, done, spent)
	defer steps.hand(done, spent)
	demand := in.demands()
	start := before.best
	if start == nil {
		start = in.startPlan(demand)
	}
	if steps.tooLittle(in) {
		return start, proved{0, leaf(noDuals(in))}, in.scaling(demand, in.length(start))
	}
	s := newSearch(in, demand, limits, steps, start, newSums(in.heights, in.length(start)))
	m := s.master()
	t := newTree(s, m)
	t.run(1, min(300, limits.Patterns), min(100, limits.Nodes))
	best := t.finish()
	best.bound = max(best.bound, before.bound)
	if s.open(best) {
		s.budget = limits.Visits / 5 * 2
		s.dive(m.pool)
		best = s.climb(m, best, min(1500, limits.Patterns), limits.Nodes)
	}
	if s.open(best) {
		s.budget = limits.Visits / 5 * 4
		s.localSearch(limits.Rounds)
		s.budget = limits.Visits
		best = s.climb(m, best, limits.Patterns, 16*limits.Nodes)
	}
	if in.sheets == nil && in.stock == nil && limits.Settle == 0 {
		if len(in.heights) > 1 {
			s.fewestStrips()
		}
		s.best = in.fewestPatterns(s.best, demand)
	}
	return s.best, best, s.scaling
}

// open reports whether the answer is still open: the bound is below the length
// of the best plan, and the length that is to be settled between them.
func (s *search) open(b proved) bool {
	ask := int64(s.limits.Settle)
	return b.bound < s.length && (ask == 0 || b.bound <= ask && ask < s.length)
}

// climb raises the bound by refuting ever larger aims, or meets one with a
// plan. The aims grow in doubling steps; it stops at the first that the limits
// leave open.
func (s *search) climb(m *master, best proved, patterns, nodes int) proved {
	for stride := 1; s.open(best); stride *= 2 {
		aim := max(best.bound, int64(s.limits.Settle))
		for n := 1; n < stride; n++ {
			aim = min(s.sums.from(aim+1), s.sums.below(s.length))
		}
		s.setAim(aim)
		t := newTree(s, m)
		t.run(s.limits.Boxes, patterns, nodes)
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
