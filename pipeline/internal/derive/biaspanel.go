package derive

import (
	"math"
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
	// Pieces is how many pieces are wanted of rectangles from which strips are cut
	// side by side, From what each of these is; nil of squares that are cut one by one.
	Pieces int64
	From   *BiasPanels
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
	// Of is the fabric with these rectangles in place of the squares.
	Of *Fabric
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

func (n Need) loosely() bool {
	return n.Free && n.OnBias != nil && n.OnBias.From == nil && n.Count > 0
}

// stripsOnBias cuts pieces on the bias as it is done by hand, from strips side by
// side across a rectangle, where that takes less of the fabric's length than a
// square for each of them (common practice, no source).
func (f *Fabric) stripsOnBias() {
	for i, n := range f.Needs {
		if !n.loosely() || n.OnBias.Length < f.line { // a length of 0 is joined strips
			continue
		}
		if p, ok := f.panels(n); ok && f.longAlone(p.Across, p.High, p.Count) < f.longAlone(n.Across, n.Along, n.Count) {
			f.Needs[i] = n.from(p)
		}
	}
}

// longAlone is the length of cloth that equal rectangles take in strips of
// their own; what does not fit takes more than anything that does.
func (f *Fabric) longAlone(across, along measure.Length, count int64) measure.Length {
	each := piecing.PerStrip(f.Width, across)
	if each == 0 {
		return math.MaxInt64
	}
	return along * measure.Length(piecing.Batches(count, each))
}

// from is the need as rectangles that its strips are cut from.
func (n Need) from(p BiasPanels) Need {
	bias := *n.OnBias
	bias.Pieces, bias.From = n.Count, &p
	n.OnBias = &bias
	if n.Within != nil {
		each := n.Within.MulInt(n.Count).DivInt(p.Count)
		n.Within = &each
	}
	n.Across, n.Along, n.Count = p.Across, p.High, p.Count
	return n
}

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
		other.Needs[i] = n.from(p)
	}
	r, err := f.solver.Strips(other.problem(), 0)
	if err != nil {
		return BiasCut{}
	}
	b.Layout, b.Amount, b.Of = r.Layout, f.AmountOf(r.Length), &other
	return b
}

// panels are the rectangles that take least of the cloth's length when they lie
// below each other, of these the narrowest.
func (f *Fabric) panels(n Need) (best BiasPanels, ok bool) {
	for high := f.biasGrid; high <= f.Width; high += f.biasGrid {
		p := BiasPanels{BiasPanel: piecing.BiasPanel{High: high, Width: n.OnBias.Width}, Of: n.For}
		if !p.fewest(n, p.Fitting(f.Width)) {
			continue
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

// fewest takes the fewest panels of at most so many strips that serve, and no more
// strips than they then need; false where more than mostPanels would.
func (p *BiasPanels) fewest(n Need, most int64) bool {
	if n.OnBias.Length > 0 {
		each, corners := p.PerStrip(n.OnBias.Length), p.InCorners(n.OnBias.Length)
		p.Count = piecing.Batches(n.Count, most*each+corners)
		if p.Count == 0 || p.Count > mostPanels {
			return false
		}
		p.Strips = piecing.Batches(max(0, piecing.Batches(n.Count, p.Count)-corners), each)
		return true
	}
	if !p.enough(n, most) {
		return false
	}
	for p.Strips > 0 && p.gives(n, p.Strips-1) {
		p.Strips--
	}
	return true
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

// gives reports whether panels of so many strips give all that is wanted.
func (p *BiasPanels) gives(n Need, strips int64) bool {
	one := p.BiasPanel
	one.Strips = strips
	if n.OnBias.Length > 0 {
		return p.Count*one.Pieces(n.OnBias.Length) >= n.Count
	}
	return one.Joined(p.Count, n.OnBias.Seam).Cmp(n.OnBias.Joined) >= 0
}

// sideBySide is the bias strips of a part whose pieces come from strips side by
// side, nil where each has a square of its own.
func (f *Fabric) sideBySide(p *Part) *OnBias {
	for _, n := range f.Needs {
		if n.For == p.Name && n.OnBias != nil && n.OnBias.From != nil {
			return n.OnBias
		}
	}
	return nil
}
