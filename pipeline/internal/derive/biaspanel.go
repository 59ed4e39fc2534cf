package derive

import (
	"slices"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// OnBias is what a need is when it is cut on the bias: strips of a width, that
// give so many straight-ended pieces of a length or are joined.
type OnBias struct {
	Width  measure.Length // cut
	Length measure.Length // of a piece; 0 where the strips are joined
	Joined measure.Surd   // length wanted of joined strips
	Seam   measure.Length // that joins them
}

// BiasPanels are equal rectangles from which bias strips for one need are cut.
type BiasPanels struct {
	piecing.BiasPanel
	Of     plan.Text
	Across measure.Length // wide enough for its strips, on the ruler's grid
	Count  int64
}

// BiasCut is a layout with bias strips cut side by side from rectangles instead
// of a square for each piece, or one for all.
type BiasCut struct {
	cutting.Layout
	Amount
	Panels []BiasPanels
}

// mostPanels is how many rectangles for one need are tried.
const mostPanels = 24

// BiasCut is nil where nothing on the bias may be cut from cloth of another
// shape, or no rectangles serve. Nothing is proved of it.
func (f *Fabric) BiasCut() *BiasCut {
	if !slices.ContainsFunc(f.Needs, Need.loosely) {
		return nil
	}
	if f.biasCut == nil {
		b := f.cutOnBias()
		f.biasCut = &b
	}
	if f.biasCut.Length == 0 {
		return nil
	}
	return f.biasCut
}

func (n Need) loosely() bool { return n.Free && n.OnBias != nil && n.Count > 0 }

func (f *Fabric) cutOnBias() (b BiasCut) {
	other := *f
	other.Needs = slices.Clone(f.Needs)
	for i, n := range other.Needs {
		if !n.loosely() {
			continue
		}
		p, ok := f.panels(n)
		if !ok {
			return b
		}
		b.Panels = append(b.Panels, p)
		other.Needs[i] = Need{For: n.For, Across: p.Across, Along: p.High, Count: p.Count}
	}
	r, err := f.solver.Strips(other.problem(), 0)
	if err != nil {
		return BiasCut{}
	}
	b.Layout, b.Amount = r.Layout, f.AmountOf(r.Length)
	return b
}

// panels are the rectangles that take least of the cloth's length when they lie
// below each other, of these the narrowest.
func (f *Fabric) panels(n Need) (best BiasPanels, ok bool) {
	for high := f.biasGrid; high <= f.Width; high += f.biasGrid {
		p := BiasPanels{BiasPanel: piecing.BiasPanel{High: high, Width: n.OnBias.Width}, Of: n.For}
		most := p.Fitting(f.Width)
		if !p.enough(n, most) {
			continue
		}
		for p.Strips > 0 && p.gives(n, p.Strips-1) {
			p.Strips--
		}
		p.Across = p.Wide().CeilTo(f.line)
		if p.Across > f.Width {
			continue
		}
		long, least := p.High*measure.Length(p.Count), best.High*measure.Length(best.Count)
		if !ok || long < least || long == least && p.Across < best.Across {
			best, ok = p, true
		}
	}
	return best, ok
}

// enough sets the fewest panels of so many strips that serve.
func (p *BiasPanels) enough(n Need, strips int64) bool {
	p.Strips = strips
	for p.Count = 1; p.Count <= mostPanels; p.Count++ {
		if p.gives(n, strips) {
			return true
		}
	}
	return false
}

// gives tells whether panels of so many strips give all that is wanted.
func (p *BiasPanels) gives(n Need, strips int64) bool {
	one := p.BiasPanel
	one.Strips = strips
	if n.OnBias.Length > 0 {
		return p.Count*one.Pieces(n.OnBias.Length) >= n.Count
	}
	return one.Joined(p.Count, n.OnBias.Seam).Cmp(n.OnBias.Joined) >= 0
}
