package main

import (
	"strconv"
	"strings"

	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
)

// lengthsMoved changes every length of the recipe for which by gives others.
func (l *line) lengthsMoved(wanted func(leaf) bool, by ...measure.Length) []change {
	var all []change
	for _, at := range l.recipe() {
		x, ok := l.length(at)
		if !ok || !wanted(at) {
			continue
		}
		for _, d := range by {
			if x+d > 0 {
				all = append(all, put(at.node, l.written(x+d)))
			}
		}
	}
	return all
}

func anywhere(leaf) bool { return true }

// ofParts tells the lengths of parts and layout, which hold seam allowances.
func ofParts(at leaf) bool {
	return at.key != "allowance" && (strings.HasPrefix(at.above, "/parts") || strings.HasPrefix(at.above, "/layout") || strings.Contains(at.above, "/sizes") && (strings.Contains(at.above, "/parts") || strings.Contains(at.above, "/layout")))
}

func (l *line) stepped() []change { return l.lengthsMoved(anywhere, l.ruler(), -l.ruler()) }

func (l *line) allowance() measure.Length { return l.plan.Sizes[0].Seam.Allowance.Length }

func (l *line) lost() []change           { return l.lengthsMoved(ofParts, -l.allowance()) }
func (l *line) added() []change          { return l.lengthsMoved(ofParts, 2*l.allowance()) }
func (l *line) finishedForCut() []change { return l.lengthsMoved(ofParts, -2*l.allowance()) }

func (l *line) mistrimmed() []change {
	return l.lengthsMoved(func(at leaf) bool { return trimKeys[at.key] }, 2*l.allowance(), -2*l.allowance())
}

func (l *line) exchangedPairs() []change {
	var all []change
	for _, at := range l.recipe() {
		if at.list == nil || at.index != 0 || len(at.list.Items) != 2 || !lengthKeys[at.key] {
			continue
		}
		a, b := at.list.Items[0], at.list.Items[1]
		if x, ok := l.length(at); ok && b.Text != a.Text && x > 0 {
			all = append(all, change{replacement{a.Range, l.file.Slice(b.Range)}, []replacement{{b.Range, l.file.Slice(a.Range)}}})
		}
	}
	return all
}

func (l *line) untrimmed() []change {
	var all []change
	l.objects(l.tree.Get("parts"), func(n *jsontree.Node) {
		for i, m := range n.Members {
			if trimKeys[m.Key] && m.Value.Kind != jsontree.Object {
				all = append(all, l.without(n, i))
			}
		}
	})
	return all
}

// objects visits the objects below a value, and the value.
func (l *line) objects(n *jsontree.Node, visit func(*jsontree.Node)) {
	if n == nil {
		return
	}
	if n.Kind == jsontree.Object {
		visit(n)
	}
	for _, m := range n.Members {
		l.objects(m.Value, visit)
	}
	for _, item := range n.Items {
		l.objects(item, visit)
	}
}

func (l *line) turned() []change {
	var all []change
	for _, at := range l.recipe() {
		if at.key != "turn" && at.key != "turns" {
			continue
		}
		for _, turn := range []string{"0", "90", "180", "270"} {
			if turn != at.node.Text {
				all = append(all, put(at.node, turn))
			}
		}
	}
	return all
}

func (l *line) swapped() []change {
	var all []change
	for _, at := range l.recipe() {
		if _, ok := l.length(at); !ok && !countKeys[at.key] {
			continue
		}
		for _, text := range transposed(l.file.Slice(at.node.Range)) {
			all = append(all, put(at.node, text))
		}
	}
	return all
}

// fractions exchanges a quarter, half and three quarters for their neighbours,
// and an eighth for the next.
func (l *line) fractions() []change {
	next := map[string][]string{
		"1/8": {"3/8", "1/4"}, "1/4": {"1/2", "3/4"}, "3/8": {"5/8", "1/8"}, "1/2": {"1/4", "3/4"},
		"5/8": {"3/8", "7/8"}, "3/4": {"1/2", "1/4"}, "7/8": {"5/8", "3/4"},
	}
	var all []change
	for _, at := range l.recipe() {
		if _, ok := l.length(at); !ok {
			continue
		}
		text := l.file.Slice(at.node.Range)
		for _, was := range []string{"1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"} {
			if !strings.Contains(text, was) {
				continue
			}
			for _, becomes := range next[was] {
				all = append(all, put(at.node, strings.Replace(text, was, becomes, 1)))
			}
		}
		if before, ok := strings.CutSuffix(text, `.5"`); ok && l.plan.Units == measure.Cm {
			all = append(all, put(at.node, before+`"`), put(at.node, before+`.75"`))
		}
	}
	return all
}

func (l *line) miscounted() []change {
	var all []change
	for _, at := range l.recipe() {
		n, err := strconv.Atoi(at.node.Text)
		if at.node.Kind != jsontree.Number || !countKeys[at.key] || err != nil {
			continue
		}
		all = append(all, put(at.node, strconv.Itoa(n+1)))
		if n > 1 {
			all = append(all, put(at.node, strconv.Itoa(n-1)))
		}
	}
	return all
}
