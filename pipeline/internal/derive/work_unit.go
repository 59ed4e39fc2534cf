package derive

import (
	"yardproof/pipeline/report"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// unitFormula is the width of a unit as sewn; see the functions of piecing
// that are named after the units.
func unitFormula(op plan.Operation) string {
	switch op := op.(type) {
	case plan.Hourglass:
		if op.HalfSquares.Given() {
			return "half-square unit - s x sqrt2"
		}
		return "c - 2s x sqrt2"
	case plan.FlyingGeese:
		if op.AtATime == 4 {
			return "goose square - 2s x sqrt2"
		}
		return "the rectangle's"
	case plan.SquareInSquare:
		if !op.Flip {
			return "centre square / sqrt2 + corner square - 2s x sqrt2"
		}
	case plan.Template:
		return "the template's"
	}
	return "the body's"
}

func (s *Size) tellUnit(p *Part) *report.Work {
	if op, ok := p.Operation.(plan.Logs); ok {
		return s.tellLogs(p, op)
	}
	w := &report.Work{Formula: unitFormula(p.Operation), Value: s.surd(p.Unit.Sewn.Width)}
	for _, t := range p.Unit.Of {
		w.Terms = append(w.Terms, term("", t.Part.Name.Text, because(s.surd(t.Part.Width), s.SizeWork(t.Part)), t.Part.Name.At))
	}
	for _, c := range p.Unit.Pieces {
		w.Terms = append(w.Terms, term("", c.What+", cut", s.length(c.Width), c.At))
		if !c.Width.Surd().Equal(c.Exact.Width) {
			w.Terms = append(w.Terms, term("", c.What+", exact", s.surd(c.Exact.Width), source.Range{}))
		}
	}
	if l := p.Unit.Lines; l != nil {
		at := source.Range{}
		if l.Ruler != nil {
			at = l.Ruler.Lines.At
		}
		w.Terms = append(w.Terms, term("", "cuts up to lines so far apart, as it is trimmed", s.length(l.Apart), at))
	}
	w.Terms = append(w.Terms, s.seamTerm(p.Seam))
	if t := p.Unit.Trim; t[0].Given() {
		w.Terms = append(w.Terms, term("", "trimmed to", s.length(t[0].Length), t[0].At))
	}
	return w
}
