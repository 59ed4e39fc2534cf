package sheet_test

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"yardproof/schema/sheet"
)

// workbook makes a workbook whose second sheet, "Cotton", has these cells.
func workbook(t testing.TB, cells map[string]any) []byte {
	t.Helper()
	book := excelize.NewFile()
	if _, err := book.NewSheet("Cotton"); err != nil {
		t.Fatal(err)
	}
	for address, value := range cells {
		if err := book.SetCellValue("Cotton", address, value); err != nil {
			t.Fatal(err)
		}
	}
	var b bytes.Buffer
	if err := book.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestText(t *testing.T) {
	b := workbook(t, map[string]any{
		"A1": "Weir Mill, \"spring\"", "A3": "sku", "B3": "price", "D3": "dated", "A4": "W-1", "B4": 6.2,
		"D4": time.Date(2027, 1, 2, 0, 0, 0, 0, time.UTC), "A5": " two\nlines", "B5": 1250, "C5": true,
	})
	f, err := sheet.Text("mill.xlsx", b, "Cotton", ".")
	if err != nil {
		t.Fatal(err)
	}
	want := "\"Weir Mill, \"\"spring\"\"\"\n\nsku,price,,dated\nW-1,6.2,,2027-01-02\n\" two lines\",1250,1\n"
	if got := string(f.Bytes); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	for text, cell := range map[string]string{"Weir": "A1", "sku": "A3", "dated": "D3", "6.2": "B4", "2027": "D4", "1250": "B5"} {
		if got := f.Cell(strings.Index(want, text)); got != "Cotton!"+cell {
			t.Errorf("%s stands in %s, not in %s", text, got, cell)
		}
	}
	if f, err := sheet.Text("mill.xlsx", b, "Cotton", ","); err != nil || !strings.Contains(string(f.Bytes), "W-1,\"6,2\"") {
		t.Errorf("with a decimal comma: %v\n%s", err, f.Bytes)
	}
}

func TestNoSheet(t *testing.T) {
	b := workbook(t, nil)
	if _, err := sheet.Text("mill.xlsx", b, "Wool", "."); err == nil || err.Error() != `it has no sheet "Wool"; it has Sheet1, Cotton` {
		t.Errorf("a sheet that is not there: %v", err)
	}
	if _, err := sheet.Text("mill.xlsx", b[:len(b)/2], "", "."); err == nil {
		t.Error("half a workbook is read")
	}
	if sheet.Is([]byte("sku,price\n")) || !sheet.Is(b) {
		t.Error("a workbook is not told from a text")
	}
}

func FuzzText(f *testing.F) {
	f.Add(workbook(f, map[string]any{"A1": "sku", "B2": 6.2}))
	f.Add([]byte("PK\x03\x04"))
	f.Fuzz(func(t *testing.T, b []byte) {
		file, err := sheet.Text("mill.xlsx", b, "", ".")
		if err != nil {
			return
		}
		for at := range min(len(file.Bytes), 1000) {
			if !strings.Contains(file.Cell(at), "!") {
				t.Fatalf("byte %d stands in %q", at, file.Cell(at))
			}
		}
	})
}
