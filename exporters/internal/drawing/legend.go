package drawing

import "yardproof/pipeline/report"

// Room of the legend, in millimetres.
const (
	keyHeight   = 6.0
	swatchWidth = 7.0
	swatchTall  = 4.0
	keyGap      = 6.0
)

// legendBox is where each key of a legend stands.
type legendBox struct {
	at     []Point // of the swatches' left ends, half way up
	text   []string
	height float64
}

// legend sets keys one after the other, in as many lines as it takes.
func legend(keys []report.Key, room float64) legendBox {
	var b legendBox
	x, y := 0.0, keyHeight/2
	for _, k := range keys {
		text := fitted(neutral(k.Letter+": "+k.Name), captionSize, room-swatchWidth-keyGap)
		w := swatchWidth + 1.5 + width(text, captionSize) + keyGap
		if x > 0 && x+w > room {
			x, y = 0, y+keyHeight
		}
		b.at, b.text = append(b.at, Point{x, y}), append(b.text, text)
		b.height = y + keyHeight/2
		x += w
	}
	return b
}

func (d *Drawing) keys(b legendBox, keys []report.Key, top float64) {
	for i, at := range b.at {
		y := top + at.Y
		fill := fillOf(keys[i])
		low, high := y-swatchTall/2, y+swatchTall/2
		left := at.X + patchLine/2 // half of its line would lie off the paper
		d.Shapes = append(d.Shapes, Shape{
			Points: []Point{{left, low}, {at.X + swatchWidth, low}, {at.X + swatchWidth, high}, {left, high}},
			Fill:   &fill, Stroke: patchLine,
		})
		d.text(Point{at.X + swatchWidth + 1.5, y}, Start, captionSize, b.text[i])
	}
}
