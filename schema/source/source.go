package source

// Range is a half-open stretch of bytes in one file. Byte offset is the truth
// about a place; lines and columns are worked out from it to be printed.
type Range struct{ Start, End int }

// Position is a place as editors count: both from 1, columns in code points.
type Position struct{ Line, Column int }

// Problem is something wrong with the text of a file, found while it was
// being read. It carries no severity: the rules decide that.
type Problem struct {
	Code    string // the rule that the problem belongs to, such as "schema/duplicate-key"
	Range   Range
	Message string // what is wrong, with the value and what was wanted
	Hint    string // the nearest way out, as a verb phrase; may be empty
	Ways    []Way  // the ways out as data, in order; Hint is then made from them
}
