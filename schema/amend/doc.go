// Package amend makes edits of a JSON text and applies them. An edit touches only
// the bytes of what it changes and is written as its neighbours are: a member is
// added on a line of its own where the members before it have one, beside them
// where they share one, with the same indentation and spaces.
//
// It must not know what a plan is. Start reading at amend.go for the edits, then
// apply.go for how several become one text.
package amend
