package source

import (
	"cmp"
	"slices"
	"strings"
)

// At is the empty range at one offset: a place between two bytes, where
// something is missing.
func At(offset int) Range { return Range{offset, offset} }

// Contains reports whether the byte at offset belongs to r. The end does not.
func (r Range) Contains(offset int) bool { return r.Start <= offset && offset < r.End }

// Encloses reports whether the whole of s lies in r; a range encloses itself.
func (r Range) Encloses(s Range) bool { return r.Start <= s.Start && s.End <= r.End }

// Empty reports whether r holds no byte, as a place where text is missing does.
func (r Range) Empty() bool { return r.Start == r.End }

// Len is the number of bytes in r.
func (r Range) Len() int { return r.End - r.Start }

// Valid reports whether r can stand in some file: it starts at 0 or later and
// does not end before it starts.
func (r Range) Valid() bool { return 0 <= r.Start && r.Start <= r.End }

// Compare orders ranges by start, then by end.
func (r Range) Compare(s Range) int {
	return cmp.Or(cmp.Compare(r.Start, s.Start), cmp.Compare(r.End, s.End))
}

// Compare orders problems of one file by place, then by code and message, so
// that a report is the same on every run.
func (p Problem) Compare(q Problem) int {
	return cmp.Or(p.Range.Compare(q.Range), strings.Compare(p.Code, q.Code), strings.Compare(p.Message, q.Message), strings.Compare(p.Hint, q.Hint))
}

// SortProblems orders the problems of one file by place, in the slice itself.
func SortProblems(problems []Problem) { slices.SortFunc(problems, Problem.Compare) }
