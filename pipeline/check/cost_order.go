package check

import (
	"fmt"
	"math/big"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/supply"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

var orderChecks = []Check{
	{
		Rule: "cost/no-lead-time", Level: diag.Warning, Since: "0.1.0", Scope: Line,
		Summary: "kits are needed by a day, and nobody says how long an article takes to come",
		Why:     "Kits for a fair on 15 April need their fabric before. Without the supplier's days the last day to order is not known, and the order sheet can only name the day on which the kits should be packed.",
		Fix:     "give the article its lead_days in the price list, 0 where it is fetched the same day",
	},
	{
		Rule: "cost/order-late", Level: diag.Warning, Since: "0.1.0", Scope: Line,
		Summary: "the last day to order an article has passed",
		Why:     "A mill that takes 21 days and kits that are needed by 15 April leave until 25 March to order. After that the kits come late, or another source has to be found.",
		Fix:     "order it elsewhere, ask for express delivery, or give the kits a later day",
	},
	{
		Rule: "cost/over-ordered", Level: diag.Warning, Since: "0.1.0", Scope: Line,
		Summary: "a supplier's multiple makes the order more than twice what the kits take",
		Why:     "Orders that have to be multiples of 60 yd make 60 of 7 1/2: what is paid for the kits is an eighth of the order, and the rest stays on the shelf.",
		Fix:     "ask for a smaller multiple, plan more kits, or buy it elsewhere",
	},
}

// absurd reports whether the multiple of its orders makes one more than twice what
// the kits take of it. Where a larger order is cheaper than what would do, that is no fault.
func (s supplied) absurd() bool {
	if s.Multiple == nil || s.Order.Cmp(s.Smallest) > 0 {
		return false
	}
	twice := new(big.Rat).Mul(big.NewRat(2, 1), s.Need)
	return s.Order.Cmp(twice) > 0 && s.Alone().Cmp(s.Order) < 0
}

// late is an order that should have been sent.
func (s supplied) late() []source.Problem {
	run, needed, ok := s.line.Soonest(s.Article)
	by := s.line.OrderBy(s.Article)
	if !ok || !s.today.Given() || s.today.Compare(by) <= 0 {
		return nil
	}
	takes := ""
	if s.LeadSaid {
		takes = fmt.Sprintf(", %s takes %s", s.SKU, count(s.LeadDays, "day"))
	}
	return []source.Problem{s.problem("cost/order-late", "order it elsewhere or by express, or give the kits a later day",
		"kits of %s are needed by %s%s: the last day to order it was %s, %s ago", s.line.Runs[run].Name(), needed, takes, by, count(s.today.Since(by), "day"))}
}

// noLeadTimes is one finding for all articles of which nobody says how long they
// take, though kits with them are needed by a day that is still to come.
func noLeadTimes(l supply.Line, today plan.Date) []diag.Finding {
	var first *supply.Article
	var others []string
	for i := range l.Articles {
		a := &l.Articles[i]
		_, needed, ok := l.Soonest(a)
		switch {
		case !ok || a.LeadSaid || today.Given() && today.Compare(needed) > 0:
		case first == nil:
			first = a
		default:
			others = append(others, a.SKU)
		}
	}
	if first == nil {
		return nil
	}
	run, needed, _ := l.Soonest(first)
	message := fmt.Sprintf("kits of %s are needed by %s, and the price list names no lead time of %s", l.Runs[run].Name(), needed, first.SKU)
	if n := len(others); n > 0 {
		message += ", nor of " + strings.Join(others[:min(n, mostNamed)], ", ")
		if n > mostNamed {
			message += fmt.Sprintf(" and %d more that kits with a day take", n-mostNamed)
		}
	}
	return Problems(first.File, nil, "", []source.Problem{{Code: "cost/no-lead-time", Range: first.At, Message: message,
		Hint: "give the article its lead_days, 0 where it is fetched the same day"}})
}
