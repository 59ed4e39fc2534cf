package derive

import (
	"cmp"
	"slices"

	"yardproof/schema/measure"
)

// Fragile is a yield and how little it takes to lose a piece of it.
type Fragile struct {
	Size  *Size
	Part  *Part
	Gives Giving
	Yield Yield
}

// Slack is how much shorter the strips may be before a piece is lost, rounded down
// to a tick.
func (f Fragile) Slack() measure.Length { return f.Yield.Slack() }

// Fragile lists the yields of the size on which some piece depends, the one with the
// least slack first.
func (s *Size) Fragile() []Fragile {
	var all []Fragile
	for _, p := range s.Parts {
		gives, y := p.Room.Gives(), p.Yield()
		if gives == nil || y == nil || y.Each == 0 || p.Needed == 0 || !s.Sure(Quantity{Kind: Count, Name: p.Name.Text}) {
			continue
		}
		all = append(all, Fragile{Size: s, Part: p, Gives: *gives, Yield: *y})
	}
	slices.SortStableFunc(all, func(a, b Fragile) int { return cmp.Compare(a.Slack(), b.Slack()) })
	return all
}
