package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// finish derives all that goes behind and round the finished top.
func (s *Size) finish() {
	if !s.Top.Known {
		return
	}
	if b := s.Of.Finish.Backing; b != nil {
		s.Backing = s.back(b)
	}
	if b := s.Of.Finish.Batting; b != nil {
		s.Batting = s.layer(b)
	}
	if b := s.Of.Finish.Binding; b != nil {
		s.Binding = s.bind(b)
	}
	if l := s.Of.Finish.Sleeve; l != nil {
		s.Sleeve = s.hang(l)
	}
	if b := s.Of.Bed; b != nil {
		s.Bed = s.lie(b)
	}
	if l := s.Of.Finish.Label; l != nil {
		if f := s.byFabric[l.Fabric.Text]; f != nil {
			f.need(plan.Text{Text: "label", At: l.At}, l.Width.Length, l.Height.Length, 1)
		}
	}
}

// back chooses the way of the panels that takes less fabric; a directional
// print keeps them lengthwise.
func (s *Size) back(b *plan.Backing) *Backing {
	d := &Backing{Said: b}
	f := s.byFabric[b.Fabric.Text]
	if f == nil {
		return d
	}
	if f.Form != plan.Yardage {
		f.Missing = true
		return d
	}
	size := piecing.Grown(s.Top.Finished, b.Overhang.Length)
	d.Backing, d.Known = s.panels(b, size)
	if d.Known {
		f.Panels += PanelLength(d.Backing)
		f.mustCover(measure.Area(size.Width, size.Height))
	}
	f.Missing = f.Missing || !d.Known
	return d
}

// panels covers a size with panels of the backing's fabric. Of the ways that
// they may run it takes the one that takes less fabric.
func (s *Size) panels(b *plan.Backing, size piecing.Box) (best piecing.Backing, known bool) {
	f := s.byFabric[b.Fabric.Text]
	if f == nil || f.Form != plan.Yardage {
		return best, false
	}
	for _, lengthwise := range panelWays(b.Panels, f) {
		way, ok := s.panelsRunning(b, f, size, lengthwise)
		if ok && (!known || way.Length.Cmp(best.Length) < 0) {
			best, known = way, true
		}
	}
	return best, known
}

// PanelLength is the fabric that a backing's panels take, each rounded up to a
// tick.
func PanelLength(b piecing.Backing) measure.Length {
	return b.Each.CeilTo(measure.Tick) * measure.Length(b.Panels)
}

// matched makes the panels of a backing of several a whole number of the
// print's repeats long, so that they can be matched at the seams.
func (f *Fabric) matched(way piecing.Backing) piecing.Backing {
	if f.Repeat.Length > 0 && way.Panels > 1 {
		way.Each = way.Each.CeilTo(f.Repeat.Length).Surd()
		way.Length = way.Each.MulInt(way.Panels)
	}
	return way
}

func panelWays(d plan.Direction, f *Fabric) []bool {
	switch {
	case d == plan.Lengthwise || d == plan.Either && f.Directional():
		return []bool{true}
	case d == plan.Crosswise:
		return []bool{false}
	}
	return []bool{true, false}
}
