package tabulate_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/internal/tabulate"
	"yardproof/pipeline/report"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// taught is an invented plan of 25 squares of 8 in, five to a strip, which is
// taught and cut in pieces; no size prints anything.
const taught = `{
  "format": 1, "id": "slates", "title": "Slates", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
  "fabrics": {"top": {"name": "Slate", "sku": "S-1", "yardage": {}}, "wide": {"name": "Backing", "yardage": {}}},
  "parts": {"tile": {"cut": {"fabric": "top", "square": 8}}},
  "layout": {"grid": {"rows": 5, "columns": 5, "blocks": [["tile"]]}},
  "finish": {"backing": {"fabric": "wide"}},
  "kit": {"fabrics": ["top"], "cut": "pieces", "run": 20, "excludes": ["backing", "batting", "binding clips"], "things": [{"name": "Label", "sku": "L-1", "price": 1, "count": 2}]},
  "class": {"students": 8, "fee": "20", "kits": "sold", "minutes": 60, "bring": ["sewing machine", "walking foot and thread"]},
  "sizes": {"throw": {}}
}`

func sheetsOf(t *testing.T, text string, project *plan.Project) []report.Sheet {
	t.Helper()
	f := source.New("slates.plan.json", []byte(text))
	tree, problems := jsontree.Parse(f, jsontree.Limits{})
	p, more := plan.Decode(f, tree, plan.Merge(tree), nil)
	if len(problems)+len(more) > 0 {
		t.Fatal(problems, more)
	}
	in := tabulate.Input{Plan: p, Project: project}
	for i := range p.Sizes {
		in.Sizes = append(in.Sizes, derive.Of(p, &p.Sizes[i]))
	}
	in.Kits = kit.All(in.Sizes, in.Project, nil)
	return tabulate.Plan(in)
}

func column(table report.Table, id string) []string {
	at := slices.IndexFunc(table.Columns, func(c report.Column) bool { return c.ID == id })
	var all []string
	for _, r := range table.Rows {
		switch {
		case at >= len(r.Cells):
			all = append(all, "")
		case r.Cells[at].Kind == report.Count:
			all = append(all, fmt.Sprint(r.Cells[at].Int))
		default:
			all = append(all, r.Cells[at].Text)
		}
	}
	return all
}

// Students bring what the kit leaves out besides fabric, too, and are not asked
// for anything twice.
func TestStudentsBringWhatTheKitLeavesOut(t *testing.T) {
	for _, c := range []struct {
		was, is string
		want    []string
	}{
		{"", "", []string{"Backing", "Batting", "Binding clips", "sewing machine", "walking foot and thread"}},
		{`, "batting", "binding clips"`, ``, []string{"Backing", "Batting", "sewing machine", "walking foot and thread"}},
		{` and thread"`, `"`, []string{"Backing", "Batting", "Thread", "Binding clips", "sewing machine", "walking foot"}},
		{`"name": "Label"`, `"name": "Thread, grey"`, []string{"Backing", "Batting", "Binding clips", "sewing machine", "walking foot and thread"}},
		{`"kits": "sold"`, `"kits": "own fabric"`, []string{"Slate", "Backing", "Batting", "sewing machine", "walking foot and thread"}},
	} {
		sheets := sheetsOf(t, strings.Replace(taught, c.was, c.is, 1), &plan.Project{})
		if got := column(sheetOf(sheets, "class-throw").Tables[0], "what"); !slices.Equal(got, c.want) {
			t.Errorf("%q: got %q", c.is, got)
		}
	}
}

// Worked by hand: 20 kits and 5 % for miscuts are 21 of five strips each, 105, and
// 525 squares; two labels a kit are 42.
func TestTheRunIsCutFabricByFabric(t *testing.T) {
	sheet := sheetOf(sheetsOf(t, taught, &plan.Project{Spoilage: plan.Percent{BasisPoints: 500}}), "run-throw")
	if len(sheet.Tables) != 2 {
		t.Fatalf("%+v", sheet)
	}
	slate := sheet.Tables[0]
	if got := column(slate, "number"); !slices.Equal(got, []string{"21", "105"}) {
		t.Errorf("%q", got)
	}
	if got := column(slate, "pieces"); got[1] != "525" {
		t.Errorf("%q", got)
	}
	if what := column(slate, "what"); !strings.HasPrefix(what[0], "lengths of 1 1/4 yd") || !strings.HasPrefix(what[1], "strips 8 in wide. From each: ") {
		t.Errorf("%q", what)
	}
	for _, r := range slate.Rows {
		if r.Cells[0].Kind != report.Box {
			t.Errorf("%+v has no box", r)
		}
	}
	if got := column(sheet.Tables[1], "number"); !slices.Equal(got, []string{"42"}) {
		t.Errorf("%q", got)
	}
	whole := strings.Replace(taught, `"cut": "pieces", `, "", 1)
	if got := column(sheetOf(sheetsOf(t, whole, &plan.Project{}), "run-throw").Tables[0], "number"); !slices.Equal(got, []string{"20"}) {
		t.Errorf("lengths alone: %q", got)
	}
	if sheetOf(sheetsOf(t, strings.Replace(taught, `"run": 20, `, "", 1), &plan.Project{}), "run-throw") != nil {
		t.Error("no kits are planned, and there is a sheet of them")
	}
}

// A finding counts for the sizes that it is about.
func TestFindingsCountForTheirSizes(t *testing.T) {
	run := &report.Run{Plans: []report.Outcome{{ID: "slates", Title: "Slates", Findings: []diag.Finding{
		{Level: diag.Warning, Rule: "fabric/tight", Sizes: []string{"bed"}}, {Level: diag.Note, Rule: "publish/skill"},
		{Level: diag.Warning, Rule: "fabric/tight", Sizes: []string{"bed", "throw"}},
	}}}}
	summaries := []line.Summary{{Sizes: []line.SizeSummary{{Name: "throw"}, {Name: "bed"}, {Name: "bed, Heather"}}}}
	table := sheetOf(tabulate.Line(run, summaries), "line").Tables[0]
	if got := fmt.Sprint(column(table, "warnings"), column(table, "notes")); got != "[1 2 2] [1 1 1]" {
		t.Errorf("got %s", got)
	}
}
