package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// finish derives backing, batting and binding from the finished top.
func (s *Size) finish() {
	if !s.Top.Known {
		return
	}
	if b := s.Of.Finish.Backing; b != nil {
		s.Backing = s.back(b)
	}
	if b := s.Of.Finish.Batting; b != nil {
		s.Batting = &Batting{Said: b, Size: piecing.Grown(s.Top.Finished, b.Overhang.Length)}
	}
	if b := s.Of.Finish.Binding; b != nil {
		s.Binding = s.bind(b)
	}
}

// back chooses the way of the panels that takes less fabric; a directional
// print keeps them lengthwise.
func (s *Size) back(b *plan.Backing) *Backing {
	d := &Backing{Said: b}
	f := s.byFabric[b.Fabric.Text]
	if f == nil || f.Form != plan.Yardage {
		return d
	}
	size := piecing.Grown(s.Top.Finished, b.Overhang.Length)
	for _, lengthwise := range panelWays(b.Panels, f) {
		way, ok := piecing.BackingPanels(size, f.Width, b.Seam.Length, lengthwise)
		if ok && (!d.Known || way.Length.Cmp(d.Length) < 0) {
			d.Backing, d.Known = way, true
		}
	}
	if d.Known {
		f.Panels += d.Each.CeilTo(measure.Tick) * measure.Length(d.Panels)
		f.mustHoldArea(size.Width.FloorTo(measure.Tick), size.Height.FloorTo(measure.Tick))
	}
	return d
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

func (s *Size) bind(b *plan.Binding) *Binding {
	d := &Binding{Said: b}
	f := s.byFabric[b.Fabric.Text]
	if f == nil {
		return d
	}
	seam := s.Of.Seam.Allowance.Length
	need := piecing.BindingLength(s.Top.Finished, b.Allowance.Length)
	d.Strips = join(need, f.stripLength(), joinLoss(b.Joins, b.Cut.Length, seam))
	f.needJoined(plan.Text{Text: "binding", At: b.At}, b.Cut.Length, d.Strips)
	return d
}
