package check

import (
	"fmt"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/amend"
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// making is the object of a part's operation, as the plan writes it.
func (p *Pass) making(part *derive.Part) *jsontree.Node { return p.text().Node(part.OperationAt) }

// resize are the ways out of bringing one side of a part, as it comes out unfinished, to
// a length: its trim, what it is cut or what its units are cut. Where no plan can hold
// the length there are none.
func (p *Pass) resize(part *derive.Part, high bool, wanted measure.Surd) []diag.Way {
	length, ok := wanted.Length()
	if part == nil || !ok || length <= 0 {
		return nil
	}
	all := p.retrim(part, high, length)
	for _, l := range part.Room.OnRuler() {
		if high && l.What == "cut height" || !high && (l.What == "cut width" || l.What == "segment") {
			all = append(all, mend(of(p.putLength("cut", l.Length.At, length), fmt.Sprintf("for %q", part.Name.Text))))
		}
	}
	if room, ok := part.Room.(derive.Resized); ok {
		all = append(all, p.cutSquares(part, room, wanted))
	}
	return ways(all...)
}

// cutSquares is the way out of cutting the squares of a unit for a side, up to the
// ruler's grid.
func (p *Pass) cutSquares(part *derive.Part, room derive.Resized, side measure.Surd) diag.Way {
	return mend(of(p.putLength("cut the squares", sizeAt(part), room.CutFor(side).CeilTo(p.rulerGrid())), fmt.Sprintf("for %q", part.Name.Text)))
}

// retrim are the ways out of trimming a part to a side: of one that is trimmed already,
// and of one that is not and is large enough.
func (p *Pass) retrim(part *derive.Part, high bool, length measure.Length) []diag.Way {
	trims := part.Room.Trims()
	if len(trims) == 0 {
		return nil
	}
	t := trims[0]
	if high && len(trims) > 1 {
		t = trims[1]
	}
	switch {
	case t.To.Given() && !t.DownTo.Given():
		return ways(mend(of(p.putLength("trim to", t.To.At, length), fmt.Sprintf("for %q", part.Name.Text))))
	case t.To.Given() || t.From.Cmp(length.Surd()) < 0:
		return nil
	case len(trims) == 1:
		return ways(p.addTrim(part, length, length))
	case high:
		if w, ok := part.Width.Length(); ok {
			return ways(p.addTrim(part, w, length))
		}
	default:
		if h, ok := part.Height.Length(); ok {
			return ways(p.addTrim(part, length, h))
		}
	}
	return nil
}

// addTrim is the way out of a trim that was forgotten.
func (p *Pass) addTrim(part *derive.Part, w, h measure.Length) diag.Way {
	value := p.lengthText(source.Range{}, w)
	if w != h {
		value = p.pairValue(w, h)
	}
	if value == "" {
		return diag.Way{}
	}
	return mend(of(p.add(part.OperationAt, "trim", value), fmt.Sprintf("to %q", part.Name.Text)))
}

// pairValue is a width and a height as a plan writes them.
func (p *Pass) pairValue(w, h measure.Length) string {
	width, height := p.lengthText(source.Range{}, w), p.lengthText(source.Range{}, h)
	if width == "" || height == "" {
		return ""
	}
	return "[" + width + ", " + height + "]"
}

// addAngle are the choices of saying that a ruler has a line at an angle.
func (p *Pass) addAngle(rulers []plan.Ruler, angle int) []diag.Way {
	list := p.text().Node(p.Size.Of.Tools.At)
	if list == nil || len(list.Items) != len(rulers) {
		return nil
	}
	var all []diag.Way
	for i, n := range list.Items {
		e := p.add(n.Range, "angles", fmt.Sprintf("[%d]", angle))
		if angles := n.Get("angles"); angles != nil {
			e = of(p.appendTo(angles.Range, fmt.Sprint(angle)), "to the angles")
		}
		e.Thing = fmt.Sprintf("%s of %s if it has the line", e.Thing, p.describe(&rulers[i]))
		all = append(all, choice(e))
	}
	return ways(all...)
}

// addCautions is the way out of printing cautions that are missing, after those that
// are printed.
func (p *Pass) addCautions(keys ...string) diag.Way {
	var quoted []string
	for _, k := range keys {
		quoted = append(quoted, amend.Quote(k))
	}
	list := strings.Join(quoted, ", ")
	root := p.Plan.Tree
	said := root.Get("cautions")
	if patch := root.Get("sizes").Get(p.Size.Of.Name.Text).Get("cautions"); patch != nil {
		said = patch
	}
	if said == nil {
		return mend(p.add(root.Range, "cautions", "["+list+"]"))
	}
	e := p.appendTo(said.Range, list)
	return mend(of(e, "to the cautions"))
}

// skills are the choices of a skill level.
func (p *Pass) skills() []diag.Way {
	var all []diag.Way
	for _, level := range []string{"beginner", "confident beginner", "intermediate", "advanced"} {
		all = append(all, choice(p.add(p.Plan.Tree.Range, "skill", amend.Quote(level))))
	}
	return ways(all...)
}

// notPrinted is the choice of saying that nothing is printed for a size.
func (p *Pass) notPrinted(size string) diag.Way {
	if printed := p.Plan.Tree.Get("printed"); printed != nil {
		return choice(of(p.add(printed.Range, size, `"not printed"`), "to \"printed\""))
	}
	return choice(p.add(p.Plan.Tree.Range, "printed", fmt.Sprintf("{ %s: \"not printed\" }", amend.Quote(size))))
}

// turnBy is the way out of turning a cell a quarter more.
func (p *Pass) turnBy(c plan.Cell) diag.Way {
	n := p.text().Node(c.At)
	if n == nil {
		return diag.Way{}
	}
	turn := (c.Turn + 90) % 360
	var e diag.Edit
	switch said := n.Get("turn"); {
	case n.Kind == jsontree.String:
		e = p.put("", c.At, fmt.Sprintf("{ \"part\": %s, \"turn\": %d }", amend.Quote(c.Part.Text), turn))
	case said != nil && turn == 0:
		e = p.remove(said.Range)
	case said != nil:
		e = p.put("", said.Range, fmt.Sprint(turn))
	default:
		e = p.add(n.Range, "turn", fmt.Sprint(turn))
	}
	w := mend(e)
	if w.Kind != 0 {
		w.Says = fmt.Sprintf("turn %q", c.Part.Text)
	}
	return w
}
