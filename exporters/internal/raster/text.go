package raster

import (
	"image"
	"image/draw"
	"math"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"

	"yardproof/exporters/internal/drawing"
)

// faces are the two fonts at the sizes asked for so far.
type faces struct {
	fonts [2]*opentype.Font
	sizes map[faceKey]font.Face
}

type faceKey struct {
	bold int
	size float64
}

func newFaces() (faces, error) {
	f := faces{sizes: map[faceKey]font.Face{}}
	for i, ttf := range [...][]byte{goregular.TTF, gobold.TTF} {
		parsed, err := opentype.Parse(ttf)
		if err != nil {
			return f, err
		}
		f.fonts[i] = parsed
	}
	return f, nil
}

func (f faces) at(bold bool, size float64) font.Face {
	key := faceKey{0, size}
	if bold {
		key.bold = 1
	}
	face, known := f.sizes[key]
	if !known {
		// At 72 to the inch a point is a pixel. The fonts are sound, and there
		// is no other error.
		face, _ = opentype.NewFace(f.fonts[key.bold], &opentype.FaceOptions{Size: size * PerMillimetre, DPI: 72, Hinting: font.HintingNone})
		f.sizes[key] = face
	}
	return face
}

// line is text drawn by itself. The letters of fabrics come again and again.
type line struct {
	ink    *image.Alpha
	ground *image.Alpha // white around it; nil unless it is backed
	around int          // by which the ground is larger on every side
}

// text lays a line of text over the image.
func (c *canvas) text(t drawing.Text) {
	key := t
	key.At, key.Anchor = drawing.Point{}, drawing.Start
	l, known := c.lines[key]
	if !known {
		l = c.line(key)
		c.lines[key] = l
	}
	if l.ink == nil {
		return
	}
	corner := corner(t, l.ink.Rect.Size())
	if l.ground != nil {
		c.lay(l.ground, corner.Sub(image.Pt(l.around, l.around)), image.White)
	}
	c.lay(l.ink, corner, image.Black)
}

// corner is where a line of text of a size begins.
func corner(t drawing.Text, size image.Point) image.Point {
	at := image.Pt(int(math.Round(t.At.X*PerMillimetre)), int(math.Round(t.At.Y*PerMillimetre)))
	before := [...]int{drawing.Start: 0, drawing.Middle: 1, drawing.End: 2}[t.Anchor]
	if t.Upright {
		return at.Sub(image.Pt(size.X/2, size.Y*(2-before)/2))
	}
	return at.Sub(image.Pt(size.X*before/2, size.Y/2))
}

func (c *canvas) line(t drawing.Text) line {
	face := c.faces.at(t.Bold, t.Size)
	wide, high := font.MeasureString(face, t.Text).Ceil(), int(math.Ceil(1.4*t.Size*PerMillimetre))
	if wide <= 0 {
		return line{}
	}
	l := line{ink: image.NewAlpha(image.Rect(0, 0, wide+2, high))}
	// Capitals are about 0.7 of an em high, and their middle is the line's.
	base := float64(high)/2 + 0.35*t.Size*PerMillimetre
	pen := font.Drawer{Dst: l.ink, Src: image.Opaque, Face: face, Dot: fixed.Point26_6{X: 64, Y: fixed.Int26_6(math.Round(base * 64))}}
	pen.DrawString(t.Text)
	if t.Upright {
		l.ink = upright(l.ink)
	}
	if t.Backed {
		l.around = int(math.Round(t.Size * PerMillimetre / 6))
		l.ground = thickened(l.ink, l.around)
	}
	return l
}

func (c *canvas) lay(mask *image.Alpha, corner image.Point, ink image.Image) {
	draw.DrawMask(c.image, mask.Rect.Add(corner), ink, image.Point{}, mask, image.Point{}, draw.Over)
}

// upright is a line turned to be read from the right.
func upright(line *image.Alpha) *image.Alpha {
	w, h := line.Rect.Dx(), line.Rect.Dy()
	turned := image.NewAlpha(image.Rect(0, 0, h, w))
	for y := range h {
		for x := range w {
			turned.Pix[(w-1-x)*turned.Stride+y] = line.Pix[y*line.Stride+x]
		}
	}
	return turned
}

// thickened is a line with every pixel spread to a disc, on an image that much
// larger on every side.
func thickened(line *image.Alpha, around int) *image.Alpha {
	w, h := line.Rect.Dx(), line.Rect.Dy()
	thick := image.NewAlpha(image.Rect(0, 0, w+2*around, h+2*around))
	for y := range h {
		for x := range w {
			if cover := line.Pix[y*line.Stride+x]; cover > 0 {
				spread(thick, x+around, y+around, around, cover)
			}
		}
	}
	return thick
}

func spread(onto *image.Alpha, x, y, around int, cover uint8) {
	for dy := -around; dy <= around; dy++ {
		for dx := -around; dx <= around; dx++ {
			if dx*dx+dy*dy > around*around+around {
				continue
			}
			p := &onto.Pix[(y+dy)*onto.Stride+x+dx]
			*p = max(*p, cover)
		}
	}
}
