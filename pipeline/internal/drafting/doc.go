// Package drafting lays out every patch of a derived size: of each part as it
// is before it is sewn on, and of the finished top. The patches are exact, so
// that a layout that does not close shows an error of the derivation and not
// of a drawing.
//
// It must not know how pictures look or what is written in them, nor how any
// part is made: that says the room of its operation. Start reading at Of, then
// cells.go.
package drafting
