package piecing

import "yardproof/schema/measure"

// Box is the unfinished width and height of a part.
type Box struct{ Width, Height measure.Surd }

// Turned exchanges width and height.
func (b Box) Turned() Box { return Box{b.Height, b.Width} }

// Finished is the box less a seam allowance on every side.
func (b Box) Finished(s measure.Length) Box {
	both := (2 * s).Surd()
	return Box{b.Width.Sub(both), b.Height.Sub(both)}
}

// Assembly is parts sewn into rows and the rows sewn together.
type Assembly struct {
	Box        // unfinished; the least width, as the wider rows are eased or trimmed to it
	RowWidths  []measure.Surd
	RowHeights []measure.Surd // the least height in each row
	Tallest    []measure.Surd // the greatest height in each row
}

// Assemble sews rows of boxes together with seam s. A row is as wide as its
// parts less the seams between them, the assembly as high as its rows less
// the seams between those. Where parts of a row, or the rows, do not agree,
// the smaller size holds: fabric can be trimmed off, not on.
func Assemble(rows [][]Box, s measure.Length) Assembly {
	var a Assembly
	both := (2 * s).Surd()
	for r, row := range rows {
		width, least, most := both, measure.Surd{}, measure.Surd{}
		var more measure.Surd // that a part adds, of which many are alike
		for c, b := range row {
			if c == 0 || b.Width != row[c-1].Width {
				more = b.Width.Sub(both)
			}
			width = width.Add(more)
			if c == 0 {
				least, most = b.Height, b.Height
				continue
			}
			if b.Height == row[c-1].Height {
				continue
			}
			least, most = measure.Min(least, b.Height), measure.Max(most, b.Height)
		}
		a.RowWidths = append(a.RowWidths, width)
		a.RowHeights = append(a.RowHeights, least)
		a.Tallest = append(a.Tallest, most)
		if r == 0 {
			a.Width, a.Height = width, least
			continue
		}
		a.Width = measure.Min(a.Width, width)
		a.Height = a.Height.Add(least).Sub(both)
	}
	return a
}
