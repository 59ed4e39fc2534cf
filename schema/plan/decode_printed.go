package plan

import (
	"fmt"

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
	p.Strips = r.printedStrips(n.Get("strips"))
	p.Sets = printedCounts(n.Get("sets"))
	p.Tubes = printedCounts(n.Get("tubes"))
	p.PerTube = printedCounts(n.Get("per_tube"))
	p.PerSet = printedCounts(n.Get("per_set"))
	p.Left = printedCounts(n.Get("left"))
	p.Precuts = printedCounts(n.Get("precuts"))
	p.Fabric = r.printedLengths(n.Get("fabric"))
	p.Setting = printedCounts(n.Get("setting"))
	for _, m := range members(n.Get("borders")) {
		length := func(key string) Length { return r.length(key, m.Value.Get(key), positive) }
		p.Borders = append(p.Borders, PrintedBorder{Text{m.Key, m.KeyRange}, length("cut"), length("sides"), length("ends")})
	}
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

// printedStrips reads a number of strips, an object that says which they are,
// or a list of those.
func (r *reader) printedStrips(n *jsontree.Node) []PrintedStrips {
	var all []PrintedStrips
	for _, m := range members(n) {
		of := Text{m.Key, m.KeyRange}
		switch m.Value.Kind {
		case jsontree.Number:
			all = append(all, PrintedStrips{Of: of, Count: count(m.Value)})
		case jsontree.Object:
			all = append(all, r.someStrips(of, m.Value))
		}
		for _, item := range items(m.Value) {
			all = append(all, r.someStrips(of, item))
		}
	}
	return all
}

func (r *reader) someStrips(of Text, n *jsontree.Node) PrintedStrips {
	return PrintedStrips{
		Of: of, Count: count(n.Get("count")), Each: yes(n.Get("each")),
		Fabric: text(n.Get("fabric")), Width: r.length("width", n.Get("width"), positive),
	}
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
		Allowance: r.lengthOr(n, "allowance", orNothing, r.defaults.CutAllowance),
		Cut:       pick(word(n.Get("cut")), Lengths, Pieces),
		Things:    r.things(n.Get("things")), Label: r.claims(n.Get("label")),
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

func (r *reader) things(n *jsontree.Node) []Thing {
	var all []Thing
	for _, item := range items(n) {
		t := Thing{Name: text(item.Get("name")), SKU: text(item.Get("sku")), Count: count(item.Get("count")), Price: r.money("price", item.Get("price")), At: item.Range}
		if !t.Count.Given() {
			t.Count.N = 1
		}
		all = append(all, t)
	}
	return all
}

func (r *reader) claims(n *jsontree.Node) []Claimed {
	var all []Claimed
	for _, m := range members(n) {
		c := Claimed{Of: Text{m.Key, m.KeyRange}, Packs: count(m.Value)}
		c.Length = r.fabricLength(m.Key, m.Value, orNothing)
		all = append(all, c)
	}
	return all
}

// stages reads the parts of a class, whose minutes are its own.
func (r *reader) stages(c *Class, n *jsontree.Node) {
	total, known := 0, true
	for _, item := range items(n) {
		s := Stage{text(item.Get("name")), count(item.Get("minutes"))}
		total, known = total+s.Minutes.N, known && s.Minutes.Given()
		c.Stages = append(c.Stages, s)
	}
	switch {
	case len(c.Stages) == 0 || !known: // what is no number has been told of
	case c.Minutes.Given() && c.Minutes.N != total:
		r.report(NotAllowed, c.Minutes.At, fmt.Sprintf("the class takes %d minutes, and its stages %d in all", c.Minutes.N, total), fmt.Sprintf("write %d, or leave it out", total))
	default:
		c.Minutes = Count{total, n.Range}
	}
}

// class reads what is known of a class; nil when the pattern is not taught.
func (r *reader) class(n *jsontree.Node) *Class {
	if n == nil || n.Kind != jsontree.Object {
		return nil
	}
	c := &Class{
		Students: count(n.Get("students")), Fee: r.money("fee", n.Get("fee")),
		Kits:    pick(word(n.Get("kits")), OwnFabric, KitsIncluded, KitsSold),
		Minutes: count(n.Get("minutes")), Costs: r.money("costs", n.Get("costs")),
		Bring: texts(n.Get("bring")), Before: texts(n.Get("before")), Samples: 1, At: n.Range,
	}
	if s := count(n.Get("samples")); s.Given() {
		c.Samples = s.N
	}
	r.stages(c, n.Get("stages"))
	for _, item := range items(n.Get("lend")) {
		l := Lent{Name: text(item.Get("name")), For: 1}
		if n := count(item.Get("for")); n.Given() {
			l.For = n.N
		}
		c.Lend = append(c.Lend, l)
	}
	return c
}
