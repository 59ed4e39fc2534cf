package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Drafts is what the patches of a part are drafted of. Fabrics are called by
// numbers in patches.
type Drafts interface {
	// Flips names the tubes whose near and far squares are exchanged in the part.
	Flips() Flips
	// Fabric is what the fabric of a role is called; ok is false where there is none.
	Fabric(role string) (number int, ok bool)
	// Number is what a fabric is called.
	Number(f *Fabric) int
	// Alone is the part that another is made of alone, as it is before it is sewn on;
	// ok is false here and below where it could not be drafted.
	Alone(of Carrier) (w piecing.Patchwork, ok bool)
	// Rows is parts sewn into rows as they are turned.
	Rows(rows [][]plan.Cell, seam measure.Length) (w piecing.Patchwork, ok bool)
	// Set is parts set together.
	Set(of plan.Setting, st *Setting, seam measure.Length) (w piecing.Patchwork, ok bool)
	// Round is work with borders round it.
	Round(w piecing.Patchwork, borders []Border) (piecing.Patchwork, bool)
}

// unproved is work of which only the box round it is known.
func unproved(b piecing.Box) (piecing.Patchwork, bool) { return piecing.Plain(b, piecing.Untold), true }

// drafted names the fabrics of a unit, in the order of their numbers in the
// patches, and trims it to the part's size.
func (p *Part) drafted(d Drafts, w piecing.Patchwork, roles ...string) (piecing.Patchwork, bool) {
	var fabrics []int
	for _, role := range roles {
		fabric, ok := d.Fabric(role)
		if !ok {
			return w, false
		}
		fabrics = append(fabrics, fabric)
	}
	return w.InFabrics(fabrics...).TrimmedDown(p.Box)
}

// sewnStrips is strips of the part's own seam side by side, of a length.
func (p *Part) sewnStrips(d Drafts, strips []Strip, length measure.Surd) piecing.Patchwork {
	return Sewn(strips, length, p.Seam.Allowance.Length, d.Number)
}
