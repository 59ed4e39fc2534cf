package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/plan"
)

// recutChecks are about sewn work that is cut up, opened or folded.
var recutChecks = []Check{
	{
		Rule: "piecing/chain-joins", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "strips of a chain are no longer than what a join costs",
		Why:     "A diagonal join costs a strip its width, a straight one two seam allowances. Strips of 10 in that are cut 10 in wide give nothing when they are joined on the diagonal.",
		Fix:     "use longer or narrower strips, or join them straight",
		Run:     chainJoins,
	},
	{
		Rule: "piecing/no-such-seam", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "a ring is opened at a seam that its loop does not have",
		Why:     "A loop of six strips has six seams: five between its strips and the one that closes it. A ring cannot be opened at the seventh.",
		Fix:     "number the seams from 1 to the number of strips",
		Run:     noSuchSeam,
	},
	{
		Rule: "piecing/recut-pieces", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the pieces of a part that is cut up do not fit together again",
		Why:     "Pieces that are turned on their side must be square, or the row steps; and every cut takes a seam allowance on both sides, so pieces no wider than two of them vanish.",
		Fix:     "cut the part into square pieces, turn none on its side, or cut fewer pieces",
		Run:     recutPieces,
	},
}

func chainJoins(p *Pass) {
	for _, part := range p.Size.Parts {
		c := part.Chain
		if c == nil || c.Joined.OK {
			continue
		}
		p.Report(part.Operation.(plan.Chain).At, Finding{
			Message: fmt.Sprintf("the strips of %q are %s long and each join costs %s", part.Name.Text, p.there(c.Joined.Each), p.needs(c.Joined.Loss)),
			Hint:    "use longer or narrower strips",
			About:   geometryOf(part), Root: true,
		})
	}
}

func noSuchSeam(p *Pass) {
	for _, part := range p.Size.Parts {
		op, ok := part.Operation.(plan.Loop)
		if !ok || part.Loop == nil {
			continue
		}
		seams := len(part.Loop.Set.Set.Strips)
		for _, o := range op.Open {
			if o.N <= seams {
				continue
			}
			p.Report(o.At, Finding{
				Message: fmt.Sprintf("a ring of %q is opened at seam %d; the loop of %d strips has %d", part.Name.Text, o.N, seams, seams),
				Hint:    fmt.Sprintf("name a seam from 1 to %d", seams),
				About:   geometryOf(part), Root: true,
				Related: []Related{{part.Loop.Set.Name.At, "the strip set"}},
			})
		}
	}
}

func recutPieces(p *Pass) {
	for _, part := range p.Size.Parts {
		r := part.Recut
		if r == nil {
			continue
		}
		op, piece := part.Operation.(plan.Recut), r.Piece.Width.AsThere(p.Plan.Units)+" x "+r.Piece.Height.AsThere(p.Plan.Units)
		f := Finding{About: geometryOf(part), Root: true, Related: []Related{{r.Of.Name.At, "what is cut up"}}}
		switch {
		case !part.Known:
			f.Message = fmt.Sprintf("%q is cut into pieces of %s and their seams take %s", op.Part.Text, piece, p.needs(2*part.Seam.Allowance.Length))
			f.Hint = "cut fewer pieces"
		case stepped(r):
			f.Message = fmt.Sprintf("%q is cut into pieces of %s, which are not square, and some of a row or column are turned on their side", op.Part.Text, piece)
			f.Hint = "turn them by 180 degrees, or cut square pieces"
		default:
			continue
		}
		p.Report(op.At, f)
	}
}

// stepped tells whether the pieces of some row differ in height, or the rows
// in width.
func stepped(r *derive.Recut) bool {
	a := r.Assembly
	for i := range a.RowHeights {
		if a.Tallest[i].Sub(a.RowHeights[i]).Cmp(easedHeight.Surd()) > 0 || a.RowWidths[i].Sub(a.Width).Cmp(easedHeight.Surd()) > 0 {
			return true
		}
	}
	return false
}
