// Command release builds what is published: an archive of yardproof for each
// system, with the manual pages where a system has them, the sums of all of them,
// and notes of what the commits since the last release change.
//
//	go run ./scripts/release DIR [SYSTEM-MACHINE...]
//
// The same commit and compiler give the same bytes on any machine: programs
// are static and know no path, archives hold nothing of the clock or the user.
// The version is the one that the build stamps on the programs, from the tag
// of the commit; a folder with changes is named as such.
//
// Start reading at release in main.go; archive.go writes archives,
// manual.go and notes.go make what the program and git say of themselves.
package main
