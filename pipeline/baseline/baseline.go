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
	of      diag.Identity
	level   diag.Level
	follows bool // it was told as following from another finding
}

// Of is the record of what a run has found.
func Of(run *report.Run) Record {
	r := Record{known: map[string]recorded{}}
	for _, m := range recordable(run) {
		r.known[m.identity.Fingerprint()] = recorded{m.identity, m.Level, m.follows}
	}
	return r
}

// Compare takes the findings of a run that are recorded out of it and keeps
// them as old ones. A finding that has become graver than it was recorded is
// not old; neither is one that tells of yardproof's own troubles. What follows
// from an old finding and is not old itself is told by itself.
func (r Record) Compare(run *report.Run) {
	result := &report.Baseline{}
	met := map[string]bool{}
	fresh := map[string][]diag.Finding{} // by the finding that they follow from
	for _, m := range identified(run.All()) {
		print := m.identity.Fingerprint()
		known, ok := r.known[print]
		met[print] = true
		switch old := ok && m.Level <= known.level; {
		case !m.follows && old && !stopped(m.Finding):
			result.Old = append(result.Old, m.Finding)
		case m.follows && !old:
			fresh[m.root] = append(fresh[m.root], alone(m.Finding))
		}
	}
	r.count(result, met, lookedAt(run))
	run.Findings = afterwards(run.Findings, result.Old, fresh)
	for i := range run.Plans {
		run.Plans[i].Findings = afterwards(run.Plans[i].Findings, result.Old, fresh)
	}
	run.Baseline = result
}

// count counts what was recorded: what has not been met is gone, unless the run
// did not look at it. What followed from another finding is not counted.
func (r Record) count(result *report.Baseline, met map[string]bool, looked func(diag.Identity) bool) {
	for print, known := range r.known {
		if known.follows {
			continue
		}
		result.Recorded++
		switch {
		case met[print]:
		case looked(known.of):
			result.Gone++
		default:
			result.Unseen++
		}
	}
}

// alone is a finding without what follows from it.
func alone(f diag.Finding) diag.Finding {
	f.Follows = nil
	return f
}

// afterwards leaves out the old findings, which are in the one order, and puts
// those in their place that follow from them and are not old.
func afterwards(findings, old []diag.Finding, fresh map[string][]diag.Finding) []diag.Finding {
	kept := without(findings, old)
	for _, f := range findings {
		if _, isOld := slices.BinarySearchFunc(old, f, diag.Compare); isOld {
			kept = append(kept, fresh[named(f)]...)
		}
	}
	return diag.Sort(kept)
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
