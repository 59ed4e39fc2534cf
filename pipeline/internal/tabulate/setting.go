package tabulate

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// settingRows are how the blocks of the top are set.
func settingRows(s *derive.Size) []report.Row {
	u, st, g := s.Plan.Units, s.Top.Setting, s.Of.Layout.Grid
	var rows []report.Row
	add := func(step, how string, n int64, w, l measure.Surd) {
		count := report.Cell{}
		if n > 0 {
			count = report.N(n)
		}
		rows = append(rows, row(report.T(step), report.T(how), count, report.L(w, u), report.L(l, u)))
	}
	switch {
	case st.OnPoint != nil:
		o := st.OnPoint
		add("blocks", onPointText(o.Rows, o.Columns)+"; each", o.Blocks(), st.Least.Width, st.Least.Height)
		add("side triangles", triangleText(o.Side, u)+"; squares", o.Side.Squares, o.Side.Cut.Surd(), o.Side.Cut.Surd())
		add("corner triangles", triangleText(o.Corner, u)+"; squares", o.Corner.Squares, o.Corner.Cut.Surd(), o.Corner.Cut.Surd())
		if o.Sashing != nil {
			add("sashing", "on every side of every block of the full rows", o.Sashes(), o.Sash.Height, o.Sash.Width)
			add("cornerstones", fmt.Sprintf("where four sashes meet, of %s; %d of them lie on the edge and are trimmed with it", o.Sashing.Cornerstones.Text, o.EdgeStones()),
				o.Cornerstones(), o.Stone.Width, o.Stone.Height)
		}
		add("middle", floatText(o, s.Of.Seam.Allowance.Length, u)+"; should measure", 0, st.Width, st.Height)
	case st.Sashing != nil:
		sash := st.Sashing
		if sash.RowsOnly {
			rows = append(rows, row(report.T("blocks"), report.T(straightText(g)+"; each row should measure as wide as the sashing is long"), report.Cell{}, report.L(st.Width, u), report.Cell{}))
			add("sashing", levelText(sash, u), levels(sash), sash.LevelCut.Height, sash.LevelCut.Width)
			add("middle", "should measure", 0, st.Width, st.Height)
			break
		}
		add("blocks", fmt.Sprintf("%s of %d; each", many(int64(g.Rows.N), "row"), g.Columns.N), sash.Rows*sash.Columns, st.Least.Width, st.Least.Height)
		add("sashing", "upright, beside the blocks", sash.Upright(), sash.UprightCut.Width, sash.UprightCut.Height)
		add("", levelText(sash, u), levels(sash), sash.LevelCut.Height, sash.LevelCut.Width)
		if sash.Said.Cornerstones.Given() {
			add("cornerstones", "between the level sashes, of "+sash.Said.Cornerstones.Text, sash.Cornerstones(), sash.Stone.Width, sash.Stone.Height)
		}
		add("middle", "should measure", 0, st.Width, st.Height)
	default:
		add("blocks", straightText(g)+"; should measure", 0, s.Top.Grid.Width, s.Top.Grid.Height)
	}
	return rows
}

func straightText(g *plan.Grid) string {
	if g.Written {
		return many(int64(g.Rows.N), "row")
	}
	text := fmt.Sprintf("%s of %d", many(int64(g.Rows.N), "row"), g.Columns.N)
	if g.Symmetry != plan.NoSymmetry {
		text += ", " + g.Symmetry.String()
		if g.Tile[0].Given() {
			text += fmt.Sprintf(" in tiles of %d by %d", g.Tile[0].N, g.Tile[1].N)
		}
	}
	return text
}

func onPointText(rows, columns int64) string {
	text := fmt.Sprintf("on point, %s of %d", many(rows, "full row"), columns)
	if rows > 1 && columns > 1 {
		text += fmt.Sprintf(" and %s of %d between them", many(rows-1, "row"), columns-1)
	}
	return text
}

// triangleText is where setting triangles come from, and what a square
// rounded up to the ruler leaves.
func triangleText(t derive.TriangleCut, u measure.Unit) string {
	text := fmt.Sprintf("%s from squares", many(t.Triangles, "triangle")) + halved(t.Halving)
	if t.Spare > 0 {
		text += fmt.Sprintf(", %d spare", t.Spare)
	}
	if over := t.Cut.Surd().Sub(t.Wanted); over.Sign() > 0 {
		text += ", " + over.AsThere(u) + " over to trim"
	}
	return text
}

func floatText(o *derive.OnPoint, seam measure.Length, u measure.Unit) string {
	if o.Sashing != nil {
		return "trim " + seam.Format(u) + " beyond the middles of the outer cornerstones"
	}
	if o.Float.IsZero() {
		return "trim " + seam.Format(u) + " beyond the blocks' points"
	}
	return "trim " + o.Float.Add(seam.Surd()).Format(u) + " beyond the blocks' points, which then float " + o.Float.Format(u) + " inside the seam"
}

func levels(g *derive.Sashing) int64 {
	if g.Said.Cornerstones.Given() {
		return g.Level()
	}
	return g.Runs()
}

func levelText(g *derive.Sashing, u measure.Unit) string {
	switch {
	case g.Said.Cornerstones.Given():
		return "level, above and below the blocks"
	case g.Through != nil:
		return fmt.Sprintf("level, running through: cut from %s, %s", many(g.Through.Count, "strip"), joinText(g.Said.Joins))
	}
	return "level, running through"
}

// borderRows are how a border is made and sewn on.
func borderRows(s *derive.Size, b derive.Border) []report.Row {
	u := s.Plan.Units
	name := "border " + b.Said.Name.Text
	first, second := "sides first, 2 of", "then top and bottom, 2 of"
	one, two := pair{b.Cut, b.Sides}, pair{b.EndCut, b.Ends}
	switch {
	case b.Said.Corners == plan.Mitred:
		first, second = "all four, then mitred"+allowanceText(b, u)+": sides, 2 of", "top and bottom, 2 of"
	case b.Ends.IsZero():
		first = "on the sides only, 2 of"
	case b.Sides.IsZero():
		first, one = "top and bottom only, 2 of", two
	case b.Said.EndsOn && b.Corners == 0:
		first, second, one, two = "top and bottom first, 2 of", "then the sides, 2 of", two, one
	}
	if b.Units != nil {
		return append(unitRows(b, name, u), cornerRows(b, u)...)
	}
	strips := report.Cell{}
	if b.Along == nil && b.Strips.Count > 0 {
		strips = report.N(b.Strips.Count + b.EndStrips.Count)
		if !b.Said.Copes() && !b.Said.EachSide {
			strips.Why = s.JoinedWork(name, b.Strips, b.Said.At)
		}
	}
	switch {
	case b.Corner != nil:
		second = "then top and bottom with a block at either end, 2 of"
	case b.Corners > 0:
		second = "then top and bottom with a corner square at either end, 2 of"
	}
	rows := []report.Row{
		row(report.T(name), report.T(stripText(b, u)+first), strips, report.Cut(one.width.Surd(), u), report.Cut(one.length, u)),
	}
	if b.Sides.Sign() > 0 && b.Ends.Sign() > 0 {
		rows = append(rows, row(report.Cell{}, report.T(second), report.Cell{}, report.Cut(two.width.Surd(), u), report.Cut(two.length, u)))
	}
	rows = append(rows, cornerRows(b, u)...)
	if b.Said.Copes() {
		rows = append(rows, row(report.Cell{}, report.T("trim; should measure"), report.Cell{}, report.L(b.Outer.Width, u), report.L(b.Outer.Height, u)))
	}
	return rows
}

// allowanceText is what mitred strips are cut longer than they must be.
func allowanceText(b derive.Border, u measure.Unit) string {
	if b.Said.Allowance.Length == 0 {
		return ""
	}
	return ", each " + b.Said.Allowance.AsCut(u) + " longer than its exact length, to be cut off with the mitre"
}

type pair struct {
	width  measure.Length
	length measure.Surd
}

// stripText is where a border's strips come from.
func stripText(b derive.Border, u measure.Unit) string {
	together := ""
	if b.Together {
		together = "sewn to the next border before it is mitred; "
	}
	switch {
	case b.Along != nil:
		return together + "cut along the fabric, in one piece; "
	case b.Pieces:
		return together
	case b.Said.Copes() && b.Sides.Sign() > 0 && b.Ends.Sign() > 0:
		return joinText(b.Said.Joins) + ", for sides and ends apart; cut from them: "
	case b.Said.Copes():
		return joinText(b.Said.Joins) + "; cut from them: "
	case b.Said.EachSide:
		return together + joinText(b.Said.Joins) + " for each side by itself; "
	}
	return together + joinText(b.Said.Joins) + ", " + b.Strips.Length.AsThere(u) + " in all; cut from it: "
}

func cornerRows(b derive.Border, u measure.Unit) []report.Row {
	if b.Corners == 0 {
		return nil
	}
	return []report.Row{row(report.Cell{}, report.T(cornerText(b)+", 4 of"), report.Cell{}, report.Cut(b.Cut.Surd(), u), report.Cut(b.Cut.Surd(), u))}
}

// cornerText is what a border has in its corners.
func cornerText(b derive.Border) string {
	if b.Corner != nil {
		return b.Corner.Name.Text + " in the corners, turned from one to the next clockwise"
	}
	return "corner squares of " + b.Said.CornerFabric.Text
}

func unitRows(b derive.Border, name string, u measure.Unit) []report.Row {
	unit := b.Said.Part.Text
	line := func(name, which string, n int64, length measure.Surd) report.Row {
		return row(report.T(name), report.T(fmt.Sprintf("%s: %d of %s each, should measure", which, n, unit)), report.Cell{}, report.L(b.Cut.Surd(), u), report.L(length, u))
	}
	sides, ends := line("", "sides", b.Units.Sides, b.Sides), line("", "top and bottom", b.Units.Ends, b.Ends)
	rows := []report.Row{sides, ends}
	switch {
	case b.Ends.IsZero():
		rows = rows[:1]
	case b.Sides.IsZero():
		rows = rows[1:]
	case b.Said.EndsOn && b.Corners == 0:
		rows[0], rows[1] = ends, sides
	}
	rows[0].Cells[0] = report.T(name)
	return rows
}

// settingText is how a part that is set like a small top is made.
func settingText(p *derive.Part, of plan.Setting, u measure.Unit) string {
	st := p.Setting
	var parts []string
	for _, b := range st.Blocks {
		parts = append(parts, fmt.Sprintf("%d %s", b.Count, b.Part.Name.Text))
	}
	blocks := strings.Join(parts, ", ")
	if o := st.OnPoint; o != nil {
		if o.Sashing != nil {
			blocks += fmt.Sprintf("; %s and %s, %d of these on the edge", many(o.Sashes(), "sash"), many(o.Cornerstones(), "cornerstone"), o.EdgeStones())
		}
		return fmt.Sprintf("%s: %s; %s; %s; %s", onPointText(o.Rows, o.Columns), blocks,
			"side "+triangleText(o.Side, u), "corner "+triangleText(o.Corner, u), floatText(o, p.Seam.Allowance.Length, u))
	}
	g := st.Sashing
	if g.RowsOnly {
		return fmt.Sprintf("%s: %s; %s between", straightText(of.Grid), blocks, many(levels(g), "sash"))
	}
	text := fmt.Sprintf("%s of %d: %s; %s upright and %d level", many(int64(of.Grid.Rows.N), "row"), of.Grid.Columns.N, blocks, many(g.Upright(), "sash"), levels(g))
	if g.Said.Cornerstones.Given() {
		text += ", " + many(g.Cornerstones(), "cornerstone")
	}
	return text
}

// borderedText is how borders go round a part.
func borderedText(p *derive.Part, op plan.Bordered, u measure.Unit) string {
	text := "round " + op.Part.Text + ":"
	for i, b := range p.Borders {
		if i > 0 {
			text += ";"
		}
		text += " " + roundText(b, u)
	}
	return text
}

// roundText is one border round a part, in one line.
func roundText(b derive.Border, u measure.Unit) string {
	name := b.Said.Name.Text
	if b.Units != nil {
		text := fmt.Sprintf("%s of %s", name, b.Said.Part.Text)
		if b.Sides.Sign() > 0 {
			text += fmt.Sprintf(", %d on each side", b.Units.Sides)
		}
		if b.Ends.Sign() > 0 {
			text += fmt.Sprintf(", %d on each end", b.Units.Ends)
		}
		return text + cornersOf(b, u)
	}
	sides := fmt.Sprintf("sides %s x %s", b.Cut.BareRounded(u, measure.Up), b.Sides.AsCut(u))
	ends := fmt.Sprintf("top and bottom %s x %s", b.EndCut.BareRounded(u, measure.Up), b.Ends.AsCut(u))
	how := b.Said.Corners.String() + allowanceText(b, u) + ": "
	strips := sides + ", " + ends
	switch {
	case b.Ends.IsZero():
		how, strips = "", sides+" only"
	case b.Sides.IsZero():
		how, strips = "", ends+" only"
	case b.Said.EndsOn && b.Corners == 0:
		strips = ends + ", " + sides
	}
	text := name + ", " + how + strips + cornersOf(b, u)
	if b.Said.Copes() {
		text += ", trimmed to " + b.Said.To[0].BareRounded(u, measure.Down) + " x " + b.Said.To[1].AsThere(u) + " finished"
	}
	return text
}

// cornersOf is what a border has in its corners, after its strips.
func cornersOf(b derive.Border, u measure.Unit) string {
	switch {
	case b.Corners == 0:
		return ""
	case b.Corner != nil:
		return ", " + b.Corner.Name.Text + " in the corners"
	}
	return ", corner squares " + b.Cut.AsCut(u)
}

// printable is the finished size to the printed rounding, where the exact one
// is on no ruler.
func printable(s *derive.Size) string {
	w, h := s.Top.Finished.Width, s.Top.Finished.Height
	_, wide := w.Length()
	_, high := h.Length()
	if wide && high {
		return "the quilt finishes at"
	}
	u, to := s.Plan.Units, s.Plan.Defaults.FinishedRounding
	if s.Of.Printed != nil && s.Of.Printed.Rounding.Length > 0 {
		to = s.Of.Printed.Rounding.Length
	}
	return fmt.Sprintf("the quilt finishes exactly at a size that is on no ruler; to the nearest %s it is %s x %s", to.Format(u), w.NearestTo(to).Bare(u), h.NearestTo(to).Format(u))
}
