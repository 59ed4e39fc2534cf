// Package words reads the text of a pattern and holds every number in it against
// the figures of its plan: which figure it states, whether it agrees, and which
// numbers could not be placed. It also writes a text from a plan's own tables.
//
// It knows plans and what was derived of them, and nothing of files, flags and
// formats of reports. Begin with Check in words.go; figures.go lists what a plan
// knows, text.go how a text is taken apart, and match.go how the two are brought
// together.
package words
