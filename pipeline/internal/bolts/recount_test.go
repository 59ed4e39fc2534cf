package bolts

import (
	"errors"
	"slices"
	"testing"

	"yardproof/schema/measure"
)

// Each plan that is spoilt in one way must be refused.
func TestSpoiltPlansAreRefused(t *testing.T) {
	inBolts, byLength := fifteen(0), Article{}
	for _, a := range []*Article{&inBolts, &byLength} {
		a.OnHand, a.Least, a.Multiple = []measure.Length{3 * yard}, 30*yard, 15*yard
	}
	wants := []Want{eighths(11, 12), eighths(4, 3)}
	one := func(p *Plan) *Cut { return &p.Cuts[0] }
	for what, c := range map[string]struct {
		a     Article
		spoil func(*Plan)
	}{
		"nothing is cut":               {inBolts, func(p *Plan) { *p = Plan{Order: []int{0}, Proved: true} }},
		"nothing is ordered":           {byLength, func(p *Plan) { *p = Plan{Proved: true} }},
		"a bolt less is ordered":       {inBolts, func(p *Plan) { p.Order[0]-- }},
		"a bolt more is ordered":       {inBolts, func(p *Plan) { p.Order[0]++ }},
		"less is ordered":              {byLength, func(p *Plan) { p.Length -= 15 * yard; p.Cost, p.Bound = int64(p.Length), int64(p.Length) }},
		"no multiple":                  {byLength, func(p *Plan) { p.Length++; p.Cost++; p.Bound++ }},
		"a kit is forgotten":           {inBolts, func(p *Plan) { one(p).Pieces[0].Count--; one(p).Left += wants[0].Length }},
		"a kit is not cut":             {byLength, func(p *Plan) { p.Rest[0].Count-- }},
		"a bolt is cut beyond its end": {inBolts, func(p *Plan) { one(p).Left -= yard }},
		"a part-bolt is cut twice":     {byLength, func(p *Plan) { one(p).Repeat++; p.Rest = p.Rest[:1]; p.Rest[0].Count -= 2 }},
		"below its bound":              {inBolts, func(p *Plan) { p.Bound = p.Cost + 1 }},
		"called proved":                {inBolts, func(p *Plan) { p.Bound, p.Proved = p.Cost-1, true }},
	} {
		p := solve(t, c.a, wants...)
		p.Order, p.Rest, p.Cuts = slices.Clone(p.Order), slices.Clone(p.Rest), slices.Clone(p.Cuts)
		for i := range p.Cuts {
			p.Cuts[i].Pieces = slices.Clone(p.Cuts[i].Pieces)
		}
		c.spoil(&p)
		if f := new(Fault); !errors.As(Recount(c.a, wants, p), &f) {
			t.Errorf("%s: accepted %+v", what, p)
		}
	}
}
