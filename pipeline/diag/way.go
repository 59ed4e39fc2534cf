package diag

import "yardproof/schema/source"

// A finding's ways out are those of the problems of a text: a set of edits each,
// or advice that cannot be written into a file.
type (
	Way  = source.Way
	Edit = source.Edit
)

// Told are the ways that whoever reads the finding is told of.
func (f Finding) Told() []Way {
	var told []Way
	for _, w := range f.Ways {
		if w.Trial != source.Fails {
			told = append(told, w)
		}
	}
	return told
}

// Mends is the first of the finding's ways that was tried and holds; none when
// nothing is known to mend it.
func (f Finding) Mends() (Way, bool) {
	for _, w := range f.Ways {
		if w.Trial == source.Holds {
			return w, true
		}
	}
	return Way{}, false
}
