package supply

import (
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Leftover is what the planned kits leave on the shelf of an article that can no
// longer be ordered.
type Leftover struct {
	plan.Price
	Lengths []measure.Length // each in one piece
	Pieces  int64            // of what is sold by the piece
	More    []More           // kits that could be made from it
}

// More is how many further kits an article is enough for: of the run, and no more
// once it is cut for another.
type More struct {
	Run  int // index into the line's runs
	Kits int64
}

// Leftovers are those of the articles that kits take, and then those that none takes, each
// in the order of the price list.
func (l Line) Leftovers(prices *plan.PriceList, stock *plan.Stock) []Leftover {
	if prices == nil {
		return nil
	}
	taken := map[string]*Article{}
	for i := range l.Articles {
		taken[l.Articles[i].SKU] = &l.Articles[i]
	}
	var used, idle []Leftover
	for _, p := range prices.All() {
		if !p.Discontinued {
			continue
		}
		a := taken[p.SKU]
		if a == nil {
			left := Leftover{Price: p}
			if left.Lengths, left.Pieces = stock.OnHand(p.SKU); len(left.Lengths) > 0 || left.Pieces > 0 {
				idle = append(idle, left)
			}
			continue
		}
		left := Leftover{Price: p, Lengths: a.uncut(), Pieces: max(0, a.PiecesThere-a.Needs)}
		if len(left.Lengths) == 0 && left.Pieces == 0 {
			continue
		}
		for _, u := range a.Uses {
			if n := left.enough(u.Take); n > 0 {
				left.More = append(left.More, More{u.Run, n})
			}
		}
		used = append(used, left)
	}
	return append(used, idle...)
}

// uncut is what is left of the lengths on hand.
func (a *Article) uncut() []measure.Length {
	if a.Err != nil {
		return nil
	}
	whole := make([]bool, len(a.Stock.OnHand))
	for i := range whole {
		whole[i] = true
	}
	var left []measure.Length
	for _, c := range a.Plan.Cuts {
		if c.OnHand < 0 {
			continue
		}
		if whole[c.OnHand] = false; c.Left > 0 {
			left = append(left, c.Left)
		}
	}
	for i, is := range whole {
		if is {
			left = append(left, a.Stock.OnHand[i])
		}
	}
	return left
}

// enough is for how many kits that take so much.
func (l Leftover) enough(t Take) int64 {
	if t.Pieces > 0 {
		return l.Pieces / t.Pieces
	}
	var n int64
	for _, there := range l.Lengths {
		if t.Length > 0 {
			n += int64(there / t.Length)
		}
	}
	return n
}
