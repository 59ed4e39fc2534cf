package kit

import (
	"math/big"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Work is what the studio cuts for one kit.
type Work struct {
	Lengths  int64 // of fabric, from the bolt
	Strips   int64 // across a length or a precut piece
	Cuts     int64 // of pieces, from strips
	Settings int64 // different cut widths, of strips and of pieces
}

// work counts the cuts of a kit: its lengths, and those of every piece where
// the studio cuts them.
func (k *Kit) work() Work {
	var w Work
	for _, l := range k.Fabrics {
		if l.Form == plan.Yardage {
			w.Lengths++
		}
		if k.Said.Cut == plan.Pieces {
			w.add(l.Fabric)
		}
	}
	return w
}

// add counts the cuts of the layout by which a fabric is cut up. A precut strip or
// square that is used whole is not cut.
func (w *Work) add(f *derive.Fabric) {
	widths := map[measure.Length]bool{}
	var row func(r cutting.Row, times int64, whole bool)
	row = func(r cutting.Row, times int64, whole bool) {
		if !whole {
			w.Strips += times * int64(r.Repeat)
			widths[r.Height] = true
		}
		for _, c := range r.Cuts {
			if whole && f.AcrossOf(c) == f.StripLength().Length {
				continue
			}
			w.Cuts += times * int64(r.Repeat) * int64(c.Count)
			widths[f.AcrossOf(c)] = true
		}
		for _, s := range r.Stacks {
			for _, c := range s.Cuts {
				w.Cuts += times * int64(r.Repeat) * int64(s.Count) * int64(c.Count)
			}
			widths[s.Width] = true
		}
		for _, beside := range r.Panel {
			row(beside, times*int64(r.Repeat), false)
		}
	}
	for _, r := range f.Layout.Rows {
		row(r, 1, false)
	}
	for _, s := range f.Sheets.Sheets {
		for _, r := range s.Rows {
			row(r, int64(s.Repeat), r.Height == f.StripWidth().Length)
		}
	}
	w.Settings += int64(len(widths))
}

// minutes are the kit's own, or those that its cuts take at the project's
// rates.
func (k *Kit) minutes(r plan.Rates) *big.Rat {
	if k.Said.Minutes.Given() || !r.Given() {
		return big.NewRat(int64(k.Said.Minutes.N), 1)
	}
	total := new(big.Rat)
	for _, act := range k.Work.Acts(r) {
		total.Add(total, new(big.Rat).Mul(big.NewRat(act.Count, 1), act.Each))
	}
	return total
}

// Act is one kind of work and the minutes that each time takes.
type Act struct {
	Key   string
	Says  string
	Count int64
	Each  *big.Rat
}

// Acts are the kinds of work of one kit, in the order in which they are done.
func (w Work) Acts(r plan.Rates) []Act {
	acts := []Act{
		{"length", "Lengths cut from the bolt", w.Lengths, r.Length}, {"setting", "Settings of the ruler", w.Settings, r.Setting},
		{"strip", "Strips cut", w.Strips, r.Strip}, {"cut", "Pieces cut from strips", w.Cuts, r.Cut}, {"pack", "Packing", 1, r.Pack},
	}
	for i := range acts {
		if acts[i].Each == nil {
			acts[i].Each = new(big.Rat)
		}
	}
	return acts
}
