package tabulate

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/report"
	"yardproof/schema/plan"
)

// arrangement is how the blocks are laid out: the rows that repeat, or every
// row where they come from a symmetry or stand as written.
func arrangement(s *derive.Size) report.Table {
	t := report.Table{
		ID: "arrangement-" + s.Of.Name.Text, Heading: "Laying out the blocks",
		Columns: []report.Column{{ID: "rows", Title: "Rows"}, {ID: "blocks", Title: "From the left, repeated along the row", Wide: true}},
	}
	g := s.Of.Layout.Grid
	if g == nil {
		return t
	}
	t.Lead = []string{arrangementLead(s.Of.Layout.Setting)}
	repeats := !g.Written && g.Symmetry == plan.NoSymmetry
	if !repeats {
		t.Columns[1].Title = "From the left"
	}
	rowsOf := func(title string, rows int, blocks [][]plan.Cell, row func(int) []plan.Cell) {
		if repeats {
			row = func(r int) []plan.Cell { return blocks[r%len(blocks)] }
		}
		t.Rows = append(t.Rows, alike(title, rows, row)...)
	}
	if s.Of.Layout.Triangles == nil {
		rowsOf("", g.Rows.N, g.Blocks, g.Row)
		return t
	}
	rowsOf("full ", g.Rows.N, g.Blocks, g.Row)
	between := g.Between
	if len(between) == 0 {
		between = g.Blocks
	}
	if g.Columns.N > 1 {
		rowsOf("between ", g.Rows.N-1, between, g.Short)
	}
	return t
}

func arrangementLead(of plan.Setting) string {
	g := of.Grid
	switch {
	case of.Triangles != nil:
		return "On point: a row between follows each full row but the last."
	case g.Written:
		return many(int64(g.Rows.N), "row") + "."
	}
	return fmt.Sprintf("%s of %s.", many(int64(g.Rows.N), "row"), many(int64(g.Columns.N), "block"))
}

// alike lists rows, those that are alike together.
func alike(title string, rows int, cells func(int) []plan.Cell) []report.Row {
	var texts []string
	at := map[string][]string{}
	for r := range rows {
		text := runs(cells(r))
		if at[text] == nil {
			texts = append(texts, text)
		}
		at[text] = append(at[text], fmt.Sprint(r+1))
	}
	var out []report.Row
	for _, text := range texts {
		out = append(out, row(report.T(title+strings.Join(at[text], ", ")), report.T(text)))
	}
	return out
}

// runs names the cells of a row, equal neighbours together.
func runs(cells []plan.Cell) string {
	var out []string
	for i := 0; i < len(cells); {
		j, name := i, cellName(cells[i])
		for j < len(cells) && cellName(cells[j]) == name {
			j++
		}
		if j-i > 1 {
			name = fmt.Sprintf("%d x %s", j-i, name)
		}
		out = append(out, name)
		i = j
	}
	return strings.Join(out, ", ")
}
