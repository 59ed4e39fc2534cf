package slip

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// Case is a plan in which something was found.
type Case struct {
	File  *source.File
	Tree  *jsontree.Node
	Plan  *plan.Plan
	Sizes []*derive.Size
	Found []diag.Finding // those that follow from others, too
	// Speaks reports whether a finding is, as a warning or an error, that two tellings of
	// the quilt disagree, or that its parts do not fit: not that something is short, dear or unsaid.
	Speaks func(diag.Finding) bool
	// Try judges the plan with edits made in its text; ok is false where that
	// cannot be done, or is not to be done any more.
	Try func(edits []source.Edit) (t Trial, ok bool)
}

// Trial is what comes of an edit.
type Trial struct {
	Sizes []*derive.Size // none where the plan can no longer be read
	Found []diag.Finding // as of a case
}

// Slip is a mistake that explains what was found.
type Slip struct {
	At    source.Range // of the value
	Says  string       // "the width of border \"frame\" is 3 1/4 in"
	Is    string       // what it would be: "3 in"
	Does  string       // "write \"3\" for the width of border \"frame\""
	Edits []source.Edit
	Clear []diag.Finding // what is gone with it
	Left  int            // errors that are there with it, too

	Sure    bool     // it is the value at which two lengths are equal, and the next likely is far behind
	Print   bool     // what is printed is the unfinished size, which is the print's slip as well
	Sewn    bool     // something is gone with it that no printed figure has a part in
	Figures int      // printed figures that disagree now and do not with it
	Sizes   []string // of the plan, in which they are printed
}

// Search finds the slips that explain most, the likeliest first: all leave the same
// number of errors, and bring nothing new. There are none where no edit that was
// tried takes an error away, or where a single printed figure is all that disagrees:
// that is the print's more often than the recipe's.
func Search(c Case) []Slip {
	s := &search{Case: c, base: diag.Tallied(c.Found), words: wordsOf(c.speaking(c.Found)), gaps: gapsOf(c.Sizes), seen: map[string]bool{}}
	if n, fits := s.evidence(c.Found, s.gaps.disagree()); n < 2 && fits {
		return nil
	}
	s.values = s.list()
	s.solve()
	s.exchange()
	s.trim()
	s.turn()
	if !s.explained() {
		s.neighbours()
	}
	if !s.explained() {
		s.rename()
	}
	return s.best()
}

// speaking are the findings that speak of a slip.
func (c Case) speaking(found []diag.Finding) []diag.Finding {
	return slices.DeleteFunc(slices.Clone(found), func(f diag.Finding) bool { return !c.Speaks(f) })
}

// evidence counts the printed figures that findings contradict, of which so many are
// known to be lengths or counts of parts, and tells whether all else fits.
func (s *search) evidence(found []diag.Finding, known int) (figures int, fits bool) {
	seen, others := map[string]bool{}, 0
	fits = true
	for _, f := range s.speaking(found) {
		p := f.Place.Pointer
		switch {
		case !printed(p):
			fits = false
		case !seen[p]:
			if seen[p] = true; !counted(p) {
				others++
			}
		}
	}
	return max(len(seen), others+known), fits
}

// printed reports whether a place is that of a printed figure.
func printed(pointer string) bool { return strings.HasPrefix(pointer, "/printed/") }

// counted reports whether the printed figures at a place are among the gaps.
func counted(pointer string) bool {
	parts := strings.Split(pointer, "/")
	return len(parts) > 3 && (parts[3] == "finished" || parts[3] == "measures" || parts[3] == "parts" || parts[len(parts)-1] == "cut")
}

// search is a case under work.
type search struct {
	Case
	base   diag.Tally
	words  map[mark]string
	gaps   gaps
	values []*value
	seen   map[string]bool // candidates that were tried
	good   []candidate
}

// candidate is an edit and what came of it.
type candidate struct {
	of     *value
	edits  []source.Edit
	key    string // of the edits
	is     string
	weight int // the less, the likelier
	left   diag.Tally
	grave  int  // findings that speak of a slip, that it leaves
	errors int  // all that it leaves
	rest   int  // and with warnings and notes
	solved bool // more than a step from what is there
	root   bool // the value at which what differs agrees
	now    gaps
}

// try judges a candidate, and keeps it where it takes errors away and brings
// nothing. What was found then is returned.
func (s *search) try(c candidate) (Trial, bool) {
	key := ""
	for _, e := range c.edits {
		key += fmt.Sprintf("%d-%d %s\n", e.Range.Start, e.Range.End, e.Text)
	}
	if s.seen[key] {
		c.key = key
		s.mark(c)
		return Trial{}, false
	}
	s.seen[key], c.key = true, key
	t, ok := s.Try(c.edits)
	if !ok || len(t.Sizes) == 0 {
		return Trial{}, false
	}
	c.left = diag.Tallied(t.Found)
	if c.left.Within(s.base) && s.whole(t.Found) {
		left := s.speaking(t.Found)
		c.grave, c.errors, c.rest = len(left), c.left.Count(diag.Error), c.left.Count(diag.Note)
		if c.grave < len(s.speaking(s.Found)) {
			c.now = gapsOf(t.Sizes)
			s.good = append(s.good, c)
		}
	}
	return t, true
}

// mark notes of a candidate that was tried that it is a root, too.
func (s *search) mark(c candidate) {
	for i := range s.good {
		if g := &s.good[i]; g.key == c.key {
			g.solved, g.root = g.solved || c.solved, g.root || c.root
		}
	}
}

// whole reports whether each finding that is gone is gone in all sizes.
func (s *search) whole(left []diag.Finding) bool {
	type subject struct{ rule, pointer string }
	before, after := map[subject]int{}, map[subject]int{}
	for _, f := range s.speaking(s.Found) {
		before[subject{f.Rule, f.Place.Pointer}] += len(f.Marks())
	}
	for _, f := range s.speaking(left) {
		after[subject{f.Rule, f.Place.Pointer}] += len(f.Marks())
	}
	for k, n := range after {
		if n < before[k] {
			return false
		}
	}
	return true
}

// explained reports whether some candidate that is more than a trial step leaves
// neither error nor warning.
func (s *search) explained() bool {
	return slices.ContainsFunc(s.good, func(c candidate) bool { return c.solved && c.grave == 0 })
}

// best are the candidates that leave least, and are the smallest of those. A length or a
// count at which nothing differs any more is told; one that is merely enough is not, for
// others would be, too.
func (s *search) best() []Slip {
	s.good = slices.DeleteFunc(s.good, func(c candidate) bool { return !c.root })
	slices.SortStableFunc(s.good, func(a, b candidate) int {
		return cmp.Or(leaves(a, b), cmp.Compare(a.weight, b.weight),
			cmp.Compare(a.edits[0].Range.Start, b.edits[0].Range.Start), cmp.Compare(a.is, b.is))
	})
	var all []Slip
	for i, c := range s.good {
		if leaves(c, s.good[0]) != 0 {
			break
		}
		if told := s.slip(c); told.Figures > 1 || told.Sewn {
			told.Sure, told.Print = s.ahead(i), !told.Sewn && unfinished(s.Sizes)
			all = append(all, told)
		}
	}
	return all
}

// lead is by how much a candidate has to be the likelier for it to be told of a finding
// that stands alone.
const lead = 2

// ahead reports whether a candidate is likelier than all others that leave as little.
func (s *search) ahead(i int) bool {
	c := s.good[i]
	for j, d := range s.good {
		if j != i && leaves(c, d) == 0 && d.weight < c.weight+lead {
			return false
		}
	}
	return true
}

func leaves(a, b candidate) int {
	return cmp.Or(cmp.Compare(a.grave, b.grave), cmp.Compare(a.errors, b.errors), cmp.Compare(len(a.edits), len(b.edits)), cmp.Compare(a.rest, b.rest))
}
