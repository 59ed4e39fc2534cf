package derive

import (
	"slices"

	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Colourways are the size in each of the plan's colourways, in their order. No
// rule looks at them but those about articles and kits.
func (s *Size) Colourways() []*Size {
	if s.ways == nil {
		for i := range s.Of.Ways {
			s.ways = append(s.ways, s.Again(&s.Of.Ways[i]))
		}
	}
	return s.ways
}

// InArticles is the size cut from the articles that the plan names: where the
// price list knows one to be narrower than the plan counts on, or its print to
// have another repeat where the plan matches repeats, with that width and
// repeat. It is the size itself when no article makes a difference. A wider
// article makes none: the pattern's instructions are for the plan's width.
func (s *Size) InArticles(prices *plan.PriceList) *Size {
	of := *s.Of
	of.Fabrics = slices.Clone(s.Of.Fabrics)
	differs := false
	for i := range of.Fabrics {
		f := &of.Fabrics[i]
		p, ok := prices.Find(f.SKU.Text)
		if !ok || f.Form != plan.Yardage {
			continue
		}
		differs = replace(&f.UsableWidth.Length, p.Width, p.Width < f.UsableWidth.Length) || differs
		differs = replace(&f.Repeat.Length, p.Repeat, f.Repeat.Length > 0 && p.Repeat != f.Repeat.Length) || differs
	}
	if !differs {
		return s
	}
	if s.sold == nil || s.soldBy != prices {
		s.sold, s.soldBy = s.Again(&of), prices
	}
	return s.sold
}

// Instead is the size with another article for one of its fabrics.
func (s *Size) Instead(role string, article plan.Price) *Size {
	of := *s.Of
	of.Fabrics = slices.Clone(s.Of.Fabrics)
	for i := range of.Fabrics {
		if f := &of.Fabrics[i]; f.Role.Text == role {
			f.SKU.Text = article.SKU
			replace(&f.UsableWidth.Length, article.Width, article.Width < f.UsableWidth.Length)
			replace(&f.Repeat.Length, article.Repeat, f.Repeat.Length > 0)
		}
	}
	return s.Again(&of)
}

// replace puts an article's own width or repeat in place of the plan's, if the
// price list states one and it makes a difference. It reports whether it did.
func replace(to *measure.Length, article measure.Length, counts bool) bool {
	if article == 0 || !counts {
		return false
	}
	*to = article
	return true
}
