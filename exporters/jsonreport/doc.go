// Package jsonreport writes a run's findings for programs: one JSON document,
// with places in bytes as well as in lines and columns.
//
// The names of its members are a promise: a new one may appear within a
// format version, none goes away or changes its meaning. It must not know a
// rule. Start reading at the type document.
package jsonreport
