package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// SeamSlack is how much narrower the seams of a tube may be sewn before a
// square is lost, rounded down to a tick; ok is
// false when a narrower seam loses nothing. The length that n squares need
// is linear in the seam, and so is what joins cost of the length there is.
func (t *Tube) SeamSlack() (l measure.Length, ok bool) {
	ears := t.Ends == plan.EarsKept
	atRest := t.LengthFor(t.Yield.Each, ears)
	none := piecing.Tube{Width: t.flat(), Beyond: t.beyondAt(0)}
	gain := measure.Length(t.Joins()) * t.Seam                 // of the joined length, over the whole seam
	grow := none.LengthFor(t.Yield.Each, ears) - atRest - gain // over the whole seam
	if t.Seam <= 0 || grow <= 0 || t.Yield.Rest() >= grow {
		return 0, false
	}
	return t.Yield.Rest().Surd().MulInt(int64(t.Seam)).DivInt(int64(grow)).FloorTo(measure.Tick), true
}

// flat is the width of the tube's strips without any seam.
func (t *Tube) flat() measure.Length {
	return t.Width + 2*measure.Length(len(t.Sets[0].Set.Strips)-1)*t.Sets[0].Seam.Allowance.Length
}

// beyondAt is the tip's distance for another seam: on the raw edge it is the
// seam itself.
func (t *Tube) beyondAt(seam measure.Length) measure.Length {
	if t.RawEdge {
		return seam
	}
	return t.Beyond
}
