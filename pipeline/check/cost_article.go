package check

import (
	"fmt"
	"math/big"
	"slices"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
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
		there := p.shelf(w, role.Text, article.SKU)
		switch {
		case there != "":
			finding.Level = diag.Warning
			finding.Message, finding.Hint = fmt.Sprintf("%s; %s", begin, there), "choose what comes after it before that is used up"
			if found && fault == "" {
				finding.Hint = fmt.Sprintf("write %q once that is used up: it serves", next.SKU)
			}
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

// shelf says what the stock list has that kits can be packed from although an
// article is no longer made; empty where it has not enough for one. Whether it is
// enough for all that are planned is told of the line.
func (p *Pass) shelf(w worn, role, sku string) (there string) {
	lengths, pieces := p.Stock.OnHand(sku)
	p.eachKit(func(way string, k *kit.Kit) {
		if way != w.way {
			return
		}
		if n := p.Stock.Packed(p.Plan.ID.Text, p.Size.Of.Name.Text, k.Size.Of.Way.Text); n > 0 && k.Cells.Run.Value.Cmp(big.NewRat(int64(n), 1)) <= 0 {
			there = "as many kits as are planned are packed"
			return
		}
		for _, g := range k.Fabrics {
			switch {
			case g.Role.Text != role:
			case g.Form == plan.Precut && pieces >= g.Packs && pieces > 0:
				there = fmt.Sprintf("on hand there is stock for some kits: %d, of which one takes %d", pieces, g.Packs)
			case g.Form == plan.Yardage && len(lengths) > 0 && slices.Max(lengths) >= g.Length:
				there = fmt.Sprintf("the longest piece on hand is %s, and one kit takes %s", p.there(slices.Max(lengths)), p.shopped(g.Length))
			}
		}
	})
	return there
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
// where it can. What is only warned of with the fabric's own is not held against
// another.
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
	case f.Zone(limit) < min(own.Zone(limit), derive.Comfortable):
		return fmt.Sprintf("it is %s and takes %s, and %s", p.article(f), p.needs(f.Gross), says)
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
