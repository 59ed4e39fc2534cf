// Package line is what a line of plans knows of each: sizes in words, kits with
// what they are worked out from, and what the planned ones take. It is kept from
// run to run.
//
// It must not know how any of it is shown. Start reading at Summarise.
package line
