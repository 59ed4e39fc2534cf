package tabulate

import (
	"fmt"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/say"
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
		add("blocks", o.RowsTold().In(u)+"; each", o.Blocks(), st.Least.Width, st.Least.Height)
		add("side triangles", o.Side.Told().In(u)+"; squares", o.Side.Squares, o.Side.Cut.Surd(), o.Side.Cut.Surd())
		add("corner triangles", o.Corner.Told().In(u)+"; squares", o.Corner.Squares, o.Corner.Cut.Surd(), o.Corner.Cut.Surd())
		if o.Sashing != nil {
			add("sashing", "on every side of every block of the full rows", o.Sashes(), o.Sash.Height, o.Sash.Width)
			add("cornerstones", fmt.Sprintf("where four sashes meet, of %s; %d of them %s on the edge and %s trimmed with it", o.Sashing.Cornerstones.Text, o.EdgeStones(), goes(o.EdgeStones(), "lies", "lie"), are(o.EdgeStones())),
				o.Cornerstones(), o.Stone.Width, o.Stone.Height)
		}
		add("middle", o.FloatTold(s.Of.Seam.Allowance.Length).In(u)+"; should measure", 0, st.Width, st.Height)
	case st.Sashing != nil:
		sash := st.Sashing
		if sash.RowsOnly {
			rows = append(rows, row(report.T("blocks"), report.T(derive.StraightTold(g).In(u)+"; each row should measure as wide as the sashing is long"), report.Cell{}, report.L(st.Width, u), report.Cell{}))
			add("sashing", levelText(sash, u), sash.Levels(), sash.LevelCut.Height, sash.LevelCut.Width)
			add("middle", "should measure", 0, st.Width, st.Height)
			break
		}
		add("blocks", fmt.Sprintf("%s of %d; each", say.Many(int64(g.Rows.N), "row"), g.Columns.N), sash.Rows*sash.Columns, st.Least.Width, st.Least.Height)
		add("sashing", "upright, beside the blocks", sash.Upright(), sash.UprightCut.Width, sash.UprightCut.Height)
		add("", levelText(sash, u), sash.Levels(), sash.LevelCut.Height, sash.LevelCut.Width)
		if sash.Said.Cornerstones.Given() {
			add("cornerstones", "between the level sashes, of "+sash.Said.Cornerstones.Text, sash.Cornerstones(), sash.Stone.Width, sash.Stone.Height)
		}
		add("middle", "should measure", 0, st.Width, st.Height)
	default:
		add("blocks", derive.StraightTold(g).In(u)+"; should measure", 0, s.Top.Grid.Width, s.Top.Grid.Height)
	}
	return rows
}

func levelText(g *derive.Sashing, u measure.Unit) string {
	switch {
	case g.Said.Cornerstones.Given():
		return "level, above and below the blocks"
	case g.Through != nil:
		return fmt.Sprintf("level, running through: cut from %s, %s", say.Many(g.Through.Count, "strip"), derive.Joining(g.Said.Joins))
	}
	return "level, running through"
}

// borderRows are how a border is made and sewn on.
func borderRows(s *derive.Size, b derive.Border, works workings) []report.Row {
	u := s.Plan.Units
	name := "border " + b.Said.Name.Text
	first, second := "sides first, 2 of", "then top and bottom, 2 of"
	one, two := pair{b.Cut, b.Sides}, pair{b.EndCut, b.Ends}
	switch {
	case b.Said.Corners == plan.Mitred:
		first, second = "all four, then mitred"+b.LongerTold().In(u)+": sides, 2 of", "top and bottom, 2 of"
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
			strips.Why = works.of(s, b.Strips.Told)
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
		rows = append(rows, row(report.Cell{}, report.T(copedTo(b, u)), report.Cell{}, report.L(b.Outer.Width, u), report.L(b.Outer.Height, u)))
	}
	return rows
}

// copedTo says what coping strips are trimmed from, where they are cut larger than
// it takes.
func copedTo(b derive.Border, u measure.Unit) string {
	if b.Lines == nil {
		return "trim; should measure"
	}
	return "the strips are cut up to " + b.Lines.Told().In(u) + "; trim; should measure"
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
		return derive.Joining(b.Said.Joins) + ", for sides and ends apart; cut from them: "
	case b.Said.Copes():
		return derive.Joining(b.Said.Joins) + "; cut from them: "
	case b.Said.EachSide:
		return together + derive.Joining(b.Said.Joins) + " for each side by itself; "
	}
	return together + derive.Joining(b.Said.Joins) + ", " + b.Strips.Length.AsThere(u) + " in all; cut from it: "
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
