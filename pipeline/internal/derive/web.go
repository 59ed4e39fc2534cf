package derive

// web is what is worked out from what, in numbers that stand for quantities: a
// plan may have thousands of findings, and of each is asked what follows from it.
type web struct {
	number map[Quantity]int
	named  []Quantity
	next   [][]int // what is worked out directly; nil until it is asked for
	seen   []int   // by number: the last walk that came by
	walks  int
}

// Number stands for a quantity of this size, named in the recipe or not.
func (s *Size) Number(q Quantity) int {
	w := &s.web
	if w.number == nil {
		w.number = map[Quantity]int{}
	}
	n, ok := w.number[q]
	if !ok {
		n = len(w.named)
		w.number[q] = n
		w.named, w.next, w.seen = append(w.named, q), append(w.next, nil), append(w.seen, 0)
	}
	return n
}

// Effects are the numbers of all quantities that depend on q in this size, so that
// mending q may mend them. Nothing depends on itself.
func (s *Size) Effects(q Quantity) []int {
	w := &s.web
	first := s.Number(q)
	w.walks++
	w.seen[first] = w.walks
	var all []int
	open := []int{first}
	for len(open) > 0 {
		n := open[len(open)-1]
		open = open[:len(open)-1]
		for _, e := range s.directly(n) {
			if w.seen[e] != w.walks {
				w.seen[e] = w.walks
				all, open = append(all, e), append(open, e)
			}
		}
	}
	return all
}

// directly are what is worked out from a quantity, each once.
func (s *Size) directly(n int) []int {
	if s.web.next[n] == nil {
		next, seen := []int{}, map[int]bool{}
		for _, q := range s.effects(s.web.named[n]) {
			if e := s.Number(q); !seen[e] {
				seen[e] = true
				next = append(next, e)
			}
		}
		s.web.next[n] = next
	}
	return s.web.next[n]
}
