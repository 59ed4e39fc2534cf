package tabulate

import (
	"math/big"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// workings tells how numbers came about, each number of a size once, so that cells
// made of the same number share its working.
type workings map[figure.F]*report.Work

// of is the working of a number of a size; nil where it is not known, or has no
// name.
func (w workings) of(s *derive.Size, f figure.F) *report.Work {
	if f = f.Itself(); !f.Known() {
		return nil
	}
	if told := w[f]; told != nil {
		return told
	}
	told := &report.Work{What: s.Of.Name.Text + ": " + f.Name(), Formula: f.Formula(), Value: figureCell(f, s.Plan.Units)}
	w[f] = told
	for _, t := range f.Terms() {
		value := figureCell(t, s.Plan.Units)
		value.Why = w.of(s, t.Working())
		told.Terms = append(told.Terms, report.Term{Symbol: t.Symbol(), Says: t.Says(), Value: value, At: t.At()})
	}
	return told
}

// figureCell is a number as a cell of its kind.
func figureCell(f figure.F, u measure.Unit) report.Cell {
	switch f.Kind() {
	case figure.Length:
		return report.L(f.Surd(), u)
	case figure.Sold:
		return report.F(f.Length(), u)
	}
	if num, den, ok := f.Surd().Rational(); ok && !den.IsInt64() || ok && den.Int64() != 1 {
		return report.Cell{Kind: report.Number, Number: new(big.Rat).SetFrac(num, den)}
	}
	return report.N(f.N())
}
