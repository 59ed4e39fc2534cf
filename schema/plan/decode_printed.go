package plan

import (
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// printed reads a size's printed figures, or where the plan says that there
// are none.
func (r *reader) printed(n *jsontree.Node) (*Printed, source.Range) {
	switch {
	case n == nil:
		return nil, source.Range{}
	case n.Kind != jsontree.Object:
		return nil, n.Range
	}
	p := &Printed{At: n.Range, Finished: r.pair("finished", n.Get("finished"))}
	p.Rounding = r.lengthOr(n, "rounding", positive, r.defaults.FinishedRounding)
	p.Measures = r.printedSizes(n.Get("measures"))
	p.Parts = printedCounts(n.Get("parts"))
	p.Strips = printedCounts(n.Get("strips"))
	p.Sets = printedCounts(n.Get("sets"))
	p.Tubes = printedCounts(n.Get("tubes"))
	p.PerTube = printedCounts(n.Get("per_tube"))
	p.PerSet = printedCounts(n.Get("per_set"))
	p.Left = printedCounts(n.Get("left"))
	p.Precuts = printedCounts(n.Get("precuts"))
	p.Fabric = r.printedLengths(n.Get("fabric"))
	p.Backing = r.printedPair("backing", n.Get("backing"))
	p.Batting = r.printedPair("batting", n.Get("batting"))
	for _, m := range members(n.Get("thread")) {
		p.Thread = append(p.Thread, PrintedLength{Text{m.Key, m.KeyRange}, r.threadLength(m.Key, m.Value)})
	}
	return p, source.Range{}
}

func printedCounts(n *jsontree.Node) []PrintedCount {
	var counts []PrintedCount
	for _, m := range members(n) {
		counts = append(counts, PrintedCount{Text{m.Key, m.KeyRange}, count(m.Value)})
	}
	return counts
}

func (r *reader) printedLengths(n *jsontree.Node) []PrintedLength {
	var lengths []PrintedLength
	for _, m := range members(n) {
		lengths = append(lengths, PrintedLength{Text{m.Key, m.KeyRange}, r.fabricLength(m.Key, m.Value, orNothing)})
	}
	return lengths
}

func (r *reader) printedSizes(n *jsontree.Node) []PrintedSize {
	var sizes []PrintedSize
	for _, m := range members(n) {
		side := r.sides(m.Key, m.Value)
		sizes = append(sizes, PrintedSize{Text{m.Key, m.KeyRange}, side[0], side[1]})
	}
	return sizes
}

func (r *reader) printedPair(key string, n *jsontree.Node) PrintedPair {
	p := r.pair(key, n)
	return PrintedPair{p[0], p[1]}
}

func (r *reader) kit(n *jsontree.Node) *Kit {
	if n == nil || n.Kind != jsontree.Object {
		return nil
	}
	return &Kit{
		Fabrics: texts(n.Get("fabrics")), Excludes: texts(n.Get("excludes")),
		Minutes: count(n.Get("minutes")), Run: count(n.Get("run")),
		Packaging: r.money("packaging", n.Get("packaging")),
		Pattern:   r.money("pattern", n.Get("pattern")),
		Fixed:     r.money("fixed", n.Get("fixed")),
		Price:     r.money("price", n.Get("price")),
		Margin:    r.percent("margin", n.Get("margin")),
		NeededBy:  r.date(text(n.Get("needed_by"))),
		At:        n.Range,
	}
}
