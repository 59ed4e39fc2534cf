// Package jsontable writes all tables of a plan, or of the line, as one JSON
// document with exact values, for programs that go on calculating.
//
// A cell of text is a string and an empty one null; any other is an object
// with the number as people read it, exactly, and as a decimal. "why" is a
// number of the list "workings", counted from 1. As in jsonreport, members
// may be added within a format version but never change their meaning.
//
// It must not know what a table is about. Start reading at the type document.
package jsontable
