package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// BackingWay is a direction that a backing's panels may run in, and what it takes.
type BackingWay struct {
	piecing.Backing
	Amount       // of the fabric, with all else that is cut from it
	Taken   bool // it is the plan's
	Against bool // the print would lie on its side
}

// BackingWays are both directions of the panels, along the quilt first; one where
// both are alike, and none where the backing is not sewn of a fabric that is sold
// by length.
func (s *Size) BackingWays() []BackingWay {
	if s.Backing == nil || !s.Backing.Known {
		return nil
	}
	b := s.Backing
	f := s.byFabric[b.Said.Fabric.Text]
	if f.Err != nil || !s.SureOfCloth(f) {
		return nil
	}
	var all []BackingWay
	for _, lengthwise := range []bool{true, false} {
		way, ok := s.panelsRunning(b.Said, f, b.Size, lengthwise)
		if !ok {
			continue
		}
		taken := lengthwise == b.Lengthwise
		if len(all) == 1 && all[0].Panels == way.Panels && all[0].Each.Equal(way.Each) {
			all[0].Taken = true
			break
		}
		all = append(all, BackingWay{Backing: way, Amount: f.withPanels(PanelLength(way)), Taken: taken, Against: f.Directional() && !lengthwise})
	}
	return all
}

// panelsRunning covers a size with panels of a fabric that run one way.
func (s *Size) panelsRunning(b *plan.Backing, f *Fabric, size piecing.Box, lengthwise bool) (way piecing.Backing, ok bool) {
	way, ok = piecing.BackingPanels(size, f.Width, b.Seam.Length, lengthwise)
	return f.matched(way), ok
}

// withPanels is what the fabric's layout takes with another length of panels.
func (f *Fabric) withPanels(panels measure.Length) Amount {
	other := *f
	other.Panels = panels
	return other.AmountOf(f.Layout.Length)
}
