package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Batting is the derived batting.
type Batting struct {
	Said *plan.Batting
	Size piecing.Box // wanted
	// Off the roll: the length to cut and to buy, 0 when the roll is too narrow
	// either way. Across tells that the roll runs across the quilt.
	Cut, Buy measure.Length
	Across   bool
}

func (s *Size) layer(b *plan.Batting) *Batting {
	d := &Batting{Said: b, Size: piecing.Grown(s.Top.Finished, b.Overhang.Length)}
	if !b.Roll.Given() {
		return d
	}
	try := func(cover, run measure.Surd, across bool) {
		length := run.CeilTo(measure.Tick)
		if cover.Cmp(b.Roll.Surd()) <= 0 && (d.Cut == 0 || length < d.Cut) {
			d.Cut, d.Across = length, across
		}
	}
	try(d.Size.Width, d.Size.Height, false)
	try(d.Size.Height, d.Size.Width, true)
	d.Buy = measure.CeilTo(d.Cut, b.Grid)
	return d
}

// Sleeve is the derived hanging sleeve.
type Sleeve struct {
	Said *plan.Sleeve
	piecing.Sleeve
	Depth  measure.Surd // finished, flat
	Strips Joined
}

// hang derives the sleeve; its strips are joined straight.
func (s *Size) hang(l *plan.Sleeve) *Sleeve {
	seam := s.Of.Seam.Allowance.Length
	d := &Sleeve{Said: l, Depth: piecing.SleeveDepth(l.Cut.Length, seam)}
	f := s.byFabric[l.Fabric.Text]
	if f == nil {
		return d
	}
	if d.Depth.Sign() <= 0 {
		f.Missing = true
		return d
	}
	rule := piecing.SleeveRule{Depth: d.Depth.FloorTo(measure.Tick), Shorter: l.Shorter.Length, Hem: l.Hem.Length, Widest: l.Widest.Length}
	d.Sleeve, _ = piecing.HangingSleeve(s.Top.Finished.Width, rule, f.stripLength(), seam)
	need := figure.Given(figure.Length, d.Each.MulInt(d.Pieces), "all pieces of it", s.FinishedFigure(false))
	d.Strips = s.join("sleeve", need.Where(l.At), f, plan.Straight, figure.F{}, s.Of.Seam)
	f.needJoined(plan.Text{Text: "sleeve", At: l.At}, l.Cut.Length, d.Strips)
	return d
}

// Bed is a finished quilt on its bed.
type Bed struct {
	Said   *plan.Bed
	Wanted piecing.Box // finished size for the drop and tuck, before quilting draws it in
	Lies   piecing.Box // finished size once that has happened
	// How far it hangs at each side and at the foot, the tuck taken off; below
	// none where it does not reach the edge.
	Side, Foot measure.Surd
}

// lie lays the quilt on the bed.
func (s *Size) lie(b *plan.Bed) *Bed {
	mattress := piecing.Box{Width: b.Mattress[0].Surd(), Height: b.Mattress[1].Surd()}
	lost := measure.Rational(b.DrawIn.BasisPoints, whole)
	left := measure.Rational(whole-b.DrawIn.BasisPoints, whole)
	top := s.Top.Finished
	d := &Bed{
		Said:   b,
		Wanted: piecing.BeforeDrawIn(piecing.BedQuilt(mattress, b.Drop.Length, b.Tuck.Length), lost),
		Lies:   piecing.Box{Width: top.Width.Mul(left), Height: top.Height.Mul(left)},
	}
	d.Side = d.Lies.Width.Sub(mattress.Width).DivInt(2)
	d.Foot = d.Lies.Height.Sub(mattress.Height).Sub(b.Tuck.Surd())
	return d
}
