// Package text prints the findings of a run for a person at a terminal: each
// under its file, line and column, with the line of the plan that it is about,
// the nearest way out, and what follows from it.
//
// A finding's first line is never wrapped, so that editors and scripts can
// find "file:line:column: level: message [rule]" in it; everything below it is
// indented.
//
// It must not know a rule, or decide whether there is a terminal or colour:
// whoever calls [Write] says so. Start reading at text.go; excerpt.go draws
// the line of the plan.
package text
