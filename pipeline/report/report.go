package report

import (
	"slices"

	"yardproof/pipeline/diag"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// Run is the result of one run over a line of plans, in file order.
type Run struct {
	Studio   string
	Plans    []Outcome
	Findings []diag.Finding // of files, the project and the line, not of any one plan
	Accepted int            // findings left out because the project accepts them
	Cuttings Cuttings
	Excused  []Excused // those, where they are kept; may be fewer than Accepted
	Baseline *Baseline // what is said of findings that were recorded earlier; nil when none were asked for
	Rules    []Rule    // every rule there is, by name; empty where nobody asked
	Currency measure.Currency
	Sheets   []Sheet // of the line's workbook; empty when only checking
	Edition  string  // the file of the last edition; empty when there is none
	Changes  []Change
	Text     *Reading // what became of a pattern's text; nil when none was read
	Basis    string   // names all that the sheets follow from, as that of a Plan does
}

// Change is a figure of a size that is not as it was in the last edition.
type Change struct {
	Plan, Size  string
	What        string
	Before, Now string // in words; empty for none
}

// Cuttings counts the cutting problems of a run.
type Cuttings struct {
	Asked  int // by fabrics of sizes
	Solved int // different ones, each solved once
}

// Baseline is how a run compares with findings that were recorded earlier. The
// old ones are no longer among the run's own.
type Baseline struct {
	Recorded int
	Old      []diag.Finding // found again, in the one order
	Gone     int            // recorded and not found again
	Unseen   int            // recorded for plans that the run did not look at

	// Since is the revision that the findings are those of, as it was asked
	// for; empty when they were recorded. The run then tells only of plans that
	// differ from it.
	Since    string
	Same     int // plans that do not differ
	Unjudged int // plans that the revision's own project file kept from being proved
}

// Outcome is what is kept of a plan once it has been dealt with.
type Outcome struct {
	File     string
	ID       string // empty when it could not be read
	Title    string
	Status   string
	Sizes    []string
	Findings []diag.Finding
	Accepted int
	Excused  []Excused
	Waits    bool // it was read and not judged, for its project file cannot be used
	Exported bool
}

// Excused is a finding that the project accepts.
type Excused struct {
	Finding diag.Finding
	Reason  string     // as the project gives it
	Until   string     // the last day on which it is accepted, as an ISO 8601 date; empty for good
	Place   diag.Place // where it does so
}

// Rule is what a rule says of itself, in sentences without a final stop where
// they begin with a small letter.
type Rule struct {
	Name    string // family/slug
	Level   diag.Level
	Summary string // what is wrong, in a line
	Why     string // what goes wrong because of it
	Fix     string // what to do, as a verb phrase
}

// All lists every finding of the run in the one order.
func (r *Run) All() []diag.Finding {
	var all []diag.Finding
	all = append(all, r.Findings...)
	for _, p := range r.Plans {
		all = append(all, p.Findings...)
	}
	return diag.Sort(all)
}

// Exceptions lists what the projects accept: of the line, then of each plan,
// in the order of the plans.
func (r *Run) Exceptions() []Excused {
	all := slices.Clone(r.Excused)
	for _, p := range r.Plans {
		all = append(all, p.Excused...)
	}
	return all
}

// Plan is one plan's report: what its workbook and tables hold.
type Plan struct {
	Outcome
	Revision string
	Currency measure.Currency
	Units    measure.Unit
	Proved   bool         // no finding is an error
	Source   *source.File // to turn the places of Work into lines
	Sheets   []Sheet
	Numbers  []Derived // in place of the sheets, where they were asked for

	// Basis names all that the sheets follow from: while it stays the same, so
	// do they. It is empty when nobody said which program makes them.
	Basis string

	// Stop tells that nobody waits for what is made of it any more; may be nil.
	Stop func() bool `json:"-"`
}

// Export is what was written of a plan, or of the line, in one format.
type Export struct {
	Format string   `json:"format"`
	Basis  string   `json:"basis"` // of what it was made from; empty when it is not whole
	Files  []Output `json:"files"`
}

// File is one file to be written below an output folder.
type File struct {
	Name  string // slash path below the folder
	Bytes []byte
}

// Output is a file that was written.
type Output struct {
	Name   string `json:"name"`   // slash path below the output folder
	SHA256 string `json:"sha256"` // of its bytes, in hexadecimal digits
}
