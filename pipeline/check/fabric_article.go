package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

var articleChecks = []Check{
	{
		Rule: "fabric/article-short", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "the printed fabric is not enough of the article that is sold for it",
		Why:     "One pattern is sold in several fabrics, and they are not all as wide as the plan counts on. Squares cut 6 1/2 in fit six to a strip of 40 in and five to one of 38 in: the maker of the heather kit runs out where the maker of the red one does not.",
		Fix:     "print what the narrowest article takes, or sell another article",
		Run:     eachWorn(articleShort),
	},
	{
		Rule: "fabric/article-strips", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "an article that is sold takes more strips than the pattern's instructions cut",
		Why:     "The instructions say how many strips to cut for the width the plan counts on. Two strips of 40 in hold twelve 6 1/2-in squares; of 38 in they hold ten, and the maker finds out at the last block, even if the length she bought holds a third strip.",
		Fix:     "tell the buyers of that article to cut more strips, or sell another",
		Run:     eachWorn(articleStrips),
	},
}

// worn is a size in the fabrics that are sold for it.
type worn struct {
	*derive.Size
	way string // of a colourway, at the start of a message; empty for the recipe's own
}

// wardrobe is the size in its own articles and in those of every colourway.
func (p *Pass) wardrobe() []worn {
	all := []worn{{p.Size.InArticles(p.Prices), ""}}
	for _, w := range p.Size.Colourways() {
		all = append(all, worn{w.InArticles(p.Prices), wayOf(w)})
	}
	return all
}

// wayOf tells of a size's colourway at the start of a message; empty for the
// recipe's own fabrics.
func wayOf(s *derive.Size) string {
	if !s.Of.Way.Given() {
		return ""
	}
	return fmt.Sprintf("in the colourway %q, ", s.Of.Way.Text)
}

// eachWorn runs a rule over what is sold where it differs from the plan's own
// fabrics, whose figures the other rules judge.
func eachWorn(rule func(*Pass, worn)) func(*Pass) {
	return func(p *Pass) {
		for _, w := range p.wardrobe() {
			if w.Size != p.Size && p.Size.Of.Printed != nil {
				rule(p, w)
			}
		}
	}
}

func articleShort(p *Pass, w worn) {
	for _, said := range p.Size.Of.Printed.Fabric {
		p.articleCloth(w, said)
	}
	for _, said := range p.Size.Of.Printed.Precuts {
		p.articlePacks(w, said)
	}
}

func articleStrips(p *Pass, w worn) {
	for _, said := range p.Size.Of.Printed.Fabric {
		own, f := p.Size.Fabric(said.Of.Text), w.Fabric(said.Of.Text)
		if !bothCloth(own, f) || !p.Size.SureOfCloth(own) || !holds(f, said.Length.Length) || f.Layout.Strips() <= own.Layout.Strips() {
			continue
		}
		p.Report(articlePlace(own, f), Finding{
			Message: fmt.Sprintf("%s%q is %s, and takes %s where the instructions cut %d; the printed %s holds them", w.way, f.Role.Text, p.article(f),
				count(f.Layout.Strips(), "strip"), own.Layout.Strips(), p.asPrinted(said)),
			Ways:    ways(advise("say so to its buyers"), advise("sell an article of at least "+p.needs(own.UsableWidth.Length))),
			Related: []Related{{said.At, "what is printed"}},
		})
	}
}

// bothCloth reports whether a fabric is used by length as planned and as sold.
func bothCloth(own, f *derive.Fabric) bool {
	return own != nil && f != nil && own.Form == plan.Yardage && f.Form == plan.Yardage && own.Err == nil && own.Used() && f.Used()
}

// articleCloth judges a printed length that is enough of what the plan counts
// on.
func (p *Pass) articleCloth(w worn, said plan.PrintedLength) {
	own, f := p.Size.Fabric(said.Of.Text), w.Fabric(said.Of.Text)
	if !bothCloth(own, f) || !p.Size.SureOfCloth(own) || !holds(own, said.Length.Length) || holds(f, said.Length.Length) {
		return
	}
	takes := "a piece does not fit in any way"
	wider := advise("sell an article of at least " + p.needs(own.UsableWidth.Length))
	var enough diag.Way
	if f.Err == nil {
		takes = fmt.Sprintf("it takes %s", p.needs(f.Gross))
		enough = p.printCloth(said, f)
	}
	if f.UsableWidth.Length == own.UsableWidth.Length {
		wider = diag.Way{}
	}
	p.Report(articlePlace(own, f), Finding{
		Message: fmt.Sprintf("%s%q is %s, and %s; the pattern prints %s", w.way, f.Role.Text, p.article(f), takes, p.asPrinted(said)),
		Ways:    ways(enough, wider),
		Related: []Related{{said.At, "what is printed"}},
	})
}

// holds reports whether a length is enough for the pattern's instructions.
func holds(f *derive.Fabric, length measure.Length) bool { return f.Err == nil && f.Gross <= length }

// article says what counts of an article.
func (p *Pass) article(f *derive.Fabric) string {
	text := p.there(f.UsableWidth.Length) + " wide"
	if f.Repeat.Length > 0 {
		text += " with a repeat of " + p.needs(f.Repeat.Length)
	}
	return text
}

func (p *Pass) articlePacks(w worn, said plan.PrintedCount) {
	own, f := p.Size.Fabric(said.Of.Text), w.Fabric(said.Of.Text)
	if own == nil || f == nil || f.Form != plan.Precut || !p.Size.SureOfCloth(own) || f.Err != nil || int64(said.N) < own.Packs || int64(said.N) >= f.Packs {
		return
	}
	p.Report(articlePlace(own, f), Finding{
		Message: fmt.Sprintf("%s%q takes %s of %d; the pattern prints %d", w.way, f.Role.Text, count(int(f.Packs), "pack"), f.Pack.N, said.N),
		Ways:    ways(p.printCount(said.At, f.Packs), advise("sell a larger pack")),
		Related: []Related{{said.At, "what is printed"}},
	})
}

// articlePlace is where the plan says what differs from its own fabric: the
// colourway's width or repeat, or else the article whose price says so.
func articlePlace(own, f *derive.Fabric) source.Range {
	switch {
	case f.UsableWidth.At != own.UsableWidth.At:
		return f.UsableWidth.At
	case f.Repeat.At != own.Repeat.At:
		return f.Repeat.At
	case f.Pack.At != own.Pack.At:
		return f.Pack.At
	case f.SKU.Given():
		return f.SKU.At
	}
	return f.Role.At
}
