package check

import (
	"fmt"
	"slices"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/slip"
	"yardproof/schema/plan"
)

// slipChecks are about one mistake that explains several findings, which package
// slip looks for.
var slipChecks = []Check{
	{
		Rule: "slip/one-value", Level: diag.Error, Since: "0.1.0", Scope: Together,
		Summary: "one value explains all that disagrees",
		Why:     "The recipe and the printed figures tell the same quilt twice. Where a border is written 1/4 in too wide, the finished sizes of all sizes disagree, and the backing, and the fabric: a pattern in which those are printed anew agrees with itself and is another quilt. The one value with which everything agrees was probably meant.",
		Fix:     "write the value with which everything agrees, or mend what follows one by one if it is not meant",
	},
}

// Slips tells of the slips that explain what was found, the likeliest first: as a
// finding with what the first of them clears folded under it, or as the first ways out
// of the finding that it clears alone.
func Slips(p *plan.Plan, found []diag.Finding, slips []slip.Slip) []diag.Finding {
	if len(slips) == 0 || len(slips[0].Clear) == 0 {
		return found
	}
	var ways []diag.Way
	for _, s := range slips {
		way := mend(s.Edits...)
		way.Says = s.Does
		ways = append(ways, way)
	}
	first := slips[0]
	c := byRule["slip/one-value"]
	f := diag.Finding{Rule: c.Rule, Plan: p.ID.Text, Place: newPlaces(p.File, p.Tree).at(first.At), Sizes: first.Sizes, Ways: ways,
		Message: first.Says + "; with " + first.Is + agreement(first)}
	var rest []diag.Finding
	for _, g := range found {
		if clears(first, g) {
			f.Follows = append(f.Follows, g)
			f.Level = max(f.Level, g.Level)
		} else {
			rest = append(rest, g)
		}
	}
	switch {
	case len(f.Follows) == 0:
		return found
	case len(first.Clear) == 1 && !first.Sure:
		return found
	case len(first.Clear) == 1:
		f = f.Follows[0]
		if len(f.Ways) == 0 && f.Hint != "" {
			f.Ways = []diag.Way{advise(f.Hint)}
		}
		others := slices.DeleteFunc(slices.Clone(f.Ways), func(w diag.Way) bool { return writesAs(w, ways[0]) })
		if f.Ways = append(ways[:1:1], others...); first.Print {
			f.Ways = append(others, ways[0])
		}
	}
	return diag.Sort(append(rest, f))
}

// writesAs reports whether two ways begin by writing the same in the same place.
func writesAs(a, b diag.Way) bool {
	return len(a.Edits) > 0 && len(b.Edits) > 0 && a.Edits[0].Range == b.Edits[0].Range && a.Edits[0].Text == b.Edits[0].Text
}

func clears(s slip.Slip, f diag.Finding) bool {
	return slices.ContainsFunc(s.Clear, func(g diag.Finding) bool { return diag.Compare(f, g) == 0 })
}

// agreement is what would be in order with a slip mended.
func agreement(s slip.Slip) string {
	agree := ""
	switch {
	case s.Figures == 1:
		agree = "the printed figure that it contradicts agrees"
	case s.Figures > 1:
		agree = fmt.Sprintf("all %d printed figures that it contradicts agree", s.Figures)
	}
	if s.Figures > 0 && len(s.Sizes) > 1 {
		agree += fmt.Sprintf(", in %d sizes", len(s.Sizes))
	}
	switch {
	case !s.Sewn:
		return ", " + agree
	case agree == "":
		return " everything fits"
	}
	return " everything fits, and " + agree
}
