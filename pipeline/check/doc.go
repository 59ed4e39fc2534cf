// Package check holds the rules: what yardproof finds fault with, why, and
// how it is mended. A rule is a value that reads what was written and what
// was derived from it and reports findings; it touches no files, flags, clock
// or other rule.
//
// One file holds one family of rules; registry.go lists them all. Problems
// found while a file was read become findings here too, so that everything
// yardproof can say has its entry in the catalogue. Start reading at Check.
package check
