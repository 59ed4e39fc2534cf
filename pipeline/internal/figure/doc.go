// Package figure holds exact numbers that know how they came about: a call that
// computes a value records the expression, so that its formula, the symbols in it
// and the places of the plan behind it are read from the number itself and cannot
// disagree with it.
//
// It must not know what its numbers are about: no plans, parts, fabrics, tables or
// findings. Start reading at F.
package figure
