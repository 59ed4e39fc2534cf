// Package watch says when plans should be looked at again: it follows folders
// of the disk, picks the changes that matter, and waits until a burst of them
// is over.
//
// It must not know what is done then, or what a plan says. The library that
// asks the system for changes stays behind this package.
//
// Start reading at Loop in loop.go; disk.go is where changes come from.
package watch
