// Package bolts works out which bolts a run of kits is cut from: what is on
// hand first, whole bolts for the rest, and how each is cut. A kit's length of a
// fabric is never joined from two bolts, so what several bolts leave over does
// not add up. It must not know plans, prices lists or money: a cost is any whole
// number. Start reading at Solve.
package bolts
