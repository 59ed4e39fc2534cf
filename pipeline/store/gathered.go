package store

import (
	"bytes"
	"errors"
	"maps"
	"slices"

	"yardproof/pipeline/report"
)

// Gathered are results that several runs wrote, by plan.
type Gathered struct {
	results map[string]*Result
	texts   map[string][]byte
}

// DifferentError is the error of a second result of a plan, which is not the
// same as the first.
type DifferentError struct{ Plan string }

func (e DifferentError) Error() string {
	return "there is another result of " + e.Plan + ", and the two differ"
}

// Add adds a result read from a file, if this version of yardproof made it. The
// error is an OtherVersion, a DifferentError or one of [ReadResult].
func (g *Gathered) Add(name string, text []byte, version string) error {
	r, err := ReadResult(name, text, version)
	if err != nil {
		return err
	}
	if g.results[r.File] != nil && !bytes.Equal(g.texts[r.File], text) {
		return DifferentError{r.File}
	}
	if g.results == nil {
		g.results, g.texts = map[string]*Result{}, map[string][]byte{}
	}
	g.results[r.File], g.texts[r.File] = r, text
	return nil
}

// Plans are the plans that have a result, sorted.
func (g *Gathered) Plans() []string { return slices.Sorted(maps.Keys(g.results)) }

// Into is the memory of a run that makes one line of the results in an output
// folder. The files that the results name count as the folder's own from then on.
func (g *Gathered) Into(o *Output) Memory {
	for _, r := range g.results {
		o.ledger.Own(r.Exports)
	}
	return gathering{g, o}
}

type gathering struct {
	from *Gathered
	into *Output
}

func (g gathering) Recall(plan string) *Result { return g.from.results[plan] }

func (g gathering) Keep(r *Result) error {
	return errors.Join(g.into.takeOver(r, g.from.results[r.File].Exports), g.into.Keep(r))
}

// takeOver records what an export wrote of a plan, perhaps to another folder. If
// the plan turns out not to be the first of its id, nothing is recorded.
func (o *Output) takeOver(r *Result, exports []report.Export) error {
	if !r.Exported {
		return nil
	}
	return o.ledger.TakeOver(r.File, exports)
}
