package line

import (
	"cmp"
	"maps"
	"math/big"
	"slices"
	"strings"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/supply"
	"yardproof/pipeline/report"
)

// Orders is what the planned kits of a line take and what is ordered for them,
// over the inputs of its costing.
type Orders struct {
	Supply  supply.Line
	Code    string      // of the currency
	Digits  int         // decimals of its minor unit
	Runs    []Run       // those of the supply, then kits of which none are planned
	Ordered []*Purchase // what is ordered, by supplier and article
	Landed  []Landed    // what the orders of a supplier cost with freight, duty and fees

	prices  map[string]costing.Input // by article and unit
	inKits  map[string]*report.Expr  // landed, as kits bear it, by article; none where they do not
	has     map[*Priced]bool
	differs *costing.Result // worked out once
}

// Run is how many of a kit are to be made.
type Run struct {
	supply.Run
	Kit     *Priced       // nil where the costing has none
	Wanted  costing.Input // kits planned: the costing's, or one of its own where there is no kit
	Packed  costing.Input // already
	ToMake  costing.Result
	Spoil   costing.Result // kits allowed for miscuts besides
	Differs costing.Result // by how many kits it is another run than the orders and the bolt plan were made for

	// What is ordered for the kits and what one costs with all of it charged to
	// them. Both are without a name where that is not known.
	Bought, Unit costing.Result
}

// MadeFor is how many kits the orders and the bolt plan were made for, those
// allowed for miscuts with them.
func (r Run) MadeFor() *report.Expr { return costing.Fixed(int64(r.Takes())) }

// ToCut is how many kits are cut now.
func (r Run) ToCut() *report.Expr { return costing.Round(costing.Sum(Ref(r.ToMake), Ref(r.Spoil)), 0) }

// Holds is the condition that the bolt plan still holds for the run.
func (r Run) Holds() *report.Expr { return costing.Equals(r.ToCut(), r.MadeFor()) }

// Purchase is what is ordered of an article.
type Purchase struct {
	*supply.Article
	Price costing.Input // for so much of it
	Cost  costing.Result
}

// From is who it is ordered of, in words.
func (p *Purchase) From() string {
	if p.Supplier == "" {
		return "no supplier named"
	}
	return p.Supplier
}

// Take lays a line's runs over its costing, of one project: kits of several have
// no common currency or supplier, and there is nil.
func (c *Costing) Take(run *report.Run, summaries []Summary, lines []supply.Line) *Orders {
	lines = slices.DeleteFunc(slices.Clone(lines), func(l supply.Line) bool { return len(l.Runs) == 0 })
	if len(lines) != 1 {
		return nil
	}
	o := &Orders{Supply: lines[0], Code: run.Currency.Code(), Digits: run.Currency.Digits(), prices: c.priceCells(), inKits: map[string]*report.Expr{}}
	for _, k := range c.Kits {
		for _, l := range slices.Concat(k.Fabrics, k.Things) {
			if l.Landed != nil {
				o.inKits[l.SKU] = l.Landed.Of(l.Price, k.Cells.Digits)
			}
		}
	}
	kits := c.byRun(run, summaries)
	for _, r := range o.Supply.Runs {
		o.Runs = append(o.Runs, newRun(r, kits[[3]string{r.Plan, r.Size, r.Colourway}]))
	}
	planned := len(o.Runs)
	o.has = map[*Priced]bool{}
	o.Runs = append(o.Runs, c.unplanned(run, summaries)...)
	for _, r := range o.Runs {
		o.has[r.Kit] = r.Kit != nil
	}
	o.order(c)
	o.land()
	for i := range planned {
		o.charge(i)
	}
	return o
}

// byRun are the kits by plan, size and colourway.
func (c *Costing) byRun(run *report.Run, summaries []Summary) map[[3]string]*Priced {
	kits := map[[3]string]*Priced{}
	for at, k := range c.of {
		if planned := summaries[at.plan].Sizes[at.size].Planned; planned != nil {
			kits[[3]string{run.Plans[at.plan].ID, planned.Size, planned.Colourway}] = k
		}
	}
	return kits
}

// unplanned are the kits of which none are planned: a run of them, once somebody
// plans one, is another than the orders were made for.
func (c *Costing) unplanned(run *report.Run, summaries []Summary) []Run {
	places := slices.SortedFunc(maps.Keys(c.of), func(a, b place) int { return cmp.Or(cmp.Compare(a.plan, b.plan), cmp.Compare(a.size, b.size)) })
	var runs []Run
	for _, at := range places {
		if s := summaries[at.plan].Sizes[at.size]; s.Planned == nil {
			p := run.Plans[at.plan]
			runs = append(runs, newRun(supply.Run{Asked: supply.Asked{Plan: p.ID, Title: p.Title, Kit: supply.Kit{Size: s.Name}}}, c.of[at]))
		}
	}
	return runs
}

// Has reports whether a kit is among the runs.
func (o *Orders) Has(k *Priced) bool { return o != nil && o.has[k] }

// priceCells are the prices by article and unit. Of an article that projects
// price differently there is none.
func (c *Costing) priceCells() map[string]costing.Input {
	cells := map[string]costing.Input{}
	for _, k := range c.Kits {
		for _, l := range slices.Concat(k.Fabrics, k.Things) {
			if l.SKU != "" {
				cells[l.SKU+" "+l.Unit] = l.Price
			}
		}
	}
	return cells
}

// order lists what is ordered. Articles of which as much is ordered that another
// price holds than in a kit get a price of their own.
func (o *Orders) order(c *Costing) {
	for i := range o.Supply.Articles {
		if a := &o.Supply.Articles[i]; a.Order.Sign() > 0 {
			o.Ordered = append(o.Ordered, &Purchase{Article: a})
		}
	}
	slices.SortStableFunc(o.Ordered, func(a, b *Purchase) int {
		return cmp.Or(cmp.Compare(a.Supplier, b.Supplier), cmp.Compare(a.SKU, b.SKU))
	})
	names := names{}
	for _, a := range o.Ordered {
		key := a.SKU + " " + string(a.Unit)
		if in, ok := o.prices[key]; !ok || in.Value.Cmp(a.Each) != 0 {
			for range a.Uses {
				o.prices[key] = c.Prices.share("order_price_"+a.SKU, strings.TrimSuffix(a.SKU+", "+a.Description, ", ")+", as ordered", string(a.Unit), a.Each)
			}
		}
		a.Price = o.prices[key]
		cost := costing.Times(&report.Expr{Op: report.Const, Value: a.Order}, costing.Ref(a.Price.Name, a.Price.Value))
		a.Cost = costing.Result{Name: names.of("order_cost", a.SKU), Expr: o.Holds(costing.Round(cost, o.Digits))}
	}
}

func newRun(r supply.Run, k *Priced) Run {
	suffix := "." + cellKey(r.Name())
	run := Run{
		Run: r, Kit: k,
		Wanted: costing.Input{Name: "kits_planned" + suffix, Value: big.NewRat(int64(r.Planned), 1)},
		Packed: costing.Input{Name: "kits_on_the_shelf" + suffix, Value: big.NewRat(int64(r.Shelf), 1)},
	}
	spoilage := &report.Expr{Op: report.Const, Value: big.NewRat(r.Spoilage, 10_000)}
	if k != nil {
		run.Wanted, spoilage = k.Cells.Run, costing.Ref(k.Cells.Spoilage.Name, k.Cells.Spoilage.Value)
	}
	left := costing.Less(costing.Ref(run.Wanted.Name, run.Wanted.Value), costing.Ref(run.Packed.Name, run.Packed.Value))
	run.ToMake = costing.Result{Name: "kits_to_make" + suffix, Expr: costing.Round(costing.Most(left, costing.Fixed(0)), 0)}
	run.Spoil = costing.Result{Name: "kits_for_miscuts" + suffix, Expr: costing.RoundUp(costing.Times(Ref(run.ToMake), spoilage), 0)}
	made, now := run.MadeFor(), run.ToCut()
	run.Differs = costing.Result{Name: "run_differs" + suffix, Expr: costing.Round(costing.Most(costing.Less(now, made), costing.Less(made, now)), 0)}
	return run
}

// Ref is the number in the cell of a result.
func Ref(r costing.Result) *report.Expr { return costing.Ref(r.Name, r.Value) }

// Differs is by how many kits the runs are other than those that the bolt plan was
// made for.
func (o *Orders) Differs() costing.Result {
	if o.differs != nil {
		return *o.differs
	}
	var all []*report.Expr
	for _, r := range o.Runs {
		all = append(all, costing.Of(r.Differs))
	}
	o.differs = &costing.Result{Name: "runs_differ", Expr: costing.Round(costing.Sum(all...), 0)}
	return *o.differs
}

// RunAgain is shown in place of what follows from another run than the orders
// and the bolt plan were made for.
const RunAgain = costing.RunAgain

// Stale is the condition that some run is another than the orders and the bolt
// plan were made for.
func (o *Orders) Stale() *report.Expr {
	return costing.Exceeds(costing.Of(o.Differs()), costing.Fixed(0))
}

// Holds is an expression for as long as the runs are those that the orders were
// made for.
func (o *Orders) Holds(e *report.Expr) *report.Expr {
	return costing.If(o.Stale(), costing.Words(RunAgain), e)
}

// charge works out what is ordered for a run, and what a kit costs with it: what
// is on hand is free of charge, and what is no article of the price list costs
// what it does in any kit.
func (o *Orders) charge(n int) {
	r := &o.Runs[n]
	shares, ok := o.Supply.Shares(n)
	if !ok || r.Kit == nil {
		return
	}
	var parts []*report.Expr
	for _, s := range shares {
		parts = append(parts, costing.Times(o.charged(&o.Supply.Articles[s.Article]), &report.Expr{Op: report.Const, Value: s.Of}))
	}
	suffix := "." + cellKey(r.Name())
	r.Bought = costing.Result{Name: "ordered_for_the_run" + suffix, Expr: o.Holds(costing.Round(costing.Sum(parts...), o.Digits))}
	each := costing.Round(costing.Quotient(costing.Of(r.Bought), Ref(r.ToMake)), o.Digits)
	taken := map[string]bool{}
	for _, t := range r.Run.Asked.Takes {
		taken[t.SKU] = true
	}
	rest := costing.Besides(r.Kit.Cells, r.Kit.Costs)
	for _, l := range slices.Concat(r.Kit.Fabrics, r.Kit.Things) {
		if !taken[l.SKU] {
			rest = append(rest, costing.Of(l.Cost))
		}
	}
	spoilage := costing.Round(costing.Times(costing.Ref(r.Kit.Cells.Spoilage.Name, r.Kit.Cells.Spoilage.Value), costing.Sum(rest...)), o.Digits)
	r.Unit = costing.Result{Name: "unit_cost_bought" + suffix, Expr: o.Holds(costing.Sum(append(rest, spoilage, each)...))}
}

// charged is what kits are charged for an article's order: with its freight, duty
// and fees where they bear these.
func (o *Orders) charged(a *supply.Article) *report.Expr {
	for _, l := range o.Landed {
		for _, of := range l.Articles {
			if of.Article == a && of.InKits != nil {
				return Ref(of.Whole)
			}
		}
	}
	return Ref(o.of(a).Cost)
}

// of is what is ordered of an article; nil where nothing is ordered.
func (o *Orders) of(a *supply.Article) *Purchase {
	for _, p := range o.Ordered {
		if p.Article == a {
			return p
		}
	}
	return nil
}

// Idle reports whether no kit that is to be made takes an article.
func (o *Orders) Idle(a *supply.Article) bool {
	for _, u := range a.Uses {
		if o.Runs[u.Run].Make > 0 {
			return false
		}
	}
	return true
}
