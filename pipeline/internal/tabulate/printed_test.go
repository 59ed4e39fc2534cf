package tabulate_test

import (
	"math/big"
	"regexp"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/tabulate"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// TestNothingIsPrintedOnTheUnsafeSide walks through the tables of all demo plans
// and of those with mistakes: what is to be bought or cut is printed no less than it
// is, and what is to spare no more.
func TestNothingIsPrintedOnTheUnsafeSide(t *testing.T) {
	lengths, spares := 0, 0
	eachPlan(t, func(name string, in *tabulate.Input) {
		for _, sheet := range tabulate.Plan(*in) {
			for _, table := range sheet.Tables {
				for _, r := range table.Rows {
					for i, c := range r.Cells {
						if c.Kind == report.Fabric && c.Expr != nil && c.Toward != measure.Up {
							t.Errorf("%s, %s: a fabric that is worked out is rounded %d", name, table.ID, c.Toward)
						}
						if toCutOrBuy(table, i, c) {
							lengths++
							if printed := ofText(t, c.Exact.Rounded(c.Unit, c.Toward)); c.Toward != measure.Up || printed.Cmp(c.Exact) < 0 {
								t.Errorf("%s, %s: %s is printed of %s", name, table.ID, c.Exact.Rounded(c.Unit, c.Toward), c.Exact)
							}
						}
						for _, said := range toSpare.FindAllStringSubmatch(c.Text, -1) {
							spares++
							if !anyYield(t, in, said) {
								t.Errorf("%s, %s: %q is of no part, or more than there is", name, table.ID, said[0])
							}
						}
					}
				}
			}
		}
	}, "line/*.plan.json", "broken/*.plan.json")
	if lengths < 1000 || spares < 30 {
		t.Errorf("only %d lengths and %d statements of slack were looked at", lengths, spares)
	}
}

// toCutOrBuy tells cells of fabric to buy, and of a cut list, from what the
// pattern prints.
func toCutOrBuy(table report.Table, column int, c report.Cell) bool {
	switch {
	case c.Expr != nil || c.Input || column < len(table.Columns) && table.Columns[column].ID == "printed":
		return false
	case c.Kind == report.Fabric:
		return true
	}
	return c.Kind == report.Length && strings.HasPrefix(table.ID, "cut-")
}

var toSpare = regexp.MustCompile(`takes? ((?:about )?[0-9./ ]+ (?:in|cm)) of ((?:about )?[0-9./ ]+ (?:in|cm)): ((?:about )?[0-9./ ]+ (?:in|cm)) to spare(?:, ((?:about )?[0-9./ ]+ (?:in|cm)) of each set)?`)

// anyYield reports whether a statement of slack is that of some part: it says that
// no less is taken, and no more is there and to spare, and each to within 0.001 in.
func anyYield(t *testing.T, in *tabulate.Input, said []string) bool {
	t.Helper()
	near := func(over measure.Surd) bool { return over.Sign() >= 0 && over.Cmp((measure.Inch/1000).Surd()) < 0 }
	for _, s := range in.Sizes {
		for _, p := range s.Parts {
			for _, y := range yields(p) {
				if near(ofText(t, said[1]).Sub(y.Used.Surd())) && near(y.Length.Surd().Sub(ofText(t, said[2]))) && near(y.Rest().Surd().Sub(ofText(t, said[3]))) &&
					(said[4] == "") == (y.Joined < 2) && (said[4] == "" || near(y.Slack().Surd().Sub(ofText(t, said[4])))) {
					return true
				}
			}
		}
	}
	return false
}

func yields(p *derive.Part) []derive.Yield {
	var all []derive.Yield
	if p.Tube != nil {
		all = append(all, p.Tube.Yield)
	}
	if p.Set != nil && p.Set.Cut != nil {
		all = append(all, *p.Set.Cut)
	}
	if p.Loop != nil {
		all = append(all, p.Loop.Yield)
	}
	if p.Shape != nil {
		all = append(all, p.Shape.Yield)
	}
	return all
}

// ofText reads a printed length: "2 1/2 in", "about 8.4853 in", in ticks.
func ofText(t *testing.T, text string) measure.Surd {
	t.Helper()
	fields := strings.Fields(strings.TrimPrefix(text, "about "))
	unit, ok := measure.ParseUnit(fields[len(fields)-1])
	if !ok {
		t.Fatalf("%q has no unit", text)
	}
	sum := new(big.Rat)
	for _, f := range fields[:len(fields)-1] {
		r, ok := new(big.Rat).SetString(f)
		if !ok {
			t.Fatalf("%q is no length", text)
		}
		sum.Add(sum, r)
	}
	return measure.FromRat(sum).MulInt(int64(unit.Length()))
}
