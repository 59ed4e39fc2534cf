// Package kit works out what goes into the kit of a size and what it costs, a
// line an article, from what was derived, the project's settings and its price
// list.
//
// It must not know how kits are shown or what a line of plans makes of them.
// Start reading at All.
package kit
