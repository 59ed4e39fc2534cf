package why

import (
	"strconv"

	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// Answer is a number and how it came about, or a term of a formula.
type Answer struct {
	Size    string   `json:"size,omitempty"`
	Name    string   `json:"name"`
	Symbol  string   `json:"symbol,omitempty"` // in the formula of what it is behind
	Value   string   `json:"value"`
	Formula string   `json:"formula,omitempty"`
	Line    int      `json:"line,omitempty"` // of the plan, where that says it
	Column  int      `json:"column,omitempty"`
	Told    bool     `json:"told_above,omitempty"` // its formula stands where the number came first
	Terms   []Answer `json:"terms,omitempty"`
}

// Answers are the numbers that were found, each as a tree of at most so many levels
// of formulas; 0 is all of them. What was told once is not told again.
func Answers(p *report.Plan, found []report.Derived, depth int) []Answer {
	t := teller{p: p, told: map[*report.Work]bool{}}
	var all []Answer
	for _, n := range found {
		a := Answer{Size: n.Size, Name: n.Name(), Value: shown(n.Work.Value, p.Units)}
		t.explain(&a, n.Work, depth, 1)
		all = append(all, a)
	}
	return all
}

type teller struct {
	p    *report.Plan
	told map[*report.Work]bool
}

func (t teller) explain(a *Answer, w *report.Work, depth, level int) {
	a.Formula = w.Formula
	if t.told[w] {
		a.Told = len(w.Terms) > 0
		return
	}
	t.told[w] = true
	for _, term := range w.Terms {
		b := Answer{Name: term.Says, Symbol: term.Symbol, Value: shown(term.Value, t.p.Units)}
		if !term.At.Empty() {
			at := t.p.Source.Position(term.At.Start)
			b.Line, b.Column = at.Line, at.Column
		}
		if why := term.Value.Why; why != nil && (depth == 0 || level < depth) {
			t.explain(&b, why, depth, level+1)
		}
		a.Terms = append(a.Terms, b)
	}
}

// shown is a value as a person reads it.
func shown(c report.Cell, u measure.Unit) string {
	switch c.Kind {
	case report.Length:
		return c.Exact.Rounded(u, c.Toward)
	case report.Fabric:
		l, ok := c.Exact.Length()
		if !ok {
			return c.Exact.Rounded(u, c.Toward)
		}
		return measure.FormatFabric(l, u)
	case report.Number:
		return c.Number.RatString()
	}
	return strconv.FormatInt(c.Int, 10)
}
