package costing

import "yardproof/pipeline/report"

// Class is a class in which a pattern is taught.
type Class struct {
	Suffix   string
	Digits   int   // decimals of the currency's minor unit
	Rate     Input // of labour, an hour
	Students Input
	Fee      Input // a student
	Minutes  Input // of teaching
	Costs    Input // of holding it once
	Samples  Input // kits that the teacher sews beforehand
	Unit     Result
	Kits     bool    // each student has a kit
	KitPrice *Result // what each pays for it; nil where the fee includes it
}

// ClassFigures are what a class comes to. Money rounds half away from zero to
// the minor unit.
type ClassFigures struct {
	Income    Result // students x (fee + price of a kit that is sold)
	Cost      Result // teaching + costs + samples and students' kits at their cost
	Profit    Result
	BreakEven Result // students, rounded up, that pay for what does not depend on them; Never where each costs more than he pays
}

// Teach works a class out.
func Teach(c Class) ClassFigures {
	named := func(name string, e *report.Expr) Result { return Result{name + c.Suffix, e} }
	each, spent := c.Fee.ref(), fixed(0)
	if c.Kits {
		spent = c.Unit.ref()
	}
	if c.KitPrice != nil {
		each = sum(each, c.KitPrice.ref())
	}
	held := sum(round(times(over(c.Minutes.ref(), fixed(60)), c.Rate.ref()), c.Digits), c.Costs.ref(), times(c.Samples.ref(), c.Unit.ref()))
	var f ClassFigures
	f.Income = named("class_income", times(c.Students.ref(), each))
	f.Cost = named("class_cost", sum(held, times(c.Students.ref(), spent)))
	f.Profit = named("class_profit", less(f.Income.ref(), f.Cost.ref()))
	f.BreakEven = named("class_break_even", ifOver(each, spent, roundUp(over(held, less(each, spent)), 0), words(Never)))
	return f
}
