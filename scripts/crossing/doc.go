// Command crossing writes a plan for every operation at every place that takes
// a part, most of which make sense and some of which nobody would sew: what is
// found in them, and what is derived, shows whether each place knows each operation.
//
//	go run ./scripts/crossing FOLDER
//
// Its test holds the findings and the tables of all of them against what is
// recorded in testdata/found.golden. scripts/same.sh shows what a change of the program
// changes in them.
package main
