package xlsx

import (
	"bytes"
	"image/png"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"yardproof/exporters/internal/raster"
	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/report"
)

// pictured is a plan of one sheet with pictures.
func pictured(wide bool, pictures ...report.Picture) *report.Plan {
	p := onePage(report.T("words"))
	p.Sheets[0].Wide, p.Sheets[0].Pictures = wide, pictures
	return p
}

// A picture prints as wide as it was laid out for, whatever the scale of its
// sheet, on a page of its own where the last has no room, and the rows below it
// are as many as it is high.
func TestPicturesFitTheirRows(t *testing.T) {
	for _, wide := range []bool{false, true} {
		p := pictured(wide, sample.Picture(), sample.Units(), sample.Picture())
		b := planBytes(t, p)
		f := open(t, b)
		cells, err := f.GetPictureCells("S")
		check(t, err)
		if len(cells) != 3 {
			t.Fatalf("pictures at %v", cells)
		}
		last := 0
		for i, cell := range cells {
			_, row, err := excelize.CellNameToCoordinates(cell)
			check(t, err)
			pictures, err := f.GetPictures("S", cell)
			check(t, err)
			size, err := png.DecodeConfig(bytes.NewReader(pictures[0].File))
			check(t, err)
			points := float64(size.Height) / raster.PerMillimetre / 25.4 * 72
			if i > 0 && float64(row-last)*spaceHeight < points-15 {
				t.Errorf("wide %t: the picture at row %d has %d rows of 15 points, and is about %v high", wide, last, row-last, points)
			}
			last = row
		}
		if got := strings.Count(content(t, b, "xl/worksheets/sheet1.xml"), "<brk "); got != 3 {
			t.Errorf("wide %t: %d pages begin with a picture", wide, got)
		}
	}
}

// Two low pictures share a page.
func TestLowPicturesShareAPage(t *testing.T) {
	low := sample.Picture()
	low.Panels[0].Height, low.Panels[0].Shapes, low.Panels[0].Dimensions = 4, nil, nil
	b := planBytes(t, pictured(false, low, low, low))
	if got := strings.Count(content(t, b, "xl/worksheets/sheet1.xml"), "<brk "); got != 1 {
		t.Errorf("%d pages begin with a picture", got)
	}
}

// What cannot be seen is told: title and description are the picture's
// alternative text.
func TestPicturesHaveAlternativeText(t *testing.T) {
	drawing := content(t, planBytes(t, pictured(false, sample.Picture())), "xl/drawings/drawing1.xml")
	if !strings.Contains(drawing, `descr="Quilt top, throw. Eleven strips &amp; a &lt;border&gt;."`) {
		t.Errorf("%.900s", drawing)
	}
	if !strings.Contains(drawing, "oneCellAnchor") {
		t.Error("the picture changes its size with the cells below it")
	}
}

// content is a part of a workbook's archive.
func content(t *testing.T, b []byte, name string) string {
	t.Helper()
	f := open(t, b)
	stored, ok := f.Pkg.Load(name)
	if !ok {
		t.Fatalf("no part %s", name)
	}
	return string(stored.([]byte))
}
