package tabulate

import (
	"math/big"
	"strings"

	"yardproof/pipeline/internal/caution"
	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// papers are the sheets that leave the desk: a label for every kit, a list for
// shops, and the papers of a class. Each prints by itself.
func (in Input) papers(kits []*kit.Kit, tops []report.Picture) []report.Sheet {
	var sheets []report.Sheet
	if len(kits) > 0 {
		sheets = append(sheets, in.labels(kits, tops), in.shopSheet(kits))
	}
	sheets = append(sheets, in.runPapers(kits)...)
	for _, s := range in.Sizes {
		if s.Of.Class != nil {
			sheets = append(sheets, in.classPapers(s))
		}
	}
	return sheets
}

// labelTall is how high the picture on a label may be, in millimetres.
const labelTall = 40.0

// labels are what goes onto each kit, several to a page, with boxes to tick while it is
// packed.
func (in Input) labels(kits []*kit.Kit, tops []report.Picture) report.Sheet {
	sheet := report.Sheet{ID: "kit-labels", Title: "Kit labels", Pages: (len(kits) + labelsOnPage - 1) / labelsOnPage}
	for i, k := range kits {
		label, cautions := in.label(k), in.labelCautions(k)
		for j := range tops {
			if tops[j].ID == topID(k.Of) && i < mostPictures {
				small := withoutMeasures(tops[j])
				small.Plain = true
				label.Beside = []report.Beside{{Picture: small, Tall: labelTall}}
			}
		}
		sheet.Tables = append(sheet.Tables, label, cautions)
	}
	return sheet
}

// labelsOnPage is how many labels a page has room for, with what most kits hold.
const labelsOnPage = 2

// label is what is in a kit, whose it is and what it becomes.
func (in Input) label(k *kit.Kit) report.Table {
	t := report.Table{
		ID: "label-" + columnID(k), Heading: in.Plan.Title.Text + ", " + k.Name(), Narrow: true,
		Columns: []report.Column{{ID: "packed", Title: "Packed"}, {ID: "what", Title: "In this kit", Wide: true}, {ID: "quantity", Title: "Quantity", Right: true}, {ID: "article", Title: "Article"}},
	}
	if in.Studio != "" {
		t.Lead = append(t.Lead, in.Studio)
	}
	if top := k.Size.Top; top.Known {
		t.Lead = append(t.Lead, "Finished size "+measure.FormatBox(top.Finished.Width, top.Finished.Height, in.units())+".")
	}
	for _, g := range k.Fabrics {
		c := report.F(g.Buy, in.units()) // what it is cut longer is no promise
		if g.Form == plan.Precut {
			c = report.T(say.Many(g.Packs, "pack"))
		}
		t.Rows = append(t.Rows, row(report.Tick(), report.T(g.Title()), c, report.T(g.Article.Text)))
	}
	for _, thing := range k.Things {
		t.Rows = append(t.Rows, row(report.Tick(), report.T(thing.Title()), report.N(int64(thing.Thing.Count.N)), report.T(thing.Article.Text)))
	}
	if k.Said.Pattern.Given() {
		t.Rows = append(t.Rows, row(report.Tick(), report.T("Printed pattern"), report.N(1)))
	}
	if k.Said.Cut == plan.Pieces {
		t.Lead = append(t.Lead, "Every piece is cut; the kit card of this size counts them.")
	}
	t.Foot = append(t.Foot, "Not included: "+strings.Join(excluded(k), ", ")+".")
	return t
}

// labelCautions are the safety lines of a label, as one text.
func (in Input) labelCautions(k *kit.Kit) report.Table {
	t := report.Table{ID: "label-cautions-" + columnID(k), Columns: []report.Column{{ID: "caution", Wide: true}}}
	var all []string
	for _, r := range cautionsOf("", k.Size).Rows {
		all = append(all, r.Cells[0].Text)
	}
	all = append(all, "Fibre content, origin and care of the fabric are to be labelled as your local rules ask.")
	t.Rows = []report.Row{row(report.T(strings.Join(all, " ")))}
	return t
}

// shopSheet is what a shop needs that packs so many kits itself, and what it
// pays and asks.
func (in Input) shopSheet(kits []*kit.Kit) report.Sheet {
	return report.Sheet{ID: "shop", Title: "For shops", Tables: []report.Table{in.shopKits(kits), in.shopBolts(kits), notInKit(kits)}}
}

func shopOrder(k *kit.Kit) costing.Input {
	n := k.Cells.Run.Value
	if n.Sign() == 0 {
		n = big.NewRat(1, 1)
	}
	return costing.Input{Name: "shop_kits" + k.Cells.Suffix, Value: n}
}

func (in Input) shopKits(kits []*kit.Kit) report.Table {
	code := in.Project.Currency.Code()
	t := report.Table{
		ID: "shop-kits", Heading: "Kits for a shop",
		Lead: []string{"Type in how many kits the shop wants: the bolts below and the sum follow. Prices are those of the costing when this workbook was written; type others over them."},
		Columns: []report.Column{
			{ID: "kit", Title: "Kit"}, {ID: "kits", Title: "Kits wanted"}, {ID: "price", Title: "Price in the shop", Unit: code},
			{ID: "pays", Title: "The shop pays", Unit: code}, {ID: "sum", Title: "In all", Unit: code},
		},
	}
	for _, k := range kits {
		price, pays := shopPrice("shop_price", k, k.Costs.Price), shopPrice("shop_pays", k, k.Costs.TradePrice)
		cells := []report.Cell{report.T(k.Name()), wholeNumber(shopOrder(k), "How many kits the shop wants."), price, pays, {}}
		if pays.Input {
			cells[4] = report.Cell{Kind: report.Money, Expr: costing.Times(costing.Ref(shopOrder(k).Name, shopOrder(k).Value), costing.Ref(pays.Name, pays.Number))}
		}
		t.Rows = append(t.Rows, row(cells...))
	}
	return t
}

// shopPrice is a price as it was worked out, to be typed over; words where there is
// none.
func shopPrice(name string, k *kit.Kit, r costing.Result) report.Cell {
	if r.Expr.Value == nil {
		return report.T(r.Expr.Text)
	}
	return input(report.Money, costing.Input{Name: name + k.Cells.Suffix, Value: r.Expr.Value})
}

// shopBolts is the fabric of those kits, in bolts where the price list says how
// long they are. A kit's length is never cut from two bolts.
func (in Input) shopBolts(kits []*kit.Kit) report.Table {
	t := report.Table{
		ID: "shop-bolts", Heading: "Bolts that they take",
		Columns: []report.Column{
			{ID: "kit", Title: "Kit"}, {ID: "fabric", Title: "Fabric"}, {ID: "article", Title: "Article"}, {ID: "quantity", Title: "In one kit", Right: true},
			{ID: "bolt", Title: "Bolt, usable", Right: true}, {ID: "each", Title: "Kits from a bolt"}, {ID: "bolts", Title: "Bolts or packs"},
		},
		Foot: []string{"Each line is worked out by itself: kits that share a fabric may share a bolt, which the line's bolt plan works out. Without a length of bolts in the price list the bolts are left open."},
	}
	for _, k := range kits {
		for _, l := range k.Fabrics {
			t.Rows = append(t.Rows, shopRow(k, l))
		}
	}
	return t
}

func shopRow(k *kit.Kit, l kit.Line) report.Row {
	kits := costing.Ref(shopOrder(k).Name, shopOrder(k).Value)
	q := l.Quantity
	q.Name = "shop_" + q.Name
	quantity := costing.Ref(q.Name, q.Value)
	cells := []report.Cell{report.T(k.Name()), report.T(l.Title()), report.T(l.Article.Text)}
	switch {
	case l.Form == plan.Precut:
		return row(append(cells, report.T(say.Many(l.Packs, "pack")), report.Cell{}, report.Cell{},
			report.Cell{Kind: report.Number, Expr: costing.Round(costing.Times(kits, &report.Expr{Op: report.Const, Value: q.Value}), 0)})...)
	case len(l.Listed.Bolts) == 0:
		return row(append(cells, quantityShown(l))...)
	}
	usable := l.Listed.Bolts[len(l.Listed.Bolts)-1].Surd().MulInt(10_000 - l.Listed.Loss.BasisPoints).DivInt(10_000).FloorTo(measure.Tick)
	bolt := costing.Input{Name: "shop_bolt." + q.Name, Value: big.NewRat(int64(usable), int64(l.Unit.Length()))}
	each := costing.RoundDown(costing.Quotient(costing.Ref(bolt.Name, bolt.Value), quantity), 0)
	per := costing.Result{Name: "shop_each." + q.Name, Expr: each}
	return row(append(cells, named(quantityShown(l), q.Name),
		quantityOf(bolt, string(l.Unit)),
		result(report.Number, per),
		report.Cell{Kind: report.Number, Expr: costing.RoundUp(costing.Quotient(kits, costing.Of(per)), 0)})...)
}

// quantityShown is a kit's quantity without the name, which stands elsewhere.
func quantityShown(l kit.Line) report.Cell {
	c := quantityIn(l)
	c.Name = ""
	return c
}

// named is a cell that formulas refer to by a name.
func named(c report.Cell, name string) report.Cell {
	c.Name = name
	return c
}

// classPapers are what teacher and students need before a class.
func (in Input) classPapers(s *derive.Size) report.Sheet {
	name, c := s.Of.Name.Text, s.Of.Class
	return report.Sheet{ID: "class-" + name, Title: "Class " + name, Tables: []report.Table{
		in.supplies(s, c), before(name, c), hours(name, c), in.teacher(s, c),
	}}
}

func listTable(id, heading string, columns ...report.Column) report.Table {
	return report.Table{ID: id, Heading: heading, Columns: append([]report.Column{{ID: "done", Title: "Done"}, {ID: "what", Title: "What", Wide: true}}, columns...)}
}

// supplies is what a student brings, or has in the kit.
func (in Input) supplies(s *derive.Size, c *plan.Class) report.Table {
	t := listTable("supplies-"+s.Of.Name.Text, "What to bring: "+in.Plan.Title.Text+", "+s.Of.Name.Text, report.Column{ID: "quantity", Title: "Quantity", Right: true})
	inKit := map[string]bool{}
	if s.Of.Kit != nil && c.Kits != plan.OwnFabric {
		t.Lead = append(t.Lead, map[plan.ClassKits]string{plan.KitsIncluded: "A kit is part of the fee.", plan.KitsSold: "A kit is sold at the class."}[c.Kits])
		for _, role := range s.Of.Kit.Fabrics {
			inKit[role.Text] = true
		}
	}
	var listed []string
	for _, f := range s.Fabrics {
		if f.Used() && f.Err == nil && !inKit[f.Role.Text] {
			listed = append(listed, kit.Title(f), f.Role.Text)
			t.Rows = append(t.Rows, row(report.Tick(), report.T(kit.Title(f)), report.T(line.Bought(s, f))))
		}
	}
	for _, b := range c.Bring {
		listed = append(listed, b.Text)
	}
	for _, what := range in.besidesFabric(s, c, listed) {
		t.Rows = append(t.Rows, row(report.Tick(), report.T(what)))
	}
	for _, b := range c.Bring {
		t.Rows = append(t.Rows, row(report.Tick(), report.T(b.Text)))
	}
	for _, key := range s.Cautions() {
		if sentence, ok := caution.Sentence(key); ok {
			t.Foot = append(t.Foot, sentence)
		}
	}
	return t
}

func before(size string, c *plan.Class) report.Table {
	t := listTable("before-"+size, "To do before the class")
	for _, b := range c.Before {
		t.Rows = append(t.Rows, row(report.Tick(), report.T(b.Text)))
	}
	if len(c.Before) == 0 {
		t.Lead = []string{"Nothing."}
	}
	return t
}

func hours(size string, c *plan.Class) report.Table {
	t := report.Table{ID: "hours-" + size, Heading: "Hours by stage",
		Columns: []report.Column{{ID: "stage", Title: "Stage", Wide: true}, {ID: "minutes", Title: "Planned", Unit: "min"}, {ID: "until", Title: "Until", Unit: "h:min"}}}
	total := 0
	for _, s := range c.Stages {
		total += s.Minutes.N
		t.Rows = append(t.Rows, row(report.T(s.Name.Text), report.N(int64(s.Minutes.N)), report.T(clock(total))))
	}
	if len(c.Stages) == 0 {
		total = c.Minutes.N
	}
	t.Rows = append(t.Rows, report.Row{Style: report.Total, Cells: []report.Cell{report.T("In all"), report.N(int64(total)), report.T(clock(total))}})
	return t
}

// clock shows minutes as hours and minutes from the beginning.
func clock(minutes int) string {
	text := big.NewRat(int64(minutes/60), 1).RatString() + ":"
	if minutes%60 < 10 {
		text += "0"
	}
	return text + big.NewRat(int64(minutes%60), 1).RatString()
}

// teacher is what the teacher sees to.
func (in Input) teacher(s *derive.Size, c *plan.Class) report.Table {
	t := listTable("teacher-"+s.Of.Name.Text, "For the teacher", report.Column{ID: "quantity", Title: "How many"})
	add := func(what string, n int) {
		if n > 0 {
			t.Rows = append(t.Rows, row(report.Tick(), report.T(what), report.N(int64(n))))
		}
	}
	add("Samples of "+in.Plan.Title.Text+", "+s.Of.Name.Text+", sewn", c.Samples)
	if c.Kits != plan.OwnFabric && s.Of.Kit != nil {
		add("Kits packed", c.Students.N)
	}
	add("Printed patterns", c.Students.N)
	for _, l := range c.Lend {
		add(l.Name.Text+", to lend", (c.Students.N+l.For-1)/l.For)
	}
	t.Foot = []string{"Go round with the cautions before the first cut; the rules of the room come first."}
	return t
}
