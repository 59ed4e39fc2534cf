package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Chain is derived strips sewn end to end.
type Chain struct {
	Fabric *Fabric
	Width  measure.Length  // cut width of the strips
	Steps  []piecing.Chain // as joined, and after every fold
	Joined Joined          // for all that are needed, cut from one joined strip
}

// chain is strips sewn end to end and folded.
type chain struct {
	op plan.Chain
	p  *Part
	s  *Size
}

// Chain implements plan.Maker.
func (o *opening) Chain(op plan.Chain) { o.room = &chain{op: op, p: o.p, s: o.s} }

// Measure implements Operation.
func (r *chain) Measure() {
	p := r.p
	f := r.s.byFabric[r.op.Fabric.Text]
	if f == nil {
		return
	}
	seam, width := p.Seam.Allowance.Length, f.stripWidth(r.op.Width)
	first := piecing.Chain{Length: r.op.Length.Surd(), Width: width, Strips: 1}
	c := &Chain{Fabric: f, Width: width, Steps: first.Halvings(r.op.Folds.N, seam)}
	c.Joined = r.join(c, r.length())
	last := c.Steps[len(c.Steps)-1]
	p.Chain, p.Known = c, c.Joined.OK && last.Width > 2*seam && last.Length.Cmp((2*seam).Surd()) > 0
	p.Box = piecing.Box{Width: last.Length, Height: last.Width.Surd()}
}

func (r *chain) length() figure.F {
	return figure.Said("l", "length of a chain", r.op.Length.Length, r.op.Length.At)
}

// join joins strips to a length.
func (r *chain) join(c *Chain, need figure.F) Joined {
	width := figure.Said("w", "cut width", c.Width, r.op.Width.At)
	j := join(need.Where(r.op.At), c.Fabric.longFigure(), joinLoss(r.op.Joins, width, r.p.Figures.seam))
	j.Told = j.Told.Is(r.p.Name.Text, "strips")
	return j
}

// Ask implements Operation: it joins what all the chains take, and cuts them from
// it.
func (r *chain) Ask() {
	p, c := r.p, r.p.Chain
	if c == nil || !p.Known {
		return
	}
	c.Joined = r.join(c, p.NeededFigure().Times(r.length()))
	p.Figures.Count = c.Joined.Told
	c.Fabric.needJoined(p.Name, c.Width, c.Joined)
}

// Covers implements Operation.
func (r *chain) Covers(seam measure.Length) (least, most measure.Surd, ok bool) {
	return r.p.rectangle(seam)
}

// Seams implements Operation.
//
// Strips are joined end to end, and every fold of every chain is sewn along the
// edge: half of what was folded.
func (r *chain) Seams() (l measure.Surd, ok bool) {
	c := r.p.Chain
	if c == nil {
		return l, false
	}
	l = joinSeams(r.op.Joins, c.Width, c.Joined.Count)
	for _, step := range c.Steps[1:] {
		l = l.Add(step.Length.MulInt(r.p.Made))
	}
	return l, true
}

// OnRuler implements Operation.
func (r *chain) OnRuler() []OnRuler {
	return []OnRuler{{"strip width", r.op.Width}}
}

// Seamed implements Operation.
func (r *chain) Seamed() []Seamed {
	if r.p.Chain == nil {
		return nil
	}
	return []Seamed{{"a strip", r.p.Chain.Width, 2 * r.p.Seam.Allowance.Length, r.op.At}}
}

// Trims implements Operation.
func (r *chain) Trims() []Trimming { return nil }

// Wants implements Operation.
func (r *chain) Wants() []Want { return nil }

// Serves implements Operation.
func (r *chain) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// Gives implements Operation.
func (r *chain) Gives() *Giving { return nil }

// How implements Operation.
func (r *chain) How() say.Sentence {
	c := r.p.Chain
	text := say.That("%s; %s of %s, %s wide, give %s; cut it into lengths of %s", Joining(r.op.Joins), say.Many(c.Joined.Count, "strip"), c.Fabric.Role.Text,
		say.AsCut(c.Width), say.AsThere(c.Joined.Length), say.AsCut(r.op.Length))
	for i, step := range c.Steps[1:] {
		text = text.And(say.That("; fold %d: sew along the edge and cut the fold, %s wide and %s long", i+1, say.Long(step.Width), say.Long(step.Length)))
	}
	return text
}

// Traits implements Operation.
func (r *chain) Traits() Traits { return Traits{Sewn: true, Handed: true, Cut: true} }

// Draft implements Operation.
func (r *chain) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	c := r.p.Chain
	last := c.Steps[len(c.Steps)-1]
	var strips []Strip
	for range last.Strips {
		strips = append(strips, Strip{Fabric: c.Fabric, Width: c.Width})
	}
	return r.p.sewnStrips(d, strips, last.Length), true
}

// Lay implements Operation. Every fold lays one half of the rows on its head.
func (r *chain) Lay(l *Laying, n Turns) {
	if r.op.Folds.N == 0 {
		l.Place(r.op.Fabric, r.p.Name, Turned, n, Quarters.turned)
		return
	}
	var rows Turns
	for range int64(1) << (r.op.Folds.N - 1) {
		rows.add(n, 0)
		rows.add(n, 180)
	}
	l.Place(r.op.Fabric, r.p.Name, Folded, rows, Quarters.turned)
}

// Faults implements Faulty: strips no longer than what a join costs.
func (r *chain) Faults() []Fault {
	c := r.p.Chain
	if c == nil || c.Joined.OK {
		return nil
	}
	return []Fault{{
		Kind: ChainJoins, At: r.op.At, Root: true,
		Message: say.That("the strips of %q are %s long and each join costs %s", r.p.Name.Text, say.AsThere(c.Joined.Each), say.AsCut(c.Joined.Loss)),
		Hint:    say.That("use longer or narrower strips"),
	}}
}

// Strips implements Striped.
func (r *chain) Strips() []plan.Strip { return []plan.Strip{{Fabric: r.op.Fabric, Width: r.op.Width}} }

// Striping implements Stripwise.
func (r *chain) Striping() Striping {
	j := r.p.Chain.Joined
	return Striping{j.Count, 1, say.That("the %s that are needed take", say.AsCut(j.Need))}
}
