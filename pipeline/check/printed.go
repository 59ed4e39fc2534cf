package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

var printedChecks = []Check{
	{
		Rule: "printed/finished", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the printed finished size is not the one that the layout comes to",
		Why:     "Backing, batting and binding are bought by it. Six blocks that finish at 8 in are 48 in; 51 in is six times the unfinished 8 1/2 in, and the border cut for it is 3 in too long.",
		Fix:     "print the size that the layout comes to, or change the layout",
		Run:     printedFinished,
	},
	{
		Rule: "printed/left", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the printed number of pieces left over from the packs is not what is left",
		Why:     "What is left is often promised to a pincushion or the next class. From a 40-strip roll 36 strips are used: four are left, and a pattern that says five has the maker look for the fifth.",
		Fix:     "print what is left",
		Run:     printedLeft,
	},
	{
		Rule: "printed/measures", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the printed unfinished size of a part is not what it measures once it is sewn",
		Why:     "The maker checks her seam by it. Three 2 1/2-in strips sewn with 1/4-in seams are 6 1/2 in wide; a pattern that says 6 in has her unpick a set that was right. A size between the lines of every ruler, such as a tube's 8.4853 in, may be printed as the ruler reads it.",
		Fix:     "print what the part measures, or change how it is made",
		Run:     printedMeasures,
	},
	{
		Rule: "printed/parts", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the printed number of a part is not what the layout calls for",
		Why:     "Thirty-six blocks stand in a layout of 6 by 6. A pattern that says to make 30 sends its maker back to the shop for a fabric that is sold out.",
		Fix:     "print the number that the layout calls for, or change the layout",
		Run:     printedParts,
	},
	{
		Rule: "printed/per-set", Level: diag.Error, Lesser: diag.Note, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "a strip set does not give as many segments as printed",
		Why:     "Eleven 3 1/2-in segments come from a 40-in set, and the twelfth would need 42 in. Printed as twelve, every set leaves the maker a segment short. Fewer than come out are a note, unless what comes out leaves nothing to straighten the ends and as many sets are printed as fewer from each take.",
		Fix:     "print what a set gives, and as many sets as that takes",
		Run:     printedPerSet,
	},
	{
		Rule: "printed/per-tube", Level: diag.Error, Lesser: diag.Note, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "a tube does not give as many squares as printed",
		Why:     "Half a triangle is lost at each end. A 6-in advance goes seven times into 42 in, but the tube gives six squares, and only five at 41 1/2 in.",
		Fix:     "print what a tube gives, and as many tubes as that takes",
		Run:     printedPerTube,
	},
	{
		Rule: "printed/sets", Level: diag.Error, Lesser: diag.Note, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the printed number of strip sets is not what is needed",
		Why:     "Twenty-five segments at eleven a set take three sets. Two leave the last three segments without a set to be cut from. More are a note, and a warning when they are more than twice as many and take more than four strips too many. As many as it takes with fewer segments from each, where that is printed or the last leaves nothing to straighten, are right.",
		Fix:     "print as many sets as are needed",
		Run:     printedSets,
	},
	{
		Rule: "printed/strips", Level: diag.Error, Lesser: diag.Note, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the printed number of strips is not what is needed",
		Why:     "Seven sets of three take 21 strips. Cut 18 as printed, and the seventh set is short of all three; cut 24, and three strips of fabric are left: a note, or a warning when it is more than twice as many as are needed and more than four too many. Oblong pieces may lie either way, and only the counts of one of the ways are right: 31 of 2 1/2 x 10 1/2 in take 2 strips 10 1/2 in wide or 11 strips 2 1/2 in wide, and 10 are short of the 11. A figure that says its width, or the fabric, is held against those strips alone.",
		Fix:     "print as many strips as one way of cutting takes, and their width where there are several",
		Run:     printedStripCounts,
	},
	{
		Rule: "printed/tubes", Level: diag.Error, Lesser: diag.Note, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the printed number of tubes is not what is needed",
		Why:     "Thirty squares at five a tube take six tubes. Five tubes leave the last row of the quilt unmade. More are a note, and a warning when they are more than twice as many and take more than four strips too many.",
		Fix:     "print as many tubes as are needed",
		Run:     printedTubes,
	},
}

func printedFinished(p *Pass) {
	said, top := p.Size.Of.Printed, p.Size.Top
	if said == nil || !said.Finished[0].Given() || !top.Known || unevenGrid(top) {
		return
	}
	gaps := [2]measure.Surd{
		gap(said.Finished[0].Surd(), top.Finished.Width),
		gap(said.Finished[1].Surd(), top.Finished.Height),
	}
	worse := 0
	if gaps[1].Cmp(gaps[0]) > 0 {
		worse = 1
	}
	rounding := said.Rounding.Length
	var level diag.Level
	switch {
	case gaps[worse].Cmp(rounding.Surd()) > 0:
		level = diag.Error
	case gaps[worse].MulInt(2).Cmp(rounding.Surd()) > 0:
		level = diag.Warning
	default:
		return
	}
	p.Report(said.Finished[worse].At, Finding{
		Level: level,
		Message: fmt.Sprintf("the pattern prints a finished size of %s; the layout comes to %s%s",
			p.pair(said.Finished[0].Length, said.Finished[1].Length), p.box(top.Finished.Width, top.Finished.Height), p.unfinishedToo(said, top)),
		Ways:  ways(p.printRounded(said, top.Finished), advise("change the layout")),
		About: Subject{Kind: derive.TopSize}, Root: true,
	})
}

// printRounded prints a size as a pattern does, and says what it was rounded to if it
// was.
func (p *Pass) printRounded(said *plan.Printed, b piecing.Box) diag.Way {
	to := said.Rounding.Length
	width, height := b.Width.NearestTo(to), b.Height.NearestTo(to)
	w := mend(p.putPair("print", said.Finished[0], said.Finished[1], width, height))
	if b.Width.Cmp(width.Surd()) != 0 || b.Height.Cmp(height.Surd()) != 0 {
		w.Note = "(to the nearest " + p.length(to) + ")"
	}
	return w
}

// unevenGrid tells a layout whose rows do not agree: then there is no one
// size to compare with, and rules of family piecing say why.
func unevenGrid(top derive.Top) bool {
	for r := range top.Grid.RowWidths {
		if top.Grid.RowWidths[r].Sub(top.Grid.Width).Cmp(driftFails.Surd()) > 0 ||
			top.Grid.Tallest[r].Sub(top.Grid.RowHeights[r]).Cmp(easedHeight.Surd()) > 0 {
			return true
		}
	}
	return false
}

// unfinishedToo names the commonest slips: the unfinished size, and the sum of
// unfinished blocks.
func (p *Pass) unfinishedToo(said *plan.Printed, top derive.Top) string {
	w, h := said.Finished[0].Surd(), said.Finished[1].Surd()
	if w.Equal(top.Width) && h.Equal(top.Height) {
		return ", and what is printed is the unfinished size"
	}
	if o := top.Setting.OnPoint; o != nil && w.Equal(o.Pitch().MulInt(o.Columns)) && h.Equal(o.Pitch().MulInt(o.Rows)) {
		return ", and what is printed adds up the blocks' sides, which on point are their diagonals"
	}
	g := p.Size.Of.Layout.Grid
	seams := (2 * p.Size.Of.Seam.Allowance.Length).Surd()
	if w.Equal(top.Finished.Width.Add(seams.MulInt(int64(g.Columns.N)))) &&
		h.Equal(top.Finished.Height.Add(seams.MulInt(int64(g.Rows.N)))) {
		return ", and what is printed adds up the blocks unfinished"
	}
	return ""
}

// gap is how far two sizes are apart.
func gap(a, b measure.Surd) measure.Surd {
	if d := a.Sub(b); d.Sign() >= 0 {
		return d
	}
	return b.Sub(a)
}

func printedMeasures(p *Pass) {
	if p.Size.Of.Printed == nil {
		return
	}
	for _, said := range p.Size.Of.Printed.Measures {
		part := p.Size.Part(said.Of.Text)
		if part == nil || !part.Known {
			continue
		}
		switch {
		case part.Room.Traits().Running:
			p.acrossStrips(part, said)
		case part.Shape != nil:
			cut := *part
			cut.Box = part.Shape.Cut // what a ruler can be laid on, not its place in a row
			p.bothSides(&cut, said)
		default:
			p.bothSides(part, said)
		}
	}
}

// acrossStrips compares the width across the strips: of a set or strip used
// whole the length is the fabric's, not the maker's.
func (p *Pass) acrossStrips(part *derive.Part, said plan.PrintedSize) {
	if p.reads(said.Height.Length, part.Height) {
		return
	}
	p.Report(said.Height.At, Finding{
		Message: fmt.Sprintf("the pattern prints %q as %s wide; it measures %s across its strips", part.Name.Text,
			p.length(said.Height.Length), part.Height.Format(p.Plan.Units)),
		Ways:  ways(mend(p.putLength("print", said.Height.At, p.nominal(part.Height)))),
		About: geometryOf(part), Root: true,
	})
}

func (p *Pass) bothSides(part *derive.Part, said plan.PrintedSize) {
	width, height := p.reads(said.Width.Length, part.Width), p.reads(said.Height.Length, part.Height)
	if width && height {
		return
	}
	at := said.Width.At
	if width {
		at = said.Height.At
	}
	p.Report(at, Finding{
		Message: fmt.Sprintf("the pattern prints %q as %s; it measures %s unfinished", part.Name.Text,
			p.pair(said.Width.Length, said.Height.Length), p.box(part.Width, part.Height)),
		Ways:  ways(mend(p.putPair("print", said.Width, said.Height, p.nominal(part.Width), p.nominal(part.Height)))),
		About: geometryOf(part), Root: true,
	})
}

// rulerLine is the distance of the finest lines of a rotary ruler: 1/16 in, or
// 1 mm. Common practice, no source.
func rulerLine(u measure.Unit) measure.Length {
	if u == measure.Cm {
		return measure.Millimetre
	}
	return measure.Inch / 16
}

// reads reports whether a ruler laid on what measures exact may be read as
// printed. A size that lies on a line of the ruler must be printed as it is:
// there is nothing to round. One between two lines (a tube's square, a strip
// set of overlock seams) is nominal and may be a line off either way, as some
// patterns name the line below, to trim to, and some the nearest eighth.
func (p *Pass) reads(printed measure.Length, exact measure.Surd) bool {
	line := rulerLine(p.Plan.Units)
	if exact.Equal(exact.FloorTo(line).Surd()) {
		return exact.Equal(printed.Surd())
	}
	return gap(printed.Surd(), exact).Cmp(line.Surd()) <= 0
}

// nominal is a size as the ruler reads it: itself when it can be read exactly.
func (p *Pass) nominal(exact measure.Surd) measure.Length {
	return exact.NearestTo(rulerLine(p.Plan.Units))
}
