package raster

import (
	"image"
	"image/color"
)

// fewColours is the image with a palette, which is a quarter the size: the
// drawing has few colours, and their mixtures along edges are rounded to what
// five bits of each hold. An image that has too many even so stays as it is.
func fewColours(m *image.RGBA) image.Image {
	const most = 256
	var index [1 << 15]int16 // by colour, from 1
	var palette color.Palette
	few := image.NewPaletted(m.Rect, nil)
	for y := range m.Rect.Dy() {
		line := m.Pix[y*m.Stride:]
		for x := range m.Rect.Dx() {
			p := line[4*x : 4*x+3]
			code := int(p[0]>>3)<<10 | int(p[1]>>3)<<5 | int(p[2]>>3)
			if index[code] == 0 {
				if len(palette) == most {
					return m
				}
				palette = append(palette, color.RGBA{widened(code >> 10), widened(code >> 5), widened(code), 255})
				index[code] = int16(len(palette))
			}
			few.Pix[y*few.Stride+x] = uint8(index[code] - 1)
		}
	}
	few.Palette = palette
	return few
}

// widened is the eight bits that five stand for: white stays white.
func widened(code int) uint8 { return uint8(code & 31 * 255 / 31) }
