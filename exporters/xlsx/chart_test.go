package xlsx

import (
	"archive/zip"
	"bytes"
	"io"
	"math/big"
	"strings"
	"testing"

	"yardproof/pipeline/report"
)

// costs is an invented table: two parts of a cost by two sizes, the first of
// which is called as the column of labels is.
func costs() report.Sheet {
	money := func(n int64) report.Cell { return report.Cell{Kind: report.Money, Number: big.NewRat(n, 1)} }
	return report.Sheet{Title: "S", Tables: []report.Table{{
		ID: "costs", Heading: "Costs", Columns: []report.Column{{ID: "what", Title: "What"}, {ID: "what", Title: "what"}, {ID: "bed", Title: "bed"}},
		Rows: []report.Row{
			{Cells: []report.Cell{report.T("Fabric"), money(30), money(50)}},
			{Cells: []report.Cell{report.T("Labour"), money(6), money(9)}},
		},
	}}}
}

func chartOf(c report.Chart) report.Sheet {
	s := costs()
	c.ID, c.Title, c.Table, c.Label, c.To = "c", "Make-up & more", "costs", "what", 2
	s.Charts = []report.Chart{c}
	return s
}

// partsOf reads the parts of a workbook whose names begin as given.
func partsOf(t *testing.T, book []byte, prefix string) string {
	t.Helper()
	r, err := zip.NewReader(bytes.NewReader(book), int64(len(book)))
	check(t, err)
	var all strings.Builder
	for _, f := range r.File {
		if strings.HasPrefix(f.Name, prefix) {
			part, err := f.Open()
			check(t, err)
			text, err := io.ReadAll(part)
			check(t, err)
			all.Write(text)
		}
	}
	return all.String()
}

// A chart draws cells, not numbers of its own, so that it follows them; its
// bars have an edge and none has a placeholder for its fill.
func TestChartsDrawCells(t *testing.T) {
	for name, test := range map[string]struct {
		chart report.Chart
		want  []string
	}{
		"columns": {report.Chart{Values: []string{"what", "bed"}}, []string{"<f>'S'!$B$4</f>", "<f>'S'!$A$5:$A$6</f>", "<f>'S'!$B$5:$B$6</f>", "<f>'S'!$C$5:$C$6</f>", `<grouping val="clustered">`}},
		"rows":    {report.Chart{Values: []string{"what", "bed"}, Across: true, Stacked: true}, []string{"<f>'S'!$A$5</f>", "<f>'S'!$B$4:$C$4</f>", "<f>'S'!$B$5:$C$5</f>", "<f>'S'!$B$6:$C$6</f>", `<grouping val="stacked">`}},
	} {
		p := &report.Plan{Proved: true, Sheets: []report.Sheet{chartOf(test.chart)}}
		text := strings.ReplaceAll(partsOf(t, planBytes(t, p), "xl/charts/chart"), "&#39;", "'")
		for _, want := range append(test.want, "Make-up &amp; more", edge) {
			if !strings.Contains(text, want) {
				t.Errorf("%s: the chart lacks %s", name, want)
			}
		}
		if strings.Contains(text, placeholder(0)) || strings.Contains(text, placeholder(1)) {
			t.Errorf("%s: a bar has a placeholder for its fill", name)
		}
	}
}

func TestChartOfNothing(t *testing.T) {
	s := chartOf(report.Chart{Values: []string{"bed"}})
	for name, spoil := range map[string]func(*report.Chart){
		"table":  func(c *report.Chart) { c.Table = "none" },
		"column": func(c *report.Chart) { c.Values = []string{"cot"} },
		"rows":   func(c *report.Chart) { c.To = 3 },
		"no row": func(c *report.Chart) { c.From = 2 },
	} {
		c := s.Charts[0]
		spoil(&c)
		bad := s
		bad.Charts = []report.Chart{c}
		if _, err := Plan(&report.Plan{Sheets: []report.Sheet{bad}}); err == nil {
			t.Errorf("a chart without its %s is written", name)
		}
	}
}

// A table that fits a page begins one rather than being split, and one that
// just fits does not.
func TestTablesAreNotSplit(t *testing.T) {
	sheet := func(first, second int) *report.Plan {
		s := report.Sheet{Title: "S"}
		for _, n := range []int{first, second} {
			table := report.Table{Heading: "T", Columns: []report.Column{{Title: "Number"}}}
			for i := range n {
				table.Rows = append(table.Rows, report.Row{Cells: []report.Cell{report.N(int64(i))}})
			}
			s.Tables = append(s.Tables, table)
		}
		return &report.Plan{Proved: true, Sheets: []report.Sheet{s}}
	}
	// 690 points of letter paper: 24 for the title's line, 49 for the blank,
	// heading and head of each table, and 15 a row.
	for rows, want := range map[int]int{16: 0, 17: 0, 18: 1, 30: 1} {
		text := partsOf(t, planBytes(t, sheet(20, rows)), "xl/worksheets/sheet1")
		if got := strings.Count(text, "<brk id=\"24\""); got != want {
			t.Errorf("a table of %d rows begins %d pages, want %d", rows, got, want)
		}
	}
	// A table that fits on no page goes on where it stands, and its titles are
	// repeated.
	f := open(t, planBytes(t, sheet(5, 100)))
	if text := partsOf(t, planBytes(t, sheet(5, 100)), "xl/worksheets/sheet1"); strings.Contains(text, "<brk") {
		t.Error("a table longer than a page begins one")
	}
	for _, name := range f.GetDefinedName() {
		if name.Name == "_xlnm.Print_Titles" && name.RefersTo != "'S'!$12:$12" {
			t.Errorf("%s is repeated", name.RefersTo)
		}
	}
}
