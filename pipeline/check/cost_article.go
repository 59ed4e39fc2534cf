package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// discontinued tells of articles that are no longer made, and whether what the
// price list names instead serves this size.
func discontinued(p *Pass) {
	p.eachKitFabric(func(w worn, role plan.Text, f *plan.Fabric) {
		article, ok := p.Prices.Find(f.SKU.Text)
		if !ok || !article.Discontinued {
			return
		}
		finding := Finding{Related: []Related{{role.At, "the kit holds it"}}}
		begin := fmt.Sprintf("%s%q, the article of %q, is no longer made", w.way, article.SKU, role.Text)
		next, found := p.substitute(article)
		fault := ""
		if found {
			fault = p.unserved(w, role.Text, next)
		}
		switch {
		case !found:
			finding.Message, finding.Hint = begin+", and the price list names nothing to take instead", "choose another article, and name it in the plan"
		case fault != "":
			finding.Message, finding.Hint = fmt.Sprintf("%s, and its substitute %q does not serve: %s", begin, next.SKU, fault), "choose another article, and name it in the plan"
		default:
			finding.Level = diag.Warning
			finding.Message, finding.Hint = fmt.Sprintf("%s; its substitute %q serves", begin, next.SKU), fmt.Sprintf("write %q", next.SKU)
		}
		p.Report(f.SKU.At, finding)
	})
}

// substitute is the first article that is still made along a chain of
// substitutes.
func (p *Pass) substitute(article plan.Price) (plan.Price, bool) {
	seen := map[string]bool{}
	for article.Discontinued && !seen[article.SKU] {
		seen[article.SKU] = true
		next, ok := p.Prices.Find(article.Substitute)
		if !ok {
			return plan.Price{}, false
		}
		article = next
	}
	return article, !article.Discontinued
}

// unserved says why an article cannot take the place of a fabric's own; empty
// where it can.
func (p *Pass) unserved(w worn, role string, next plan.Price) string {
	own := w.Fabric(role)
	if !next.Fits(own.Form) {
		return fmt.Sprintf("it is priced per %s", next.Unit)
	}
	f := w.Instead(role, next).Fabric(role)
	limit, says := p.promised(own)
	switch {
	case own.Form == plan.Precut || !w.Size.SureOfCloth(own):
		return ""
	case f.Err != nil:
		return fmt.Sprintf("it is %s, and a piece does not fit in any way", p.article(f))
	case f.Gross > limit:
		return fmt.Sprintf("it is %s and takes %s, and %s", p.article(f), p.length(f.Gross), says)
	}
	return ""
}

// promised is the length that is printed for a fabric, or else what is bought of
// it now.
func (p *Pass) promised(own *derive.Fabric) (measure.Length, string) {
	if printed := p.Size.Of.Printed; printed != nil {
		for _, said := range printed.Fabric {
			if said.Of.Text == own.Role.Text {
				return said.Length.Length, "the pattern prints " + p.asPrinted(said)
			}
		}
	}
	return own.Buy, "the kit holds " + p.shopped(own.Buy)
}
