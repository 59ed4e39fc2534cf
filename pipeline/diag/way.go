package diag

import "yardproof/schema/source"

// A finding's ways out are those of the problems of a text: a set of edits each,
// or advice that cannot be written into a file.
type (
	Way  = source.Way
	Edit = source.Edit
)

// Told are the ways that the finding's hint tells.
func (f Finding) Told() []Way { return source.Told(f.Ways) }
