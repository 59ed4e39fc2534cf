package diag

import "slices"

// Mark is what makes a finding the same one before and after an edit of its plan,
// though its numbers change. A finding has one for each of its sizes.
type Mark struct{ Rule, Pointer, Size string }

// Marks are the finding's.
func (f Finding) Marks() []Mark {
	if len(f.Sizes) == 0 {
		return []Mark{{f.Rule, f.Place.Pointer, ""}}
	}
	var all []Mark
	for _, size := range f.Sizes {
		all = append(all, Mark{f.Rule, f.Place.Pointer, size})
	}
	return all
}

// Tally counts findings by their marks and levels.
type Tally map[Mark]*[Error + 1]int

// Tallied counts findings. Those that follow from them count only where they are
// given, too; see [Flatten].
func Tallied(findings []Finding) Tally {
	t := Tally{}
	for _, f := range findings {
		t.add(f)
	}
	return t
}

func (t Tally) add(f Finding) {
	for _, m := range f.Marks() {
		if t[m] == nil {
			t[m] = new([Error + 1]int)
		}
		t[m][f.Level]++
	}
}

// from is how many there are of a mark, of a level or above.
func (t Tally) from(m Mark, least Level) (n int) {
	if t[m] != nil {
		for _, k := range t[m][least:] {
			n += k
		}
	}
	return n
}

// Holds reports whether a finding, of any of its sizes and at any level, is among
// them.
func (t Tally) Holds(f Finding) bool { return t.holds(f, 0) }

// HoldsAsGrave reports whether it is, at its level or above.
func (t Tally) HoldsAsGrave(f Finding) bool { return t.holds(f, f.Level) }

func (t Tally) holds(f Finding, least Level) bool {
	return slices.ContainsFunc(f.Marks(), func(m Mark) bool { return t.from(m, least) > 0 })
}

// Covers reports whether a finding is one of them and no graver, in each of its
// sizes, and adds it to those seen, of which no more are covered than there are.
func (t Tally) Covers(f Finding, seen Tally) bool {
	seen.add(f)
	for _, m := range f.Marks() {
		if seen.from(m, 0) > t.from(m, 0) || t.from(m, f.Level) == 0 {
			return false
		}
	}
	return true
}

// Count is how many there are of a level or above, each of several sizes as so many.
func (t Tally) Count(least Level) (n int) {
	for m := range t {
		n += t.from(m, least)
	}
	return n
}

// Within reports whether no warning and no error is among them that is not among
// others, at least as grave.
func (t Tally) Within(others Tally) bool {
	for m, levels := range t {
		for l := Warning; l <= Error; l++ {
			if levels[l] > others.from(m, l) {
				return false
			}
		}
	}
	return true
}
