package check

import (
	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
)

// recutChecks are about sewn work that is cut up, opened or folded.
var recutChecks = []Check{
	{
		Rule: "piecing/chain-joins", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "strips of a chain are no longer than what a join costs",
		Why:     "A diagonal join costs a strip its width, a straight one two seam allowances. Strips of 10 in that are cut 10 in wide give nothing when they are joined on the diagonal.",
		Fix:     "use longer or narrower strips, or join them straight",
		Run:     faults(derive.ChainJoins),
	},
	{
		Rule: "piecing/no-such-seam", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "a ring is opened at a seam that its loop does not have",
		Why:     "A loop of six strips has six seams: five between its strips and the one that closes it. A ring cannot be opened at the seventh.",
		Fix:     "number the seams from 1 to the number of strips",
		Run:     faults(derive.NoSuchSeam),
	},
	{
		Rule: "piecing/recut-pieces", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the pieces of a part that is cut up do not fit together again",
		Why:     "Pieces that are turned on their side must be square, or the row steps; and every cut takes a seam allowance on both sides, so pieces no wider than two of them vanish.",
		Fix:     "cut the part into square pieces, turn none on its side, or cut fewer pieces",
		Run:     faults(derive.RecutPieces),
	},
}
