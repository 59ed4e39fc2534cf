package tabulate

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// howUnit says what a unit is made from and by which method.
func howUnit(s *derive.Size, p *derive.Part) string {
	u := s.Plan.Units
	switch op := p.Operation.(type) {
	case plan.Hourglass:
		if op.HalfSquares.Given() {
			return fmt.Sprintf("%s of %s, laid together with the fabrics opposite and cut once more, 2 units from each", many(p.Unit.Batches, "pair"), op.HalfSquares.Text) + trimmed(op.Trim, op.DownTo, u)
		}
		return fmt.Sprintf("%s of squares %s, %s and %s, sewn and cut twice over, 2 units from each", many(p.Unit.Batches, "pair"),
			p.Unit.Pieces[0].Width.AsCut(u), op.Fabrics[0].Text, op.Fabrics[1].Text) + trimmed(op.Trim, op.DownTo, u)
	case plan.FlyingGeese:
		if op.AtATime == 4 {
			return many(p.Unit.Batches, "lot") + " of " + pieceList(p.Unit.Pieces, u) + ", 4 units from each" + trimmedTo(op.Trim, op.DownTo, u)
		}
		return "each from " + pieceList(p.Unit.Pieces, u) + ", stitched over its ends and flipped" + trimmedTo(op.Trim, op.DownTo, u)
	case plan.FlipCorners:
		return "each from " + op.Body.Text + " with " + pieceList(p.Unit.Pieces, u) + ", stitched over " + cornerNames(op) + " and flipped"
	case plan.SquareInSquare:
		text := "each from " + pieceList(p.Unit.Pieces, u)
		if op.Flip {
			text += ", stitched over its corners and flipped"
		}
		return text + trimmed(op.Trim, op.DownTo, u)
	case plan.Logs:
		return howLogs(s, p, op)
	case plan.Shape:
		return howShape(p, u)
	case plan.Template:
		return howTemplate(s, p, op)
	case plan.Recut:
		return howRecut(p, op, u)
	case plan.Loop:
		return howLoop(p, op, u)
	case plan.Chain:
		return howChain(p, op, u)
	case plan.Mosaic:
		return howMosaic(op, p, u)
	}
	return ""
}

func trimmedTo(to [2]plan.Length, downTo plan.Length, u measure.Unit) string {
	if !to[0].Given() {
		return ""
	}
	return ", trimmed to " + to[0].BareRounded(u, measure.Down) + " x " + to[1].AsThere(u) + down(downTo, u)
}

// pieceList counts pieces that are alike.
func pieceList(pieces []derive.Piece, u measure.Unit) string {
	var out []string
	for i := 0; i < len(pieces); {
		c, n := pieces[i], int64(0)
		for ; i < len(pieces) && pieces[i].Fabric == c.Fabric && pieces[i].Width == c.Width && pieces[i].Height == c.Height && pieces[i].What == c.What; i++ {
			n += pieces[i].Count
		}
		size := c.Width.AsCut(u)
		if c.Width != c.Height {
			size = c.Width.BareRounded(u, measure.Up) + " x " + c.Height.AsCut(u)
		}
		out = append(out, fmt.Sprintf("%s %s of %s%s", many(n, c.What), size, c.Fabric.Role.Text, halved(c.Halving)))
	}
	return strings.Join(out, " and ")
}

func cornerNames(op plan.FlipCorners) string {
	if len(op.Corners) == 4 {
		return "all corners"
	}
	var out []string
	for _, c := range op.Corners {
		out = append(out, [...]string{"top left", "top right", "bottom right", "bottom left"}[c.Place])
	}
	return strings.Join(out, ", ")
}

// unitNotes are the exact cuts, the error that the trade's cuts leave and what
// becomes of the corners cut away.
func unitNotes(s *derive.Size, p *derive.Part) []string {
	u := s.Plan.Units
	var out []string
	switch op := p.Operation.(type) {
	case plan.Logs:
		out = append(out, logsNote(p, u))
	case plan.Template:
		out = append(out, templateNote(op, u))
	}
	told := map[string]bool{}
	for _, c := range p.Unit.Pieces {
		note := c.What + " by geometry " + c.Exact.Width.AsCut(u)
		if !c.Said && p.Unit.Lines != nil {
			note += ", up to " + linesText(p.Unit.Lines, u)
		}
		if !c.Width.Surd().Equal(c.Exact.Width) && !told[note] {
			told[note] = true
			out = append(out, note)
		}
	}
	if left, ok := p.Left(); ok {
		out = append(out, leftNote("wider", "narrower", "row", left.Width, s.InRow(p, false), u)...)
		out = append(out, leftNote("higher", "lower", "column", left.Height, s.InRow(p, true), u)...)
	}
	for _, b := range p.Unit.Bonus {
		out = append(out, bonusNote(b, p, u))
	}
	return out
}

// linesText says which lines a cut goes up to.
func linesText(l *derive.Lines, u measure.Unit) string {
	if l.Ruler != nil {
		return "the ruler's lines of " + l.Apart.Format(u)
	}
	return "the usual lines of " + l.Apart.Format(u)
}

// leftNote is the error that one unit has, and what it comes to over all of
// them in the fullest row or column.
func leftNote(more, less, line string, left measure.Surd, n int64, u measure.Unit) []string {
	word := more
	switch left.Sign() {
	case 0:
		return nil
	case -1:
		word, left = less, left.Neg()
	}
	note := "comes out " + left.Format(u) + " " + word + " than drafted"
	if n > 1 {
		note += fmt.Sprintf(", %s over the %d of a %s", left.MulInt(n).Format(u), n, line)
	}
	return []string{note}
}

func bonusNote(b derive.Bonus, p *derive.Part, u measure.Unit) string {
	count := many(b.Count*p.Made, "pair") + " of corners cut away from the " + b.Square.AsCut(u) + " squares"
	if !p.Unit.Keep {
		return count + ": waste"
	}
	return count + fmt.Sprintf(": sew each into a bonus half-square unit, %s unfinished", b.Side.Format(u))
}
