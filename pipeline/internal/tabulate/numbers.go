package tabulate

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/report"
)

// Numbers is every number of the sizes that has a name, with its working and all that
// is behind it, down to what the plan states.
func Numbers(sizes []*derive.Size) (all []report.Derived) {
	for _, s := range sizes {
		deep := numbers{}
		for _, f := range s.Told() {
			all = append(all, report.Derived{Size: s.Of.Name.Text, Of: f.Of(), Is: f.What(), Work: deep.of(s, f)})
		}
	}
	return all
}

// numbers tells how numbers of a size came about, those without a name too.
type numbers map[figure.F]*report.Work

func (n numbers) of(s *derive.Size, f figure.F) *report.Work {
	if !f.Known() {
		return nil
	}
	if told := n[f]; told != nil {
		return told
	}
	told := &report.Work{What: f.Name(), Formula: f.Formula(), Value: figureCell(f, s.Plan.Units)}
	if told.What == "" {
		told.What = f.Says()
	}
	n[f] = told
	for _, t := range f.Terms() {
		value := figureCell(t, s.Plan.Units)
		value.Why = n.of(s, t.Why())
		told.Terms = append(told.Terms, report.Term{Symbol: t.Symbol(), Says: t.Says(), Value: value, At: t.At()})
	}
	return told
}
