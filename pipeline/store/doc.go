// Package store remembers what runs found of plans and what they wrote, in a
// folder that one run at a time may write, and writes files whole or not at
// all.
//
// A result is what was found of a plan, before any project changed its level or
// accepted it; what the line's sheets show of it; and which files were written.
// With it a later run says the same without deriving the plan again. Places are
// kept as offsets: whoever uses a result has the plan's text, for it must be
// the very same.
//
// A ledger is an output folder that knows its files: it replaces and removes
// only those that are as it wrote them. A journal beside it tells of the files
// of runs that were killed, and a lock keeps other runs out.
//
// It must not know when a result may be used, which package pipeline decides,
// nor any format of a file but its own. Start reading at ledger.go; result.go is
// what is kept of a plan.
package store
