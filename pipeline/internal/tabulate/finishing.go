package tabulate

import (
	"fmt"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// finishRows are all that goes behind and round the top.
func finishRows(s *derive.Size, works workings) []report.Row {
	u := s.Plan.Units
	var rows []report.Row
	if b := s.Backing; b != nil && b.Known {
		way := "running the length of the quilt"
		if !b.Lengthwise {
			way = "running across the quilt"
		}
		rows = append(rows, row(report.T("backing"), report.T(fmt.Sprintf("%s of %s %s%s; should measure at least", say.Many(b.Panels, "panel"), b.Each.AsCut(u), way, panelSeams(b, u))),
			report.N(b.Panels), report.Cut(b.Size.Width, u), report.Cut(b.Size.Height, u)))
	}
	if b := s.Batting; b != nil {
		rows = append(rows, row(report.T("batting"), report.T(battingHow(b, u)), report.Cell{}, report.Cut(b.Size.Width, u), report.Cut(b.Size.Height, u)))
	}
	if b := s.Binding; b != nil {
		rows = append(rows, bindingRow(s, b, works), row(report.Cell{}, report.T(bindingFold(b.Said, u))))
	}
	if l := s.Sleeve; l != nil && l.Strips.OK {
		rows = append(rows, sleeveRow(s, l, works))
	}
	if l := s.Of.Finish.Label; l != nil {
		rows = append(rows, row(report.T("label"), report.T("cut of "+l.Fabric.Text), report.Cell{}, report.Cut(l.Width.Surd(), u), report.Cut(l.Height.Surd(), u)))
	}
	rows = append(rows, row(report.T("finished"), report.T(printable(s)), report.Cell{},
		report.L(s.Top.Finished.Width, u), report.L(s.Top.Finished.Height, u)))
	if b := s.Bed; b != nil {
		rows = append(rows, row(report.T("on the bed"), report.T(bedWords(b, u)), report.Cell{}, report.L(b.Lies.Width, u), report.L(b.Lies.Height, u)))
	}
	return rows
}

func panelSeams(b *derive.Backing, u measure.Unit) string {
	if b.Panels < 2 {
		return ""
	}
	return ", seams " + b.Said.Seam.Format(u)
}

// battingHow says how the batting is laid.
func battingHow(b *derive.Batting, u measure.Unit) string {
	text := "at least"
	if pack := b.Said.Package; pack[0].Given() {
		straight, turned := piecing.FitsEitherWay(piecing.Box{Width: pack[0].Surd(), Height: pack[1].Surd()}, b.Size)
		switch {
		case straight:
			text = "of a package of " + packageSize(pack, u) + "; at least"
		case turned:
			text = "of a package of " + packageSize(pack, u) + ", turned; at least"
		}
	}
	if b.Cut > 0 {
		way := "along the quilt"
		if b.Across {
			way = "across the quilt"
		}
		text = fmt.Sprintf("%s off a roll %s wide, running %s; at least", b.Cut.AsCut(u), b.Said.Roll.AsThere(u), way)
	}
	return text
}

func packageSize(pack [2]plan.Length, u measure.Unit) string {
	return pack[0].BareRounded(u, measure.Down) + " x " + pack[1].AsThere(u)
}

// battingToBuy is a length off the roll, a package, or the least sheet.
func (in Input) battingToBuy(b *derive.Batting) string {
	u := in.units()
	text := measure.FormatBox(b.Size.Width, b.Size.Height, u)
	if b.Cut > 0 {
		text = measure.FormatFabric(b.Buy, u) + " off a roll " + b.Said.Roll.AsThere(u) + " wide"
	}
	if pack := b.Said.Package; pack[0].Given() {
		if b.Cut > 0 {
			return text + ", or a package of " + packageSize(pack, u)
		}
		text += " (package of " + packageSize(pack, u) + ")"
	}
	return text
}

func bindingRow(s *derive.Size, b *derive.Binding, works workings) report.Row {
	u := s.Plan.Units
	if b.Bias == nil {
		strips := report.N(b.Strips.Count)
		strips.Why = works.of(s, b.Strips.Told)
		return row(report.T("binding"), report.T(derive.Joining(b.Said.Joins)+bindingNeed(b, u)), strips,
			report.Cut(b.Said.Cut.Surd(), u), report.L(b.Strips.Length.Surd(), u).There())
	}
	if b.Bias.Squares == 0 {
		return row(report.T("binding"), report.T("cannot be cut of its fabric; see the sheet Checks"))
	}
	length := report.L(b.Bias.Length, u).There()
	length.Why = works.of(s, s.BiasFigure(b))
	squares := say.Many(b.Bias.Squares, "square") + " of " + b.Bias.Square.AsCut(u)
	if b.Said.Kind == plan.ContinuousBias {
		how := fmt.Sprintf("%s, cut once diagonally and sewn to a tube; continuous bias, %s round each%s", squares, say.Many(b.Bias.Loops, "loop"), bindingNeed(b, u))
		return row(report.T("binding"), report.T(how), report.Cell{}, report.Cut(b.Said.Cut.Surd(), u), length)
	}
	how := fmt.Sprintf("%s, cut into strips from the diagonal outwards and joined on the straight grain%s", squares, bindingNeed(b, u))
	return row(report.T("binding"), report.T(how), report.N(b.Bias.Strips), report.Cut(b.Said.Cut.Surd(), u), length)
}

// bindingNeed is the way round the quilt, and with it what corners and the last
// join take.
func bindingNeed(b *derive.Binding, u measure.Unit) string {
	return fmt.Sprintf("; %s round the quilt, needs %s", b.Round.AsCut(u), b.Strips.Need.AsCut(u))
}

// bindingFold says how the binding is folded, and what is left of it for the
// edge's thickness and the overlap on the back.
func bindingFold(b *plan.Binding, u measure.Unit) string {
	d := b.Finished.Length
	if b.Single {
		left := b.Cut.Length - piecing.SingleFold(d, 0)
		return fmt.Sprintf("single fold, finishes %s wide; %s left for the thickness of the edge", d.Format(u), max(left, 0).AsThere(u))
	}
	left := measure.Max(piecing.DoubleFoldLeaves(b.Cut.Length, d), measure.Surd{})
	return fmt.Sprintf("double fold, sewn %s from the edge and so wide on the front; %s left for the thickness of the edge and the overlap on the back", d.Format(u), left.AsThere(u))
}

func sleeveRow(s *derive.Size, l *derive.Sleeve, works workings) report.Row {
	u := s.Plan.Units
	strips := report.N(l.Strips.Count)
	strips.Why = works.of(s, l.Strips.Told)
	how := fmt.Sprintf("%s, %s deep when sewn; each", say.Many(l.Pieces, "piece"), l.Depth.Format(u))
	if l.Said.Hem.Length > 0 {
		how = fmt.Sprintf("%s, %s deep when sewn, hems of %s at both ends included; each", say.Many(l.Pieces, "piece"), l.Depth.Format(u), l.Said.Hem.Format(u))
	}
	return row(report.T("sleeve"), report.T(how), strips, report.Cut(l.Each, u), report.Cut(l.Said.Cut.Surd(), u))
}

// bedWords says how the quilt lies on its mattress.
func bedWords(b *derive.Bed, u measure.Unit) string {
	text := fmt.Sprintf("hangs %s at each side and %s at the foot of a mattress %s x %s", hangs(b.Side, u), hangs(b.Foot, u),
		b.Said.Mattress[0].Bare(u), b.Said.Mattress[1].Format(u))
	if b.Said.Tuck.Length > 0 {
		text += ", with " + b.Said.Tuck.Format(u) + " tucked at the pillows"
	}
	if b.Said.DrawIn.BasisPoints > 0 {
		text += ", once quilting has drawn it in"
	}
	return text
}

func hangs(x measure.Surd, u measure.Unit) string {
	if x.Sign() <= 0 {
		return "nothing"
	}
	return x.Format(u)
}
