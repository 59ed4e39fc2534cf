package tabulate

import (
	"fmt"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/report"
)

// tradeCuts lists the squares for triangles by geometry and by the trade's round
// figures; ok is false where there are none to compare.
func tradeCuts(s *derive.Size) (t report.Table, ok bool) {
	u := unitName(s.Plan.Units)
	t = report.Table{
		ID: "triangle-squares-" + s.Of.Name.Text, Heading: "Squares for triangles, exact and by the trade's figures",
		Columns: []report.Column{
			{ID: "for", Title: "For"}, {ID: "finished", Title: "Unit or block, finished", Unit: u}, {ID: "exact", Title: "Exact cut", Unit: u},
			{ID: "trade", Title: "Trade's cut", Unit: u}, {ID: "larger", Title: "Trade's is larger by", Unit: u}, {ID: "plan", Title: "In this plan", Unit: u},
		},
	}
	told := false
	for _, c := range s.TradeCuts() {
		trade, larger := report.Cell{}, report.Cell{}
		if c.Told {
			told = true
			trade, larger = report.Cut(c.Trade, s.Plan.Units), report.L(c.Larger(), s.Plan.Units).There()
		}
		t.Rows = append(t.Rows, row(report.T(c.For), report.L(c.Finished, s.Plan.Units), report.Cut(c.Exact, s.Plan.Units),
			trade, larger, report.Cut(c.Cut.Surd(), s.Plan.Units)))
		if c.Told && c.Larger().Sign() < 0 {
			t.Foot = []string{"Where the trade's is smaller (a minus), the unit comes out small: cut larger and trim."}
		}
	}
	if trade, known := piecing.TradeAt(s.Of.Seam.Allowance.Length); known && told {
		t.Lead = []string{fmt.Sprintf("At a seam of %s the trade adds %s to a half-square unit, two at a time, or to half of a block's diagonal, and %s to a quarter-square unit or to the diagonal. What then lies on no line of %s is rounded up to the next.",
			s.Of.Seam.Allowance.Format(s.Plan.Units), trade.Half.Format(s.Plan.Units), trade.Quarter.Format(s.Plan.Units), trade.Grid.Format(s.Plan.Units))}
	}
	return t, len(t.Rows) > 0
}

// trimNotes are what is lost when squares of a tube are trimmed.
func trimNotes(s *derive.Size, p *derive.Part) []string {
	loss, ok := s.TrimLoss(p)
	if !ok {
		return nil
	}
	u := s.Plan.Units
	note := fmt.Sprintf("trimmed from %s: %s off a side", loss.From.AsThere(u), loss.Each.AsCut(u))
	if loss.InRow > 1 {
		note += fmt.Sprintf(", %s over a row of %d", loss.Each.MulInt(loss.InRow).AsCut(u), loss.InRow)
	}
	if loss.InColumn > 1 && loss.InColumn != loss.InRow {
		note += fmt.Sprintf(", %s over a column of %d", loss.Each.MulInt(loss.InColumn).AsCut(u), loss.InColumn)
	}
	return []string{note}
}

// packNotes are what the packs would give of a strip set, or of a tube of equal
// ones, and what would be left.
func packNotes(s *derive.Size, p *derive.Part) []string {
	switch {
	case p.Set != nil:
		if g, ok := s.PackGives(p); ok {
			return []string{fmt.Sprintf("%s would give %s, %s", many(g.Packs, "pack"), many(g.Sets, "set"), over(g.StripsOver, "strip"))}
		}
	case p.Tube != nil && p.Tube.Sets[0] == p.Tube.Sets[1]:
		if g, ok := s.PackGives(p.Tube.Sets[0]); ok {
			tubes, left := g.Tubes(p.Tube.Takes(p.Tube.Sets[0]))
			return []string{fmt.Sprintf("%s would give %s, %s", many(g.Sets, "set"), many(tubes, "tube"), over(left, "set"))}
		}
	}
	return nil
}

func over(n int64, noun string) string {
	if n == 0 {
		return "nothing over"
	}
	return many(n, noun) + " over"
}
