package sheet_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/sheet"
	"yardproof/schema/source"
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

// The same list as CSV and as a workbook gives the same prices.
func TestSameList(t *testing.T) {
	euro, _ := measure.ParseCurrency("EUR")
	csv := "sku,description,unit,price,bolt,dated,loss\nW-1,Rope,m,6.2,13.5;20 m,2027-01-02,1.5%\nW-2,Moss,half-m,0.085,,,\n"
	b := workbook(t, map[string]any{
		"A1": "sku", "B1": "description", "C1": "unit", "D1": "price", "E1": "bolt", "F1": "dated", "G1": "loss",
		"A2": "W-1", "B2": "Rope", "C2": "m", "D2": 6.2, "E2": "13.5;20 m", "F2": time.Date(2027, 1, 2, 0, 0, 0, 0, time.UTC), "G2": "1.5%",
		"A3": "W-2", "B3": "Moss", "C3": "half-m", "D3": "0.085",
	})
	f, err := sheet.Text("mill.xlsx", b, "Cotton", ".")
	if err != nil {
		t.Fatal(err)
	}
	lists := [2]*plan.PriceList{plan.NewPriceList(euro), plan.NewPriceList(euro)}
	for i, f := range []*source.File{source.New("mill.csv", []byte(csv)), f} {
		if problems := lists[i].Read(f, plan.ListSource{}); len(problems) > 0 {
			t.Fatal(f.Name, problems)
		}
	}
	if a, b := plain(lists[0]), plain(lists[1]); a != b || a == "" {
		t.Errorf("as text %s\nas a sheet %s", a, b)
	}
}

// plain is what plans see of a list: all but the places.
func plain(l *plan.PriceList) string {
	var s strings.Builder
	for _, p := range l.Only([]string{"W-1", "W-2"}).All() {
		fmt.Fprintf(&s, "%+v\n", p)
	}
	return s.String()
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
