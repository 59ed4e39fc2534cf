package pipeline

import (
	"context"

	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/supply"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// supply works out what the planned kits of each project take together, and
// adds what there is to say of it to the line's findings. A plan with errors
// must not be cut, nor one whose id another has, so its kits are not among them.
// False where that failed: what is to be ordered is not known then, and must not
// seem to be nothing.
func (l *line) supply(ctx context.Context) (known bool) {
	known = true
	for _, p := range l.projects {
		if p.settings == nil {
			continue
		}
		err := guard(func() string { return "planning the bolts of" }, func() error {
			l.findings = append(l.findings, l.unknownKits(p)...)
			p.supply = l.bolts.Until(func() bool { return ctx.Err() != nil }, l.kits(p), p.prices, p.stock)
			if ctx.Err() != nil {
				return ctx.Err() // it may be less than it could be
			}
			p.supply.Landed = p.settings.Landed
			found, _ := p.rules.apply(check.Supply(p.supply, p.settings.Currency, l.Today), make([]bool, len(p.rules.exceptions)))
			l.findings = append(l.findings, found...)
			return nil
		})
		if err != nil {
			l.findings, known = append(l.findings, failure(err, p.name, "")...), false
		}
	}
	return known
}

// kits are those planned of a project's plans, in file order.
func (l *line) kits(p *project) []supply.Asked {
	var all []supply.Asked
	for _, f := range l.plans {
		if f.project != p || !f.done || len(f.twins) > 0 || diag.Worst(f.outcome.Findings) == diag.Error {
			continue
		}
		for _, size := range f.summary.Sizes {
			if size.Planned != nil {
				all = append(all, supply.Asked{Plan: f.id, Title: f.outcome.Title, Kit: *size.Planned})
			}
		}
	}
	return all
}

// unknownKits are rows of the stock list that name kits of no plan. Only where
// the whole folder was read can that be said.
func (l *line) unknownKits(p *project) []diag.Finding {
	if p.stock == nil || !p.whole || !l.allRead() {
		return nil
	}
	known, judged := map[string]bool{}, true
	for _, f := range l.plans {
		if f.project != p {
			continue
		}
		judged = judged && f.judged
		for _, size := range f.summary.Sizes {
			known[f.id+"/"+size.Name] = true
			if size.Planned != nil {
				known[supply.Asked{Plan: f.id, Kit: *size.Planned}.Name()] = true
			}
		}
	}
	if !judged {
		return nil
	}
	var found []diag.Finding
	for _, k := range p.stock.Kits {
		name := supply.Asked{Plan: k.Plan, Kit: supply.Kit{Size: k.Size, Colourway: k.Colourway}}.Name()
		if !known[name] {
			found = append(found, check.Problems(k.File, nil, "", []source.Problem{{
				Code: plan.BadStock, Range: k.At,
				Message: "the stock list has kits of " + name + ", and no plan of the folder is sold as these",
				Hint:    "write the plan's id and the name of its size, and of its colourway if it is not in the recipe's fabrics",
			}})...)
		}
	}
	return found
}

// supplies are what the kits of each project take.
func (l *line) supplies() []supply.Line {
	var all []supply.Line
	for _, p := range l.projects {
		all = append(all, p.supply)
	}
	return all
}
