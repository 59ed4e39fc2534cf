// Package schema holds the JSON Schemas (draft-07) of a plan and of the
// project file, and checks a tree against them.
//
// The schemas are files of their own, so that an editor can use them for
// completion and hover help; they are embedded here and compiled once. What the
// validator finds is put in order, freed of consequences, moved to the very
// key or value that is wrong, and worded anew: what, where, the value, what
// would be accepted, and the nearest name.
//
// The package must not know what a value means: lengths, names that refer to
// other names, and sizes that patch the recipe are read by package plan. The
// validator stays behind this package: nobody else imports it.
//
// Start reading at schema.go, then find.go for how a validator's error becomes
// a problem and words.go for what it says; guide.go looks things up in the
// schema's own text.
package schema
