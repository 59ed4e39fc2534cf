// Package slip looks for the one mistake behind several findings: the smallest
// edit of a plan after which all of them, or as many as any edit clears, are gone
// and nothing else is wrong.
//
// What it tells has been tried: each candidate is written into the plan's text, and
// the plan is judged anew. Candidates are values of the recipe. What a length or a
// count should be is solved for: a plan is judged with the value moved by a step, and
// where that changes what two tellings of the quilt differ by, the value at which they
// would agree is the next candidate. The rest are the trade's own slips: a pair
// exchanged, a trim forgotten, a seam allowance lost or added, another fraction, digits
// swapped, a turn, another's name. How many are tried is counted and not timed,
// so that the same is found on every machine.
//
// It must not know any rule: which findings there are is what it is handed.
// Start reading at Search in slip.go.
package slip
