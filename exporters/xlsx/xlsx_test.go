package xlsx

import (
	"archive/zip"
	"bytes"
	"io"
	"slices"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/xuri/excelize/v2"

	"yardproof/exporters/internal/golden"
	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/report"
)

func planBytes(t testing.TB, p *report.Plan) []byte {
	t.Helper()
	b, err := Plan(p)
	check(t, err)
	return b
}

func TestPlan(t *testing.T) {
	golden.Check(t, "plan.txt", dump(t, planBytes(t, sample.Plan())))
}

func TestLine(t *testing.T) {
	b, err := Line(sample.Line())
	check(t, err)
	golden.Check(t, "line.txt", dump(t, b))
}

// A workbook is committed and compared, so its bytes must not depend on the
// run.
func TestSameBytes(t *testing.T) {
	first := planBytes(t, sample.Plan())
	for range 20 {
		if !bytes.Equal(first, planBytes(t, sample.Plan())) {
			t.Fatal("two runs gave different bytes")
		}
	}
	parts, err := zip.NewReader(bytes.NewReader(first), int64(len(first)))
	check(t, err)
	if !slices.IsSortedFunc(parts.File, func(a, b *zip.File) int { return strings.Compare(a.Name, b.Name) }) {
		t.Error("the parts are not sorted")
	}
	for _, part := range parts.File {
		if !part.Modified.Equal(zipDate()) {
			t.Errorf("%s is of %s", part.Name, part.Modified)
		}
	}
}

func onePage(cells ...report.Cell) *report.Plan {
	columns := make([]report.Column, len(cells))
	return &report.Plan{Proved: true, Currency: sample.Dollars(), Sheets: []report.Sheet{{
		Title:  "S",
		Tables: []report.Table{{Columns: columns, Rows: []report.Row{{Cells: cells}}}},
	}}}
}

func TestTextStaysText(t *testing.T) {
	words := []string{"=1+1", "=HYPERLINK(\"x\")", "+1", "@x", "0012", "1/2", "<&>\"'", " blanks ", "a\x00b\x1bc", strings.Repeat("x", 40000)}
	var cells []report.Cell
	for _, w := range words {
		cells = append(cells, report.T(w))
	}
	f := open(t, planBytes(t, onePage(cells...)))
	rows, err := f.GetRows("S")
	check(t, err)
	for i, want := range words {
		switch {
		case strings.Contains(want, "\x00"):
			want = "a\ufffdb\ufffdc" // XML has no such characters
		case len(want) > excelize.TotalCellChars:
			want = want[:excelize.TotalCellChars]
		}
		if got := rows[len(rows)-1][i]; got != want {
			t.Errorf("%.40q came back as %.40q", want, got)
		}
		cell, _ := excelize.CoordinatesToCellName(i+1, len(rows))
		if formula, _ := f.GetCellFormula("S", cell); formula != "" {
			t.Errorf("%q became the formula %q", want, formula)
		}
	}
}

func TestNotProvedIsOnEverySheet(t *testing.T) {
	for _, proved := range []bool{false, true} {
		p := sample.Plan()
		p.Proved = proved
		f := open(t, planBytes(t, p))
		for _, sheet := range f.GetSheetList() {
			first, err := f.GetCellValue(sheet, "A2")
			check(t, err)
			headers, err := f.GetHeaderFooter(sheet)
			check(t, err)
			row, header := strings.Contains(first, "NOT PROVED"), strings.Contains(headers.OddHeader, "NOT PROVED")
			if row == proved || header == proved {
				t.Errorf("proved %t, sheet %s: row %t, header %t", proved, sheet, row, header)
			}
		}
	}
}

// A sheet's name has at most 31 characters, none of : \ / ? * [ ], no
// apostrophe at its ends, and is unlike all others in any case (from the
// documentation of spreadsheet programs; 'History' is reserved there).
func TestSheetNames(t *testing.T) {
	names := sheetNames{}
	seen := map[string]bool{}
	for _, title := range []string{
		"Cut list", "cut LIST", "Cut: list", "", "", "'quoted'", "[x]*?/\\:", "History",
		strings.Repeat("long ", 20), strings.Repeat("long ", 20), strings.Repeat("🪡", 31), "港の帯",
	} {
		name := names.unique(title)
		folded := strings.ToLower(name)
		switch {
		case name == "" || seen[folded] || folded == "history":
			t.Errorf("%q became %q", title, name)
		case len(utf16.Encode([]rune(name))) > 31 || strings.ContainsAny(name, `:\/?*[]`) || strings.Trim(name, "' ") != name:
			t.Errorf("%q became the invalid %q", title, name)
		}
		if err := excelize.NewFile().SetSheetName("Sheet1", name); err != nil {
			t.Errorf("%q: %v", name, err)
		}
		seen[folded] = true
	}
}

func TestDefinedName(t *testing.T) {
	for name, want := range map[string]string{
		"price_edge": "price_edge", "price-edge": "price_edge", "target margin": "target_margin", "_x": "_x", "rate.hour": "rate.hour",
		"A1": "", "ab12": "", "XFD1": "", "R1C1": "", "r": "", "c": "", "RC": "", "true": "", "": "", "1x": "", "préis": "", "a!b": "",
		"ABCD12": "ABCD12", "rate": "rate", "cost": "cost", strings.Repeat("a", 256): "",
	} {
		if got := definedName(name); got != want {
			t.Errorf("%q became %q, want %q", name, got, want)
		}
	}
}

// Every number must fit its column even in a font a tenth wider, or programs
// show hashes instead.
func TestNumbersFitTheirColumns(t *testing.T) {
	f := open(t, planBytes(t, sample.Plan()))
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet)
		check(t, err)
		for i, row := range rows {
			for j, shown := range row {
				cell, _ := excelize.CoordinatesToCellName(j+1, i+1)
				kind, err := f.GetCellType(sheet, cell)
				check(t, err)
				if kind == excelize.CellTypeInlineString {
					continue
				}
				column, _ := excelize.ColumnNumberToName(j + 1)
				width, err := f.GetColWidth(sheet, column)
				check(t, err)
				if need := 1.1 * textWidth(shown, true); need > width-1 {
					t.Errorf("%s!%s shows %q, which needs %.1f of %.1f", sheet, cell, shown, need, width)
				}
			}
		}
	}
}

func TestHeaderText(t *testing.T) {
	for text, want := range map[string]string{
		"Tide & Thread": "Tide && Thread",
		"two\nlines":    "two lines",
	} {
		if got := headerText(text); got != want {
			t.Errorf("%q became %q", text, got)
		}
	}
	p := sample.Plan()
	p.Title, p.Revision = strings.Repeat("&", 300), strings.Repeat("r", 300)
	planBytes(t, p) // the library refuses a header beyond the format's limit
	for n := range 2 * maxHeaderPart {
		for _, text := range []string{strings.Repeat("x", n) + "&", strings.Repeat("x", n) + "&Dx", strings.Repeat("&", n)} {
			if got := headerText(text); strings.Count(got, "&")%2 != 0 {
				t.Fatalf("an ampersand stands alone at the end of %q", got)
			}
		}
	}
}

func BenchmarkPlan(b *testing.B) {
	p := sample.Plan()
	cut := &p.Sheets[0].Tables[0]
	for range 60 {
		cut.Rows = append(cut.Rows, cut.Rows[1])
	}
	for range 4 {
		p.Sheets = append(p.Sheets, p.Sheets[0])
	}
	for b.Loop() {
		out, err := Plan(p)
		if err != nil {
			b.Fatal(err)
		}
		io.Discard.Write(out)
	}
}
