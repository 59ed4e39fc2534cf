package main

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// TestPriceWorkbook: a price list may be a supplier's workbook, and what is
// wrong with it is told at its cell, in every report.
func TestPriceWorkbook(t *testing.T) {
	t.Chdir(t.TempDir())
	if out, status := said("init", "."); status != exitClean {
		t.Fatal(out)
	}
	book := excelize.NewFile()
	defer book.Close()
	for i, row := range [][]any{
		{"The Mill, net prices"},
		{"Art.", "Name", "Net"},
		{"RW-10", "Chalk", 6.2}, {"RW-11", "Blue", 6.2}, {"RW-12", "Rope", "7,10"},
	} {
		cell, _ := excelize.CoordinatesToCellName(1, i+1)
		if err := book.SetSheetRow("Sheet1", cell, &row); err != nil {
			t.Fatal(err)
		}
	}
	if err := book.SaveAs("mill.xlsx"); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("rolls.csv", []byte("sku;description;unit;price\nRW-20;Strip roll;roll;26.00\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	rewrite(t, "yardproof.json", `"prices": "prices.csv"`,
		`"prices": ["rolls.csv", { "file": "mill.xlsx", "header_row": 2, "columns": { "sku": "Art.", "description": "Name", "price": "Net" }, "unit": "yd" }]`)

	out, status := said("check", "--report", "text=-", "--report", "sarif=a.sarif", "--report", "json=a.json", "--report", "annotations=a.txt", "--report", "markdown=a.md", "--report", "junit=a.xml", ".")
	if status != exitFindings || !strings.Contains(out, `mill.xlsx!Sheet1!C5: error: "7,10" is not a price`) {
		t.Errorf("exit status %d:\n%s", status, out)
	}
	for file, want := range map[string]string{
		"a.sarif": `"fullyQualifiedName": "mill.xlsx!Sheet1!C5"`, "a.json": `"cell": "Sheet1!C5"`, "a.txt": "::error file=mill.xlsx,title=cost/price-list::Sheet1!C5: ",
		"a.md": "mill.xlsx!Sheet1!C5", "a.xml": "mill.xlsx!Sheet1!C5",
	} {
		b, err := os.ReadFile(file)
		if err != nil || !strings.Contains(string(b), want) {
			t.Errorf("%s has no %s (%v):\n%s", file, want, err, b)
		}
	}

	rewrite(t, "yardproof.json", `"unit": "yd"`, `"unit": "yd", "decimal": ","`)
	if out, status := said("check", "--fail-on", "note", "."); status != exitClean {
		t.Errorf("with the right mark: exit status %d:\n%s", status, out)
	}
	rewrite(t, "yardproof.json", `"header_row": 2`, `"header_row": 2, "sheet": "Wool"`)
	if out, _ := said("check", "."); !strings.Contains(out, `there is no price list in mill.xlsx: it has no sheet "Wool"; it has Sheet1 [cost/price-list]`) {
		t.Errorf("a sheet that is not there:\n%s", out)
	}

	var locked bytes.Buffer
	if err := book.Write(&locked, excelize.Options{Password: "weir"}); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("mill.xlsx", locked.Bytes(), 0o666); err != nil {
		t.Fatal(err)
	}
	out, status = said("check", ".")
	if status != exitFindings || !strings.Contains(out, "there is no price list in mill.xlsx: it is a workbook that is locked with a password [cost/price-list]\n") ||
		!strings.Contains(out, "hint: save it as a workbook (.xlsx) without a password, or as CSV, and name that") || strings.Count(out, "error: ") != 1 {
		t.Errorf("a locked workbook: exit status %d:\n%s", status, out)
	}
}

func rewrite(t *testing.T, path, from, to string) {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil || !strings.Contains(string(b), from) {
		t.Fatalf("%s does not hold %s: %v", path, from, err)
	}
	if err := os.WriteFile(path, []byte(strings.Replace(string(b), from, to, 1)), 0o666); err != nil {
		t.Fatal(err)
	}
}
