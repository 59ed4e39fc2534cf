// Package costing works out what a kit costs and what it must be sold for,
// as exact expressions over named inputs: the workbook's formulas and the
// numbers stored beside them come from the same tree.
//
// It must not know plans, sheets or formats. Start reading at Price; expr.go
// has the arithmetic.
package costing
