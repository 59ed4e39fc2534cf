package sheet_test

import (
	"archive/zip"
	"bytes"
	"errors"
	"maps"
	"slices"
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

// A workbook of another kind is told from a text, and named.
func TestForeign(t *testing.T) {
	book := excelize.NewFile()
	var locked bytes.Buffer
	if err := book.Write(&locked, excelize.Options{Password: "weir"}); err != nil {
		t.Fatal(err)
	}
	compound := "\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"
	for text, want := range map[string]error{
		locked.String(): sheet.ErrLocked,
		compound + strings.Repeat("\x00", 504) + "W\x00o\x00r\x00k\x00b\x00o\x00o\x00k\x00": sheet.ErrOld,
		compound:                           sheet.ErrOld,
		"\x09\x02\x06\x00\x00\x00\x10\x00": sheet.ErrOld,
		"PK\x03\x04" + strings.Repeat("\x00", 26) + "mimetypeapplication/vnd.oasis.opendocument.spreadsheet": sheet.ErrOpen,
		"PK\x03\x04" + strings.Repeat("\x00", 26) + "xl/workbook.bin":                                        sheet.ErrBinary,
	} {
		_, err := sheet.Text("mill.xls", []byte(text), "", ".")
		if !sheet.Is([]byte(text)) || !errors.Is(err, want) || !sheet.IsForeign(err) {
			t.Errorf("%.12q is no %v: %v", text, want, err)
		}
	}
	for _, text := range []string{"", "sku,price\n", "\tsku", "\t\x00"} {
		if sheet.Is([]byte(text)) {
			t.Errorf("%q is a workbook", text)
		}
	}
	if _, err := sheet.Text("mill.xlsx", []byte("PK\x03\x04"), "", "."); err == nil || sheet.IsForeign(err) {
		t.Errorf("half a workbook: %v", err)
	}
}

// packed is a workbook of parts that are stored as they are, so that whoever
// changes a byte of one changes what is read.
func packed(t testing.TB, parts map[string]string) []byte {
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	for _, name := range slices.Sorted(maps.Keys(parts)) {
		part, err := w.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Store})
		if err == nil {
			_, err = part.Write([]byte(parts[name]))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

const (
	openXML  = "http://schemas.openxmlformats.org/"
	mainXML  = `xmlns="` + openXML + `spreadsheetml/2006/main"`
	linkType = openXML + "officeDocument/2006/relationships"
)

// parts are those of the smallest workbook, but for the three that the fuzzer
// changes.
func parts(sheet, words, styles string) map[string]string {
	return map[string]string{
		"[Content_Types].xml": `<Types xmlns="` + openXML + `package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/></Types>`,
		"_rels/.rels":         `<Relationships xmlns="` + openXML + `package/2006/relationships"><Relationship Id="r1" Type="` + linkType + `/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
		"xl/workbook.xml":     `<workbook ` + mainXML + ` xmlns:r="` + linkType + `"><sheets><sheet name="Mill" sheetId="1" r:id="r1"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels": `<Relationships xmlns="` + openXML + `package/2006/relationships"><Relationship Id="r1" Type="` + linkType + `/worksheet" Target="worksheets/sheet1.xml"/>` +
			`<Relationship Id="r2" Type="` + linkType + `/sharedStrings" Target="sharedStrings.xml"/><Relationship Id="r3" Type="` + linkType + `/styles" Target="styles.xml"/></Relationships>`,
		"xl/worksheets/sheet1.xml": sheet, "xl/sharedStrings.xml": words, "xl/styles.xml": styles,
	}
}

// The parts that a fuzzer begins from: words, numbers, a date, a formula.
const (
	someSheet = `<worksheet ` + mainXML + `><sheetData><row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="inlineStr"><is><t>price</t></is></c></row>` +
		`<row r="3"><c r="A3"><v>6.2</v></c><c r="C3" s="1"><v>46389</v></c><c r="D3" t="str"><f>A3*2</f><v>12.4</v></c></row></sheetData></worksheet>`
	someWords  = `<sst ` + mainXML + ` count="1" uniqueCount="1"><si><t>sku</t></si></sst>`
	someStyles = `<styleSheet ` + mainXML + `><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14"/></cellXfs></styleSheet>`
)

func TestStoredParts(t *testing.T) {
	f, err := sheet.Text("mill.xlsx", packed(t, parts(someSheet, someWords, someStyles)), "", ".")
	if want := "sku,price\n\n6.2,,2027-01-02,12.4\n"; err != nil || string(f.Bytes) != want {
		t.Fatalf("%v", err)
	}
}

// FuzzParts changes what a workbook holds, and not how it is packed.
func FuzzParts(f *testing.F) {
	f.Add(someSheet, someWords, someStyles)
	f.Fuzz(func(t *testing.T, cells, words, styles string) {
		if len(cells)+len(words)+len(styles) > 10_000 {
			return
		}
		whole(t, packed(t, parts(cells, words, styles)))
	})
}

// FuzzText takes any bytes for a workbook. It begins with a small one.
func FuzzText(f *testing.F) {
	f.Add(packed(f, parts(someSheet, someWords, someStyles)))
	f.Add([]byte("PK\x03\x04"))
	f.Add([]byte("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"))
	f.Fuzz(whole)
}

// whole demands that what is read of a workbook knows its cells.
func whole(t *testing.T, b []byte) {
	file, err := sheet.Text("mill.xlsx", b, "", ".")
	if err != nil {
		return
	}
	for at := range min(len(file.Bytes), 1000) {
		if !strings.Contains(file.Cell(at), "!") {
			t.Fatalf("byte %d stands in %q", at, file.Cell(at))
		}
	}
}

// A number is a date where its format shows a year or a day; the words for a unit
// in a format, quoted or behind a backslash, show none. Formats as spreadsheet
// programs write them (ECMA-376, part 1, 18.8.31).
func TestDatesByTheirFormat(t *testing.T) {
	const day, number = "2027-01-02", "46389"
	for format, want := range map[string]string{
		"yyyy-mm-dd": day, "d. mmm": day, `[$-409]d\-mmm\-yy;@`: day, `"day" d`: day,
		"0.00": number, `0.00" yd"`: number, `0.00\ \y\d`: number, "0.00_d": number, "0.00*d": number, `[Red]0`: number, `[>1]0" days"`: number,
	} {
		book := excelize.NewFile()
		style, err := book.NewStyle(&excelize.Style{CustomNumFmt: &format})
		if err != nil {
			t.Fatal(err)
		}
		for _, err := range []error{book.SetCellValue("Sheet1", "A1", 46389), book.SetCellStyle("Sheet1", "A1", "A1", style)} {
			if err != nil {
				t.Fatal(err)
			}
		}
		var b bytes.Buffer
		if err := book.Write(&b); err != nil {
			t.Fatal(err)
		}
		f, err := sheet.Text("mill.xlsx", b.Bytes(), "", ".")
		if err != nil || strings.TrimSpace(string(f.Bytes)) != want {
			t.Errorf("%s: %q, %v, want %s", format, f.Bytes, err, want)
		}
	}
}

// A list longer or wider than any is refused, and says where.
func TestTooLargeASheet(t *testing.T) {
	for cell, want := range map[string]string{
		"A50001": `its sheet "Cotton" has more than 50000 rows`,
		"IW3":    `row 3 of its sheet "Cotton" has more than 256 columns`,
	} {
		_, err := sheet.Text("mill.xlsx", workbook(t, map[string]any{cell: 1}), "Cotton", ".")
		if err == nil || err.Error() != want {
			t.Errorf("%s filled: %v, want %s", cell, err, want)
		}
	}
	for _, cell := range []string{"A50000", "IV3"} {
		if _, err := sheet.Text("mill.xlsx", workbook(t, map[string]any{cell: 1}), "Cotton", "."); err != nil {
			t.Errorf("%s filled: %v", cell, err)
		}
	}
}
