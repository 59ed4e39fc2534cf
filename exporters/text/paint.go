package text

import (
	"github.com/fatih/color"

	"yardproof/pipeline/diag"
)

// palette is the few ways in which words stand out. Nothing is said by colour
// alone: the word beside it says the same.
type palette struct {
	place, quiet, good   *color.Color
	problem, doubt, note *color.Color
}

func newPalette(on bool) palette {
	return palette{
		place:   ink(on, color.Bold),
		quiet:   ink(on, color.Faint),
		good:    ink(on, color.FgGreen),
		problem: ink(on, color.FgRed, color.Bold),
		doubt:   ink(on, color.FgMagenta, color.Bold),
		note:    ink(on, color.FgCyan, color.Bold),
	}
}

// ink decides for itself alone: the library's global switch follows the
// process's standard output, which may not be what is written to.
func ink(on bool, attributes ...color.Attribute) *color.Color {
	c := color.New(attributes...)
	if on {
		c.EnableColor()
	} else {
		c.DisableColor()
	}
	return c
}

func (p palette) level(l diag.Level) *color.Color {
	switch l {
	case diag.Error:
		return p.problem
	case diag.Warning:
		return p.doubt
	}
	return p.note
}
