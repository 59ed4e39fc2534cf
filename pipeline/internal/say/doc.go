// Package say holds sentences with exact lengths in them. They are put into a unit
// when they are printed, so that whoever makes a sentence need not know in which
// unit it will be read, and rounding happens only then.
//
// It must not know what the sentences are about. Start reading at That.
package say
