package slip

import (
	"yardproof/pipeline/diag"
)

// mark is what makes a finding the same one before and after an edit, though its
// numbers change.
type mark struct {
	rule, pointer, size string
	level               diag.Level
}

// tally counts findings by their marks.
type tally map[mark]int

func marksOf(f diag.Finding) []mark {
	if len(f.Sizes) == 0 {
		return []mark{{f.Rule, f.Place.Pointer, "", f.Level}}
	}
	var all []mark
	for _, s := range f.Sizes {
		all = append(all, mark{f.Rule, f.Place.Pointer, s, f.Level})
	}
	return all
}

func tallied(found []diag.Finding) tally {
	t := tally{}
	for _, f := range found {
		for _, m := range marksOf(f) {
			t[m]++
		}
	}
	return t
}

// count is how many are of a level or above.
func (t tally) count(least diag.Level) int {
	n := 0
	for m, k := range t {
		if m.level >= least {
			n += k
		}
	}
	return n
}

// within reports whether nothing but notes is there that is not in another, at least
// as grave.
func (t tally) within(base tally) bool {
	for m, n := range t {
		if m.level == diag.Note {
			continue
		}
		graver := 0
		for l := m.level; l <= diag.Error; l++ {
			graver += base[mark{m.rule, m.pointer, m.size, l}]
		}
		if n > graver {
			return false
		}
	}
	return true
}

// wordsOf are the messages of findings by their marks.
func wordsOf(found []diag.Finding) map[mark]string {
	words := map[mark]string{}
	for _, f := range found {
		for _, m := range marksOf(f) {
			words[m] += f.Message
		}
	}
	return words
}

// touches reports whether a finding is another one than before, or gone.
func touches(before, after map[mark]string) bool {
	for m, words := range before {
		if after[m] != words {
			return true
		}
	}
	return false
}
