package pipeline

import (
	"yardproof/pipeline/check"
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
