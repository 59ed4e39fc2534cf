package plan

import (
	"yardproof/schema/jsontree"
)

func (r *reader) layout(n *jsontree.Node, seam Seam) Layout {
	var l Layout
	if n == nil {
		return l
	}
	l.At = n.Range
	l.Grid = r.blocks(n.Get("grid"))
	for _, m := range members(n) {
		switch m.Key {
		case "rows":
			r.later(m.KeyRange, "a layout in rows that differ is", "lay the blocks out in a grid")
		case "map":
			r.later(m.KeyRange, "a layout drawn with letters is", "lay the blocks out in a grid")
		case "sashing":
			r.later(m.KeyRange, "sashing is", "lay the blocks out in a grid without it")
		}
	}
	r.onlyWord(n.Get("setting"), "straight", "setting blocks on point is")
	for _, m := range members(n.Get("borders")) {
		l.Borders = append(l.Borders, r.border(m, seam))
	}
	return l
}

// onlyWord refuses every choice but the one that is derived.
func (r *reader) onlyWord(n *jsontree.Node, derived, what string) {
	if t := text(n); t.Given() && t.Text != derived {
		r.later(t.At, what, "write "+quote(derived))
	}
}

func (r *reader) blocks(n *jsontree.Node) *Grid {
	if n == nil {
		return nil
	}
	return &Grid{
		Rows: count(n.Get("rows")), Columns: count(n.Get("columns")),
		Blocks: r.cells(n.Get("blocks")), At: n.Range,
	}
}

func (r *reader) border(m jsontree.Member, seam Seam) Border {
	n := m.Value
	b := Border{
		Name: Text{m.Key, m.KeyRange}, At: n.Range,
		Fabric: text(n.Get("fabric")),
		Width:  r.length("width", n.Get("width"), positive),
		EndsOn: word(n.Get("first")) == "ends",
		Joins:  pick(word(n.Get("joins")), Diagonal, Straight),
		Seam:   r.ownSeam(n.Get("seam"), seam),
	}
	if part := n.Member("part"); part != nil {
		r.later(part.KeyRange, "pieced borders are", "make the border of one fabric")
	}
	r.onlyWord(n.Get("corners"), "butted", "border corners other than butted ones are")
	r.onlyWord(n.Get("strips"), "crosswise", "border strips cut lengthwise are")
	r.onlyWord(n.Get("cut"), "one joined strip", "joining a border's strips for each side is")
	return b
}

func (r *reader) finish(n *jsontree.Node, seam Seam) Finish {
	var f Finish
	if n == nil {
		return f
	}
	f.At = n.Range
	f.Backing = r.backing(n.Get("backing"))
	f.Batting = r.batting(n.Get("batting"))
	f.Binding = r.binding(n.Get("binding"), seam)
	f.Sleeve = r.sleeve(n.Get("sleeve"))
	f.Label = r.label(n.Get("label"))
	return f
}

func (r *reader) backing(n *jsontree.Node) *Backing {
	if n == nil {
		return nil
	}
	return &Backing{
		Fabric:   text(n.Get("fabric")),
		Overhang: r.lengthOr(n, "overhang", orNothing, r.defaults.Overhang),
		Seam:     r.lengthOr(n, "seam", positive, r.defaults.BackingSeam),
		Panels:   pick(word(n.Get("panels")), Either, Lengthwise, Crosswise),
		At:       n.Range,
	}
}
