package tabulate

import (
	"fmt"
	"strconv"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// asCut is the size that a part should measure as it is: of a triangle the
// box round it as it is cut, not its place in a row.
func asCut(p *derive.Part) piecing.Box {
	if p.Shape != nil {
		return p.Shape.Cut
	}
	return p.Box
}

func howShape(p *derive.Part, u measure.Unit) string {
	h := p.Shape
	if h.Set != nil {
		return fmt.Sprintf("cut from %s %s, %s wide, %d from each, %s; every other one has the strips the other way up", many(h.Count, "strip set"), h.Set.Name.Text, h.Height.AsCut(u), h.Yield.Each, cutShape(p))
	}
	return fmt.Sprintf("cut from %s %s wide of %s, %d from each, %s", many(h.Count, "strip"), h.Height.AsCut(u), h.Fabric.Role.Text, h.Yield.Each, cutShape(p))
}

// cutShape says how a strip is cut.
func cutShape(p *derive.Part) string {
	switch h := p.Shape; {
	case h.Kind == plan.HalfTriangle60:
		return "half triangles of 60 degrees in pairs, head to tail; a pair that slopes the other way gives their mirror images"
	case h.Kind == plan.Hexagon:
		return "hexagons, two sides along the strip, every corner of them 120 degrees"
	case !h.Kind.Triangular():
		return fmt.Sprintf("diamonds with points of %d degrees, all cuts as far apart as the strip is wide", derive.DiamondAngle(h.Kind))
	case h.Blunt:
		return "triangles of 60 degrees, up and down in turn, their tips cut off"
	}
	return "triangles of 60 degrees, up and down in turn"
}

// strip says what becomes of a strip that is cut whole across the fabric, and how
// many pieces it is.
func (c cutter) strip(n derive.Need, height measure.Length) (does string, pieces int64) {
	down := c.cutDown(n, height)
	if p := c.s.Part(n.For.Text); p != nil && p.Shape != nil {
		pieces = p.ShapesOf(false)
		if down != "" {
			return fmt.Sprintf("%s, then cut into %s, %d from a whole strip.", strings.ToUpper(down[:1])+down[1:], cutShape(p), pieces), pieces
		}
		return fmt.Sprintf("Cut into %s, %d from a whole strip.", cutShape(p), pieces), pieces
	}
	if down != "" {
		return "Use whole, " + down + ".", 1
	}
	return "Use whole.", 1
}

// cutDown says how wide what is used from a higher strip is; nothing where it
// is as wide as the strip.
func (c cutter) cutDown(n derive.Need, height measure.Length) string {
	if n.Along >= height {
		return ""
	}
	return "cut down to " + n.Along.AsCut(c.u) + " wide"
}

// part says what becomes of the last strip, so high, of which only a width is
// used; alone tells that nothing else is cut from it.
func (c cutter) part(n derive.Need, width, height measure.Length, alone bool) (does string, pieces int64) {
	of := width.AsCut(c.u) + " of it"
	if down := c.cutDown(n, height); down != "" {
		of += " " + down
	}
	if alone {
		of = "at least " + of
	}
	if p := c.s.Part(n.For.Text); p != nil && p.Shape != nil {
		pieces = p.ShapesOf(true)
		return fmt.Sprintf("cut %d from %s: %s", pieces, of, cutShape(p)), pieces
	}
	return "use " + of, 1
}

func shapeNote(p *derive.Part, u measure.Unit) string {
	note := slackNote(p.Shape.Kind.Noun(), p.Shape.Yield, u)
	if over := p.Shape.Over(); over.Sign() > 0 {
		note += "; strip by geometry " + p.Shape.Exact.AsCut(u) + ", cut " + over.AsThere(u) + " over: trim every piece to its finished size and the seams"
	}
	return note
}

func howMosaic(op plan.Mosaic, p *derive.Part, u measure.Unit) string {
	var of []string
	for _, piece := range op.Pieces {
		of = append(of, strconv.Itoa(piece.Count.N)+" "+piece.Part.Text)
	}
	text := "sew " + strings.Join(of, ", ") + " together as the pattern draws it"
	if op.Trimmed {
		text += ", and trim the edges to " + p.Width.AsThere(u) + " x " + p.Height.AsThere(u)
	}
	return text
}

func howTemplate(s *derive.Size, p *derive.Part, op plan.Template) string {
	u, c := s.Plan.Units, p.Unit.Pieces[0]
	if n := biasPanel(p, c.Fabric); n != nil {
		return fmt.Sprintf("cut round its template from bias strips of %s, %s wide and %s long", c.Fabric.Role.Text,
			n.OnBias.Width.AsCut(u), n.OnBias.Length.AsCut(u))
	}
	text := "cut round its template from " + c.Width.BareRounded(u, measure.Up) + " x " + c.Height.AsCut(u) + " of " + c.Fabric.Role.Text
	switch op.Grain {
	case plan.GrainAlong:
		text += ", the template upright along the selvages"
	case plan.GrainAcross:
		text += ", the template upright across the selvages"
	case plan.GrainBias:
		text += ", the template on the bias"
	}
	return text
}

// templateNote is how much of its box the piece leaves, where the plan gives
// its area, and that nothing proves its outline.
func templateNote(op plan.Template, u measure.Unit) string {
	note := "not proved: its outline and fit are the template's"
	if op.Area == nil {
		return note
	}
	box := measure.Area(op.Box[0].Surd(), op.Box[1].Surd())
	return note + "; fills " + measure.FormatArea(op.AreaIn(u), u) + " of a box of " + measure.FormatArea(box, u)
}

// unproved are pieces cut round a template, of which only the box is proved, and
// mosaics, of which only the number of pieces and what they cover is.
func (in Input) unproved() []report.Row {
	var templates, mosaics, atMost, unknown []string
	for _, s := range in.Sizes {
		for _, p := range s.Parts {
			if p.Needed == 0 {
				continue
			}
			if _, ok := p.Operation.(plan.Template); ok {
				templates = append(templates, p.Name.Text)
			}
			switch m := p.Mosaic; {
			case m == nil:
			case m.Known && m.Exact():
				mosaics = append(mosaics, p.Name.Text)
			case m.Known:
				atMost = append(atMost, p.Name.Text)
			default:
				unknown = append(unknown, p.Name.Text)
			}
		}
	}
	var rows []report.Row
	add := func(names []string, before, after string) {
		if len(names) > 0 {
			rows = append(rows, row(report.T("not proved"), report.T(before+strings.Join(unique(names), ", ")+after)))
		}
	}
	add(templates, "The outline and fit of pieces cut round a template: ", ". The box that each is cut from is counted, and the finished size is the plan's word.")
	add(mosaics, "How the pieces of ", " fit together. They are counted and cut, and what they cover is held against the finished size.")
	add(atMost, "How the pieces of ", " fit together. They are counted and cut. With templates among them, only what they cover at most and at least is held against the finished size.")
	add(unknown, "How the pieces of ", " fit together, and what they cover. They are counted and cut.")
	return rows
}
