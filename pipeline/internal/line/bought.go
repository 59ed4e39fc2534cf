package line

import (
	"math/big"

	"yardproof/pipeline/internal/bolts"
	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/supply"
	"yardproof/pipeline/report"
	"yardproof/schema/plan"
)

// Alone is what the planned kits of one plan take of fabric when it is ordered for
// them alone, with nothing on hand: what their bought basis is until somebody
// says what was paid.
type Alone struct {
	of map[*kit.Kit]Ordered
}

// Ordered is the fabric that is ordered for the run of one kit.
type Ordered struct {
	Differs costing.Result // by how many kits the run is another than this was worked out for
	Cost    costing.Result // RunAgain while any run of the plan is
}

// aloneBudget is what the bolt plans of one plan's kits may cost, in the unit of
// [bolts.Work]: a tenth of a second.
const aloneBudget = 8_000_000

// mostAlone is how many kits of a plan are ordered for: the formulas name the run of
// each, and programs take no longer ones. Of more the bought basis is left open.
const mostAlone = 100

// AsIfAlone works that out, and gives the kits their bought basis. Stop, which may
// be nil, tells that nobody waits any more.
func AsIfAlone(kits []*kit.Kit, prices *plan.PriceList, stop func() bool) Alone {
	alone := Alone{of: map[*kit.Kit]Ordered{}}
	var asked []supply.Asked
	var of []*kit.Kit
	for _, k := range kits {
		if p := planned(k); k.Known && p != nil && allPriced(k) {
			p.Takes = nil
			for _, l := range k.Fabrics {
				t := take(l)
				t.Step = 0
				p.Takes = append(p.Takes, t)
			}
			asked, of = append(asked, supply.Asked{Plan: k.Size.Plan.ID.Text, Kit: *p}), append(of, k)
		}
	}
	if len(asked) == 0 || len(asked) > mostAlone {
		return alone
	}
	l := supply.Solver(bolts.Solve).Within(aloneBudget, stop, asked, prices, nil)
	var differs []*report.Expr
	for _, k := range of {
		made, now := costing.Fixed(k.Cells.Run.Value.Num().Int64()), costing.Ref(k.Cells.Run.Name, k.Cells.Run.Value)
		r := costing.Result{Name: "run_differs" + k.Cells.Suffix, Expr: costing.Most(costing.Less(now, made), costing.Less(made, now))}
		alone.of[k], differs = Ordered{Differs: r}, append(differs, costing.Of(r))
	}
	for i, k := range of {
		shares, ok := l.Shares(i)
		if !ok {
			delete(alone.of, k)
			continue
		}
		var parts []*report.Expr
		for _, s := range shares {
			parts = append(parts, chargedAlone(&l.Articles[s.Article], s.Of, k))
		}
		o := alone.of[k]
		stale := costing.Exceeds(costing.Sum(differs...), costing.Fixed(0))
		o.Cost = costing.Result{Name: "ordered_for_the_run" + k.Cells.Suffix, Expr: costing.If(stale, costing.Words(RunAgain), costing.Round(costing.Sum(parts...), k.Cells.Digits))}
		alone.of[k] = o
		k.Reprice(costing.Ordered{Cost: o.Cost, Stale: stale})
	}
	return alone
}

// chargedAlone is a kit's share of what an order costs, over the price cell of its
// fabric: with freight, duty and fees where the kit bears these. What bolts lose is
// in the order already. A supplier's price for more is written out.
func chargedAlone(a *supply.Article, share *big.Rat, k *kit.Kit) *report.Expr {
	quantity, price := new(big.Rat).Mul(a.Order, share), &report.Expr{Op: report.Const, Value: a.Each}
	for _, l := range k.Fabrics {
		if l.Article.Text != a.SKU {
			continue
		}
		if l.Price.Value.Cmp(a.Each) == 0 {
			price = costing.Ref(l.Price.Name, l.Price.Value)
		}
		if l.Landed != nil {
			price = costing.Times(price, costing.Sum(costing.Fixed(1), costing.Ref(l.Landed.Share.Name, l.Landed.Share.Value)))
			if each := l.Landed.Each; each.Name != "" {
				price = costing.Sum(price, costing.Ref(each.Name, each.Value))
			}
			quantity.Mul(quantity, big.NewRat(10_000-a.Loss.BasisPoints, 10_000))
		}
		break
	}
	return costing.Times(&report.Expr{Op: report.Const, Value: quantity}, price)
}

// Of is what is ordered for a kit's run; false where that is not known.
func (a Alone) Of(k *kit.Kit) (Ordered, bool) {
	o, ok := a.of[k]
	return o, ok
}

func allPriced(k *kit.Kit) bool {
	for _, l := range k.Fabrics {
		if !l.Priced {
			return false
		}
	}
	return true
}
