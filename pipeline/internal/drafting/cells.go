package drafting

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// laying is what a room drafts one part of: the squares of some tubes exchanged
// in it, and the walk through its places.
type laying struct {
	*Draft
	flips derive.Flips
	walk  *derive.Walk
}

var _ derive.Drafts = (*laying)(nil)

// Flips implements derive.Drafts.
func (l *laying) Flips() derive.Flips { return l.flips }

// Fabric implements derive.Drafts.
func (l *laying) Fabric(role string) (number int, ok bool) {
	number, ok = l.fabrics[role]
	return number, ok
}

// Number implements derive.Drafts.
func (l *laying) Number(f *derive.Fabric) int { return l.number(f) }

// Alone implements derive.Drafts.
func (l *laying) Alone(of derive.Carrier) (piecing.Patchwork, bool) {
	c := l.walk.Carried(of)
	return l.Exchanged(c.Part.Text, c.Flips)
}

// Rows implements derive.Drafts.
func (l *laying) Rows(rows [][]plan.Cell, seam measure.Length) (w piecing.Patchwork, ok bool) {
	work, ok := l.cells(l.walk.Rows(len(rows), func(r int) []plan.Cell { return rows[r] }))
	if !ok {
		return w, false
	}
	return piecing.Sew(work, seam)
}

// Set implements derive.Drafts.
func (l *laying) Set(of plan.Setting, st *derive.Setting, seam measure.Length) (piecing.Patchwork, bool) {
	return l.setting(of, st, seam, l.walk)
}

// Round implements derive.Drafts.
func (l *laying) Round(w piecing.Patchwork, borders []derive.Border) (piecing.Patchwork, bool) {
	ok := true
	for i := 0; ok && i < len(borders); i++ {
		w, ok = l.bordered(w, borders[i], l.walk)
	}
	return w, ok
}

// number is what a fabric is called in patches.
func (d *Draft) number(f *derive.Fabric) int { return d.fabrics[f.Role.Text] }

// cells are the parts in rows of cells, as turned; ok is false when one of
// them was not drafted, or when there are too many patches.
func (d *Draft) cells(rows [][]derive.Placed) (work [][]piecing.Patchwork, ok bool) {
	patches := 0
	for _, row := range rows {
		var line []piecing.Patchwork
		if w, ok := d.triangles(row); ok {
			patches += len(w.Patches)
			work = append(work, append(line, w))
			continue
		}
		for _, c := range row {
			w, ok := d.cell(c)
			if patches += len(w.Patches); !ok || patches > Most {
				return nil, false
			}
			line = append(line, w)
		}
		work = append(work, line)
	}
	return work, true
}

func (d *Draft) cell(c derive.Placed) (piecing.Patchwork, bool) {
	key := cellKey{partKey{c.Part.Text, c.Flips}, c.Turn, c.Mirror}
	if w, ok := d.turned[key]; ok {
		return w, true
	}
	w, ok := d.Exchanged(key.name, key.exchanged)
	if ok && c.Mirror {
		w = w.Mirrored()
	}
	if ok && c.Turn != 0 {
		w = w.Turned(c.Turn / 90)
	}
	if ok {
		d.turned[key] = w
	}
	return w, ok
}
