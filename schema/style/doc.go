// Package style writes JSON in the one style of plans: two blanks a level,
// short objects and arrays on one line, no alignment, every line ended by \n.
//
// It changes blanks between tokens and nothing else: the order of keys, the
// spelling of numbers and the escapes of strings stay as they were typed. It
// must not know what a plan is or where text comes from.
//
// Start reading at Format in style.go.
package style
