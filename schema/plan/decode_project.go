package plan

import (
	"io/fs"
	"math/big"
	"strings"

	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// DecodeProject reads a project file that follows its schema. Like Decode it
// takes any tree and reports only what the schema cannot know.
func DecodeProject(f *source.File, tree *jsontree.Node) (*Project, []source.Problem) {
	r := &reader{}
	p := &Project{File: f, Tree: tree, Studio: text(tree.Get("studio")), Defaults: tree.Get("defaults")}
	r.setCurrency(tree.Get("currency"))
	p.Currency = r.currency
	p.LabourRate = r.money("labour_rate", tree.Get("labour_rate"))
	p.Rates = r.rates(tree.Get("rates"))
	p.Spoilage = r.percent("spoilage", tree.Get("spoilage"))
	p.Payment = Payment{Share: r.percent("share", tree.Get("payment").Get("share")), Each: r.money("each", tree.Get("payment").Get("each"))}
	p.Wholesale = Percent{BasisPoints: usualWholesale}
	if w := tree.Get("wholesale"); w != nil {
		p.Wholesale = r.percent("wholesale", w)
	}
	p.Margin = r.percent("margin", tree.Get("margin"))
	p.Run = count(tree.Get("run"))
	p.PriceLists = r.lists(tree.Get("prices"))
	p.Landed = r.landed(tree.Get("landed"))
	p.PriceAge = usualPriceAge
	if age := count(tree.Get("price_age")); age.Given() {
		p.PriceAge = age.N
	}
	if stock := r.lists(tree.Get("stock")); len(stock) > 0 {
		p.Stock = &stock[0]
	}
	if edition := r.lists(tree.Get("edition")); len(edition) > 0 {
		p.Edition = &edition[0]
	}
	p.Rulers = r.ownRulers(tree.Get("rulers"))
	p.Thread = r.thread(tree.Get("thread"), usualThread())
	p.Exclude = r.globs(tree.Get("exclude"))
	p.Rules = ruleLevels(tree.Get("rules"))
	p.Exceptions = r.exceptions(tree.Get("exceptions"))
	for _, u := range []measure.Unit{measure.In, measure.Cm} {
		r.defaultsOf(u, p.Defaults)
	}
	return p, sortProblems(r.problems)
}

func (r *reader) setCurrency(n *jsontree.Node) {
	code := text(n)
	if !code.Given() {
		return
	}
	c, ok := measure.ParseCurrency(code.Text)
	if !ok {
		r.report(BadMoney, code.At, quote(code.Text)+" is not a currency in use", "write an ISO 4217 code like EUR or USD")
	}
	r.currency = c
}

// inside refuses a path that could lead out of the project's folder on any
// system.
func (r *reader) inside(path Text) Text {
	if path.Given() && (!fs.ValidPath(path.Text) || path.Text == "." || strings.ContainsAny(path.Text, `\:`)) {
		r.report(OutsideFolder, path.At, quote(path.Text)+" is not a file inside the pattern folder",
			"write a relative path with forward slashes and without dots, like prices.csv")
		return Text{}
	}
	return path
}

// usualWholesale is half of the price, in basis points. Common practice, no
// source; 40 to 60 % are met with.
const usualWholesale = 5000

func (r *reader) landed(n *jsontree.Node) []Landed {
	var all []Landed
	for _, m := range members(n) {
		l := Landed{
			Supplier: m.Key, Freight: r.money("freight", m.Value.Get("freight")), Fees: r.money("fees", m.Value.Get("fees")),
			Duty: r.percent("duty", m.Value.Get("duty")), ByLength: word(m.Value.Get("share")) == "length", At: m.KeyRange,
		}
		if share := m.Value.Get("share"); share != nil {
			l.ShareAt = share.Range
		}
		r.usualOrder(&l, m.Value.Get("usual_order"))
		all = append(all, l)
	}
	return all
}

// usualOrder is a length where freight and fees are shared by that, and money
// otherwise; never none, over which nothing can be shared.
func (r *reader) usualOrder(l *Landed, n *jsontree.Node) {
	if l.ByLength {
		l.UsualLength = r.fabricLength("usual_order", n, positive)
		return
	}
	before := len(r.problems)
	l.Usual = r.money("usual_order", n)
	if len(r.problems) == before && l.Usual.Given() && l.Usual.Value.Sign() == 0 {
		r.report(BadMoney, l.Usual.At, "\"usual_order\" is 0; wanted: more than 0", "write what an order from this supplier usually comes to, or leave it out")
	}
}

// rates reads minutes. What is no number of them is reported as money is, whose
// form they have.
func (r *reader) rates(n *jsontree.Node) Rates {
	if n == nil {
		return Rates{}
	}
	minutes := func(key string) *big.Rat { return r.minutes(key, n.Get(key)) }
	return Rates{minutes("length"), minutes("strip"), minutes("cut"), minutes("setting"), minutes("pack"), n.Range}
}

func (r *reader) minutes(key string, n *jsontree.Node) *big.Rat {
	if n == nil {
		return nil
	}
	m, ok := new(big.Rat), digits(n.Text) && len(n.Text) <= 8 && strings.Trim(n.Text, "0123456789.") == ""
	if ok {
		m, ok = m.SetString(n.Text)
	}
	if !ok {
		r.report(BadNumber, n.Range, quote(key)+" is "+quote(n.Text)+"; wanted: minutes, as a plain decimal number", "write it like 2 or 0.5")
		return new(big.Rat)
	}
	return m
}

// usualPriceAge is in days. Common practice, no source: mills change their
// prices once or twice a year.
const usualPriceAge = 365

// lists reads where a project's lists are: a path, or a list of paths and of
// paths with a layout.
func (r *reader) lists(n *jsontree.Node) []ListSource {
	if n == nil {
		return nil
	}
	nodes := []*jsontree.Node{n}
	if n.Kind == jsontree.Array {
		nodes = n.Items
	}
	var all []ListSource
	for _, n := range nodes {
		if l := r.listSource(n); l.Path.Given() {
			all = append(all, l)
		}
	}
	return all
}

func (r *reader) listSource(n *jsontree.Node) ListSource {
	if n.Kind == jsontree.String {
		return ListSource{Path: r.inside(text(n)), At: n.Range}
	}
	l := ListSource{
		Path: r.inside(text(n.Get("file"))), Sheet: text(n.Get("sheet")), HeaderRow: count(n.Get("header_row")),
		Unit: text(n.Get("unit")), Supplier: text(n.Get("supplier")),
		Decimal: text(n.Get("decimal")), Thousands: text(n.Get("thousands")), Separator: text(n.Get("separator")),
		Columns: map[string]Text{}, Units: map[string]Text{}, At: n.Range,
	}
	for _, m := range members(n.Get("columns")) {
		l.Columns[m.Key] = text(m.Value)
	}
	for _, m := range members(n.Get("units")) {
		l.Units[strings.ToLower(m.Key)] = text(m.Value)
	}
	if l.Thousands.Given() && l.Thousands.Text == l.Mark() {
		r.report(NotAllowed, l.Thousands.At, quote(l.Thousands.Text)+" cannot stand both between thousands and before decimals", "give the two different marks")
	}
	return l
}

func (r *reader) ownRulers(n *jsontree.Node) []Ruler {
	var rulers []Ruler
	for _, item := range items(n) {
		r.unit, _ = measure.ParseUnit(word(item.Get("units")))
		rulers = append(rulers, r.ruler(item))
	}
	return rulers
}

func ruleLevels(n *jsontree.Node) []RuleLevel {
	var rules []RuleLevel
	for _, m := range members(n) {
		rules = append(rules, RuleLevel{Rule: Text{m.Key, m.KeyRange}, Level: text(m.Value)})
	}
	return rules
}

// globs reads what is left out of the folder when it is searched.
func (r *reader) globs(n *jsontree.Node) []Glob {
	var globs []Glob
	for _, item := range items(n) {
		g, err := ParseGlob(item.Text)
		switch {
		case err != nil:
			r.report(NotAllowed, item.Range, quote(item.Text)+": "+err.Error(), "write it like old/** or *-draft.plan.json")
		case g.leadsOut():
			r.report(OutsideFolder, item.Range, quote(item.Text)+" matches nothing inside the pattern folder", "write it relative to this file, like old/**")
		default:
			globs = append(globs, g)
		}
	}
	return globs
}

func (r *reader) exceptions(n *jsontree.Node) []Exception {
	var list []Exception
	for _, item := range items(n) {
		until := text(item.Get("until"))
		list = append(list, Exception{
			Rule: text(item.Get("rule")), Plan: text(item.Get("plan")),
			Pointer: text(item.Get("at")), Reason: text(item.Get("reason")),
			Until: r.date(until), UntilAt: until.At, At: item.Range,
		})
	}
	return list
}

func (r *reader) date(t Text) Date {
	if !t.Given() {
		return Date{}
	}
	d, ok := ParseDate(t.Text)
	if !ok {
		r.report(BadDate, t.At, quote(t.Text)+" is not a date of the calendar", "write year, month and day, like 2027-03-31")
	}
	return d
}

// DefaultsFor are the defaults of plans in a unit, with the project's own laid
// over them. A default that cannot be read, which DecodeProject reports, stays
// as it was. The project may be nil.
func (p *Project) DefaultsFor(u measure.Unit) Defaults {
	if p == nil {
		return DefaultsFor(u)
	}
	return new(reader).defaultsOf(u, p.Defaults)
}

func (r *reader) defaultsOf(u measure.Unit, project *jsontree.Node) Defaults {
	r.unit = u
	d := DefaultsFor(u)
	n := project.Get(u.String())
	overlay := func(key string, s sign, to *measure.Length) {
		before := len(r.problems)
		l := r.length(key, n.Get(key), s)
		if key == "usable_width" {
			r.sold(l)
		}
		if l.Given() && len(r.problems) == before {
			*to = l.Length
		}
	}
	overlay("usable_width", positive, &d.UsableWidth)
	overlay("squaring_up", orNothing, &d.SquaringUp)
	overlay("cushion", orNothing, &d.Cushion)
	overlay("cut_allowance", orNothing, &d.CutAllowance)
	overlay("overhang", orNothing, &d.Overhang)
	overlay("backing_seam", positive, &d.BackingSeam)
	overlay("binding_allowance", orNothing, &d.BindingAllowance)
	overlay("finished_rounding", positive, &d.FinishedRounding)
	overlay("ruler_grid", positive, &d.RulerGrid)
	overlay("ruler_grid", positive, &d.TrimGrid)
	overlay("useful_offcut", orNothing, &d.UsefulOffcut)
	d.Grid = r.grid(n.Get("grid"), d.Grid)
	return d
}
