package supply

import (
	"yardproof/pipeline/internal/bolts"
	"yardproof/schema/plan"
)

// Budget is what the bolt plans of all articles of a line may cost together, in
// the unit of [bolts.Work], of which a processor does some 80 million a second.
const Budget = 240_000_000

// share plans every article with an equal part of half of a budget. What they
// leave goes, in equal parts, to those that it was too little for, which are
// planned once more: no article's place decides how far it is searched.
func (l *Line) share(budget int, stock *plan.Stock) {
	all := make([]int, len(l.Articles))
	for i := range all {
		all[i] = i
	}
	for part, first := budget/2/max(1, len(all)), true; len(all) > 0; first = false {
		var short []int
		for _, i := range all {
			work := &bolts.Work{Allowed: part}
			a := l.Articles[i]
			l.Articles[i] = l.article(a.Price, a.Uses, stock, work)
			budget -= work.Done
			if work.Short {
				short = append(short, i)
			}
		}
		more := budget / max(1, len(short))
		if !first || more < 2*part {
			return
		}
		all, part = short, more
	}
}
