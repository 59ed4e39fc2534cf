package tabulate

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// youWillNeed is what the pattern's buyer has to get, in yards and in metres, and the
// same as text to be pasted into the pattern.
func (in Input) youWillNeed() report.Sheet {
	tables := in.fabricsNeeded()
	tables = append(tables, in.notFabric(), in.needAsText())
	return report.Sheet{ID: "you-will-need", Title: "You will need", Pages: 1, Tables: tables}
}

// bothUnits are the two ways in which fabric is sold.
func bothUnits() [2]measure.Unit { return [2]measure.Unit{measure.In, measure.Cm} }

// fabricsNeeded are fabrics down and sizes across, each in yards and in metres, both
// rounded up for who buys in them.
func (in Input) fabricsNeeded() []report.Table {
	var tables []report.Table
	for i, sizes := range in.abreast(pairsAbreast) {
		t := report.Table{ID: numbered("need-fabric", i), Heading: "Fabric", Columns: []report.Column{{ID: "fabric", Title: "Fabric", Wide: true}}}
		for _, s := range sizes {
			for j, u := range bothUnits() {
				title := s.Called()
				if j > 0 {
					title = "or"
				}
				t.Columns = append(t.Columns, report.Column{ID: s.Of.Name.Text + "_" + fabricUnit(u), Title: title, Right: true})
			}
		}
		for _, role := range in.roles() {
			r := row(report.T(in.named(role)))
			for _, s := range sizes {
				for j, u := range bothUnits() {
					r.Cells = append(r.Cells, in.needIn(s, s.Fabric(role), u, j > 0))
				}
			}
			t.Rows = append(t.Rows, r)
		}
		if i == 0 {
			t.Foot = []string{"Fabric is " + in.widths() + ". Yards and metres are each rounded up to the step that shops sell: buy by one or the other."}
		}
		tables = append(tables, t)
	}
	return tables
}

// widths are the usable widths that the lengths hold for.
func (in Input) widths() string {
	var all []string
	for _, s := range in.Sizes {
		for _, f := range s.Fabrics {
			if f.Used() && f.Form == plan.Yardage {
				all = append(all, f.UsableWidth.AsThere(in.units()))
			}
		}
	}
	all = unique(all)
	if len(all) == 0 {
		return "sold in packs"
	}
	return "at least " + strings.Join(all, " or ") + " wide between the selvages"
}

func (in Input) needIn(s *derive.Size, f *derive.Fabric, u measure.Unit, second bool) report.Cell {
	if f == nil || !f.Used() || f.Err != nil || !s.SureOfCloth(f) || f.Form == plan.Precut {
		if second {
			return report.Cell{}
		}
		return plainly(in.buyCell(s, f))
	}
	return report.F(s.BuyIn(f, u), u)
}

// notFabric is packs, batting, thread, notions and tools, in the order in which a
// pattern lists them.
func (in Input) notFabric() report.Table {
	t := report.Table{ID: "need-besides", Heading: "Batting, notions and tools", Columns: []report.Column{
		{ID: "what", Title: "What"}, {ID: "size", Title: "Size"}, {ID: "need", Title: "You will need", Wide: true},
	}}
	for _, n := range in.besides() {
		t.Rows = append(t.Rows, row(report.T(n.what), report.T(n.size), report.T(n.need)))
	}
	return t
}

// needed is a line of what is needed.
type needed struct{ what, size, need string }

func (in Input) besides() []needed {
	var all []needed
	for _, f := range in.packsUsed() {
		all = append(all, needed{"Pack", "", kit.Title(f) + ": " + in.form(f)})
	}
	for _, s := range in.Sizes {
		if b := s.Batting; b != nil {
			other := measure.In
			if in.units() == measure.In {
				other = measure.Cm
			}
			all = append(all, needed{"Batting", s.Called(), in.battingToBuy(b) + " (at least " + boxUp(b, other) + ")"})
		}
	}
	for _, s := range in.Sizes {
		var uses []string
		for _, use := range s.Thread.Uses {
			text := fmt.Sprintf("%s m for stitch class %s", metres(use.Total).Number.FloatString(1), use.Class)
			if use.Quilting {
				text += ", quilting"
			}
			uses = append(uses, text)
		}
		if len(uses) > 0 {
			all = append(all, needed{"Thread", s.Called(), strings.Join(uses, "; ")})
		}
	}
	for _, notion := range in.notions() {
		all = append(all, needed{"Notions", "", notion})
	}
	for _, r := range in.tools().Rows {
		all = append(all, needed{"Tools", "", r.Cells[0].Text})
	}
	return all
}

// boxUp is the size of batting in another unit, rounded up to what a tape shows.
func boxUp(b *derive.Batting, u measure.Unit) string {
	step := measure.Inch / 2
	if u == measure.Cm {
		step = measure.Centimetre
	}
	return measure.FormatBox(b.Size.Width.CeilTo(step).Surd(), b.Size.Height.CeilTo(step).Surd(), u)
}

// packsUsed are the fabrics that come in packs.
func (in Input) packsUsed() []*derive.Fabric {
	var all []*derive.Fabric
	for _, role := range in.roles() {
		for _, s := range in.Sizes {
			if f := s.Fabric(role); f != nil && f.Used() && f.Form == plan.Precut {
				all = append(all, f)
				break
			}
		}
	}
	return all
}

// notions are the things that kits hold besides fabric, by name.
func (in Input) notions() []string {
	var all []string
	for _, k := range in.kits() {
		for _, thing := range k.Things {
			all = append(all, thing.Title())
		}
	}
	return unique(all)
}

// needAsText is the same as a pattern prints it.
func (in Input) needAsText() report.Table {
	t := report.Table{ID: "need-text", Heading: "The same as text, to paste into the pattern", Columns: []report.Column{{ID: "text", Wide: true}}}
	add := func(text string) { t.Rows = append(t.Rows, row(report.T(text))) }
	for _, role := range in.roles() {
		var each []string
		for _, s := range in.Sizes {
			f := s.Fabric(role)
			if f == nil || !f.Used() {
				continue
			}
			each = append(each, in.ofSize(s)+in.amount(s, f))
		}
		add(in.named(role) + ": " + strings.Join(each, "; "))
	}
	var tools []string
	for _, n := range in.besides() {
		switch {
		case n.what == "Tools":
			tools = append(tools, n.need)
		case n.size != "" && len(in.Sizes) > 1:
			add(n.what + ", " + n.size + ": " + n.need)
		default:
			add(n.what + ": " + n.need)
		}
	}
	add("Tools: " + strings.Join(tools, "; "))
	return t
}

// ofSize names a size where there are others.
func (in Input) ofSize(s *derive.Size) string {
	if len(in.Sizes) == 1 {
		return ""
	}
	return s.Called() + " "
}

func (in Input) amount(s *derive.Size, f *derive.Fabric) string {
	switch {
	case f.Err != nil || !s.SureOfCloth(f):
		return line.Bought(s, f)
	case f.Form == plan.Precut:
		return say.Many(f.Packs, "pack")
	}
	return measure.FormatFabric(s.BuyIn(f, measure.In), measure.In) + " (" + measure.FormatFabric(s.BuyIn(f, measure.Cm), measure.Cm) + ")"
}
