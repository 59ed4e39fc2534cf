package pipeline

import (
	"maps"
	"slices"
	"strconv"
	ofLine "yardproof/pipeline/internal/line"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/supply"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// basis names what is found and written after all that it follows from.
type basis struct{ store.Basis }

func newBasis() basis { return basis{store.NewBasis()} }

// elsewhere are the settings of a project that no single plan follows from, or
// that are applied afresh in every run.
func elsewhere() []string {
	return []string{"$schema", "prices", "price_age", "stock", "edition", "rules", "exceptions", "exclude"}
}

// settingsBasis names the settings that plans follow from. Whatever it does not
// know counts, so that a setting that is new is not forgotten here.
func settingsBasis(tree *jsontree.Node) string {
	b := newBasis()
	for _, m := range inOrder(tree) {
		if !slices.Contains(elsewhere(), m.Key) {
			b.Add(m.Key)
			b.tree(m.Value)
		}
	}
	return b.Name()
}

// tree adds a value, however it is laid out and in whatever order its keys are.
func (b basis) tree(n *jsontree.Node) {
	b.Add(n.Kind.String(), n.Text, strconv.Itoa(len(n.Items)), strconv.Itoa(len(n.Members)))
	for _, item := range n.Items {
		b.tree(item)
	}
	for _, m := range inOrder(n) {
		b.Add(m.Key)
		b.tree(m.Value)
	}
}

func inOrder(n *jsontree.Node) []jsontree.Member {
	byKey := map[string]jsontree.Member{}
	for _, m := range n.Members {
		byKey[m.Key] = m
	}
	var members []jsontree.Member
	for _, key := range slices.Sorted(maps.Keys(byKey)) {
		members = append(members, byKey[key])
	}
	return members
}

// basis names all that is found out of the plan: the program, whether it does
// all that it can, the text, the settings, the prices of its articles and the stock of
// those that are no longer made.
func (w *work) basis(skus []string) string {
	b := newBasis()
	b.Add(w.Version, strconv.FormatBool(w.Tables), w.name, w.sum)
	switch {
	case w.project == nil:
		b.Add("no project")
	case w.outcome.Waits:
		b.Add("a project that cannot be used")
	default:
		b.Add("settings", w.project.basis)
		b.prices(w.project.prices, skus)
		b.Value(w.stock(skus))
	}
	return b.Name()
}

func (b basis) prices(list *plan.PriceList, skus []string) {
	if list == nil {
		b.Add("no prices")
		return
	}
	b.Add(list.Currency.Code())
	b.Value(list.Only(skus).All())
}

// skus are the articles that the plan names, each once.
func skus(p *plan.Plan) []string {
	var all []string
	add := func(s plan.Size) {
		for _, f := range s.Fabrics {
			if f.SKU.Given() {
				all = append(all, f.SKU.Text)
			}
		}
		if s.Kit == nil {
			return
		}
		for _, t := range s.Kit.Things {
			if t.SKU.Given() {
				all = append(all, t.SKU.Text)
			}
		}
	}
	for _, s := range p.Sizes {
		add(s)
		for _, way := range s.Ways {
			add(way)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// excuse is what an output may follow from of an accepted finding: not the
// place of the exception, which moves when another is added.
type excuse struct {
	Finding       diag.Finding
	Reason, Until string
}

// exportBasis names all that the plan's sheets follow from: what is known of it
// and, after the project's levels and exceptions, what is said of it.
func (w *work) exportBasis() string {
	b := newBasis()
	b.Add(w.basis(w.skus))
	b.Value(w.outcome.Findings)
	for _, e := range w.outcome.Excused {
		b.Value(excuse{e.Finding, e.Reason, e.Until})
	}
	return b.Name()
}

// supply adds what planned kits take, whatever place its prices stand at.
func (b basis) supply(l supply.Line) {
	b.Value(l.Runs)
	for _, a := range l.Articles {
		a.File, a.At = nil, source.Range{}
		b.Value(a)
	}
	for _, left := range l.Left {
		left.File, left.At = nil, source.Range{}
		b.Value(left)
	}
	for _, e := range l.Landed {
		b.Value([]any{e.Supplier, e.Freight.Value, e.Fees.Value, e.Duty.BasisPoints, e.ByLength})
	}
}

// lineBasis names all that the line's sheets follow from.
func (l *line) lineBasis(run *report.Run, summaries []ofLine.Summary) string {
	b := newBasis()
	b.Add(l.Version, run.Studio, run.Currency.Code(), strconv.Itoa(run.Cuttings.Asked), strconv.Itoa(run.Cuttings.Solved))
	b.Value(run.Findings)
	b.Value(run.Plans)
	b.Value(summaries)
	b.Add(run.Edition)
	b.Value(run.Changes)
	for _, p := range l.projects {
		b.supply(p.supply)
	}
	return b.Name()
}
