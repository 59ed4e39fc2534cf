package plan

import (
	"slices"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// SizeTree is the recipe of one size, in the recipe's own fabrics or in a
// colourway: the plan with the patches of both merged over it.
type SizeTree struct {
	Name  Text
	Way   Text           // the colourway; empty for the recipe's own fabrics
	Base  *jsontree.Node // what the patch was merged over
	Patch *jsontree.Node
	// Tree has only this size under "sizes" and only its entry under
	// "printed", so that the plan's schema validates it. A value that the patch
	// brings has its range in the patch, and so has an object from which the
	// patch takes a key away.
	Tree *jsontree.Node
	Same bool // the patch is empty, so that the tree is as good as the plan
}

// Merge gives the recipe of every size, in the order written, by JSON Merge
// Patch (RFC 7396), and after each that of the size in every colourway. It may
// be given any tree: what is no object is no size and no colourway.
func Merge(tree *jsontree.Node) []SizeTree {
	var sizes []SizeTree
	for _, m := range members(tree.Get("sizes")) {
		s := SizeTree{Name: Text{m.Key, m.KeyRange}, Base: tree, Patch: m.Value, Same: len(m.Value.Members) == 0}
		merged := tree
		if !s.Same {
			merged = jsontree.MergePatch(tree, m.Value)
			blamePatch(merged, tree, m.Value)
		}
		s.Tree = only(merged, m.Key)
		sizes = append(sizes, s)
		for _, way := range members(tree.Get("colourways")) {
			sizes = append(sizes, s.in(way))
		}
	}
	return sizes
}

// in is the size in a colourway.
func (s SizeTree) in(way jsontree.Member) SizeTree {
	patch := s.known(way.Value)
	merged := jsontree.MergePatch(s.Tree, patch)
	blamePatch(merged, s.Tree, patch)
	return SizeTree{Name: s.Name, Way: Text{way.Key, way.KeyRange}, Base: s.Tree, Patch: patch, Tree: merged}
}

// by is who changes the recipe here, for a message.
func (s SizeTree) by() string {
	if s.Way.Given() {
		return "the colourway"
	}
	return "the size"
}

// known is what a colourway changes of the size's recipe. A fabric that the
// size does not have is left out: it would be half a fabric.
func (s SizeTree) known(way *jsontree.Node) *jsontree.Node {
	patch := &jsontree.Node{Kind: jsontree.Object, Range: way.Range}
	for _, m := range members(way) {
		switch m.Key {
		case "fabrics":
			known := &jsontree.Node{Kind: jsontree.Object, Range: m.Value.Range}
			for _, f := range members(m.Value) {
				if s.Tree.Get("fabrics").Member(f.Key) != nil {
					known.Members = append(known.Members, f)
				}
			}
			m.Value = known
		case "kit":
		default:
			continue
		}
		patch.Members = append(patch.Members, m)
	}
	return patch
}

// blamePatch moves an object from which the patch takes a key away to where
// the patch writes it: that the key is missing is the patch's doing. The
// objects that it moves were made by the merge and belong to nobody else.
func blamePatch(merged, base, patch *jsontree.Node) {
	for _, m := range patch.Members {
		switch m.Value.Kind {
		case jsontree.Null:
			if base.Member(m.Key) != nil {
				merged.Range = patch.Range
			}
		case jsontree.Object:
			blamePatch(merged.Get(m.Key), base.Get(m.Key), m.Value)
		}
	}
}

// only is the tree with one size left under "sizes" and "printed".
func only(tree *jsontree.Node, size string) *jsontree.Node {
	root := &jsontree.Node{Kind: jsontree.Object, Range: tree.Range}
	for _, m := range tree.Members {
		if m.Key == "sizes" || m.Key == "printed" {
			m.Value = keep(m.Value, size)
		}
		root.Members = append(root.Members, m)
	}
	return root
}

func keep(n *jsontree.Node, key string) *jsontree.Node {
	if n.Kind != jsontree.Object {
		return n
	}
	left := &jsontree.Node{Kind: jsontree.Object, Range: n.Range}
	if m := n.Member(key); m != nil {
		left.Members = append(left.Members, *m)
	}
	return left
}

// members are the members of an object, in the order written; none of
// anything else.
func members(n *jsontree.Node) []jsontree.Member {
	if n == nil || n.Kind != jsontree.Object {
		return nil
	}
	return n.Members
}

// items are the items of a list; none of anything else.
func items(n *jsontree.Node) []*jsontree.Node {
	if n == nil || n.Kind != jsontree.Array {
		return nil
	}
	return n.Items
}

// idleRemovals finds nulls of a patch that take nothing away, which is how a
// misspelt removal shows.
func (r *reader) idleRemovals(by string, base, patch *jsontree.Node) {
	for _, m := range members(patch) {
		switch {
		case m.Value.Kind == jsontree.Object:
			r.idleRemovals(by, base.Get(m.Key), m.Value)
		case m.Value.Kind == jsontree.Null && base.Member(m.Key) == nil:
			r.report(RemovesNothing, m.KeyRange,
				by+" takes away "+quote(m.Key)+", which the recipe does not have here",
				orOneOf("remove this line", keysOf(base)))
		}
	}
}

func keysOf(n *jsontree.Node) []string {
	var keys []string
	for _, m := range members(n) {
		keys = append(keys, m.Key)
	}
	return keys
}

// sortProblems orders problems and drops those that several sizes share.
func sortProblems(problems []source.Problem) []source.Problem {
	source.SortProblems(problems)
	return slices.CompactFunc(problems, func(a, b source.Problem) bool { return a.Compare(b) == 0 })
}
