package tabulate

import (
	"fmt"
	"math/big"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// thread is the thread of every size by stitch class and position; ok is false
// when no seam has a class.
func (in Input) thread() (t report.Table, ok bool) {
	t = report.Table{
		ID: "thread", Heading: "Thread",
		Columns: []report.Column{
			{ID: "size", Title: "Size"}, {ID: "stitch", Title: "Stitch class", Wide: true}, {ID: "seam", Title: "Length of seam", Unit: seamUnit(in.units())},
			{ID: "ratio", Title: "Thread to seam"}, {ID: "total", Title: "Thread in all", Unit: "m"}, {ID: "position", Title: "Position"},
			{ID: "threads", Title: "Threads"}, {ID: "each", Title: "Each", Unit: "m"}, {ID: "supply", Title: "To have", Wide: true},
			{ID: "figures", Title: "Where the figures come from", Wide: true},
		},
		Foot: []string{
			"Metres are rounded up to 10 cm. Each position runs from its own spool, bobbin or cone: the total is never divided by what is on one.",
			"The ratio depends on stitch length, thickness and tension: unpick 15 cm of your own seam, measure its threads and put that ratio in the plan.",
		},
	}
	for _, s := range in.Sizes {
		thread := s.Thread
		for _, use := range thread.Uses {
			t.Rows = append(t.Rows, in.threadRows(s, use)...)
		}
		t.Foot = append(t.Foot, threadGaps(s, thread)...)
	}
	return t, len(t.Rows) > 0
}

// threadGaps says what the table leaves out.
func threadGaps(s *derive.Size, t *derive.Thread) []string {
	var out []string
	if len(t.Unknown) > 0 {
		out = append(out, fmt.Sprintf("%s: the seams of %s are not counted.", s.Of.Name.Text, strings.Join(t.Unknown, ", ")))
	}
	if t.Unclassed.Sign() > 0 {
		out = append(out, fmt.Sprintf("%s: %s of seam have no stitch class and are not counted.", s.Of.Name.Text, seamText(t.Unclassed, s.Plan.Units)))
	}
	if len(t.Uses) > 0 && s.Of.Thread.Quilting.Length == 0 {
		out = append(out, s.Of.Name.Text+": quilting is not counted; the plan gives no length of it.")
	}
	return out
}

func (in Input) threadRows(s *derive.Size, use derive.ThreadUse) []report.Row {
	name := use.Class + ", " + use.Name
	if use.Quilting {
		name += ", quilting"
	}
	seam := seamCell(use.Seam, in.units())
	seam.Why = in.works.of(s, s.SeamFigure(use))
	head := []report.Cell{report.T(s.Of.Name.Text), report.T(name), seam, ratioCell(use.Ratio), metres(use.Total)}
	var rows []report.Row
	for i, n := range use.Needs {
		figures := report.Cell{}
		if i == 0 {
			figures = report.T(threadFigures(s, use))
		} else {
			head = make([]report.Cell, len(head))
		}
		rows = append(rows, row(append(head[:len(head):len(head)], report.T(string(n.Position)), report.N(n.Threads), metres(n.Each), report.T(atHand(n)), figures)...))
	}
	return rows
}

// seamUnit is what lengths of seam are told in: inches, or metres in a metric
// plan, in which they run to thousands of centimetres.
func seamUnit(u measure.Unit) string {
	if u == measure.Cm {
		return "m"
	}
	return unitName(u)
}

func seamCell(x measure.Surd, u measure.Unit) report.Cell {
	if u == measure.Cm {
		return metres(x)
	}
	return report.L(x, u)
}

func seamText(x measure.Surd, u measure.Unit) string {
	if u == measure.Cm {
		return measure.FormatFabric(x.CeilTo(10*measure.Centimetre), u)
	}
	return x.Format(u)
}

// ratioCell prints a ratio, which is rational by its making.
func ratioCell(x measure.Surd) report.Cell {
	num, den, ok := x.Rational()
	if !ok {
		return report.Cell{}
	}
	return report.Cell{Kind: report.Number, Number: new(big.Rat).SetFrac(num, den)}
}

// metres is a length up to 10 cm, as metres.
func metres(x measure.Surd) report.Cell {
	return report.Cell{Kind: report.Number, Number: big.NewRat(int64(x.CeilTo(10*measure.Centimetre)), int64(measure.Metre))}
}

func atHand(n derive.ThreadNeed) string {
	if n.Count == 0 {
		return ""
	}
	return fmt.Sprintf("%s of %s m", say.Many(n.Count, n.On), n.Holds.Surd().Div(measure.Metre.Surd()).Number(0))
}

func threadFigures(s *derive.Size, use derive.ThreadUse) string {
	ratio := "ratio " + string(use.RatioFrom)
	if use.Own {
		ratio = "ratio the studio's own"
	}
	waste := big.NewRat(s.Of.Thread.Waste.BasisPoints, 100).FloatString(2)
	waste = strings.TrimSuffix(strings.TrimRight(waste, "0"), ".")
	shares := "split between positions " + string(use.SharesFrom)
	if use.SharesFrom == piecing.Published && use.RatioFrom == piecing.Published && !use.Own {
		return fmt.Sprintf("ratio and split published; %s%% waste", waste)
	}
	return fmt.Sprintf("%s; %s; %s%% waste", ratio, shares, waste)
}
