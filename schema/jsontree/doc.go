// Package jsontree decodes JSON into a tree that remembers where in the file
// every key and every value stands, so that a complaint about a value can
// point at it.
//
// It is strict, because what comes after it is not: two equal keys in one
// object, text after the value, byte order marks, UTF-16, broken UTF-8, half
// surrogate pairs, deep nesting and monstrous numbers are refused here, each
// with one problem that says what was wanted. The slips that people make
// (a comma too many or too few, other quotation marks, comments, a bracket not
// closed, a length written without quotation marks) each have words of their own.
//
// It must not know what a plan is, what a schema is, or how grave a problem
// is. The tokeniser stays behind this package: nobody else imports it.
//
// Start reading at tree.go for what comes out, then parse.go for how it is
// made; diagnose.go and the files after it only find words for bad text.
// pointer.go is RFC 6901, merge.go is RFC 7396.
package jsontree
