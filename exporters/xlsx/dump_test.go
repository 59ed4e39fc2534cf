package xlsx

import (
	"bytes"
	"fmt"
	"image/png"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

func open(t testing.TB, b []byte) *excelize.File {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

// dump tells everything about a workbook that a person would notice: what is
// in the cells, how it is shown, and how it is printed.
func dump(t testing.TB, b []byte) []byte {
	t.Helper()
	f := open(t, b)
	var s strings.Builder
	properties, err := f.GetDocProps()
	check(t, err)
	fmt.Fprintf(&s, "%s | %s | %s | %s | %s\n", properties.Title, properties.Subject, properties.Description, properties.Creator, properties.Created)
	for _, name := range f.GetDefinedName() {
		fmt.Fprintf(&s, "name %s (%s) = %s\n", name.Name, name.Scope, name.RefersTo)
	}
	for _, sheet := range f.GetSheetList() {
		dumpSheet(t, &s, f, sheet)
	}
	return []byte(s.String())
}

func check(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func dumpSheet(t testing.TB, s *strings.Builder, f *excelize.File, sheet string) {
	t.Helper()
	layout, err := f.GetPageLayout(sheet)
	check(t, err)
	properties, err := f.GetSheetProps(sheet)
	check(t, err)
	fmt.Fprintf(s, "\nsheet %s: paper %d, %s, ", sheet, *layout.Size, *layout.Orientation)
	if layout.AdjustTo != nil && !*properties.FitToPage {
		fmt.Fprintf(s, "at %d%%\n", *layout.AdjustTo)
	} else {
		fmt.Fprintf(s, "fit %t, %d across, %d down\n", *properties.FitToPage, *layout.FitToWidth, *layout.FitToHeight)
	}
	headers, err := f.GetHeaderFooter(sheet)
	check(t, err)
	fmt.Fprintf(s, "  header %s, footer %s\n", headers.OddHeader, headers.OddFooter)
	dumpPictures(t, s, f, sheet)
	panes, err := f.GetPanes(sheet)
	check(t, err)
	fmt.Fprintf(s, "  frozen %t above %s\n", panes.Freeze, panes.TopLeftCell)
	validations, err := f.GetDataValidations(sheet)
	check(t, err)
	for _, v := range validations {
		fmt.Fprintf(s, "  %s: %s %s %s %s, %q\n", v.Sqref, v.Type, v.Operator, v.Formula1, v.Formula2, *v.Prompt)
	}
	if protection, err := f.GetSheetProtection(sheet); err == nil && protection.SelectUnlockedCells {
		fmt.Fprintf(s, "  protected, password %q, locked cells may be selected %t\n", protection.Password, protection.SelectLockedCells)
	}
	dumpMarks(t, s, f, sheet)
	merged, err := f.GetMergeCells(sheet)
	check(t, err)
	for _, m := range merged {
		fmt.Fprintf(s, "  merged %s:%s\n", m.GetStartAxis(), m.GetEndAxis())
	}
	rows, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
	check(t, err)
	for i, row := range rows {
		for j := range row {
			dumpCell(t, s, f, sheet, j+1, i+1)
		}
	}
}

func dumpCell(t testing.TB, s *strings.Builder, f *excelize.File, sheet string, column, row int) {
	t.Helper()
	at, err := excelize.CoordinatesToCellName(column, row)
	check(t, err)
	raw, err := f.GetCellValue(sheet, at, excelize.Options{RawCellValue: true})
	check(t, err)
	if raw == "" {
		return
	}
	kind, err := f.GetCellType(sheet, at)
	check(t, err)
	formula, err := f.GetCellFormula(sheet, at)
	check(t, err)
	fmt.Fprintf(s, "%-4s %s %q", at, kindWord(kind), raw)
	if formula != "" {
		fmt.Fprintf(s, " =%s", formula)
	}
	id, err := f.GetCellStyle(sheet, at)
	check(t, err)
	style, err := f.GetStyle(id)
	check(t, err)
	if style.CustomNumFmt != nil {
		fmt.Fprintf(s, " [%s]", *style.CustomNumFmt)
	}
	if style.Font.Size > fontSize && column > 1 {
		fmt.Fprintf(s, " %v pt", style.Font.Size)
	}
	if kind == excelize.CellTypeInlineString && style.Alignment.Horizontal == "right" {
		s.WriteString(" right")
	}
	if style.Protection != nil && !style.Protection.Locked {
		s.WriteString(" unlocked")
	}
	if style.Font.Bold {
		s.WriteString(" bold")
	}
	if len(style.Border) == 4 && column > 1 {
		s.WriteString(" boxed")
	}
	s.WriteByte('\n')
}

func dumpMarks(t testing.TB, s *strings.Builder, f *excelize.File, sheet string) {
	t.Helper()
	marks, err := f.GetConditionalFormats(sheet)
	check(t, err)
	for _, cell := range slices.Sorted(maps.Keys(marks)) {
		style, err := f.GetConditionalStyle(*marks[cell][0].Format)
		check(t, err)
		fmt.Fprintf(s, "  %s stands out when %s: bold %t, filled %v\n", cell, marks[cell][0].Criteria, style.Font.Bold, style.Fill.Color)
	}
}

func kindWord(kind excelize.CellType) string {
	switch kind {
	case excelize.CellTypeInlineString, excelize.CellTypeFormula:
		return "text"
	case excelize.CellTypeUnset, excelize.CellTypeNumber:
		return "number"
	}
	return fmt.Sprint("kind ", kind)
}

func dumpPictures(t testing.TB, s *strings.Builder, f *excelize.File, sheet string) {
	t.Helper()
	cells, err := f.GetPictureCells(sheet)
	check(t, err)
	for _, cell := range cells {
		pictures, err := f.GetPictures(sheet, cell)
		check(t, err)
		for _, p := range pictures {
			size, err := png.DecodeConfig(bytes.NewReader(p.File))
			check(t, err)
			fmt.Fprintf(s, "  picture at %s, %d by %d: %s\n", cell, size.Width, size.Height, p.Format.AltText)
		}
	}
}
