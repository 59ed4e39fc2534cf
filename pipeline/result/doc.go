// Package result is what is kept of a plan from run to run and from machine to
// machine: what was found, before any project changed its level or accepted
// it; what the line's sheets show of it; and which files were written. With it
// a later run says the same without deriving the plan again.
//
// Places are kept as offsets: whoever uses a result has the plan's text, for it
// must be the very same. It must not know when a result may be used; package
// pipeline decides that. Start reading at Result.
package result
