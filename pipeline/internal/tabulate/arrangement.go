package tabulate

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/say"
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
	repeats := !g.Written && g.Symmetry == plan.NoSymmetry && !s.LayoutTakesTurns()
	if !repeats {
		t.Columns[1].Title = "From the left"
	}
	full, short := s.WalkTop().Setting(s.Of.Layout.Setting)
	rowsOf := func(title string, rows [][]derive.Placed, blocks [][]plan.Cell) {
		if repeats {
			for r := range rows {
				written := func(int) []plan.Cell { return blocks[r%len(blocks)] }
				rows[r] = s.WalkTop().Rows(1, written)[0]
			}
		}
		t.Rows = append(t.Rows, alike(s, title, rows)...)
	}
	if s.Of.Layout.Triangles == nil {
		rowsOf("", full, g.Blocks)
		return t
	}
	rowsOf("full ", full, g.Blocks)
	between := g.Between
	if len(between) == 0 {
		between = g.Blocks
	}
	if g.Columns.N > 1 {
		rowsOf("between ", short, between)
	}
	return t
}

func arrangementLead(of plan.Setting) string {
	g := of.Grid
	switch {
	case of.Triangles != nil:
		return "On point: a row between follows each full row but the last."
	case g.Written:
		return say.Many(int64(g.Rows.N), "row") + "."
	}
	return fmt.Sprintf("%s of %s.", say.Many(int64(g.Rows.N), "row"), say.Many(int64(g.Columns.N), "block"))
}

// alike lists rows, those that are alike together.
func alike(s *derive.Size, title string, rows [][]derive.Placed) []report.Row {
	var texts []string
	at := map[string][]string{}
	for r := range rows {
		text := runs(s, rows[r])
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
func runs(s *derive.Size, cells []derive.Placed) string {
	var out []string
	for i := 0; i < len(cells); {
		j, name := i, s.NameAt(cells[i])
		for j < len(cells) && s.NameAt(cells[j]) == name {
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
