package tabulate

import (
	"fmt"
	"strconv"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

func howRecut(p *derive.Part, op plan.Recut, u measure.Unit) string {
	r := p.Recut
	text := fmt.Sprintf("cut %s into %d across by %d down, each %s x %s", op.Part.Text, op.Across.N, op.Down.N, r.Piece.Width.AsCut(u), r.Piece.Height.AsCut(u))
	if len(op.Turns) == 0 {
		return text + ", and sew them together again"
	}
	var rows []string
	for row := range op.Down.N {
		var turns []string
		for c := range op.Across.N {
			turns = append(turns, strconv.Itoa(op.Turn(row, c))+"°")
		}
		rows = append(rows, strings.Join(turns, ", "))
	}
	return text + "; turn them " + strings.Join(rows, " / ") + " and sew them together again"
}

func howLoop(p *derive.Part, op plan.Loop, u measure.Unit) string {
	l := p.Loop
	if p.Pool != nil {
		return howSharedLoop(p, op, u) + opened(p, op)
	}
	text := fmt.Sprintf("%s of set %s, last strip to first, cut into rings of %s, %d from each", many(l.Count, "loop"), op.Set.Text, op.Cut.AsCut(u), l.Yield.Each)
	return text + opened(p, op)
}

// opened says where the rings of a loop are opened.
func opened(p *derive.Part, op plan.Loop) string {
	if len(op.Open) == 0 {
		return ", each opened at the loop's own seam"
	}
	var seams []string
	for _, o := range op.Open {
		seams = append(seams, strconv.Itoa(o.N))
	}
	return fmt.Sprintf("; %s to a part, opened at seam %s and sewn side by side", many(p.Loop.Rings, "ring"), strings.Join(seams, ", "))
}

func howChain(p *derive.Part, op plan.Chain, u measure.Unit) string {
	c := p.Chain
	text := fmt.Sprintf("%s; %s of %s, %s wide, give %s; cut it into lengths of %s", joinText(op.Joins), many(c.Joined.Count, "strip"), c.Fabric.Role.Text,
		c.Width.AsCut(u), c.Joined.Length.AsThere(u), op.Length.AsCut(u))
	for i, step := range c.Steps[1:] {
		text += fmt.Sprintf("; fold %d: sew along the edge and cut the fold, %s wide and %s long", i+1, step.Width.Format(u), step.Length.Format(u))
	}
	return text
}
