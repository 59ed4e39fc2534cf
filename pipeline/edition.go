package pipeline

import (
	"fmt"
	"math/big"
	ofLine "yardproof/pipeline/internal/line"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// compare adds to the run what has changed since the edition that its project
// names. Lines of several projects have no edition in common.
func (l *line) compare(run *report.Run, summaries []ofLine.Summary) {
	if len(l.projects) != 1 || l.projects[0].edition == nil {
		return
	}
	p := l.projects[0]
	run.Edition = p.settings.Edition.Path.Text
	seen := map[[2]string]bool{}
	for i, o := range run.Plans {
		if i >= len(summaries) {
			break
		}
		for _, s := range summaries[i].Sizes {
			now := editionOf(o, s)
			seen[[2]string{now.Plan, now.Size}] = true
			run.Changes = append(run.Changes, changed(p.edition, now, run.Currency)...)
		}
	}
	for _, s := range p.edition.Sizes {
		if p.whole && !seen[[2]string{s.Plan, s.Size}] {
			run.Changes = append(run.Changes, report.Change{Plan: s.Plan, Size: s.Size, What: "size", Before: "in the line", Now: "gone"})
		}
	}
}

// editionOf is a size as an edition would record it now.
func editionOf(o report.Outcome, s ofLine.SizeSummary) plan.EditionSize {
	now := plan.EditionSize{Plan: ofLine.Name(o), Size: s.Name, Fabric: s.Fabric, Cost: s.Cost, Price: s.Price}
	for _, f := range o.Findings {
		now.Counts[diag.Error-f.Level]++
	}
	if now.Counts[0] > 0 { // no figure of it may be ordered or priced by
		now.Fabric, now.Cost, now.Price = "", nil, nil
	}
	return now
}

func changed(e *plan.Edition, now plan.EditionSize, c measure.Currency) []report.Change {
	was, known := e.Find(now.Plan, now.Size)
	if !known {
		return []report.Change{{Plan: now.Plan, Size: now.Size, What: "size", Before: "not there", Now: "new"}}
	}
	var all []report.Change
	differ := func(what, before, after string) {
		if before != after {
			all = append(all, report.Change{Plan: now.Plan, Size: now.Size, What: what, Before: before, Now: after})
		}
	}
	differ("fabric", was.Fabric, now.Fabric)
	differ("kit cost", sum(was.Cost, c), sum(now.Cost, c))
	differ("price", sum(was.Price, c), sum(now.Price, c))
	differ("errors, warnings, notes", counts(was), counts(now))
	return all
}

func counts(s plan.EditionSize) string {
	return fmt.Sprintf("%d, %d, %d", s.Counts[0], s.Counts[1], s.Counts[2])
}

func sum(r *big.Rat, c measure.Currency) string {
	if r == nil {
		return ""
	}
	return measure.RoundMoney(r, c).Format()
}
