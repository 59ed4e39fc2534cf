package check

import (
	"errors"
	"fmt"
	"math/big"
	"strconv"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/bolts"
	"yardproof/pipeline/internal/supply"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

var supplyChecks = []Check{
	{
		Rule: "cost/bolt-shortfall", Level: diag.Error, Since: "0.1.0", Scope: Line,
		Summary: "the fabric of the planned kits is not to be had",
		Why:     "What is no longer made cannot be ordered, and a kit's length is never joined from two bolts. Of 3 yd on hand two kits of 1 3/8 yd can be cut; the third was promised and cannot be sent.",
		Fix:     "plan fewer kits, take another article into the plan, or have another bolt offered",
	},
	{
		Rule: "cost/saves-a-bolt", Level: diag.Note, Since: "0.1.0", Scope: Line,
		Summary: "a little less fabric in a kit would save a bolt",
		Why:     "Bolts are bought whole. Twelve kits of 1 3/8 yd take two bolts of 15 yd, twelve of 1 1/4 yd take one: an eighth less in the plan saves 15 yd. It is told only where a layout cuts the size from the shorter length.",
		Fix:     "cut the kit by the packed layout, or without the cushion",
	},
	{
		Rule: "cost/under-minimum", Level: diag.Warning, Since: "0.1.0", Scope: Line,
		Summary: "the planned kits take less than the supplier's smallest order",
		Why:     "What is ordered only to reach the smallest order is paid for with the kits and stays on the shelf. A run of one bolt at a supplier who sends four costs four.",
		Fix:     "plan more kits, share the fabric with another plan, or buy it elsewhere",
	},
}

// Supply is what there is to say of the articles that a line's planned kits
// take, at their rows of the price list. Without a day for today no order is late.
func Supply(l supply.Line, currency measure.Currency, today plan.Date) []diag.Finding {
	found := noLeadTimes(l, today)
	for i := range l.Articles {
		a := &l.Articles[i]
		s := supplied{line: l, Article: a, currency: currency, today: today}
		found = append(found, Problems(a.File, nil, "", s.problems())...)
	}
	return diag.Sort(found)
}

// supplied is one article of a line.
type supplied struct {
	line supply.Line
	*supply.Article
	currency measure.Currency
	today    plan.Date
}

func (s supplied) problem(rule, hint, format string, args ...any) source.Problem {
	return source.Problem{Code: rule, Range: s.At, Message: fmt.Sprintf(format, args...), Hint: hint}
}

func (s supplied) problems() []source.Problem {
	switch {
	case s.Err != nil:
		return []source.Problem{s.noPlan()}
	case s.Discontinued:
		return s.missing()
	}
	all := append(s.savings(), s.late()...)
	if alone, short := s.Short(); short {
		all = append(all, s.problem("cost/under-minimum", "plan more kits of it, or buy it elsewhere",
			"the kits take an order of %s of %s, and the smallest is %s: the order becomes %s, for %s",
			s.sold(alone), s.SKU, s.sold(s.Minimum), s.sold(s.Order), s.money(s.Order)))
	} else if s.absurd() {
		all = append(all, s.problem("cost/over-ordered", "ask for a smaller multiple, plan more kits of it, or buy it elsewhere",
			"the kits take %s of %s, and it comes in multiples of %s: the order becomes %s, for %s",
			s.sold(s.Need), s.SKU, s.sold(s.Multiple), s.sold(s.Order), s.money(s.Order)))
	}
	return all
}

func (s supplied) noPlan() source.Problem {
	const rule = "cost/bolt-shortfall"
	if long, ok := errors.AsType[*bolts.TooLong](s.Err); ok {
		return s.problem(rule, "have a longer bolt offered, or put less into the kit", "a kit of %s takes %s of %s in one piece, and the longest bolt holds %s",
			s.kit(long.Want), long.Needs.AsCut(s.unit()), s.SKU, long.Longest.AsThere(s.unit()))
	}
	if order, ok := errors.AsType[*bolts.Unorderable](s.Err); ok {
		return s.problem(rule, "correct bolt, minimum or multiple in the price list", "no number of bolts of %s (%s) makes an order of at least %s that is a multiple of %s",
			s.SKU, s.lengths(s.Bolts), s.length(order.Least), s.length(order.Multiple))
	}
	return s.problem(rule, "correct the article in the price list", "there is no bolt plan of %s: %v", s.SKU, s.Err)
}

// missing is what cannot be ordered any more and is not there.
func (s supplied) missing() []source.Problem {
	hint := "plan fewer kits, or take another article into the plan"
	if s.Substitute != "" {
		hint = "take its substitute " + s.Substitute + " into the plan, or plan fewer kits"
	}
	if n := s.Missing(); n > 0 {
		return []source.Problem{s.problem("cost/bolt-shortfall", hint, "%s is discontinued: the kits take %s, and on hand there is %s", s.SKU, s.pieces(s.Needs), s.pieces(s.PiecesThere))}
	}
	if len(s.Plan.Rest) == 0 {
		return nil
	}
	var kits []string
	for _, r := range s.Plan.Rest {
		kits = append(kits, fmt.Sprintf("%d of %s of %s (%s each)", r.Count, count(s.Wants[r.Want].Count, "kit"), s.kit(r.Want), s.length(s.Wants[r.Want].Length)))
	}
	return []source.Problem{s.problem("cost/bolt-shortfall", hint, "%s is discontinued, and what is on hand leaves %s without it", s.SKU, strings.Join(kits, ", "))}
}

// mostNamed is how many kits a finding names that holds for each of them.
const mostNamed = 4

// packedHint says how a kit comes out of a step less: it was found that it does.
const packedHint = "it can be cut from that: say \"cutting\": \"packed\" for the fabric, or take less of a cushion"

// savings are one problem for all kits of which a step less has the same effect.
func (s supplied) savings() []source.Problem {
	type effect struct{ step, length measure.Length }
	var order []effect
	by := map[effect][]string{}
	for _, saving := range s.Savings {
		w := s.Wants[saving.Want]
		e := effect{w.Step, saving.Plan.Length}
		if by[e] == nil {
			order = append(order, e)
		}
		by[e] = append(by[e], fmt.Sprintf("%s (%s, %s)", s.kit(saving.Want), s.Uses[saving.Want].What, s.length(w.Length)))
	}
	var all []source.Problem
	for _, e := range order {
		kits, hint := by[e][0], packedHint
		if n := len(by[e]); n > 1 {
			kits, hint = "any one of "+strings.Join(by[e][:min(n, mostNamed)], ", "), packedHint
			if n > mostNamed {
				kits += fmt.Sprintf(" and %d more", n-mostNamed)
			}
		}
		less := new(big.Rat).SetFrac64(int64(e.length), int64(s.Unit.Length()))
		all = append(all, s.problem("cost/saves-a-bolt", hint, "%s less in %s would save a bolt of %s: %s in place of %s, %s in place of %s",
			s.length(e.step), kits, s.SKU, s.length(e.length), s.length(s.Plan.Length), s.money(less), s.money(s.Order)))
	}
	return all
}

// kit names the kit of a want.
func (s supplied) kit(want int) string { return s.line.Runs[s.Uses[want].Run].Name() }

// unit is what its lengths are told in.
func (s supplied) unit() measure.Unit {
	if s.Unit == plan.PerYard {
		return measure.In
	}
	return measure.Cm
}

func (s supplied) length(l measure.Length) string { return measure.FormatFabric(l, s.unit()) }

func (s supplied) lengths(all []measure.Length) string {
	var words []string
	for _, l := range all {
		words = append(words, s.length(l))
	}
	return strings.Join(words, ", ")
}

func (s supplied) pieces(n int64) string {
	text := strconv.FormatInt(n, 10)
	switch {
	case s.Unit == plan.PerEach:
		return text
	case n == 1:
		return text + " " + string(s.Unit)
	}
	return text + " " + string(s.Unit) + "s"
}

// sold is a quantity in the price's unit.
func (s supplied) sold(quantity *big.Rat) string {
	if !s.ByLength() {
		return s.pieces(supply.Up(quantity))
	}
	ticks := new(big.Rat).Mul(quantity, big.NewRat(int64(s.Unit.Length()), 1))
	return s.length(measure.Length(supply.Up(ticks)))
}

func (s supplied) money(quantity *big.Rat) string {
	return measure.RoundMoney(new(big.Rat).Mul(quantity, s.For(quantity)), s.currency).Format()
}
