package tabulate_test

import (
	"math/big"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/tabulate"
	"yardproof/pipeline/report"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// A kit's fabrics and sizes may be called anything that a plan allows: every
// cell still has a name of its own, and every reference finds a cell. Invented
// plan.
const lookalikes = `{
  "format": 1, "id": "a", "title": "A", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
  "fabrics": {"asked": {"yardage": {}}, "a-b": {"yardage": {}}, "a": {"yardage": {}}, "throw": {"yardage": {}}, "for-margin": {"yardage": {}}},
  "parts": {
    "p": {"cut": {"fabric": "asked", "square": 3}}, "q": {"cut": {"fabric": "a-b", "square": 3}}, "r": {"cut": {"fabric": "a", "square": 3}},
    "s": {"cut": {"fabric": "throw", "square": 3}}, "t": {"cut": {"fabric": "for-margin", "square": 3}}
  },
  "layout": {"grid": {"rows": 5, "columns": 5, "blocks": [["p", "q", "r", "s", "t"]]}},
  "kit": {"fabrics": ["asked", "a-b", "a", "throw", "for-margin"], "things": [{"name": "label", "price": 1}, {"name": "tag", "price": 2, "count": 3}]},
  "class": {"students": 8, "fee": "20", "kits": "sold", "minutes": 60},
  "colourways": {"b": {"fabrics": {"a": {"sku": "X"}}}, "throw": {"fabrics": {"asked": {"name": "Asked"}}, "kit": {"things": [{"name": "one", "price": 1}]}}},
  "sizes": {"throw": {}, "b-c": {}, "c": {}, "price": {}}
}`

func TestKitCellNames(t *testing.T) {
	f := source.New("a.plan.json", []byte(lookalikes))
	tree, problems := jsontree.Parse(f, jsontree.Limits{})
	p, more := plan.Decode(f, tree, plan.Merge(tree), nil)
	if len(problems)+len(more) > 0 {
		t.Fatal(problems, more)
	}
	in := tabulate.Input{Plan: p, Project: &plan.Project{Rates: plan.Rates{Strip: big.NewRat(1, 2), At: source.Range{Start: 1, End: 2}}}}
	for i := range p.Sizes {
		in.Sizes = append(in.Sizes, derive.Of(p, &p.Sizes[i]))
	}
	in.Kits = kit.All(in.Sizes, in.Project, nil)
	names, wanted := map[string]int{}, map[string]bool{}
	for _, s := range tabulate.Plan(in) {
		for _, table := range s.Tables {
			for _, row := range table.Rows {
				for _, c := range row.Cells {
					if c.Name != "" {
						names[strings.ToLower(c.Name)]++
					}
					refer(c.Expr, wanted)
				}
			}
		}
	}
	for name, n := range names {
		if n > 1 {
			t.Errorf("%d cells are called %s", n, name)
		}
	}
	for name := range wanted {
		if names[strings.ToLower(name)] == 0 {
			t.Errorf("no cell is called %s", name)
		}
	}
	if len(wanted) < 50 {
		t.Errorf("only %d cells are referred to", len(wanted))
	}
}

func refer(e *report.Expr, wanted map[string]bool) {
	if e == nil {
		return
	}
	if e.Op == report.Ref {
		wanted[e.Name] = true
	}
	for _, a := range e.Args {
		refer(a, wanted)
	}
}
