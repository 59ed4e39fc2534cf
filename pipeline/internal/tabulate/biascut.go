package tabulate

import (
	"fmt"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// onBias says what is cut on the bias from the rectangle or square of a cut, with
// which the sentence began; nothing where it lies straight.
func (c cutter) onBias(n derive.Need) string {
	b := n.OnBias
	switch {
	case b == nil:
		return ""
	case b.From != nil:
		return ", cut at 45 degrees into " + c.biasStrips(n)
	case b.Length > 0:
		return ", from each one piece " + extents(b.Width, b.Length, c.u) + " on the bias"
	case c.s.Binding.Said.Kind == plan.ContinuousBias:
		return ", sewn to a tube and cut round and round into one bias strip " + b.Width.AsCut(c.u) + " wide"
	}
	return ", cut into bias strips " + b.Width.AsCut(c.u) + " wide"
}

// biasStrips says how many strips a rectangle gives, how long, and what of them.
func (c cutter) biasStrips(n derive.Need) string {
	b := n.OnBias
	p := b.From
	text := ""
	if p.Strips > 0 {
		text = fmt.Sprintf("%s %s wide, %s long from edge to edge", say.Many(p.Strips, "bias strip"), b.Width.AsCut(c.u),
			p.High.Surd().Mul(measure.Root2()).AsThere(c.u))
	}
	shorter := int64(len(piecing.BiasStrips(p.High, b.Width)))
	if b.Length > 0 {
		shorter = p.Short(b.Length)
	}
	switch {
	case shorter > 0 && text == "":
		text = fmt.Sprintf("%s %s wide from its two corners", say.Many(shorter, "bias strip"), b.Width.AsCut(c.u))
	case shorter > 0:
		text += fmt.Sprintf(" and %d shorter from its two corners", shorter)
	}
	if b.Length == 0 {
		return text + ", joined on the straight grain"
	}
	return text + fmt.Sprintf(": %s of %s long", say.Many(p.Pieces(b.Length), "piece"), b.Length.AsCut(c.u))
}

// sideBySide is the layout with bias strips cut side by side where the plan's has
// squares, where it saves a step of what is bought or makes the printed length
// enough.
func (c cutter) sideBySide() (o another, ok bool) {
	if c.f.Form != plan.Yardage || !c.s.SureOfCloth(c.f) || len(c.f.Needs) == 0 {
		return o, false
	}
	b, printed := c.f.BiasCut(), c.f.Printed()
	if b == nil || b.Buy >= c.f.Buy && (printed < b.Gross || printed >= c.f.Gross) {
		return o, false
	}
	o = another{cutter: c, id: "-bias", name: ", bias strips side by side instead"}
	o.f, o.layout = b.Of, b.Layout
	own, method := c.f.Amount, "the plain method"
	if c.f.Cuts == plan.PackedCuts {
		method = "the packed layout"
	}
	o.tabulate(o.lead(own, method))
	return o, true
}
