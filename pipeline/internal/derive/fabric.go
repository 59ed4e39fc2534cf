package derive

import (
	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// whole is a share of one in basis points.
const whole = 10_000

// shrunk is what a length measures after losing a share, rounded down to a
// tick.
func shrunk(l measure.Length, loss plan.Percent) measure.Length {
	return l.Surd().MulInt(whole - loss.BasisPoints).DivInt(whole).FloorTo(measure.Tick)
}

// unshrunk is the length to start from for l to be left after losing a share,
// rounded up to a tick.
func unshrunk(l measure.Length, loss plan.Percent) measure.Length {
	return l.Surd().MulInt(whole).DivInt(whole - loss.BasisPoints).CeilTo(measure.Tick)
}

// cut lays out all that is needed of a fabric by the plain method and works
// out what to buy.
func (f *Fabric) cut() {
	pieces, strips := f.split()
	if f.Form == plan.Precut {
		f.cutPacks(pieces, strips)
		return
	}
	f.Layout, f.Err = cutting.Plain(cutting.Problem{
		Cloth:  cutting.Cloth{Width: f.Width, SquaringUp: f.SquaringUp.Length, Repeat: f.Repeat.Length},
		Pieces: pieces,
		Strips: strips,
	})
	if f.Err != nil || !f.Used() {
		return
	}
	f.Net = f.Layout.Length + f.Panels
	if f.Layout.Length > 0 {
		f.Net += f.SquaringUp.Length // the backing's overhang is its own allowance
	}
	f.Gross = unshrunk(f.Net, f.ShrinkLength)
	f.Buy = measure.CeilTo(f.Gross, f.Grid) + f.Cushion
	f.Bound = unshrunk(cutting.AreaBound(cutting.Problem{Cloth: cutting.Cloth{Width: f.Width}, Pieces: f.bare}), f.ShrinkLength)
}

// split sorts needs into pieces and whole strips.
func (f *Fabric) split() (pieces []cutting.Piece, strips []cutting.WholeStrip) {
	for _, n := range f.Needs {
		if n.Strip {
			strips = append(strips, cutting.WholeStrip{Name: n.For.Text, Height: n.Along, Count: int(n.Count), Last: n.Last})
			continue
		}
		pieces = append(pieces, cutting.Piece{
			Name: n.For.Text, Across: n.Across, Along: n.Along, Count: int(n.Count), Turnable: !f.Directional(),
		})
	}
	return pieces, strips
}

// cutPacks lays the needs out on precut pieces, strips along their longer
// side, and counts whole packs.
func (f *Fabric) cutPacks(pieces []cutting.Piece, strips []cutting.WholeStrip) {
	f.Sheets, f.Err = cutting.PlainPieces(cutting.SheetProblem{
		Sheet:  cutting.Sheet{Across: f.StripLength().Length, Along: f.StripWidth().Length},
		Pieces: pieces,
		Strips: strips,
	})
	if f.Err != nil {
		return
	}
	used := int64(f.Sheets.Count)
	f.Packs = piecing.Batches(used, int64(f.Pack.N))
	f.Left = f.Packs*int64(f.Pack.N) - used
}
