package words

// item is one number of a text, or two as width and length, in all the sizes that
// it is given for.
type item struct {
	alts [][]*number // by size where there are several; one or two numbers each
	from int         // tokens
	to   int
	also []*number // the same in other units, in brackets
}

func (it *item) first() *number { return it.alts[0][0] }

func (it *item) length() bool { return it.first().isLength() }

func (it *item) pair() bool { return len(it.alts[0]) > 1 }

func (it *item) numbers() []*number {
	var all []*number
	for _, a := range it.alts {
		all = append(all, a...)
	}
	return all
}

// itemize puts the numbers of a sentence together: width by length, the values of
// several sizes, and the same in other units.
func itemize(t []token, numbers []*number, sizes int) []*item {
	var out []*item
	for i := 0; i < len(numbers); {
		n := numbers[i]
		if n.sense != quantity {
			i++
			continue
		}
		it := &item{alts: [][]*number{{n}}, from: n.from, to: n.to}
		i = it.pairUp(t, numbers, i+1)
		i = it.list(t, numbers, i, sizes)
		it.square(t)
		out = append(out, it)
	}
	return out
}

func at(t []token, i int) token {
	if i < 0 || i >= len(t) {
		return token{kind: mark, loose: true}
	}
	return t[i]
}

// pairUp takes the number after "x" or "by" for the second side.
func (it *item) pairUp(t []token, numbers []*number, i int) int {
	a := it.alts[len(it.alts)-1]
	if i >= len(numbers) || numbers[i].sense != quantity || !at(t, it.to).is("x", "×", "by") || numbers[i].from != it.to+1 {
		return i
	}
	b := numbers[i]
	a = append(a, b)
	switch {
	case a[0].unit == 0 && b.unit > 0:
		a[0].unit = b.unit
	case b.unit == 0 && a[0].unit > 0:
		b.unit = a[0].unit
	}
	it.alts[len(it.alts)-1], it.to = a, b.to
	return i + 1
}

// square takes "9 1/2 in square" for both sides.
func (it *item) square(t []token) {
	if it.length() && !it.pair() && (at(t, it.to).is("square") || at(t, it.to).is("each") && at(t, it.to+1).is("way")) {
		for i, a := range it.alts {
			it.alts[i] = []*number{a[0], a[0]}
		}
	}
}

// list reads what follows in brackets: the values of the other sizes, or the same
// value in other units.
func (it *item) list(t []token, numbers []*number, i, sizes int) int {
	closing := map[string]string{"(": ")", "[": "]", "/": ""}[at(t, it.to).text]
	if closing == "" {
		return i
	}
	more := &item{from: it.to + 1, to: it.to + 1}
	j, pos := i, it.to+1
	for j < len(numbers) && numbers[j].from == pos && numbers[j].sense == quantity {
		more.alts = append(more.alts, []*number{numbers[j]})
		more.to = numbers[j].to
		j = more.pairUp(t, numbers, j+1)
		pos = more.to
		if !at(t, pos).is(",", ";", ":") {
			break
		}
		pos++
	}
	if len(more.alts) == 0 || at(t, pos).text != closing {
		return i
	}
	pos++
	unit, end := it.first().unit, pos
	if u, ok := unitNamed(at(t, pos).text); ok && at(t, pos).kind == word {
		unit, end = u, pos+1
	}
	if it.converted(more) {
		it.also = more.numbers()
		it.to = pos
		return j
	}
	if len(more.alts)+1 != sizes || sizes < 2 {
		return i
	}
	it.alts = append(it.alts, more.alts...)
	it.to = end
	for _, n := range more.numbers() {
		if n.unit > 0 && unit == 0 {
			unit = n.unit
		}
	}
	for k, a := range it.alts {
		for _, n := range a {
			if n.unit == 0 {
				n.unit = unit
			}
			n.size = k + 1
		}
	}
	return j
}

// converted reports whether one value in brackets is in the other system of units.
func (it *item) converted(more *item) bool {
	a, b := it.first(), more.first()
	return len(more.alts) == 1 && a.isLength() && b.isLength() && metric(a) != metric(b) && len(it.alts[0]) == len(more.alts[0])
}
