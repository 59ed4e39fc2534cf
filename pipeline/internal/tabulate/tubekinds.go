package tabulate

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
	"yardproof/schema/plan"
)

// tubeKinds lists the two kinds of squares that tubes give; ok is false where
// there are no tubes.
func tubeKinds(s *derive.Size) (t report.Table, ok bool) {
	t = report.Table{
		ID: "tube-kinds-" + s.Of.Name.Text, Heading: "Squares of tubes, by the seam they open along",
		Columns: []report.Column{
			{ID: "part", Title: "Part"}, {ID: "kind", Title: "Kind"}, {ID: "diagonal", Title: "Along the diagonal", Wide: true},
			{ID: "corners", Title: "In two corners", Wide: true}, {ID: "each", Title: "From a tube"}, {ID: "needed", Title: "Needed"}, {ID: "make", Title: "Make"},
		},
		Foot: []string{"A triangle whose tip lies towards the far edge of the tube opens along the near seam, and the next one along the far seam. Strips are counted from the near edge."},
	}
	for _, p := range s.Parts {
		if p.Tube == nil || p.Needed == 0 || p.Tube.Count == 0 {
			continue
		}
		near, far := p.Tube.Makes(p.Tube.Count)
		t.Rows = append(t.Rows, kindRow(p, plan.NearKind, near), kindRow(p, plan.FarKind, far))
		t.Lead = append(t.Lead, kindText(p))
		if text := printedKinds(p, s.Of.Printed); text != "" {
			t.Lead = append(t.Lead, text)
		}
	}
	return t, len(t.Rows) > 0
}

func kindRow(p *derive.Part, kind plan.SquareKind, made int64) report.Row {
	t := p.Tube
	inner, outer := outermost(t, true), outermost(t, false)
	needed := t.Kinds.Near
	if kind == plan.FarKind {
		inner, outer, needed = outer, inner, t.Kinds.Far
	}
	wanted := report.T("either")
	if t.Kinds.Free < p.Needed {
		wanted = report.N(needed)
	}
	each := report.N(t.Yield.Each / 2)
	if more, less := piecing.Orientations(t.Yield.Each); more != less {
		each = report.T(fmt.Sprintf("%d or %d", less, more))
	}
	return row(report.T(p.Name.Text), report.T(kind.String()), report.T(inner), report.T(outer), each, wanted, report.N(made))
}

// outermost names the strips of both sets at the near edge of a tube, or at the
// far one.
func outermost(t *derive.Tube, near bool) string {
	var names []string
	for _, strips := range t.Lie {
		i := len(strips) - 1
		if near {
			i = 0
		}
		if role := strips[i].Fabric.Role.Text; !slices.Contains(names, role) {
			names = append(names, role)
		}
	}
	return strings.Join(names, " and ")
}

// kindText tells how the kinds compare, which of them go where and how the tubes
// are begun.
func kindText(p *derive.Part) string {
	k, name := p.Tube.Kinds, p.Name.Text
	text := fmt.Sprintf("%s: near and far squares differ; ", name)
	switch {
	case k.Look == derive.Alike && k.Assorted:
		text = fmt.Sprintf("%s: near and far squares are of the same fabrics, and differ as the prints of the strips do; ", name)
	case k.Look == derive.Alike:
		return fmt.Sprintf("%s: near and far squares are alike.", name)
	case k.Look == derive.AlikeTurned:
		return fmt.Sprintf("%s: near and far squares are alike, once one is turned by half.", name)
	case k.TakeTurns():
		text += "the plan does not say where which goes, and they take turns; "
	}
	return text + begun(p.Tube) + "."
}

// begun is how many tubes are begun with which kind.
func begun(t *derive.Tube) string {
	more, less := piecing.Orientations(t.Yield.Each)
	if more == less {
		return fmt.Sprintf("every tube gives %d of each", more)
	}
	near, _ := piecing.Starts(t.Count, t.Kinds.Near, t.Kinds.Far, t.Yield.Each)
	switch near {
	case t.Count:
		return "cut a near square first from " + everyTube(t.Count)
	case 0:
		return "cut a far square first from " + everyTube(t.Count)
	}
	return fmt.Sprintf("cut a near square first from %s and a far one first from %s", say.Many(near, "tube"), say.Many(t.Count-near, "tube"))
}

// printedKinds tells what comes of the tubes of whoever cuts fewer squares from
// each than it gives, because so many are printed; empty where they are not
// fewer, or not enough.
func printedKinds(p *derive.Part, said *plan.Printed) string {
	if said == nil {
		return ""
	}
	each := printedFor(said.PerTube, p)
	if each <= 0 || each >= p.Tube.Yield.Each {
		return ""
	}
	tubes := printedFor(said.Tubes, p)
	if tubes == 0 {
		tubes = max(p.Tube.Count, p.Tube.CountAt(each))
	}
	near, far, ok := p.Tube.MakesAt(tubes, each)
	if !ok {
		return ""
	}
	from := "the tube"
	if tubes != 1 {
		from = "each of " + say.Many(tubes, "tube")
	}
	return fmt.Sprintf("%s, as printed: %s from %s are %d near and %d far ones; the table counts all that a tube gives.", p.Name.Text, say.Many(each, "square"), from, near, far)
}

// printedFor is what is printed of a part; 0 where nothing is.
func printedFor(counts []plan.PrintedCount, p *derive.Part) int64 {
	for _, c := range counts {
		if c.Of.Text == p.Name.Text {
			return int64(c.N)
		}
	}
	return 0
}

func everyTube(n int64) string {
	if n == 1 {
		return "the tube"
	}
	return fmt.Sprintf("all %d tubes", n)
}

// variantName is what a part is called of which there are several.
func variantName(s *derive.Size, p *derive.Part, flips derive.Flips) string {
	if square := s.Square(p); square != nil {
		kind := plan.NearKind
		if flips.Has(square.Tube) {
			kind = plan.FarKind
		}
		return p.Name.Text + derive.KindOf(kind)
	}
	return p.Name.Text + s.Exchange(flips)
}

// variantNotes tells how many of a part are made otherwise than it is described;
// of a tube its own table does.
func variantNotes(s *derive.Size, p *derive.Part, variants []derive.Variant) []string {
	var out []string
	for _, v := range variants {
		if v.Flips == (derive.Flips{}) || p.Tube != nil {
			continue
		}
		if s.Square(p) != nil {
			out = append(out, fmt.Sprintf("%d of them of far squares", v.Count))
			continue
		}
		out = append(out, fmt.Sprintf("%d of them with%s", v.Count, strings.Trim(strings.ReplaceAll(s.Exchange(v.Flips), "(", ""), ")")))
	}
	return out
}
