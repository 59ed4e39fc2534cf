// Package why answers how a number of a plan came about: its formula, what stands for
// the symbols of it, the line of the plan that says each, and of what was derived
// itself the same again.
//
// It knows what was derived as plain data, and nothing of files, flags and how to
// derive. Begin with Find in find.go; answer.go makes what was found a tree, and text.go
// prints it.
package why
