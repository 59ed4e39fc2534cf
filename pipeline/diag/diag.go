package diag

import (
	"cmp"
	"slices"
	"strconv"

	"yardproof/schema/source"
)

// Level is how much a finding matters.
type Level int

// The levels, in order.
const (
	Note Level = iota + 1
	Warning
	Error
)

// String is the word shown to people and accepted from flags.
func (l Level) String() string {
	switch l {
	case Note:
		return "note"
	case Warning:
		return "warning"
	case Error:
		return "error"
	}
	return "off"
}

// ParseLevel reads a level's word.
func ParseLevel(word string) (Level, bool) {
	for _, l := range []Level{Note, Warning, Error} {
		if l.String() == word {
			return l, true
		}
	}
	return 0, false
}

// Place is a range of a file as people and other programs look it up.
type Place struct {
	File    string // as named on the command line, with forward slashes
	Range   source.Range
	Start   source.Position // zero when the finding is about the file as a whole
	End     source.Position
	Pointer string // JSON pointer (RFC 6901) of the value
	Excerpt source.Excerpt

	// Cell is the address of a cell where the file is a workbook, like
	// "Sheet1!D17". There are no lines, and no excerpt, then.
	Cell string
}

// String is as much as there is of "file:line:column", or "file!sheet!cell".
func (p Place) String() string {
	switch {
	case p.Cell != "":
		return p.File + "!" + p.Cell
	case p.Start.Line == 0:
		return p.File
	}
	return p.File + ":" + strconv.Itoa(p.Start.Line) + ":" + strconv.Itoa(p.Start.Column)
}

// Finding is one thing that yardproof has to say.
type Finding struct {
	Rule    string // family/slug
	Level   Level
	Place   Place
	Plan    string   // id of the plan, when it could be read
	Sizes   []string // the sizes it holds for, when it is about sizes
	Message string   // what, where, the numbers on both sides
	Hint    string   // the nearest way out, as a verb phrase; made from Ways where there are any
	Ways    []Way    // the ways out as data, the likeliest first
	Related []Related
	// Follows are the consequences of this finding: true, but mended with it.
	Follows []Finding
}

// Related is a second place that a finding speaks of.
type Related struct {
	Place   Place
	Message string
}

// Sort puts findings into the one order: file, place, rule, message; and
// removes those equal in all of them.
func Sort(fs []Finding) []Finding {
	slices.SortStableFunc(fs, Compare)
	return slices.CompactFunc(fs, func(a, b Finding) bool { return Compare(a, b) == 0 })
}

// Compare is the one order of findings.
func Compare(a, b Finding) int {
	return cmp.Or(
		cmp.Compare(a.Place.File, b.Place.File),
		cmp.Compare(a.Place.Range.Start, b.Place.Range.Start),
		cmp.Compare(a.Place.Range.End, b.Place.Range.End),
		cmp.Compare(a.Rule, b.Rule),
		cmp.Compare(a.Message, b.Message),
	)
}

// Worst is the highest level among the findings, 0 when there are none.
func Worst(fs []Finding) Level {
	var worst Level
	for _, f := range fs {
		worst = max(worst, f.Level)
	}
	return worst
}

// Flatten is findings, each followed by all that follows from it, and from that.
func Flatten(fs []Finding) []Finding {
	var all []Finding
	for _, f := range fs {
		all = append(append(all, f), Flatten(f.Follows)...)
	}
	return all
}
