package tabulate

import (
	"math/big"
	"strings"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
	"yardproof/schema/plan"
)

// columnID names the kit's column in CSV and JSON.
func columnID(k *kit.Kit) string {
	if k.Size.Of.Way.Given() {
		return k.Size.Of.Name.Text + "." + k.Size.Of.Way.Text
	}
	return k.Size.Of.Name.Text
}

// timed reports whether the kit's minutes are worked out from its cuts.
func timed(k *kit.Kit, p *plan.Project) bool { return !k.Said.Minutes.Given() && p.Rates.Given() }

// minutes adds up the cuts of a kit at the rates of the sheet.
func (in Input) minutes(k *kit.Kit) *report.Expr {
	var parts []*report.Expr
	for _, a := range k.Work.Acts(in.Project.Rates) {
		parts = append(parts, costing.Times(costing.Ref("count_"+a.Key+k.Cells.Suffix, big.NewRat(a.Count, 1)), costing.Ref("minutes_"+a.Key, a.Each)))
	}
	return costing.Sum(parts...)
}

// cuttingTime is what there is to cut for a kit and how long it takes; ok is
// false where no kit's minutes are worked out from it.
func (in Input) cuttingTime(kits []*kit.Kit) (report.Table, bool) {
	t := perSize("cutting-time", "Cutting and packing one kit", kits)
	t.Columns = append(t.Columns[:2], append([]report.Column{{ID: "rate", Title: "Minutes each"}}, t.Columns[2:]...)...)
	t.Lead = []string{"Counted from the cutting layouts. The minutes are the project's rates: time your own."}
	any := false
	for _, k := range kits {
		any = any || timed(k, in.Project)
	}
	if !any {
		return t, false
	}
	for i, a := range kits[0].Work.Acts(in.Project.Rates) {
		rate := costing.Input{Name: "minutes_" + a.Key, Value: a.Each}
		r := row(report.T(a.Says), report.T("times"), input(report.Number, rate))
		for _, k := range kits {
			n := k.Work.Acts(in.Project.Rates)[i].Count
			r.Cells = append(r.Cells, report.Cell{Kind: report.Number, Number: big.NewRat(n, 1), Name: "count_" + a.Key + k.Cells.Suffix})
		}
		t.Rows = append(t.Rows, r)
	}
	return t, true
}

// classes is what teaching the pattern earns; ok is false where no size is
// taught. A class is worked out with the kit of the recipe's own fabrics.
func (in Input) classes(kits []*kit.Kit) (report.Table, bool) {
	var taught []*kit.Kit
	for _, k := range kits {
		if k.Size.Of.Class != nil && !k.Size.Of.Way.Given() {
			taught = append(taught, k)
		}
	}
	t := perSize("class", "A class", taught)
	if len(taught) == 0 {
		return t, false
	}
	code := in.Project.Currency.Code()
	lines := func(style report.RowStyle, what, unit string, cell func(classCells) report.Cell) {
		t.Rows = append(t.Rows, acrossKits(style, what, unit, taught, func(k *kit.Kit) report.Cell { return cell(classOf(k)) }))
	}
	lines(report.Body, "Students", "students", func(c classCells) report.Cell {
		return wholeNumber(c.Students, "Students of one class.")
	})
	lines(report.Body, "Fee", code+" a student", func(c classCells) report.Cell { return input(report.Money, c.Fee) })
	lines(report.Body, "Teaching", "min", func(c classCells) report.Cell { return input(report.Number, c.Minutes) })
	lines(report.Body, "Room, journey and the like", code, func(c classCells) report.Cell { return input(report.Money, c.Costs) })
	lines(report.Body, "Samples sewn beforehand", "kits", func(c classCells) report.Cell { return input(report.Number, c.Samples) })
	lines(report.Body, "Income", code, func(c classCells) report.Cell { return result(report.Money, c.figures.Income) })
	lines(report.Body, "Cost, kits and samples included", code, func(c classCells) report.Cell { return result(report.Money, c.figures.Cost) })
	lines(report.Total, "Profit of the class", code, func(c classCells) report.Cell { return result(report.Money, c.figures.Profit) })
	lines(report.Body, "Break-even", "students", func(c classCells) report.Cell { return result(report.Number, c.figures.BreakEven) })
	for _, k := range taught {
		t.Foot = append(t.Foot, classSays(k)...)
	}
	return t, true
}

// classCells are the inputs of a class and what they come to.
type classCells struct {
	costing.Class
	figures costing.ClassFigures
}

func classOf(k *kit.Kit) classCells {
	said := k.Size.Of.Class
	own := func(name string, value *big.Rat) costing.Input {
		return costing.Input{Name: name + k.Cells.Suffix, Value: value}
	}
	amount := func(a plan.Amount) *big.Rat {
		if a.Given() {
			return a.Value
		}
		return new(big.Rat)
	}
	c := classCells{Class: costing.Class{
		Suffix: k.Cells.Suffix, Digits: k.Cells.Digits, Rate: k.Cells.Rate,
		Students: own("students", big.NewRat(int64(said.Students.N), 1)), Fee: own("class_fee", amount(said.Fee)),
		Minutes: own("class_minutes", big.NewRat(int64(said.Minutes.N), 1)), Costs: own("class_costs", amount(said.Costs)),
		Samples: own("class_samples", big.NewRat(int64(said.Samples), 1)),
		Unit:    k.Costs.Unit,
	}}
	switch said.Kits {
	case plan.KitsIncluded:
		c.Kits = true
	case plan.KitsSold:
		c.Kits, c.KitPrice = true, &k.Costs.Price
	}
	c.figures = costing.Teach(c.Class)
	return c
}

// classSays tells how the students come by fabric, and what is lent and
// brought.
func classSays(k *kit.Kit) []string {
	c := k.Size.Of.Class
	says := k.Name() + ": "
	switch c.Kits {
	case plan.KitsIncluded:
		says += "the fee includes a kit."
	case plan.KitsSold:
		says += "each student buys a kit at its price."
	default:
		says += "students bring their own fabric."
	}
	var lent []string
	for _, l := range c.Lend {
		lent = append(lent, say.Many(int64((c.Students.N+l.For-1)/l.For), "piece")+" of "+l.Name.Text)
	}
	if len(lent) > 0 {
		says += " To lend: " + strings.Join(lent, "; ") + "."
	}
	return []string{says}
}
