package plan

import (
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
)

func (r *reader) fabrics(n *jsontree.Node) []Fabric {
	var fabrics []Fabric
	for _, m := range members(n) {
		fabrics = append(fabrics, r.fabric(m))
	}
	return fabrics
}

func (r *reader) fabric(m jsontree.Member) Fabric {
	n := m.Value
	f := Fabric{
		Role: Text{m.Key, m.KeyRange}, At: n.Range,
		Name: text(n.Get("name")), SKU: text(n.Get("sku")), Colour: text(n.Get("colour")),
		Print: pick(word(n.Get("print")), Plain, TwoWay, OneWay),
		Cuts:  pick(word(n.Get("cutting")), Unsaid, PlainCuts, PackedCuts),
	}
	if repeat := n.Member("repeat"); repeat != nil {
		f.Repeat = r.length("repeat", repeat.Value, positive)
	}
	if pack := n.Get("precut"); pack != nil {
		r.precut(&f, pack)
	} else {
		r.yardage(&f, n.Get("yardage"))
	}
	return f
}

func (r *reader) yardage(f *Fabric, n *jsontree.Node) {
	f.Form = Yardage
	f.UsableWidth = r.lengthOr(n, "usable_width", positive, r.defaults.UsableWidth)
	if n.Get("usable_width") != nil {
		r.sold(f.UsableWidth)
	}
	f.SquaringUp = r.lengthOr(n, "squaring_up", orNothing, r.defaults.SquaringUp)
	f.Cushion = r.lengthOr(n, "cushion", orNothing, r.defaults.Cushion).Length
	f.Grid = r.grid(n.Get("grid"), r.defaults.Grid)
	f.ShrinkLength = r.percent("length", n.Get("shrinkage").Get("length"))
	f.ShrinkWidth = r.percent("width", n.Get("shrinkage").Get("width"))
}

// grid is what a length is rounded up to; never zero, so that whoever divides
// by it may.
func (r *reader) grid(n *jsontree.Node, otherwise measure.Length) measure.Length {
	if g := r.fabricLength("grid", n, positive).Length; g > 0 {
		return g
	}
	return otherwise
}

func (r *reader) precut(f *Fabric, n *jsontree.Node) {
	f.Form = Precut
	f.Piece = r.pair("piece", n.Get("piece"))
	f.Usable = f.Piece
	if usable := n.Get("usable"); usable != nil {
		f.Usable = r.pair("usable", usable)
		r.within(f)
	}
	f.Pack = count(n.Get("count"))
	f.Assorted = yes(n.Get("assorted"))
}

// widest is the greatest usable width that is believed: sheeting is woven up to
// 3.2 m, 126 in. Common practice, no source.
func widest(u measure.Unit) measure.Length {
	if u == measure.Cm {
		return 320 * measure.Centimetre
	}
	return 126 * measure.Inch
}

// sold refuses a usable width that no fabric for quilts has.
func (r *reader) sold(width Length) {
	if most := widest(r.unit); width.Length > most {
		r.report(OutOfRange, width.At, "a usable width of "+width.Format(r.unit)+" is more than fabric is sold in: that is up to "+most.Format(r.unit),
			"write the width between the selvages")
	}
}

// within refuses usable pieces that are larger than the pieces themselves,
// whichever way round they are written.
func (r *reader) within(f *Fabric) {
	for i := range f.Usable {
		usable, piece := f.Usable[i], f.Piece[i]
		if (f.Usable[0].Length > f.Usable[1].Length) != (f.Piece[0].Length > f.Piece[1].Length) {
			piece = f.Piece[1-i]
		}
		if usable.Length > piece.Length && piece.Length > 0 {
			r.report(OutOfRange, usable.At, "the usable size is "+usable.Format(r.unit)+" where the whole piece is "+piece.Format(r.unit),
				"write at most "+piece.Format(r.unit)+", or the pack's real size as the piece")
			return
		}
	}
}

// tools are the plan's; its rulers are the studio's where it lists none.
func (r *reader) tools(n *jsontree.Node, project *Project) Tools {
	t := Tools{Mat: r.pair("mat", n.Get("mat"))}
	list := n.Get("rulers")
	if list == nil {
		if project != nil {
			t.Rulers = project.Rulers
		}
		return t
	}
	t.At = list.Range
	for _, item := range items(list) {
		t.Rulers = append(t.Rulers, r.ruler(item))
	}
	return t
}

func (r *reader) ruler(n *jsontree.Node) Ruler {
	ruler := Ruler{At: n.Range}
	side := r.sides("square", n.Get("square"))
	if size := n.Get("size"); size != nil {
		side = r.pair("size", size)
	}
	if side[1].Length < side[0].Length {
		side[0], side[1] = side[1], side[0]
	}
	ruler.Width, ruler.Length = side[0], side[1]
	ruler.Lines = r.length("lines", n.Get("lines"), positive)
	for _, a := range items(n.Get("angles")) {
		ruler.Angles = append(ruler.Angles, count(a).N)
	}
	return ruler
}
