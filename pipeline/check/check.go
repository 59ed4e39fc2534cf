package check

import (
	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// Check is one rule.
type Check struct {
	Rule    string // family/slug, in trade words; never reused once retired
	Level   diag.Level
	Lesser  diag.Level // a lower level that the rule also reports at; 0 when there is none
	Since   string     // the first version that has it
	Summary string     // one line: what is wrong
	Why     string     // what goes wrong at the cutting table because of it
	Fix     string     // what to do
	Scope   Scope
	// Thorough rules need every cutting solved; only an export runs them.
	Thorough bool
	// Speaks tells that the rule says that two tellings of a quilt disagree, or that its
	// parts do not fit, so that one wrong value may be behind it. What only has to be
	// enough speaks of none, since more of it, or less asked, is always a way out; and of
	// what is unusual or unsaid there is no other telling.
	Speaks bool
	// Hides tells that what depends on what the rule is about is not known, so that what
	// is wrong with it shows only once that is mended.
	Hides bool
	Run   func(*Pass) // nil for rules that do not look at a plan
}

// Scope says what a rule looks at.
type Scope int

// The scopes.
const (
	Running  Scope = iota // yardproof itself could not do its work
	Reading               // the text of one file, while it is read
	Plan                  // one plan as written
	Size                  // one size of a plan, as derived
	Line                  // all plans together
	Text                  // the text of a pattern, held against its plan
	Together              // what other rules found in a plan, taken together
)

// Subject is the quantity a finding is about; see derive.Quantity.
type Subject = derive.Quantity

// Pass is what a rule may look at, and where it reports.
type Pass struct {
	Plan    *plan.Plan
	Size    *derive.Size // nil for rules of scope Plan
	Kits    []*kit.Kit   // of all sizes
	Project *plan.Project
	Prices  *plan.PriceList // nil when the project names none
	Stock   *plan.Stock     // nil when the project names none

	check *Check
	found []found
	// Worked out once for all rules that ask.
	slacks   map[*derive.Size]slack
	followed map[*derive.Size][]stopped
}

// Finding is what a rule reports.
type Finding struct {
	Message string
	Hint    string
	Ways    []diag.Way     // the ways out as data, the likeliest first; the hint is then made from them
	Level   diag.Level     // 0 for the rule's own
	About   Subject        // what it is about
	Root    bool           // findings about what depends on About may follow from this one
	Covers  []source.Range // of a root: what is said of the printed figures at these places follows from it too
	Related []Related
}

// Related is a second place of the plan that a finding speaks of.
type Related struct {
	At      source.Range
	Message string
}

type found struct {
	Finding
	check *Check
	at    source.Range
	size  string
}

// Report adds a finding about the value at a place of the plan.
func (p *Pass) Report(at source.Range, f Finding) {
	if f.Level == 0 {
		f.Level = p.check.Level
	}
	if f.Ways != nil {
		if len(f.Ways) == 0 { // none could be made
			f.Ways = ways(advise(p.check.Fix))
		}
		f.Hint = source.Hint(f.Ways)
	}
	size := ""
	if p.Size != nil {
		size = p.Size.Of.Name.Text
	}
	p.found = append(p.found, found{Finding: f, check: p.check, at: at, size: size})
}

// Ripe is the level of a rule about completeness: a note in a draft, a
// warning while the plan is tested, an error once it is published.
func (p *Pass) Ripe() diag.Level {
	return [...]diag.Level{plan.Draft: diag.Note, plan.Testing: diag.Warning, plan.Published: diag.Error}[p.Plan.Status]
}
