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
