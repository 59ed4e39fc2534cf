package plan

import "yardproof/schema/jsontree"

// ThreePatch is square units of one triangle that fills half and two that fill a
// quarter each.
type ThreePatch struct {
	Half        Text
	Quarters    [2]Text // clockwise
	Finished    Length
	Pairs       bool   // sewn in pairs of squares, two units of either hand; otherwise from triangles
	CutHalf     Length // cut square; absent where geometry decides
	CutQuarters Length // cut square; absent where geometry decides
	Trim        Length // absent when it is not trimmed
	DownTo      Length // or the grid to whose next line below it is trimmed
}

// Ingredients implements Operation.
func (o ThreePatch) Ingredients() []Ingredient {
	return []Ingredient{{o.Half, true}, {o.Quarters[0], true}, {o.Quarters[1], true}}
}

// Make implements Operation.
func (o ThreePatch) Make(m Maker) { m.ThreePatch(o) }

func (r *reader) threePatch(n *jsontree.Node) Operation {
	cut := n.Get("cut")
	return ThreePatch{
		Half: text(n.Get("half")), Quarters: two(n.Get("quarters")),
		Finished:    r.length("finished", n.Get("finished"), positive),
		Pairs:       word(n.Get("method")) == "pairs",
		CutHalf:     r.length("half", cut.Get("half"), positive),
		CutQuarters: r.length("quarters", cut.Get("quarters"), positive),
		Trim:        r.length("trim", n.Get("trim"), positive), DownTo: r.downTo(n),
	}
}
