package sample

import (
	"math/big"
	"strings"

	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// Plan returns the first plan's tables.
func Plan() *report.Plan {
	f := source.New("plans/harbour-steps.plan.json", []byte(Harbour))
	sheets := []report.Sheet{cutList(f), requirements(), inputs(), costing(), cuttingRoom()}
	sheets[0].Pictures = []report.Picture{Picture(), Units()}
	sheets[3].Pictures = []report.Picture{Units()} // the same again, and on a wide sheet
	return &report.Plan{
		Outcome:  Line().Plans[0],
		Revision: "1.0",
		Currency: Dollars(),
		Units:    measure.In,
		Source:   f,
		Sheets:   sheets,
	}
}

// side is the side of a tube's square, 6*sqrt2 in: (T - 2s) * sqrt2 with T = 6
// 1/2 in and s = 1/4 in (derived from geometry).
func side() measure.Surd { return measure.Root2().Mul(inches(6, 1)) }

func inches(num, den int64) measure.Surd {
	return measure.Rational(num*int64(measure.Inch), den)
}

func length(num, den int64) report.Cell { return report.L(inches(num, den), measure.In) }

func fabric(num, den int64) report.Cell {
	return report.F(measure.Length(num*int64(measure.Inch)/den), measure.In)
}

// squares is how many squares a tube gives: 1 + floor((L - 2h) / a).
func squares(f *source.File) *report.Work {
	at := strings.Index(string(f.Bytes), `"41 1/2"`)
	height := &report.Work{
		What: "height of the half square", Formula: "T - 2s", Value: length(6, 1),
		Terms: []report.Term{
			{Symbol: "T", Says: "width of the strip set", Value: length(13, 2)},
			{Symbol: "s", Says: "seam allowance", Value: length(1, 4)},
		},
	}
	h := length(6, 1)
	h.Why = height
	return &report.Work{
		What: "squares a tube", Formula: "1 + floor((L - 2h) / a)", Value: report.N(5),
		Terms: []report.Term{
			{Symbol: "L", Says: "usable strip length", Value: length(83, 2), At: source.Range{Start: at, End: at + 8}},
			{Symbol: "h", Says: "height of the half square above its seam", Value: h},
			{Symbol: "a", Says: "advance from tip to tip", Value: length(6, 1)},
		},
	}
}

func cutList(f *source.File) report.Sheet {
	count := report.N(5)
	count.Why = squares(f)
	again := report.N(30)
	again.Why = count.Why
	return report.Sheet{ID: "cut-list-throw", Title: "Cut list: throw", Tables: []report.Table{{
		ID: "cut-list", Heading: "In cutting order",
		Lead: []string{"Square up each fabric first. Cut the borders before anything else is cut from that fabric, and keep what is left for the binding."},
		Columns: []report.Column{
			{ID: "what", Title: "Cut"},
			{ID: "count", Title: "Number of pieces"},
			{ID: "width", Title: "Width", Unit: "in"},
			{ID: "length", Title: "Length", Unit: "in"},
			{ID: "note", Title: "How", Wide: true},
		},
		Rows: []report.Row{
			{Style: report.Group, Cells: []report.Cell{report.T("Border and binding")}},
			{Cells: []report.Cell{report.T("border strips"), report.N(6), length(7, 2), length(40, 1), report.T("selvage to selvage")}},
			{Cells: []report.Cell{report.T("=binding strips"), report.N(6), length(5, 2), length(40, 1), report.T("-selvage to selvage, joined on the diagonal, pressed in half along their length with the wrong sides together")}},
			{Style: report.Group, Cells: []report.Cell{report.T("Assorted strips, which come cut and only have to be sorted by value before they are sewn")}},
			{Cells: []report.Cell{report.T("tube squares"), count, report.L(side(), measure.In), report.L(side(), measure.In), report.T("tip on the far seam")}},
			{Cells: []report.Cell{report.T("odd sizes"), again, length(5, 64), length(33, 10), report.T("3.3 in is no line of a ruler")}},
			{Cells: []report.Cell{report.T("odd sizes"), report.N(1), length(33, 32), length(1, 3)}},
			{Style: report.Alert, Cells: []report.Cell{report.T("Keep the rotary cutter closed whenever it is not in your hand.")}},
			{Style: report.Total, Cells: []report.Cell{report.T("pieces"), report.N(48)}},
		},
		Foot: []string{"About means rounded to the last figure shown."},
	}}}
}

func requirements() report.Sheet {
	columns := []report.Column{
		{ID: "fabric", Title: "Fabric"},
		{ID: "throw", Title: "Throw", Unit: "yd"},
		{ID: "wall", Title: "Wall", Unit: "yd"},
	}
	return report.Sheet{ID: "requirements", Title: "Requirements", Aside: true, Tables: []report.Table{
		{ID: "fabrics", Heading: "Fabric", Columns: columns, Rows: []report.Row{
			{Cells: []report.Cell{report.T("Border and binding"), fabric(45, 1), fabric(27, 1)}},
			{Cells: []report.Cell{report.T("Backing"), fabric(120, 1), fabric(37, 1)}},
			{Cells: []report.Cell{report.T("Batting"), fabric(72, 1), {}}},
		}},
		{ID: "tools", Heading: "Tools", Columns: []report.Column{{ID: "tool", Title: "Tool"}, {ID: "why", Title: "For", Wide: true}},
			Rows: []report.Row{{Cells: []report.Cell{report.T("square ruler, 12 1/2 in"), report.T("squares from the tube")}}}},
	}}
}

func input(c report.Cell, name string) report.Cell {
	c.Input, c.Name = true, name
	return c
}

// choice is one of a list.
func choice() report.Cell {
	c := input(report.T("bought"), "basis")
	c.Entry = &report.Entry{Prompt: "Whether a kit pays for what is used or for what is bought.", Choices: []string{"used", "bought"}}
	return c
}

func money(num, den int64) report.Cell {
	return report.Cell{Kind: report.Money, Number: big.NewRat(num, den)}
}

func inputs() report.Sheet {
	share := report.Cell{Kind: report.Share, Number: big.NewRat(2, 5)}
	return report.Sheet{ID: "inputs", Title: "Inputs", Tables: []report.Table{{
		ID: "inputs", Heading: "Prices and rates",
		Columns: []report.Column{{ID: "what", Title: "What"}, {ID: "value", Title: "Value"}, {ID: "per", Title: "Per"}},
		Rows: []report.Row{
			{Cells: []report.Cell{report.T("Border and binding"), input(money(1095, 100), "price-edge"), report.T("yd")}},
			{Cells: []report.Cell{report.T("Thread"), input(money(85, 1000), "thread"), report.T("m")}},
			{Cells: []report.Cell{report.T("Price asked"), input(money(49, 1), "asked"), report.T("kit")}},
			{Cells: []report.Cell{report.T("Target margin"), input(share, "target margin")}},
			{Cells: []report.Cell{report.T("Kits"), input(report.N(20), "A1")}},
			{Cells: []report.Cell{report.T("Minutes a kit"), input(report.Cell{Kind: report.Number, Number: big.NewRat(25, 2)}, "minutes"), report.T("min")}},
			{Cells: []report.Cell{report.T("Usable width"), input(length(40, 1), "width")}},
			{Cells: []report.Cell{report.T("Basis"), choice(), report.T("of cost")}},
		},
	}}}
}

func ref(name string) *report.Expr { return &report.Expr{Op: report.Ref, Name: name} }

func constant(num, den int64) *report.Expr {
	return &report.Expr{Op: report.Const, Value: big.NewRat(num, den)}
}

func expr(op report.Op, num, den int64, args ...*report.Expr) *report.Expr {
	return &report.Expr{Op: op, Args: args, Digits: 2, Value: big.NewRat(num, den)}
}

func named(kind report.CellKind, name string, e *report.Expr) report.Cell {
	return report.Cell{Kind: kind, Name: name, Expr: e}
}

// costing works out, at the prices of inputs, 1 1/4 yd of fabric at 10.95 and
// 100 m of thread at 0.085.
func costing() report.Sheet {
	fabricCost := expr(report.Round, 1369, 100, expr(report.Mul, 219, 16, ref("price-edge"), constant(5, 4)))
	total := expr(report.Add, 2219, 100, ref("fabric cost"), ref("thread cost"))
	margin := expr(report.Div, 2681, 4900, expr(report.Sub, 2681, 100, ref("asked"), ref("kit cost")), ref("asked"))
	asPlanned := &report.Expr{Op: report.Const, Text: "as planned"}
	more := &report.Expr{Op: report.Exceeds, Value: new(big.Rat), Args: []*report.Expr{ref("A1"), constant(20, 1)}}
	stale := &report.Expr{Op: report.If, Text: asPlanned.Text, Args: []*report.Expr{more, ref("A1"), asPlanned}}
	bolts := expr(report.RoundUp, 3, 1, expr(report.Div, 5, 2, expr(report.Mul, 25, 1, ref("A1"), constant(5, 4)), constant(10, 1)))
	bolts.Digits = 0
	marked := named(report.Share, "margin", margin)
	marked.Mark = expr(report.Under, 0, 1, ref("margin"), ref("target margin"))
	basis := ref("basis")
	basis.Text = "bought"
	isUsed := expr(report.Equals, 0, 1, basis, &report.Expr{Op: report.Const, Text: "used"})
	said := &report.Expr{Op: report.Join, Text: "20 kits, as bought", Args: []*report.Expr{
		{Op: report.Ref, Name: "A1", Value: big.NewRat(20, 1)}, {Op: report.Const, Text: " kits, as "},
		{Op: report.If, Text: "bought", Args: []*report.Expr{isUsed, {Op: report.Const, Text: "used"}, {Op: report.Const, Text: "bought"}}},
	}}
	run := report.Cell{Kind: report.Fabric, Unit: measure.In, Expr: expr(report.Mul, 25, 1, ref("A1"), constant(5, 4))}
	return report.Sheet{ID: "costing", Title: "Kit costing", Wide: true, Tables: []report.Table{{
		ID: "costing", Heading: "One kit",
		Columns: []report.Column{{ID: "what", Title: "What"}, {ID: "amount", Title: "Amount", Unit: "USD"}, {ID: "note", Title: "Note"}},
		Rows: []report.Row{
			{Cells: []report.Cell{report.T("Border and binding"), named(report.Money, "fabric cost", fabricCost), report.T("1 1/4 yd")}},
			{Cells: []report.Cell{report.T("Thread"), named(report.Money, "thread cost", expr(report.Round, 850, 100, expr(report.Mul, 850, 100, ref("thread"), constant(100, 1))))}},
			{Style: report.Total, Cells: []report.Cell{report.T("Cost of a kit"), named(report.Money, "kit cost", total)}},
			{Style: report.Total, Cells: []report.Cell{report.T("Margin"), marked}},
			{Cells: []report.Cell{report.T("Basis"), named(report.Number, "basis said", said)}},
			{Cells: []report.Cell{report.T("Fabric for the run"), run}},
			{Cells: []report.Cell{report.T("Bolts for the run"), named(report.Number, "bolts", bolts)}},
			{Cells: []report.Cell{report.T("Bolt plan"), named(report.Number, "stale", stale)}},
		},
	}}, Charts: []report.Chart{{
		ID: "cost", Title: "What a kit costs", About: "One bar for fabric and one for thread.",
		Table: "costing", From: 0, To: 2, Label: "what", Values: []string{"amount"}, Axis: "USD a kit",
	}}, Still: 1}
}

// cuttingRoom is paper that is written on, with a picture beside a table, and a
// second table under the same titles.
func cuttingRoom() report.Sheet {
	columns := []report.Column{{ID: "done", Title: "Done"}, {ID: "cut", Title: "Cut"}, {ID: "amount", Title: "Amount", Right: true}, {ID: "how", Title: "How", Wide: true}}
	return report.Sheet{ID: "cutting-room", Title: "Cutting room", Pages: 2, Tables: []report.Table{
		{
			ID: "cutting-room", Heading: "Kits from the bolt", Columns: columns, Narrow: true, Beside: []report.Beside{{Picture: Picture(), Tall: 60}},
			Rows: []report.Row{
				{Cells: []report.Cell{report.Tick(), report.T("border"), fabric(45, 1), report.T("from the first bolt, and fold each length with its label on top")}},
				{Cells: []report.Cell{report.Tick(), report.T("squares"), report.T("1 pack")}},
			},
		},
		{
			ID: "cutting-room-backing", Heading: "Backing", Columns: columns, Narrow: true, Under: true,
			Rows: []report.Row{{Cells: []report.Cell{report.Tick(), report.T("panels"), fabric(120, 1)}}},
		},
		{
			ID: "cutting-room-cautions", Columns: []report.Column{{ID: "caution", Wide: true}}, Begins: true,
			Rows: []report.Row{{Style: report.Alert, Cells: []report.Cell{report.T("Keep the rotary cutter closed whenever it is not in your hand.")}}},
		},
	}}
}

func lineSheets() []report.Sheet {
	return []report.Sheet{{ID: "kits", Title: "Kits", Tables: []report.Table{{
		ID: "kits", Heading: "Kits of the line",
		Columns: []report.Column{{ID: "plan", Title: "Plan"}, {ID: "backing", Title: "Backing", Unit: "yd"}, {ID: "cost", Title: "Cost", Unit: "USD"}},
		Rows: []report.Row{
			{Cells: []report.Cell{report.T("Harbour Steps"), fabric(120, 1), money(2219, 100)}},
			{Style: report.Total, Cells: []report.Cell{report.T("All"), fabric(120, 1), money(10, 3)}},
		},
	}}}}
}
