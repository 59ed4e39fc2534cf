// Package sample is a small report that the tests of every format write: two
// plans with findings of all levels, and tables with every kind of cell. The
// plans and their prices are invented; lengths follow from geometry.
//
// Only tests may import it. Start reading at run.go, then plan.go.
package sample
