package drafting

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// geese is one flying goose. Singly, its sky squares are as large as the plan
// cuts them, which need not be as high as the goose.
func (d *Draft) geese(p *derive.Part, op plan.FlyingGeese) (piecing.Patchwork, bool) {
	u := p.Unit
	w, point := piecing.DraftGoose(u.Sewn), piecing.GoosePoint(u.Pieces[0].Width, u.Pieces[1].Width)
	if op.AtATime == 1 {
		square := u.Pieces[1].Width.Surd()
		w = piecing.Plain(u.Sewn, 0).Flip(piecing.TopLeft, square, 1).Flip(piecing.TopRight, square, 2)
	}
	goose, known := d.fabrics[op.Goose.Text]
	sky, also := d.fabrics[op.Sky.Text]
	if !known || !also {
		return w, false
	}
	w = w.InFabrics(goose, sky, sky)
	return atPoint(w, p.Box, point.Sub(p.Seam.Allowance.Length.Surd()))
}

// atPoint trims a goose as it is trimmed on the table: the same off both
// ends, and off the top no more than lies above its seam allowance, so that
// the point comes to lie on the seam as far as the work allows it.
func atPoint(w piecing.Patchwork, to piecing.Box, above measure.Surd) (piecing.Patchwork, bool) {
	size := w.Size()
	if size.Width.Cmp(to.Width) < 0 || size.Height.Cmp(to.Height) < 0 {
		return w, false
	}
	top := measure.Max(measure.Surd{}, measure.Min(above, size.Height.Sub(to.Height)))
	left := size.Width.Sub(to.Width).DivInt(2)
	return w.CutTo(piecing.Rectangle(piecing.Point{X: left, Y: top}, to)).AtOrigin(), true
}
