package bolts

import "slices"

// Saving is what one step less in a wanted length would save.
type Saving struct {
	Want int // index into the wants
	Cost int64
	Plan Plan // with the shorter length
}

// Shorter tries each wanted length one step of its grid shorter, alone. A saving
// is told only where it is proved: the shorter plan costs less than any plan
// for the length as it is. Of what is not ordered in bolts there is nothing to
// tell.
func Shorter(a Article, wants []Want, plan Plan) []Saving {
	if a.Gone || len(a.Offers) == 0 {
		return nil
	}
	var savings []Saving
	for i, w := range wants {
		if w.Count == 0 || w.Step == 0 || w.Step >= w.Length {
			continue
		}
		less := slices.Clone(wants)
		less[i].Length -= w.Step
		if p, err := Solve(a, less); err == nil && p.Cost < plan.Bound {
			savings = append(savings, Saving{i, plan.Cost - p.Cost, p})
		}
	}
	return savings
}
