package slip

import (
	"cmp"
	"maps"
	"slices"
	"strconv"

	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// step is by how much a length is moved to see what depends on it.
func (s *search) step() measure.Length {
	if s.Plan.Units == measure.Cm {
		return measure.Centimetre / 2
	}
	return measure.Inch / 8
}

// solve moves every length and count by a step, and tries the values at which what
// differs would agree.
func (s *search) solve() {
	for _, v := range s.values {
		switch {
		case v.length > 0:
			s.solveLength(v)
		case v.count > 0:
			s.solveCount(v)
		}
	}
}

func (s *search) solveLength(v *value) {
	d := s.step()
	good := len(s.good)
	t, ok := s.try(s.length(v, v.length+d))
	if !ok {
		return
	}
	if v.relevant = touches(s.words, wordsOf(t.Found)); !v.relevant {
		return
	}
	defer func() {
		if len(s.good) == good+1 { // a step is enough, and others may be
			s.likely(v)
		}
	}()
	for _, x := range s.roots(gapsOf(t.Sizes), v.length.Surd(), d.Surd()) {
		if exact, whole := x.Length(); whole && (exact.On(s.finest()) || s.Plan.Units == measure.In && exact.On(measure.Inch/100)) {
			s.tryRoot(v, exact)
		}
		s.tryRoot(v, x.NearestTo(s.step()))
	}
}

// finest is the finest line that a value is taken to stand on.
func (s *search) finest() measure.Length {
	if s.Plan.Units == measure.Cm {
		return measure.Millimetre / 10
	}
	return measure.Inch / 32
}

func (s *search) solveCount(v *value) {
	t, ok := s.try(s.count(v, v.count+1))
	if !ok {
		return
	}
	v.relevant = touches(s.words, wordsOf(t.Found))
	if !v.relevant {
		return
	}
	for _, x := range s.roots(gapsOf(t.Sizes), measure.Rational(v.count, 1), measure.Rational(1, 1)) {
		if num, den, ok := x.Rational(); ok && den.IsInt64() && den.Int64() == 1 && num.IsInt64() {
			s.tryRootCount(v, num.Int64())
		}
	}
}

// roots are the values at which a gap would be none, if it grew evenly, those that
// most gaps name first. Three are enough.
func (s *search) roots(moved gaps, at, by measure.Surd) []measure.Surd {
	votes := map[string]int{}
	values := map[string]measure.Surd{}
	for k, g := range s.gaps {
		h, known := moved[k]
		if g.agrees() || !known || h.Equal(g.Surd) {
			continue
		}
		x := at.Sub(g.Mul(by).Div(h.Sub(g.Surd)))
		if x.Sign() > 0 && !x.Equal(at) {
			votes[x.String()]++
			values[x.String()] = x
		}
	}
	names := slices.SortedFunc(maps.Keys(votes), func(a, b string) int { return cmp.Or(cmp.Compare(votes[b], votes[a]), cmp.Compare(a, b)) })
	var all []measure.Surd
	for _, name := range names[:min(3, len(names))] {
		all = append(all, values[name])
	}
	return all
}

func (s *search) length(v *value, x measure.Length) candidate {
	return candidate{of: v, edits: []source.Edit{s.put(v, s.inPlace(v, x))}, is: x.Format(s.Plan.Units), weight: s.weighLength(v, x)}
}

func (s *search) tryLength(v *value, x measure.Length) { s.tryAt(v, x, false) }

func (s *search) tryRoot(v *value, x measure.Length) { s.tryAt(v, x, true) }

// farthest is how many times as much a value may have been meant to be, or what part of
// it: nothing differs any more where everything is as good as nothing.
const farthest = 4

func (s *search) tryAt(v *value, x measure.Length, root bool) {
	if x*farthest >= v.length && x <= v.length*farthest && x != v.length && s.inPlace(v, x) != "" {
		c := s.length(v, x)
		c.solved, c.root = true, root
		s.try(c)
	}
}

func (s *search) count(v *value, n int64) candidate {
	return candidate{of: v, edits: []source.Edit{s.put(v, strconv.FormatInt(n, 10))}, is: strconv.FormatInt(n, 10), weight: 1}
}

func (s *search) tryCount(v *value, n int64) { s.tryCountAt(v, n, false) }

func (s *search) tryRootCount(v *value, n int64) { s.tryCountAt(v, n, true) }

func (s *search) tryCountAt(v *value, n int64, root bool) {
	if n > 0 && n*farthest >= v.count && n <= v.count*farthest && n != v.count {
		c := s.count(v, n)
		c.solved, c.root = true, root
		s.try(c)
	}
}
