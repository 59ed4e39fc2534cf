// Package sheet reads a sheet of a workbook (Office Open XML, ISO/IEC 29500)
// as rows of text, so that whoever reads lists reads them from CSV and from
// workbooks alike, and still can name the cell that is wrong.
//
// It must not know what the columns mean. Start reading at [Text].
package sheet
