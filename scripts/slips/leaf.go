package main

import (
	"strings"

	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
)

// leaf is a value of the recipe that is neither object nor list, and where it
// stands.
type leaf struct {
	key   string // the last key above it
	above string // the keys above that
	list  *jsontree.Node
	index int // in the list
	node  *jsontree.Node
}

// lengthKeys are the keys of the recipe whose values are lengths as cut or sewn,
// alone or in a pair.
var lengthKeys = keys(`allowance usable_width squaring_up piece usable square size width segment beyond trim trim_down_to
	to down_to finished strip box goose sky centre corners log float length cut overhang seam package shorter hem mattress drop tuck`)

// trimKeys are those whose values say what a part is trimmed to.
var trimKeys = keys(`trim trim_down_to`)

// countKeys are the keys of the recipe whose values count something.
var countKeys = keys(`rows columns count alike joined rounds used`)

// moneyKeys are those of what a kit and a class cost.
var moneyKeys = keys(`packaging pattern fixed price fee costs`)

func keys(list string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(list) {
		set[w] = true
	}
	return set
}

// recipe are the leaves of what is made, and of what sizes change of it.
func (l *line) recipe() []leaf {
	var all []leaf
	for _, key := range []string{"seam", "fabrics", "parts", "layout", "finish", "bed", "sizes"} {
		if n := l.tree.Get(key); n != nil {
			all = gather(all, leaf{key: key, node: n})
		}
	}
	return all
}

// gather adds the leaves below a value.
func gather(all []leaf, at leaf) []leaf {
	switch at.node.Kind {
	case jsontree.Object:
		for _, m := range at.node.Members {
			all = gather(all, leaf{key: m.Key, above: at.above + "/" + at.key, node: m.Value})
		}
	case jsontree.Array:
		for i, item := range at.node.Items {
			all = gather(all, leaf{key: at.key, above: at.above, list: at.node, index: i, node: item})
		}
	default:
		all = append(all, at)
	}
	return all
}

// length is a leaf's value where it is a length as cut or sewn.
func (l *line) length(at leaf) (measure.Length, bool) {
	if !lengthKeys[at.key] || at.node.Kind != jsontree.String && at.node.Kind != jsontree.Number {
		return 0, false
	}
	x, err := measure.ParseLength(at.node.Text, l.plan.Units)
	return x, err == nil && x > 0
}

// written is a length as the plan's other lengths are written.
func (l *line) written(x measure.Length) string { return quoted(x.Bare(l.plan.Units)) }
