package plan

import (
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
)

func (r *reader) batting(n *jsontree.Node) *Batting {
	if n == nil {
		return nil
	}
	return &Batting{
		Overhang: r.lengthOr(n, "overhang", orNothing, r.defaults.Overhang),
		Package:  r.pair("package", n.Get("package")),
		Roll:     r.length("roll", n.Get("roll"), positive),
		Grid:     r.grid(n.Get("grid"), r.defaults.Grid),
		At:       n.Range,
	}
}

func (r *reader) binding(n *jsontree.Node, seam Seam) *Binding {
	if n == nil {
		return nil
	}
	edge := text(n.Get("edge"))
	return &Binding{
		Kind:      pick(word(n.Get("kind")), StraightGrain, ContinuousBias, BiasStrips),
		Square:    r.length("square", n.Get("square"), positive),
		Single:    word(n.Get("fold")) == "single",
		Finished:  r.lengthOr(n, "finished", positive, seam.Allowance.Length),
		Curved:    edge.Text == "curved",
		CurvedAt:  edge.At,
		Fabric:    text(n.Get("fabric")),
		Cut:       r.length("cut", n.Get("cut"), positive),
		Joins:     pick(word(n.Get("joins")), Diagonal, Straight),
		Allowance: r.lengthOr(n, "allowance", orNothing, r.defaults.BindingAllowance),
		At:        n.Range,
	}
}

// sleeve takes off 1 in or 2.5 cm where the plan does not say: two guilds'
// show rules take 1 to 2 in off the quilt's width.
func (r *reader) sleeve(n *jsontree.Node) *Sleeve {
	if n == nil {
		return nil
	}
	shorter := measure.Inch
	if r.unit == measure.Cm {
		shorter = measure.Centimetre * 5 / 2
	}
	return &Sleeve{
		Fabric:  text(n.Get("fabric")),
		Cut:     r.length("cut", n.Get("cut"), positive),
		Shorter: r.lengthOr(n, "shorter", orNothing, shorter),
		Hem:     r.length("hem", n.Get("hem"), orNothing),
		Widest:  r.length("widest", n.Get("widest"), positive),
		At:      n.Range,
	}
}

func (r *reader) label(n *jsontree.Node) *Label {
	if n == nil {
		return nil
	}
	size := r.pair("size", n.Get("size"))
	return &Label{Fabric: text(n.Get("fabric")), Width: size[0], Height: size[1], At: n.Range}
}

// bed allows 1 in or 2.5 cm either way where the plan does not say (common
// practice, no source).
func (r *reader) bed(n *jsontree.Node) *Bed {
	if n == nil {
		return nil
	}
	within := measure.Inch
	if r.unit == measure.Cm {
		within = measure.Centimetre * 5 / 2
	}
	return &Bed{
		Mattress: r.pair("mattress", n.Get("mattress")),
		Drop:     r.length("drop", n.Get("drop"), orNothing),
		Tuck:     r.length("tuck", n.Get("tuck"), orNothing),
		DrawIn:   r.percent("draw_in", n.Get("draw_in")),
		Within:   r.lengthOr(n, "within", orNothing, within),
		At:       n.Range,
	}
}
