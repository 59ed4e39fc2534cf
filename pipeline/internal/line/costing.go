package line

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/report"
)

// Costing is the kits of a line over inputs that they share.
type Costing struct {
	Code    string // of the currency
	Kits    []*Priced
	Rates   Shared
	Shares  Shared
	Margins Shared
	Prices  Shared
	Unfit   []string // plans left out because they are not proved
	Mixed   bool     // the kits are in several currencies, and none is worked out

	of    map[place]*Priced
	names names // of the kits
}

// place is a size of a plan in the line.
type place struct{ plan, size int }

// Priced is the kit of one size in the line.
type Priced struct {
	Label   string
	Fabrics []Line
	Things  []Line
	Cells   costing.Inputs
	Costs   costing.Costs
	Target  costing.Input  // that it shares with other kits; without a name where it has its own
	Under   costing.Result // 1 where the margin is under the target, 0 where it is not
}

// UnderTarget is the condition that a margin is less than the one wanted. Where
// no price is asked that is so only of a kit for which no price leaves it.
func UnderTarget(k costing.Inputs, c costing.Costs) *report.Expr {
	asked := costing.Exceeds(costing.Ref(k.Asked.Name, k.Asked.Value), costing.Fixed(0))
	return costing.If(asked, costing.Under(costing.Of(c.Margin), costing.Ref(k.Margin.Name, k.Margin.Value)), costing.Not(costing.Exceeds(k.Leaves(), costing.Fixed(0))))
}

// Shared are inputs that several kits have in common: those of one key and of
// one value.
type Shared struct {
	List  []SharedInput
	at    map[string]int
	names map[string]bool
}

// SharedInput is an input of so many kits.
type SharedInput struct {
	costing.Input
	Says, Per string
	Users     int
}

// share is the input of a key and a value, under the name that it has in the
// line.
func (s *Shared) share(key, says, per string, value *big.Rat) costing.Input {
	full := key + "|" + per + "|" + value.RatString()
	i, known := s.at[full]
	if !known {
		if s.at == nil {
			s.at, s.names = map[string]int{}, map[string]bool{}
		}
		i = len(s.List)
		name := "line_" + key
		if s.names[name] {
			name = fmt.Sprintf("%s.%d", name, i+1)
		}
		s.at[full], s.names[name] = i, true
		s.List = append(s.List, SharedInput{Input: costing.Input{Name: name, Value: value}, Says: says, Per: per})
	}
	s.List[i].Users++
	return s.List[i].Input
}

// Cost gathers the kits of the proved plans. Summaries stand beside the run's
// plans; that of a plan which could not be derived is empty.
func Cost(run *report.Run, summaries []Summary) *Costing {
	c := &Costing{of: map[place]*Priced{}, names: names{}}
	currencies := map[string]bool{}
	for i, p := range run.Plans {
		if i >= len(summaries) {
			break
		}
		failed := diag.Worst(p.Findings) == diag.Error
		for j, s := range summaries[i].Sizes {
			switch {
			case s.Kit == nil:
			case failed:
				c.leaveOut(Name(p))
			default:
				currencies[s.Kit.Currency] = true
				c.Code = s.Kit.Currency
				c.add(place{i, j}, p, s)
			}
		}
	}
	if len(currencies) > 1 {
		return &Costing{Mixed: true}
	}
	return c
}

// Name is what the line calls a plan.
func Name(p report.Outcome) string {
	if p.Title != "" {
		return p.Title
	}
	if p.ID != "" {
		return p.ID
	}
	return p.File
}

// Of is the kit of a size of a plan; nil where none is worked out.
func (c *Costing) Of(plan, size int) *Priced { return c.of[place{plan, size}] }

func (c *Costing) leaveOut(plan string) {
	if !slices.Contains(c.Unfit, plan) {
		c.Unfit = append(c.Unfit, plan)
	}
}

func (c *Costing) add(at place, p report.Outcome, s SizeSummary) {
	k := &Priced{Label: Name(p) + ", " + s.Name}
	own := s.Kit.Inputs.Suffix
	k.Cells = s.Kit.Inputs.WithSuffix(c.names.of("", cellKey(p.ID)+strings.ReplaceAll(own, ".", "/")))
	k.Cells.Rate = c.Rates.share("labour_rate", "Labour", "hour", k.Cells.Rate.Value)
	k.Cells.FeeEach = c.Rates.share("fee_each", "Payment fee, fixed part", "sale", k.Cells.FeeEach.Value)
	k.Cells.Spoilage = c.Shares.share("spoilage", "Allowance for miscuts", "kits made well", k.Cells.Spoilage.Value)
	k.Cells.FeeShare = c.Shares.share("fee_share", "Payment fee", "price", k.Cells.FeeShare.Value)
	if !s.Kit.OwnMargin {
		k.Target = c.Margins.share("target_margin", "Target margin", "price", k.Cells.Margin.Value)
	}
	k.Fabrics = c.price(p, k.Cells, s.Kit.Fabrics, own)
	k.Things = c.price(p, k.Cells, s.Kit.Things, own)
	k.Costs = costing.Price(k.Cells, items(k.Fabrics), items(k.Things))
	k.Under = costing.Result{Name: "under_target" + k.Cells.Suffix, Expr: costing.If(UnderTarget(k.Cells, k.Costs), costing.Fixed(1), costing.Fixed(0))}
	c.Kits = append(c.Kits, k)
	c.of[at] = k
}

// price gives lines of a kit their quantities' names and the prices that they
// share with other kits.
func (c *Costing) price(p report.Outcome, cells costing.Inputs, lines []Line, own string) []Line {
	lines = slices.Clone(lines)
	for i := range lines {
		l := &lines[i]
		key, says := "price_"+l.SKU, strings.TrimSuffix(l.SKU+", "+l.Article, ", ")
		if l.SKU == "" {
			key, says = fmt.Sprintf("price_%s_%s", p.ID, l.Fabric), Name(p)+", "+l.Fabric
		}
		l.Item = cells.Item(
			costing.Input{Name: strings.TrimSuffix(l.Quantity.Name, own) + cells.Suffix, Value: l.Quantity.Value},
			c.Prices.share(key, says, l.Unit, l.Price.Value),
			c.landing(l),
		)
	}
	return lines
}

// landing is what comes on top of an article's price, shared by the kits that hold
// it; nil for nothing.
func (c *Costing) landing(l *Line) *costing.Landing {
	if l.Landed == nil {
		return nil
	}
	landing := &costing.Landing{Share: c.Shares.share("landed_share_"+l.SKU, "On top of the price of "+l.SKU+": duty, freight, fees, loss", "price", l.Landed.Share.Value)}
	if each := l.Landed.Each; each.Name != "" {
		landing.Each = c.Rates.share("landed_each_"+l.SKU, "Freight and fees on "+l.SKU, l.Unit, each.Value)
	}
	return landing
}

func items(lines []Line) []costing.Item {
	var all []costing.Item
	for _, l := range lines {
		all = append(all, l.Item)
	}
	return all
}

// Short is how many kits are under their target.
func (c *Costing) Short() costing.Result {
	var under []*report.Expr
	for _, k := range c.Kits {
		under = append(under, costing.Of(k.Under))
	}
	return costing.Result{Name: "kits_under_target", Expr: costing.Round(costing.Sum(under...), 0)}
}

// Unpriced are the kits for which payment fees and target leave no price, while
// none is asked.
func (c *Costing) Unpriced() []string {
	var all []string
	for _, k := range c.Kits {
		if k.Costs.Price.Value == nil {
			all = append(all, k.Label)
		}
	}
	return all
}

// mostNamed is how many kits one formula names: programs take no longer ones.
const mostNamed = 40

// Which names the kits that are under their target, as texts of so many kits of
// the line each, which follow the inputs. Where there are none, a text says so.
func (c *Costing) Which() []*report.Expr {
	var all []*report.Expr
	for kits := range slices.Chunk(c.Kits, mostNamed) {
		var names, under []*report.Expr
		for _, k := range kits {
			under = append(under, costing.Of(k.Under))
			names = append(names, costing.If(costing.Equals(costing.Of(k.Under), costing.Fixed(1)), costing.Words(k.Label+"; "), costing.Words("")))
		}
		none := "none"
		if len(kits) < len(c.Kits) {
			none += " from " + kits[0].Label + " to " + kits[len(kits)-1].Label
		}
		names = append(names, costing.If(costing.Equals(costing.Sum(under...), costing.Fixed(0)), costing.Words(none), costing.Words("")))
		all = append(all, costing.Join(0, names...))
	}
	return all
}

// InAll is the kits planned, what their runs cost and what they leave, added up.
// A run of kits that have no price leaves nothing that could be told.
func (c *Costing) InAll() (runs, costs, profits *report.Expr) {
	var planned, cost, profit []*report.Expr
	for _, k := range c.Kits {
		planned = append(planned, costing.Ref(k.Cells.Run.Name, k.Cells.Run.Value))
		cost = append(cost, costing.Of(k.Costs.RunCost))
		profit = append(profit, costing.Of(k.Costs.RunProfit))
	}
	return costing.Round(costing.Sum(planned...), 0), costing.Sum(cost...), costing.SumKnown(profit...)
}
