package tabulate

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// howShared says how segments are cut that share their strip sets with others, or
// are cut from a set that another part makes.
func howShared(p *derive.Part, op plan.StripSet, u measure.Unit) string {
	what := "segments of " + op.Segment.AsCut(u) + atAngle(op)
	if p.Pool == nil {
		return fmt.Sprintf("%s of %s cut into %s, %d from each", many(p.Set.Count, "set"), op.Of.Text, what, p.Set.Cut.Each)
	}
	if first := p.Pool.Parts[0]; first != p {
		return "cut from the same sets as " + first.Name.Text + " into " + what
	}
	text := many(p.Set.Count, "strip set") + " of " + listStrips(p.Set.Strips)
	if op.Of.Given() {
		text = many(p.Set.Count, "set") + " of " + op.Of.Text
	}
	return text + " cut into " + what + and(p) + ": " + poolCuts(p.Pool, "set", u)
}

// howSharedLoop says the same of rings.
func howSharedLoop(p *derive.Part, op plan.Loop, u measure.Unit) string {
	what := "rings of " + op.Cut.AsCut(u)
	if first := p.Pool.Parts[0]; first != p {
		return "cut from the same loops as " + first.Name.Text + " into " + what
	}
	return fmt.Sprintf("%s of set %s, last strip to first, cut into %s%s: %s", many(p.Loop.Count, "loop"), op.Set.Text, what, and(p), poolCuts(p.Pool, "loop", u))
}

// and names the parts that share sets with the first of them.
func and(p *derive.Part) string {
	var names []string
	for _, q := range p.Pool.Parts[1:] {
		names = append(names, q.Name.Text)
	}
	return " and those of " + strings.Join(names, ", ")
}

// poolCuts says what is cut from each set: "2 sets into 8 of 2 in (slim), 4 of 3
// in (wide) each".
func poolCuts(pool *derive.Pool, from string, u measure.Unit) string {
	var runs []string
	for _, c := range pool.Cuts {
		var pieces []string
		for _, piece := range c.Pieces {
			pieces = append(pieces, fmt.Sprintf("%d of %s (%s)", piece.Count, piece.Part.Subcut.Width.AsCut(u), piece.Part.Name.Text))
		}
		run := many(c.Sets, from) + " into " + strings.Join(pieces, ", ")
		if c.Sets > 1 {
			run += " each"
		}
		runs = append(runs, run)
	}
	return strings.Join(runs, "; ")
}

// poolNote says how full the fullest set is, and whether fewer are excluded.
func poolNote(p *derive.Part, u measure.Unit) []string {
	pool := p.Pool
	if pool.Parts[0] != p {
		return nil
	}
	out := []string{fmt.Sprintf("the fullest takes %s of %s: %s to spare", pool.Fill.AsCut(u), pool.Length.AsThere(u), (pool.Length - pool.Fill).AsThere(u))}
	if pool.Least < pool.Sets {
		out = append(out, fmt.Sprintf("whether fewer do is not proved, but %d at least", pool.Least))
	}
	return out
}
