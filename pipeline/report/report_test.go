package report

import (
	"math/big"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/schema/measure"
)

// The findings of a run are those of the line and of every plan, in the one
// order of findings whatever the order of the plans.
func TestAllFindingsOfARun(t *testing.T) {
	of := func(file string) []diag.Finding { return []diag.Finding{{Rule: "a/b", Place: diag.Place{File: file}}} }
	run := &Run{
		Findings: of("m"),
		Plans:    []Outcome{{Findings: of("z")}, {Findings: of("a")}},
		Excused:  []Excused{{Reason: "the line's"}},
	}
	run.Plans[0].Excused = []Excused{{Reason: "z's"}}
	run.Plans[1].Excused = []Excused{{Reason: "a's"}}
	var files, reasons string
	for _, f := range run.All() {
		files += f.Place.File
	}
	for _, e := range run.Exceptions() {
		reasons += e.Reason + ";"
	}
	if files != "amz" {
		t.Errorf("findings in the order %s, want amz", files)
	}
	if want := "the line's;z's;a's;"; reasons != want {
		t.Errorf("exceptions in the order %s, want %s", reasons, want)
	}
	if len(run.Excused) != 1 {
		t.Error("listing the exceptions has changed the run")
	}
}

// A cell stands out while its condition holds, and never without one.
func TestMarkedCell(t *testing.T) {
	for _, c := range []struct {
		mark *Expr
		want bool
	}{
		{nil, false}, {&Expr{}, false}, {&Expr{Value: new(big.Rat)}, false}, {&Expr{Value: big.NewRat(1, 1)}, true},
	} {
		if got := (Cell{Mark: c.mark}).Marked(); got != c.want {
			t.Errorf("marked by %+v: %v, want %v", c.mark, got, c.want)
		}
	}
}

// A length to cut or buy is printed no less than it is, one that there is no more,
// and one to look at the nearest way.
func TestWhichWayACellIsRounded(t *testing.T) {
	const length = 27 * measure.Inch
	for _, c := range []struct {
		what   string
		cell   Cell
		kind   CellKind
		toward measure.Toward
	}{
		{"to look at", L(length.Surd(), measure.In), Length, measure.Nearest},
		{"cut", Cut(length.Surd(), measure.In), Length, measure.Up},
		{"bought", F(length, measure.In), Fabric, measure.Up},
		{"left over", F(length, measure.In).There(), Fabric, measure.Down},
		{"a count", N(3), Count, measure.Nearest},
		{"words", T("three"), Text, measure.Nearest},
		{"a box", Tick(), Box, measure.Nearest},
	} {
		if c.cell.Kind != c.kind || c.cell.Toward != c.toward {
			t.Errorf("%s: kind %d toward %d, want %d and %d", c.what, c.cell.Kind, c.cell.Toward, c.kind, c.toward)
		}
		if (c.kind == Length || c.kind == Fabric) && !c.cell.Exact.Equal(length.Surd()) {
			t.Errorf("%s: holds %v", c.what, c.cell.Exact)
		}
	}
}
