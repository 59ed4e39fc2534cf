package tabulate

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/report"
)

// backings is both directions that the panels of the backings may run in; ok is
// false for a plan without a backing of panels.
func (in Input) backings() (t report.Table, ok bool) {
	u, yd := unitName(in.units()), fabricUnit(in.units())
	t = report.Table{
		ID: "backing", Heading: "Backing, both ways",
		Columns: []report.Column{
			{ID: "size", Title: "Size"}, {ID: "panels_run", Title: "Panels run"}, {ID: "panels", Title: "Panels"},
			{ID: "each", Title: "Each", Unit: u}, {ID: "length", Title: "In all", Unit: u}, {ID: "buy", Title: "Buy", Unit: yd}, {ID: "taken", Title: "Taken"},
		},
		Foot: []string{"Buy includes squaring up and all else that is cut from the same fabric."},
	}
	for _, s := range in.Sizes {
		ways := s.BackingWays()
		for _, w := range ways {
			t.Rows = append(t.Rows, row(report.T(s.Of.Name.Text), report.T(panelsRun(w, len(ways))), report.N(w.Panels),
				report.Cut(w.Each, in.units()), report.Cut(w.Length, in.units()), report.F(w.Buy, in.units()), report.T(whetherTaken(w))))
		}
	}
	return t, len(t.Rows) > 0
}

func panelsRun(w derive.BackingWay, ways int) string {
	switch {
	case ways == 1:
		return "either way"
	case w.Lengthwise:
		return "along the quilt"
	}
	return "across the quilt"
}

func whetherTaken(w derive.BackingWay) string {
	switch {
	case w.Taken:
		return "yes"
	case w.Against:
		return "no, the print would lie on its side"
	}
	return "no"
}
