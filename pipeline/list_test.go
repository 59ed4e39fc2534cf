package pipeline

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

// The same list as CSV and as a workbook gives the same prices.
func TestSameList(t *testing.T) {
	euro, _ := measure.ParseCurrency("EUR")
	csv := "sku,description,unit,price,bolt,dated,loss\nW-1,Rope,m,6.2,13.5;20 m,2027-01-02,1.5%\nW-2,Moss,half-m,0.085,,,\n"
	book := excelize.NewFile()
	defer book.Close()
	for address, value := range map[string]any{
		"A1": "sku", "B1": "description", "C1": "unit", "D1": "price", "E1": "bolt", "F1": "dated", "G1": "loss",
		"A2": "W-1", "B2": "Rope", "C2": "m", "D2": 6.2, "E2": "13.5;20 m", "F2": time.Date(2027, 1, 2, 0, 0, 0, 0, time.UTC), "G2": "1.5%",
		"A3": "W-2", "B3": "Moss", "C3": "half-m", "D3": "0.085",
	} {
		if err := book.SetCellValue("Sheet1", address, value); err != nil {
			t.Fatal(err)
		}
	}
	var b bytes.Buffer
	if err := book.Write(&b); err != nil {
		t.Fatal(err)
	}
	f, err := sheet.Text("mill.xlsx", b.Bytes(), "", ".")
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
