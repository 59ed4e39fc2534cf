package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

var printedCoverChecks = []Check{
	{
		Rule: "printed/larger", Level: diag.Warning, Lesser: diag.Note, Since: "0.1.0", Scope: Size,
		Summary: "the printed backing or batting is larger than the quilt with its overhang",
		Why:     "A quilt of 52 x 60 in with 4 in beyond it on every side takes 60 x 68 in. Printed as 68 x 76 in, the backing has the overhang added twice, and its maker buys a panel more. Rounded up to the whole inch or centimetre it is right. More is a note, and a warning where a side is more than twice as long and more than 1 yd (1 m) too long.",
		Fix:     "print the quilt's size with its overhang, or name the packaged size of the batting in the plan",
		Run:     printedLarger,
	},
}

func printedLarger(p *Pass) {
	said := p.Size.Of.Printed
	if said == nil || !p.Size.Top.Known {
		return
	}
	if b := p.Size.Backing; b != nil && b.Known {
		f := p.Size.Fabric(b.Said.Fabric.Text)
		p.largerThan("backing", said.Backing, b.Said.Overhang.Length, b.Size, !f.Directional())
	}
	if b := p.Size.Batting; b != nil && !packaged(b.Said, said.Batting) {
		p.largerThan("batting", said.Batting, b.Said.Overhang.Length, b.Size, true)
	}
}

// packaged reports whether the printed batting is what it is sold as.
func packaged(b *plan.Batting, said plan.PrintedPair) bool {
	pack := b.Package
	roll := b.Roll.Given() && (said.Width.Length == b.Roll.Length || said.Height.Length == b.Roll.Length)
	return roll || pack[0].Given() && said.Width.Length == pack[0].Length && said.Height.Length == pack[1].Length
}

// largerThan compares a printed size with the one it is for, rounded up as
// patterns do, and turned if need be.
func (p *Pass) largerThan(what string, said plan.PrintedPair, overhang measure.Length, size piecing.Box, turnable bool) {
	w, h := said.Width.Length, said.Height.Length
	if ease := eased(p.Size.Of.Printed); !said.Given() || !coversBox(w+ease, h+ease, size, turnable) {
		return // too short is for family finish
	}
	least := p.covering(size)
	if turned := [2]measure.Length{least[1], least[0]}; turnable && over(w, h, turned) < over(w, h, least) {
		least = turned
	}
	if w <= least[0] && h <= least[1] {
		return
	}
	level := max(surplus(w, least[0], surplusCloth(p.Plan.Units)), surplus(h, least[1], surplusCloth(p.Plan.Units)))
	at := said.Width.At
	if w <= least[0] {
		at = said.Height.At
	}
	p.Report(at, Finding{
		Level: level,
		Message: fmt.Sprintf("the pattern prints a %s of %s; the quilt with %s beyond it on every side is %s", what,
			p.pair(w, h), p.length(overhang), p.boxCut(size)),
		Ways:  ways(p.printUpTo(said.Width, said.Height, size)),
		About: finishAbout(what), Root: true,
	})
}

// covering is a size rounded up to whole inches or centimetres, or to what the
// printed finished size is rounded to if that is coarser.
func (p *Pass) covering(size piecing.Box) [2]measure.Length {
	grid := max(p.Plan.Units.Length(), p.Size.Of.Printed.Rounding.Length)
	return [2]measure.Length{size.Width.CeilTo(grid), size.Height.CeilTo(grid)}
}

// over is how far a size lies beyond another, both ways together.
func over(w, h measure.Length, least [2]measure.Length) measure.Length {
	return max(0, w-least[0]) + max(0, h-least[1])
}
