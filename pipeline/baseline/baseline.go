package baseline

import (
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// Record is a set of findings that was recorded. The zero Record has none.
type Record struct{ known map[string]recorded }

type recorded struct {
	of    diag.Identity
	level diag.Level
}

// Of is the record of what a run has found.
func Of(run *report.Run) Record {
	r := Record{known: map[string]recorded{}}
	for f, i := range recordable(run) {
		r.known[i.Fingerprint()] = recorded{of: i, level: f.Level}
	}
	return r
}

// Compare takes the findings of a run that are recorded out of it and keeps
// them as old ones. A finding that has become graver than it was recorded is
// not old; neither is one that tells of yardproof's own troubles.
func (r Record) Compare(run *report.Run) {
	result := &report.Baseline{Recorded: len(r.known)}
	met, old := map[string]bool{}, map[string]bool{}
	var identities diag.Identities
	for _, f := range run.All() {
		print := identities.Of(f).Fingerprint()
		known, ok := r.known[print]
		met[print] = true
		if ok && f.Level <= known.level && !stopped(f) {
			old[print] = true
			result.Old = append(result.Old, f)
		}
	}
	looked := lookedAt(run)
	for print, known := range r.known {
		switch {
		case met[print]:
		case looked(known.of):
			result.Gone++
		default:
			result.Unseen++
		}
	}
	run.Findings = without(run.Findings, result.Old)
	for i := range run.Plans {
		run.Plans[i].Findings = without(run.Plans[i].Findings, result.Old)
	}
	run.Baseline = result
}

// without leaves out findings that are equal to one of old, which is in the
// one order.
func without(findings, old []diag.Finding) []diag.Finding {
	return slices.DeleteFunc(slices.Clone(findings), func(f diag.Finding) bool {
		_, found := slices.BinarySearchFunc(old, f, diag.Compare)
		return found
	})
}

// lookedAt reports whether a run says anything about what an identity is about.
// Of a plan that could not be decoded, or that waits for its project, only the
// findings that it has are known.
func lookedAt(run *report.Run) func(diag.Identity) bool {
	plans, files := map[string]bool{}, map[string]bool{}
	for _, p := range run.Plans {
		files[p.File] = true
		if p.ID != "" {
			plans[p.ID] = plans[p.ID] || p.Title != "" && !p.Waits
		}
	}
	return func(i diag.Identity) bool {
		if i.Plan != "" {
			return plans[i.Plan]
		}
		return files[i.File] || !strings.HasSuffix(i.File, ".plan.json")
	}
}

// stopped reports whether a finding, or one that follows from it, says that
// yardproof could not do its work.
func stopped(f diag.Finding) bool {
	return strings.HasPrefix(f.Rule, "run/") && f.Level == diag.Error || slices.ContainsFunc(f.Follows, stopped)
}

// Complete reports whether a run is worth recording: whether nothing kept
// yardproof from looking at all of it.
func Complete(run *report.Run) bool { return !slices.ContainsFunc(run.All(), stopped) }
