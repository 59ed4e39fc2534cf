package baseline

import (
	"slices"
	"strconv"

	"yardproof/pipeline/diag"
)

// met is a finding of a run.
type met struct {
	diag.Finding
	identity diag.Identity
	follows  bool   // it is told as following from another
	root     string // the name of that
}

// identified are findings, in the one order, and after all of them those that
// follow from them, in the one order, too.
func identified(findings []diag.Finding) []met {
	var identities diag.Identities
	var roots, followers []met
	for _, f := range findings {
		roots = append(roots, met{Finding: f, identity: identities.Of(f)})
		for _, g := range diag.Flatten(f.Follows) {
			followers = append(followers, met{Finding: g, follows: true, root: named(f)})
		}
	}
	slices.SortStableFunc(followers, func(a, b met) int { return diag.Compare(a.Finding, b.Finding) })
	for i := range followers {
		followers[i].identity = identities.Of(followers[i].Finding)
	}
	return append(roots, followers...)
}

// named is what a finding is found by within its run: what the one order of
// findings compares.
func named(f diag.Finding) string {
	return f.Place.File + "\x00" + strconv.Itoa(f.Place.Range.Start) + "\x00" + strconv.Itoa(f.Place.Range.End) + "\x00" + f.Rule + "\x00" + f.Message
}
