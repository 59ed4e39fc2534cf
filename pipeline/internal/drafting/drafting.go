package drafting

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/plan"
)

// Most is how many patches are laid out at most: beyond, nobody could tell
// them apart on a page.
const Most = 20_000

// Draft is the patches of a size. A patch's fabric is its place in the size's
// Fabrics.
type Draft struct {
	size    *derive.Size
	fabrics map[string]int // by role
	parts   map[partKey]drafted
	turned  map[cellKey]piecing.Patchwork
}

// partKey is a part, and the tubes whose near and far squares are exchanged in
// it.
type partKey struct {
	name      string
	exchanged derive.Flips
}

type drafted struct {
	work piecing.Patchwork
	ok   bool
}

type cellKey struct {
	partKey
	turn   int
	mirror bool
}

// Of drafts all parts of a size. It never fails: what cannot be drafted is
// left out, together with all that is made of it.
func Of(s *derive.Size) *Draft {
	d := &Draft{size: s, fabrics: map[string]int{}, parts: map[partKey]drafted{}, turned: map[cellKey]piecing.Patchwork{}}
	for i, f := range s.Fabrics {
		d.fabrics[f.Role.Text] = i
	}
	for _, p := range s.Parts {
		d.Part(p.Name.Text)
	}
	return d
}

// fits reports whether work is as large as was derived.
func fits(w piecing.Patchwork, b piecing.Box) bool {
	size := w.Size()
	return len(w.Patches) > 0 && size.Width.Equal(b.Width) && size.Height.Equal(b.Height)
}

// Part is a part as it is before it is sewn on, seam allowance all round; ok
// is false where it could not be drafted. Where near and far squares of a tube
// take turns in it, it begins with a near one.
func (d *Draft) Part(name string) (w piecing.Patchwork, ok bool) {
	return d.Exchanged(name, derive.Flips{})
}

// Exchanged is Part with near and far squares of some tubes exchanged.
func (d *Draft) Exchanged(name string, flips derive.Flips) (w piecing.Patchwork, ok bool) {
	key := partKey{name, flips}
	if done, known := d.parts[key]; known {
		return done.work, done.ok
	}
	p := d.size.Part(name)
	if p == nil || !p.Known {
		return w, false
	}
	w, ok = p.Room.Draft(&laying{d, flips, d.size.WalkIn(flips)})
	ok = ok && fits(w, p.Box)
	d.parts[key] = drafted{w, ok}
	return w, ok
}

// TopOf is Top where it has no more than so many patches.
func (d *Draft) TopOf(most int) (w piecing.Patchwork, ok bool) {
	n := int64(0)
	if s := d.size.Top.Setting; s != nil {
		for _, b := range s.Blocks {
			block, _ := d.Part(b.Part.Name.Text)
			n += b.Count * int64(len(block.Patches))
		}
	}
	if n > int64(most) {
		return w, false
	}
	w, ok = d.Top()
	return w, ok && len(w.Patches) <= most
}

// Top is the finished top; ok is false where a part of it could not be
// drafted.
func (d *Draft) Top() (w piecing.Patchwork, ok bool) {
	g := d.size.Of.Layout.Grid
	if g == nil || !d.size.Top.Known || g.Rows.N*g.Columns.N > Most {
		return piecing.Patchwork{}, false
	}
	seam := d.size.Of.Seam.Allowance.Length
	walk := d.size.WalkTop()
	if w, ok = d.setting(d.size.Of.Layout.Setting, d.size.Top.Setting, seam, walk); !ok {
		return w, false
	}
	for _, b := range d.size.Top.Borders {
		if w, ok = d.bordered(w, b, walk); !ok {
			return w, false
		}
	}
	if !fits(w, d.size.Top.Box) {
		return w, false
	}
	inner, ok := w.Outline.Inset(seam)
	if !ok {
		return w, false
	}
	return w.Shown(inner).AtOrigin(), true
}

// bordered sews a border on.
func (d *Draft) bordered(w piecing.Patchwork, b derive.Border, walk *derive.Walk) (piecing.Patchwork, bool) {
	around := walk.Border(b)
	if b.Said.Part.Given() {
		return d.repeated(w, b, around)
	}
	fabric, ok := d.fabrics[b.Said.Fabric.Text]
	if !ok {
		return w, false
	}
	if b.Said.Corners == plan.Mitred {
		return mitred(w, b, fabric)
	}
	side := piecing.Plain(piecing.Box{Width: b.Cut.Surd(), Height: b.Sides}, fabric)
	end := piecing.Plain(piecing.Box{Width: b.Ends, Height: b.EndCut.Surd()}, fabric)
	w, ok = d.round(w, b, [4]piecing.Patchwork{end, side, end, side}, around.Corners)
	if ok && b.Said.Copes() {
		return w.TrimmedDown(b.Outer) // its strips may be cut wider than needed
	}
	return w, ok
}

// Shown tells of each fabric of the size whether it shows in the top or in a
// part of it.
func (d *Draft) Shown() []bool {
	shown := make([]bool, len(d.size.Fabrics))
	for _, p := range d.size.Parts {
		w, _ := d.Part(p.Name.Text)
		for _, patch := range w.Patches {
			if patch.Fabric != piecing.Untold {
				shown[patch.Fabric] = true
			}
		}
	}
	for _, b := range d.size.Top.Borders {
		for _, in := range b.Said.Ingredients() {
			if fabric, ok := d.fabrics[in.Name.Text]; ok && in.Fabric {
				shown[fabric] = true
			}
		}
	}
	for _, in := range d.size.Of.Layout.Setting.Ingredients() {
		if fabric, ok := d.fabrics[in.Name.Text]; ok && in.Fabric {
			shown[fabric] = true
		}
	}
	return shown
}
