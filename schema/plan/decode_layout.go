package plan

import (
	"yardproof/schema/jsontree"
)

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
