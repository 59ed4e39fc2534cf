package main

import (
	"slices"
	"strings"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// falsified are the printed figures that are moved in some ways.
func (l *line) falsified(ways ...way) []change {
	var all []change
	for _, m := range l.moves() {
		if slices.Contains(ways, m.how) {
			all = append(all, m.change)
		}
	}
	return all
}

func (l *line) swappedFigures() []change {
	var all []change
	for _, f := range l.figures {
		for _, text := range transposed(f.text) {
			all = append(all, change{replacement: replacement{f.at, text}})
		}
	}
	return all
}

// mention is where a fabric or part is named.
type mention struct {
	at   source.Range
	name string
	list []string // all that could be meant
}

// mentions are the places of the recipe, and the keys of the printed figures, that
// name fabrics and parts.
func (l *line) mentions() []mention {
	var all []mention
	seen := map[source.Range]bool{}
	s := &l.plan.Sizes[0]
	var fabrics, parts []string
	for _, f := range s.Fabrics {
		fabrics = append(fabrics, f.Role.Text)
	}
	for _, p := range s.Parts {
		parts = append(parts, p.Name.Text)
	}
	for i := range l.plan.Sizes {
		for _, m := range l.plan.Sizes[i].Once() {
			list := parts
			if m.Fabric {
				list = fabrics
			}
			if !seen[m.Name.At] && l.file.Slice(m.Name.At) == quoted(m.Name.Text) {
				seen[m.Name.At] = true
				all = append(all, mention{m.Name.At, m.Name.Text, list})
			}
		}
	}
	l.objects(l.tree.Get("printed"), func(n *jsontree.Node) {
		for _, m := range n.Members {
			for _, list := range [][]string{parts, fabrics} {
				if slices.Contains(list, m.Key) {
					all = append(all, mention{m.KeyRange, m.Key, list})
					break
				}
			}
		}
	})
	return all
}

func (l *line) misspelt() []change {
	var all []change
	for _, m := range l.mentions() {
		for _, typo := range typos(m.name) {
			if !slices.Contains(m.list, typo) {
				all = append(all, change{replacement: replacement{m.at, quoted(typo)}})
			}
		}
	}
	return all
}

// misnamed names another fabric or part of the plan: the next in its list.
func (l *line) misnamed() []change {
	var all []change
	for _, m := range l.mentions() {
		if i := slices.Index(m.list, m.name); len(m.list) > 1 && l.fits(m, m.list[(i+1)%len(m.list)]) {
			all = append(all, change{replacement: replacement{m.at, quoted(m.list[(i+1)%len(m.list)])}})
		}
	}
	return all
}

// fits reports whether a key that becomes another is not there already: two members of
// one key are another kind of mistake.
func (l *line) fits(m mention, name string) bool {
	fits := true
	l.objects(l.tree.Get("printed"), func(n *jsontree.Node) {
		for _, other := range n.Members {
			if other.KeyRange == m.at && n.Get(name) != nil {
				fits = false
			}
		}
	})
	return fits
}

// keysMisspelt misspells the keys of the vocabulary: those that are no names.
func (l *line) keysMisspelt() []change {
	named := map[string]bool{}
	for _, list := range []string{"fabrics", "parts", "sizes", "printed", "colourways"} {
		if n := l.tree.Get(list); n != nil {
			for _, m := range n.Members {
				named[m.Key] = true
			}
		}
	}
	var all []change
	l.objects(l.tree, func(n *jsontree.Node) {
		for _, m := range n.Members {
			if named[m.Key] || strings.Contains(m.Key, "-") {
				continue
			}
			for _, typo := range typos(m.Key) {
				all = append(all, change{replacement: replacement{m.KeyRange, quoted(typo)}})
			}
		}
	})
	return all
}

func (l *line) money() []leaf {
	var all []leaf
	for _, key := range []string{"kit", "class"} {
		if n := l.tree.Get(key); n != nil {
			all = gather(all, leaf{key: key, node: n})
		}
	}
	return slices.DeleteFunc(all, func(at leaf) bool { return !moneyKeys[at.key] || at.node.Kind != jsontree.String })
}

func (l *line) pricesSwapped() []change {
	var all []change
	for _, at := range l.money() {
		for _, text := range transposed(at.node.Text) {
			all = append(all, put(at.node, quoted(text)))
		}
	}
	return all
}

// pointsMoved makes ten times as much of a price, and a tenth.
func (l *line) pointsMoved() []change {
	var all []change
	for _, at := range l.money() {
		whole, cents, ok := strings.Cut(at.node.Text, ".")
		if !ok || len(cents) != 2 {
			continue
		}
		all = append(all, put(at.node, quoted(whole+cents[:1]+"."+cents[1:]+"0")))
		if n := len(whole); n > 1 {
			all = append(all, put(at.node, quoted(whole[:n-1]+"."+whole[n-1:]+cents[:1])))
		}
	}
	return all
}

func (l *line) articlesMisspelt() []change {
	var all []change
	l.objects(l.tree, func(n *jsontree.Node) {
		if sku := n.Get("sku"); sku != nil {
			for _, text := range transposed(sku.Text) {
				all = append(all, put(sku, quoted(text)))
			}
		}
	})
	return all
}

func (l *line) unwarned() []change {
	list := l.tree.Get("cautions")
	var all []change
	if list == nil {
		return nil
	}
	for i := range list.Items {
		all = append(all, l.without(list, i))
	}
	return all
}

func (l *line) overwarned() []change {
	list := l.tree.Get("cautions")
	if list == nil || len(list.Items) == 0 {
		return nil
	}
	last := list.Items[len(list.Items)-1]
	var all []change
	for _, more := range []string{"overlock", "bias-edges", "unpick-tip", "bare-cot", "small-parts"} {
		if !slices.ContainsFunc(list.Items, func(n *jsontree.Node) bool { return n.Text == more }) {
			all = append(all, put(last, l.file.Slice(last.Range)+", "+quoted(more)))
		}
	}
	return all
}
