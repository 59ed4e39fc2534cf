package amend

import (
	"encoding/json"
	"strings"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// Text is a JSON text that edits are made of. The tree must be what
// [jsontree.Parse] made of the file.
type Text struct {
	file *source.File
	tree *jsontree.Node
}

// Of is the text of a file. The tree may be nil: then no edit can be made.
func Of(f *source.File, tree *jsontree.Node) Text { return Text{f, tree} }

// Quote is a string as JSON writes it, without escaping what needs no escape.
func Quote(s string) string {
	var b strings.Builder
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.Encode(s) // a string into memory: it cannot fail
	return strings.TrimSuffix(b.String(), "\n")
}

// Put is the edit that writes a JSON value in the place of the one at a range.
func (t Text) Put(at source.Range, value string) source.Edit {
	return source.Edit{Act: source.Put, Range: at, Text: value, Verb: "write", Shown: value}
}

// Rename is the edit that gives the member whose key stands at a range another key.
func (t Text) Rename(key source.Range, name string) source.Edit {
	return source.Edit{Act: source.Rename, Range: key, Text: Quote(name), Verb: "write", Shown: Quote(name)}
}

// spot is a value's way down the tree: the members and items that it lies in.
type spot struct {
	node, parent *jsontree.Node
	index        int // in the parent's members or items
}

// find is the value at a range, or the one whose key stands there.
func (t Text) find(at source.Range) (spot, bool) {
	here := spot{node: t.tree}
	for here.node != nil {
		if here.node.Range == at {
			return here, true
		}
		next, key := child(here.node, at)
		if key {
			return next, true
		}
		here = next
	}
	return spot{}, false
}

// child is the member or item of n that encloses a range, and whether that is
// its key.
func child(n *jsontree.Node, at source.Range) (spot, bool) {
	for i, m := range n.Members {
		if m.KeyRange == at {
			return spot{m.Value, n, i}, true
		}
		if m.Value.Range.Encloses(at) {
			return spot{m.Value, n, i}, false
		}
	}
	for i, item := range n.Items {
		if item.Range.Encloses(at) {
			return spot{item, n, i}, false
		}
	}
	return spot{}, false
}

// Node is the value at a range, or the one whose key stands there; nil when there
// is none, as where a default is at work.
func (t Text) Node(at source.Range) *jsontree.Node {
	s, _ := t.find(at)
	return s.node
}

// Parent is the object or array that holds the value at a range, or the one whose
// key stands there; nil for the root and for no value.
func (t Text) Parent(at source.Range) *jsontree.Node {
	s, _ := t.find(at)
	return s.parent
}

// Add is the edit that gives the object at a range a member, after those that it
// has. There is none when no object stands there, or when it has the key.
func (t Text) Add(object source.Range, key, value string) (source.Edit, bool) {
	s, ok := t.find(object)
	if !ok || s.node.Kind != jsontree.Object || s.node.Member(key) != nil {
		return source.Edit{}, false
	}
	shown := Quote(key) + ": " + value
	text := Quote(key) + t.colon(s.node) + value
	return t.insert(s.node, text, shown), true
}

// Append is the edit that gives the array at a range another item, after those
// that it has. There is none when no array stands there.
func (t Text) Append(array source.Range, value string) (source.Edit, bool) {
	s, ok := t.find(array)
	if !ok || s.node.Kind != jsontree.Array {
		return source.Edit{}, false
	}
	return t.insert(s.node, value, value), true
}

// insert puts text after the last child of an object or array. An empty one opens
// for it: between its braces a blank each side if the file writes objects so.
func (t Text) insert(n *jsontree.Node, text, shown string) source.Edit {
	e := source.Edit{Act: source.Add, Verb: "add", Shown: shown}
	children := places(n)
	if len(children) == 0 {
		e.Range, e.Text = source.Range{Start: n.Range.Start + 1, End: n.Range.End - 1}, text
		if n.Kind == jsontree.Object && t.spaced() {
			e.Text = " " + text + " "
		}
		return e
	}
	e.Range = source.At(children[len(children)-1].End)
	e.Text = "," + t.blank(n, children) + text
	return e
}

// blank is what stands before the last child of n, to be written before the next
// one too. The blank between a bracket and the only child is that of a comma only
// where it begins a line.
func (t Text) blank(n *jsontree.Node, children []source.Range) string {
	last := len(children) - 1
	from := n.Range.Start + 1
	if last > 0 {
		from = children[last-1].End
	}
	gap := t.file.Slice(source.Range{Start: from, End: children[last].Start})
	gap = gap[strings.IndexByte(gap, ',')+1:]
	switch {
	case last > 0 || strings.ContainsAny(gap, "\r\n"):
		return gap
	case n.Kind == jsontree.Object && t.colon(n) == ":":
		return ""
	}
	return " "
}

// colon is what stands between a key and its value in an object, or else at the
// file's first member.
func (t Text) colon(n *jsontree.Node) string {
	for _, o := range []*jsontree.Node{n, t.tree} {
		if o != nil && len(o.Members) > 0 {
			m := o.Members[len(o.Members)-1]
			return t.file.Slice(source.Range{Start: m.KeyRange.End, End: m.Value.Range.Start})
		}
	}
	return ": "
}

// spaced reports whether the file writes a blank inside the braces of an object
// that stands on one line.
func (t Text) spaced() bool {
	var spaced, tight int
	var walk func(n *jsontree.Node)
	walk = func(n *jsontree.Node) {
		if n.Kind == jsontree.Object && len(n.Members) > 0 {
			switch t.file.Slice(source.Range{Start: n.Range.Start + 1, End: n.Range.Start + 2}) {
			case " ":
				spaced++
			case "\"":
				tight++
			}
		}
		for _, m := range n.Members {
			walk(m.Value)
		}
		for _, item := range n.Items {
			walk(item)
		}
	}
	if t.tree != nil {
		walk(t.tree)
	}
	return spaced >= tight
}

// Remove is the edit that takes away the member or item at a range, or the one whose
// key stands there, with one of the commas beside it and the blank between. There is
// none for the root.
func (t Text) Remove(at source.Range) (source.Edit, bool) {
	s, ok := t.find(at)
	if !ok || s.parent == nil {
		return source.Edit{}, false
	}
	places := places(s.parent)
	r, shown := places[s.index], t.file.Slice(s.node.Range)
	if s.parent.Kind == jsontree.Object {
		shown = Quote(s.parent.Members[s.index].Key)
	}
	switch n := len(places); {
	case n == 1:
		r = source.Range{Start: s.parent.Range.Start + 1, End: s.parent.Range.End - 1}
	case s.index == n-1:
		r.Start = places[s.index-1].End
	default:
		r.End = places[s.index+1].Start
	}
	return source.Edit{Act: source.Remove, Range: r, Verb: "remove", Shown: shown}, true
}

// places are where the children of an object or array stand, keys included.
func places(n *jsontree.Node) []source.Range {
	var all []source.Range
	for _, m := range n.Members {
		all = append(all, source.Range{Start: m.KeyRange.Start, End: m.Value.Range.End})
	}
	for _, item := range n.Items {
		all = append(all, item.Range)
	}
	return all
}
