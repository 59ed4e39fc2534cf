package style

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// Width is the most columns that an object or array on one line may end at,
// with the comma after it. A column is a code point.
const Width = 100

const indent = "  "

// Format is the text of a tree in the one style. The tree must be what
// [jsontree.Parse] made of the file without a problem: of two equal keys it
// would lose one. Formatting what Format gave changes nothing.
//
// An object or array stands on one line if that ends by [Width], and if no
// object in it is a list of things, as fabrics and parts are: one with several
// members that are objects themselves. Each of those things begins a line.
// Otherwise each member or item has a line of its own, but for plain values of
// an array, which fill the lines.
func Format(f *source.File, tree *jsontree.Node) []byte {
	w := writer{text: f.Bytes}
	switch tree.Kind {
	case jsontree.Object, jsontree.Array:
		w.spread(tree, 0)
	default:
		w.raw(tree.Range)
	}
	w.out.WriteByte('\n')
	return w.out.Bytes()
}

type writer struct {
	text []byte
	out  bytes.Buffer
}

func (w *writer) raw(r source.Range) { w.out.Write(w.text[r.Start:r.End]) }

func (w *writer) newline(depth int) {
	w.out.WriteByte('\n')
	w.out.WriteString(strings.Repeat(indent, depth))
}

// value writes a value after taken columns of its line; room for a comma is
// kept.
func (w *writer) value(n *jsontree.Node, depth, taken int) {
	if w.flatWidth(n, Width-taken-1) >= 0 {
		w.flat(n)
		return
	}
	w.spread(n, depth)
}

// spread writes an object or array over several lines. What is empty or plain
// cannot be spread.
func (w *writer) spread(n *jsontree.Node, depth int) {
	switch {
	case len(n.Members) > 0:
		w.spreadObject(n, depth)
	case len(n.Items) > 0 && plain(n.Items):
		w.fill(n, depth)
	case len(n.Items) > 0:
		w.spreadArray(n, depth)
	default:
		w.flat(n)
	}
}

func (w *writer) spreadObject(n *jsontree.Node, depth int) {
	w.out.WriteByte('{')
	for i, m := range n.Members {
		w.between(i, depth+1)
		w.raw(m.KeyRange)
		w.out.WriteString(": ")
		w.value(m.Value, depth+1, (depth+1)*len(indent)+w.columns(m.KeyRange)+len(": "))
	}
	w.newline(depth)
	w.out.WriteByte('}')
}

func (w *writer) spreadArray(n *jsontree.Node, depth int) {
	w.out.WriteByte('[')
	for i, item := range n.Items {
		w.between(i, depth+1)
		w.value(item, depth+1, (depth+1)*len(indent))
	}
	w.newline(depth)
	w.out.WriteByte(']')
}

// between begins the line of member or item i.
func (w *writer) between(i, depth int) {
	if i > 0 {
		w.out.WriteByte(',')
	}
	w.newline(depth)
}

// fill writes plain values, as many on a line as there is room for.
func (w *writer) fill(n *jsontree.Node, depth int) {
	w.out.WriteByte('[')
	taken := Width
	for i, item := range n.Items {
		wide := w.columns(item.Range)
		switch {
		case i > 0 && taken+len(" ")+wide+len(",") <= Width:
			w.out.WriteString(", ")
			taken += len(" ") + wide + len(",")
		default:
			w.between(i, depth+1)
			taken = (depth+1)*len(indent) + wide + len(",")
		}
		w.raw(item.Range)
	}
	w.newline(depth)
	w.out.WriteByte(']')
}

func plain(items []*jsontree.Node) bool {
	for _, n := range items {
		if n.Kind == jsontree.Object || n.Kind == jsontree.Array {
			return false
		}
	}
	return true
}

// flat writes a value on one line: { "a": 1, "b": [2, 3] }.
func (w *writer) flat(n *jsontree.Node) {
	switch n.Kind {
	case jsontree.Object:
		w.flatObject(n)
	case jsontree.Array:
		w.out.WriteByte('[')
		for i, item := range n.Items {
			w.comma(i)
			w.flat(item)
		}
		w.out.WriteByte(']')
	default:
		w.raw(n.Range)
	}
}

func (w *writer) flatObject(n *jsontree.Node) {
	if len(n.Members) == 0 {
		w.out.WriteString("{}")
		return
	}
	w.out.WriteString("{ ")
	for i, m := range n.Members {
		w.comma(i)
		w.raw(m.KeyRange)
		w.out.WriteString(": ")
		w.flat(m.Value)
	}
	w.out.WriteString(" }")
}

func (w *writer) comma(i int) {
	if i > 0 {
		w.out.WriteString(", ")
	}
}

// flatWidth is the columns that a value takes on one line, -1 if it does not
// belong on one or takes more than there is room for. It gives up as soon as
// the room is gone, so that a large value costs no more than a small one.
func (w *writer) flatWidth(n *jsontree.Node, room int) int {
	switch {
	case room < 0 || things(n):
		return -1
	case len(n.Members) > 0:
		return w.flatMembers(n, room)
	case len(n.Items) > 0:
		return w.flatItems(n, room)
	case n.Kind == jsontree.Object || n.Kind == jsontree.Array:
		return within(len("{}"), room)
	}
	return within(w.columns(n.Range), room)
}

// within is the columns taken, -1 if there is no room for them.
func within(taken, room int) int {
	if taken > room {
		return -1
	}
	return taken
}

func (w *writer) flatMembers(n *jsontree.Node, room int) int {
	taken := len("{ ") + len(" }") + (len(n.Members)-1)*len(", ")
	for _, m := range n.Members {
		taken += w.columns(m.KeyRange) + len(": ")
		wide := w.flatWidth(m.Value, room-taken)
		if wide < 0 {
			return -1
		}
		taken += wide
	}
	return within(taken, room)
}

func (w *writer) flatItems(n *jsontree.Node, room int) int {
	taken := len("[]") + (len(n.Items)-1)*len(", ")
	for _, item := range n.Items {
		wide := w.flatWidth(item, room-taken)
		if wide < 0 {
			return -1
		}
		taken += wide
	}
	return within(taken, room)
}

// things reports whether an object is a list of things.
func things(n *jsontree.Node) bool {
	count := 0
	for _, m := range n.Members {
		if len(m.Value.Members) > 0 {
			count++
		}
	}
	return count > 1
}

func (w *writer) columns(r source.Range) int {
	return utf8.RuneCount(w.text[r.Start:r.End])
}
