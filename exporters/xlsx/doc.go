// Package xlsx writes a plan, and the line, as workbooks: a sheet for each of
// the report's, ready to print, with live formulas over the named input cells.
//
// A workbook is laid out twice. First every sheet becomes lines, so that each
// named cell has an address (layout.go); then the cells are drawn, formulas
// turned into the workbook's language (formula.go), and every number given a
// number format that shows it truly (format.go). The value of a formula is
// stored beside it, so that a program that does not calculate shows the same
// numbers.
//
// The look is sober and needs no colour: a person may print it on any printer.
// The bytes depend on the report alone (zip.go).
//
// It must not know what a sheet is about, and it calculates nothing but the
// room that things need. Start reading at xlsx.go.
package xlsx
