// Command mutate holds the tests of the piecing geometry against themselves. It
// changes one thing at a time, a size by 1/16 in, a number by one, a sign, a
// rounding, a limit, and runs the tests on it: one of them must fail. What
// survives is a formula that no test holds.
//
//	go run ./scripts/mutate                      # the whole package, some minutes
//	go run ./scripts/mutate triangles.go tube.go # some of its files
//
// Nothing in the work tree is changed: the go command compiles the changed file
// in place of the real one.
package main
