package tabulate

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// sewing is one size's sewing: what to make, how many, and the size each
// should measure before it is sewn on.
func sewing(s *derive.Size) report.Sheet {
	name := s.Of.Name.Text
	tables := []report.Table{sewParts(s)}
	for _, more := range []func(*derive.Size) (report.Table, bool){tubeKinds, tradeCuts} {
		if t, ok := more(s); ok {
			tables = append(tables, t)
		}
	}
	return report.Sheet{ID: "sewing-" + name, Title: "Sewing " + name, Tables: append(tables, arrangement(s), sewTop(s))}
}

func sewParts(s *derive.Size) report.Table {
	u := unitName(s.Plan.Units)
	t := report.Table{
		ID: "parts-" + s.Of.Name.Text, Heading: "Parts, in the order they are made",
		Columns: []report.Column{
			{ID: "part", Title: "Part"}, {ID: "how", Title: "How", Wide: true}, {ID: "make", Title: "Make"},
			{ID: "needed", Title: "Needed"}, {ID: "width", Title: "Should measure, width", Unit: u}, {ID: "height", Title: "Height", Unit: u},
			{ID: "notes", Title: "Notes", Wide: true},
		},
		Foot: []string{"Sizes are unfinished: seam allowances all round are included."},
	}
	variants := s.Variants()
	for _, p := range s.Parts {
		if p.Needed == 0 || !sewn(p) {
			continue
		}
		w, h := report.Cell{}, report.Cell{}
		if p.Known {
			box := asCut(p)
			w, h = report.L(box.Width, s.Plan.Units), report.L(box.Height, s.Plan.Units)
			w.Why = s.SizeWork(p)
		}
		made := report.N(p.Made)
		made.Why = s.CountWork(p)
		needed := report.N(p.Needed)
		needed.Why = s.NeededWork(p)
		t.Rows = append(t.Rows, row(report.T(p.Name.Text), report.T(how(s, p)), made, needed, w, h, report.T(notes(s, p, variants[p]))))
	}
	return t
}

func sewn(p *derive.Part) bool {
	switch p.Operation.(type) {
	case plan.Cut, plan.WholeStrip:
		return false
	}
	return true
}

func how(s *derive.Size, p *derive.Part) string {
	if !p.Known {
		return "cannot be derived; see the overview"
	}
	u := s.Plan.Units
	switch op := p.Operation.(type) {
	case plan.StripSet:
		if p.Pool != nil || p.Set.Of != nil {
			return howShared(p, op, u)
		}
		text := many(p.Set.Count, "strip set") + " of " + listStrips(p.Set.Strips)
		if p.Set.Cut != nil {
			text += fmt.Sprintf(", cut into segments of %s%s, %d from each", op.Segment.AsCut(u), atAngle(op), p.Set.Cut.Each)
		}
		return text
	case plan.Tube:
		return fmt.Sprintf("%s of sets %s and %s, %s%scut into %s each", many(p.Tube.Count, "tube"), op.Sets[0].Text, op.Sets[1].Text, joinedSides(p.Tube), endForEnd(op), many(p.Tube.Yield.Each, "square")) + trimmed(op.Trim, op.DownTo, u)
	case plan.HalfSquares:
		return fmt.Sprintf("%s of squares %s, %s and %s, %d units from each", many(p.Triangle.Pairs, "pair"), op.Square.AsCut(u), op.Fabrics[0].Text, op.Fabrics[1].Text, op.AtATime) + trimmed(op.Trim, op.DownTo, u)
	case plan.TriangleSquare:
		return "sew triangles of " + names(op.Of) + trimmed(op.Trim, op.DownTo, u)
	case plan.Rows:
		var rows []string
		placed := s.WalkIn(derive.Flips{}).Rows(len(op.Rows), func(r int) []plan.Cell { return op.Rows[r] })
		for _, r := range placed {
			var cells []string
			for _, c := range r {
				cells = append(cells, cellName(s, c))
			}
			rows = append(rows, strings.Join(cells, " + "))
		}
		return "rows: " + strings.Join(rows, " / ")
	case plan.Trim:
		return "trim " + op.Part.Text + saidKind(op.Kind) + down(op.DownTo, u)
	case plan.Setting:
		return settingText(p, op, u)
	case plan.Bordered:
		return borderedText(p, op, u)
	}
	return howUnit(s, p)
}

func trimmed(to, downTo plan.Length, u measure.Unit) string {
	if !to.Given() {
		return ""
	}
	return ", trimmed to " + to.AsThere(u) + down(downTo, u)
}

// down says why a unit is trimmed to what it is, where a grid decides it.
func down(to plan.Length, u measure.Unit) string {
	if !to.Given() {
		return ""
	}
	return ", down to the next line of " + to.Format(u)
}

func cellName(s *derive.Size, c derive.Placed) string {
	name := c.Part.Text + saidKind(c.Kind) + exchanged(s, c)
	if c.Mirror {
		name += " mirrored"
	}
	if c.Turn == 0 {
		return name
	}
	return fmt.Sprintf("%s turned %d°", name, c.Turn)
}

func names(of []plan.Text) string {
	var all []string
	for _, t := range of {
		all = append(all, t.Text)
	}
	return strings.Join(all, ", ")
}

// listStrips counts equal neighbours: "2 x navy, white".
func listStrips(strips []derive.Strip) string {
	var out []string
	for i := 0; i < len(strips); {
		j := i
		for j < len(strips) && strips[j].Fabric == strips[i].Fabric && strips[j].Width == strips[i].Width {
			j++
		}
		name := strips[i].Fabric.Role.Text
		if j-i > 1 {
			name = fmt.Sprintf("%d x %s", j-i, name)
		}
		out = append(out, name)
		i = j
	}
	return strings.Join(out, ", ")
}

func notes(s *derive.Size, p *derive.Part, variants []derive.Variant) string {
	if !p.Known {
		return ""
	}
	u := s.Plan.Units
	var out []string
	if !s.Sure(derive.Quantity{Kind: derive.Count, Name: p.Name.Text}) {
		out = append(out, "at least so many: not all that is made of it could be counted")
	}
	if p.Tube != nil {
		out = append(out, tubeNotes(s, p)...)
	}
	switch {
	case p.Pool != nil:
		out = append(out, poolNote(p, u)...)
	case p.Set != nil && p.Set.Cut != nil:
		out = append(out, slackNote("segment", *p.Set.Cut, u))
	case p.Loop != nil:
		out = append(out, slackNote("ring", p.Loop.Yield, u))
	}
	if p.Set != nil && p.Set.Cut == nil {
		out = append(out, "set is "+p.Set.Width.Format(u)+" wide")
	}
	out = append(out, trimNotes(s, p)...)
	out = append(out, packNotes(s, p)...)
	if p.Press.Given() {
		out = append(out, "press "+p.Press.Text)
	}
	if p.Shape != nil {
		out = append(out, shapeNote(p, u))
	}
	if p.Unit != nil {
		out = append(out, unitNotes(s, p)...)
	}
	if spare := p.Made - p.Needed; spare > 0 {
		out = append(out, fmt.Sprintf("%d spare", spare))
	}
	out = append(out, variantNotes(s, p, variants)...)
	if p.Mirrored > 0 && handed(p) {
		out = append(out, fmt.Sprintf("%d of them as mirror images, sewn the other way round", p.Mirrored))
	}
	if p.Bias {
		out = append(out, "edges are on the bias")
	}
	return strings.Join(out, "; ")
}

// handed tells whether the mirror image of a part is another part: one unit of
// two triangles, or one segment of strips, only has to be turned.
func handed(p *derive.Part) bool {
	switch op := p.Operation.(type) {
	case plan.StripSet, plan.Tube, plan.HalfSquares:
		return false
	case plan.TriangleSquare:
		return len(op.Of) > 2
	}
	return true
}

func slackNote(what string, y derive.Yield, u measure.Unit) string {
	return fmt.Sprintf("the %d %ss take %s of %s: %s to spare", y.Each, what, y.Used.AsCut(u), y.Length.AsThere(u), y.Rest().AsThere(u)) + ofEachSet(y, u)
}

// narrower says how much narrower a seam may be sewn, rounded down to what can be
// seen, 1/64 in or 0.1 mm, before a square is lost.
func narrower(l measure.Length, u measure.Unit) string {
	least := measure.Inch / 64
	if u == measure.Cm {
		least = measure.Millimetre / 10
	}
	if l < least {
		return "a seam sewn less than " + least.Format(u) + " narrower loses a square"
	}
	return "the seam may be sewn up to " + measure.FloorTo(l, least).AsThere(u) + " narrower before a square is lost"
}

func tubeNotes(s *derive.Size, p *derive.Part) []string {
	u, t := s.Plan.Units, p.Tube
	out := []string{slackNote("square", t.Yield, u)}
	if slack, ok := t.SeamSlack(); ok {
		out = append(out, narrower(slack, u))
	}
	out = append(out, joinNotes(t)...)
	if stub := t.Stub(); stub > 0 {
		out = append(out, "unpick "+stub.AsCut(u)+" of the far seam at each tip")
	}
	return out
}

// sewTop is the top and the finishing.
func sewTop(s *derive.Size) report.Table {
	u := unitName(s.Plan.Units)
	t := report.Table{
		ID: "top-" + s.Of.Name.Text, Heading: "Top and finishing",
		Columns: []report.Column{
			{ID: "step", Title: "Step"}, {ID: "how", Title: "How", Wide: true}, {ID: "strips", Title: "Strips"},
			{ID: "width", Title: "Width", Unit: u}, {ID: "length", Title: "Length", Unit: u},
		},
	}
	if !s.Top.Known {
		t.Lead = []string{"The top cannot be derived; see the overview."}
		return t
	}
	length := func(x measure.Surd) report.Cell { return report.L(x, s.Plan.Units) }
	t.Rows = append(t.Rows, settingRows(s)...)
	for _, b := range s.Top.Borders {
		t.Rows = append(t.Rows, borderRows(s, b)...)
	}
	t.Rows = append(t.Rows, row(report.T("top"), report.T("should measure, unfinished"), report.Cell{}, length(s.Top.Width), length(s.Top.Height)))
	t.Rows = append(t.Rows, finishRows(s)...)
	return t
}

func joinText(j plan.Joins) string {
	if j == plan.Straight {
		return "join the strips straight"
	}
	return "join the strips on the diagonal"
}

// atAngle says how segments are cut that are not cut square to their strips.
func atAngle(op plan.StripSet) string {
	if !op.Angle.Given() {
		return ""
	}
	return fmt.Sprintf(" at %d degrees to the strips", op.Angle.N)
}
