// Package line is what is known of a plan in the line: its sizes in words and
// its kits, which are kept from run to run; and what follows from all of them,
// the line's costing and its orders.
//
// It must not know how any of it is shown. Start reading at Summarise, for what
// is kept, and at Cost and Take, for what is made of it.
package line
