package pipeline

import (
	"math/bits"

	"yardproof/schema/plan"
)

// What the cuttings of one plan may cost, in the unit of cutting.Spent.Work, of
// which a processor does some 80 million a second: the check's, and those of a run
// that makes tables, for which every cutting is solved.
const (
	checkBudget  = 96_000_000
	tablesBudget = 480_000_000
)

// budgets are what the cuttings of each plan may cost.
type budgets struct {
	check, tables int
	trials        int          // what trying the ways out of what is found may cost, besides
	slips         int          // and looking for the one mistake behind it
	watch         func(*purse) // is shown what a plan's has come to; for tests
}

// mostRounds is how often a plan is gone through at most.
const mostRounds = 3

// purse is the budget of work of one plan. A question gets its share the first
// time round, whatever was asked before it. What all of them leave goes, in equal
// parts, to those that it was not enough for, which are then asked once more. So
// neither the order of sizes nor what else a run holds decides which of them is
// settled.
type purse struct {
	budget  int
	share   int            // of a question, the first time
	granted map[string]int // more, by question
	answers map[string]answer
	short   map[string]bool // it was not enough for, this time round
	spent   int
	rounds  int
}

func newPurse(budget, questions int) *purse {
	return &purse{budget: budget, share: part(budget/2, questions), granted: map[string]int{}, answers: map[string]answer{}, short: map[string]bool{}}
}

// part is an equal part of a budget, rounded down to a power of two: what
// different plans allow for one problem is then often the same, and it is solved
// once.
func part(budget, parts int) int {
	return 1 << max(0, bits.Len(uint(max(1, budget/max(1, parts))))-1)
}

// ask answers a question within what is allowed for it.
func (p *purse) ask(key string, solve func(allowance int) answer) answer {
	allowance := max(p.share, p.granted[key])
	a, known := p.answers[key]
	if !known || !a.serves(allowance) {
		if a = solve(allowance); a.err == nil {
			p.answers[key] = a
			p.spent += a.spent.Work
		}
	}
	if a.spent.Short {
		p.short[key] = true
	}
	return a
}

// again grants the questions that were short what is left, and reports whether
// that is worth asking them once more.
func (p *purse) again() bool {
	if p.rounds++; len(p.short) == 0 || p.rounds == mostRounds {
		return false
	}
	share, least := max(0, p.budget-p.spent)/len(p.short), p.budget
	for key := range p.short {
		least = min(least, p.answers[key].allowance)
	}
	if share < 2*least {
		return false
	}
	for key := range p.short {
		p.granted[key] = max(share, p.granted[key])
	}
	clear(p.short)
	return true
}

// questions is about how many cuttings a plan may ask for: of each fabric in each
// size and colourway the shortest layout, and two more about it.
func questions(p *plan.Plan) int {
	n := 0
	for _, s := range p.Sizes {
		n += 3 * len(s.Fabrics) * (1 + len(s.Ways))
	}
	return n
}
