// Package derive works out a whole size of a plan, backwards from its
// layout: the layout needs so many blocks, a block needs parts, parts come
// from strip sets and tubes with whole-number yields, those need strips, and
// strips need fabric.
//
// It compares nothing with what the pattern prints and judges nothing: what
// cannot be derived stays unknown, and the rules say why. Start reading at
// Of, then geometry.go (sizes, from the fabric up) and demand.go (counts,
// from the layout down).
package derive
