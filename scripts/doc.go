// Package scripts holds the files that a pattern repository begins with: the
// plans, settings, hook and CI files that `yardproof init` lays, as they are
// read and tested here. It must not know how they are written.
//
// Start reading at Repository in repository.go. The other folders are no part
// of the package: outside holds checks against other programs, and release
// builds what is published.
package scripts
