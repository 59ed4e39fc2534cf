package pipeline

import (
	"yardproof/pipeline/check"
	"yardproof/pipeline/report"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// compareIDs finds plans of one id. The first keeps it; the others may not be
// exported, not even as drafts, for which of them would be written last is
// chance.
func (l *line) compareIDs() {
	var ids []check.IDAt
	byName := map[string]*planFile{}
	for _, p := range l.plans {
		byName[p.name] = p
		if p.id != "" {
			ids = append(ids, check.IDAt{ID: plan.Text{Text: p.id, At: p.idAt}, File: source.New(p.name, p.bytes)})
		}
	}
	for _, f := range check.DuplicateIDs(ids) {
		f.Place.Pointer = "/id"
		p := byName[f.Place.File]
		p.twins = append(p.twins, f)
	}
}

// compareTitles finds plans of one project that share a title. What is kept of a
// plan tells its title and not where it stands, so files that may share one are
// read once more.
func (l *line) compareTitles() {
	type studio struct {
		project *project
		title   string
	}
	shared := map[studio][]*planFile{}
	for _, p := range l.plans {
		if p.title != "" {
			key := studio{p.project, check.SameTitle(p.title)}
			shared[key] = append(shared[key], p)
		}
	}
	for _, plans := range shared {
		if len(plans) > 1 {
			compareTitles(plans)
		}
	}
}

func compareTitles(plans []*planFile) {
	var titles []check.TitleAt
	byName := map[string]*planFile{}
	for _, p := range plans {
		file := source.New(p.name, p.bytes)
		tree, _ := jsontree.Parse(file, jsontree.DefaultLimits())
		title := tree.Get("title")
		if title == nil {
			continue
		}
		byName[p.name] = p
		t := check.TitleAt{ID: p.id, Title: plan.Text{Text: title.Text, At: title.Range}, File: file, Tree: tree}
		if units := tree.Get("units"); units != nil {
			t.Units = units.Text
		}
		titles = append(titles, t)
	}
	for _, f := range check.DuplicateTitles(titles) {
		p := byName[f.Place.File]
		p.alike = append(p.alike, f)
	}
}

// tellTitles adds what there is to say of titles to the line's findings, as the
// project sees it: what a plan's own files say does not depend on other plans.
func (l *line) tellTitles() {
	for _, p := range l.plans {
		found := p.alike
		if !p.done || len(found) == 0 {
			continue
		}
		if p.project != nil && p.judged {
			var excused []report.Excused
			found, excused = p.project.rules.apply(found, p.used)
			p.outcome.Excused = append(p.outcome.Excused, excused...)
			p.outcome.Accepted += len(excused)
		}
		l.findings = append(l.findings, found...)
	}
}
