// Package baseline records the findings of a run and holds later runs against
// them, so that a line of old plans can be checked today and mended later: a
// run then tells of what is new, and counts what is old and what has gone.
//
// It must not know a rule, except that what kept yardproof from doing its work
// (family run/) is never old. What makes two findings the same is not its
// business but that of package diag. Start reading at Compare.
package baseline
