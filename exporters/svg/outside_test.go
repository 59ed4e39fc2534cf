package svg_test

import (
	"bytes"
	"image"
	"image/png"
	"os"
	"os/exec"
	"testing"

	"yardproof/exporters/internal/drawing"
	"yardproof/exporters/internal/raster"
	"yardproof/exporters/internal/sample"
	"yardproof/exporters/svg"
	"yardproof/pipeline/report"
)

// A general rasteriser of SVG files, librsvg's rsvg-convert, must come to what
// our own draws for the workbook: the same page in the same greys, square by
// square of 2 mm but for a few, as the two write with different fonts.
func TestLooksAsDrawnByLibrsvg(t *testing.T) {
	if _, err := exec.LookPath("rsvg-convert"); err != nil {
		if os.Getenv("YARDPROOF_OUTSIDE") == "require" {
			t.Fatal("rsvg-convert is not installed (librsvg2-bin), and here nothing may be skipped")
		}
		t.Skip("rsvg-convert is not installed")
	}
	for _, p := range []report.Picture{sample.Picture(), sample.Units()} {
		theirs := converted(t, svg.Bytes(p, true))
		b, err := raster.PNG(drawing.Lay(p, drawing.Page()))
		if err != nil {
			t.Fatal(err)
		}
		ours, err := png.Decode(bytes.NewReader(b))
		if err != nil {
			t.Fatal(err)
		}
		alike(t, p.ID, ours, theirs)
	}
}

// converted is the file at as many pixels to the millimetre as ours.
func converted(t *testing.T, file []byte) image.Image {
	t.Helper()
	cmd := exec.Command("rsvg-convert", "--format", "png", "--dpi-x", "152.4", "--dpi-y", "152.4")
	cmd.Stdin, cmd.Stderr = bytes.NewReader(file), os.Stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	m, err := png.Decode(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func alike(t *testing.T, what string, ours, theirs image.Image) {
	t.Helper()
	a, b := ours.Bounds(), theirs.Bounds()
	if d := a.Size().Sub(b.Size()); d.X < -2 || d.X > 2 || d.Y < -2 || d.Y > 2 {
		t.Fatalf("%s: ours is %v, theirs %v", what, a.Size(), b.Size())
	}
	const side, far = 12, 30
	squares, unlike := 0, 0
	for y := 0; y+side <= min(a.Dy(), b.Dy()); y += side {
		for x := 0; x+side <= min(a.Dx(), b.Dx()); x += side {
			squares++
			if d := grey(ours, x, y, side) - grey(theirs, x, y, side); d < -far || d > far {
				unlike++
			}
		}
	}
	t.Logf("%s: %d of %d squares unlike", what, unlike, squares)
	if unlike*50 > squares {
		t.Errorf("%s: %d of %d squares are unlike", what, unlike, squares)
	}
}

// grey is the mean of a square, 0 to 255.
func grey(m image.Image, x, y, side int) int {
	sum := 0
	for dy := range side {
		for dx := range side {
			r, g, b, _ := m.At(m.Bounds().Min.X+x+dx, m.Bounds().Min.Y+y+dy).RGBA()
			sum += int(r>>8+g>>8+b>>8) / 3
		}
	}
	return sum / (side * side)
}
