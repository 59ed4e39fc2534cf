// Package plan holds the typed recipe of a quilt: what a plan file says once
// its text has been read and found to follow the schema. Every value
// remembers the place it was written at, so that whoever finds fault with it
// can point there.
//
// The package knows the vocabulary, the defaults and how a size patches the
// recipe. It must not know any arithmetic of the trade: nothing here is
// derived. Start reading at Plan, then Part and Operation.
package plan
