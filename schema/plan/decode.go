package plan

import (
	"strings"

	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// The rules that a problem found while decoding can belong to.
const (
	OutOfRange     = "schema/out-of-range"    // a count that the schema itself cannot refuse
	Missing        = "schema/missing"         // what the schema itself cannot ask for
	BadLength      = "schema/length"          // no length, or not positive where it must be
	OffTick        = "schema/off-tick"        // a length between two marks of any ruler
	BadPercent     = "schema/percent"         // no share of less than the whole
	BadMoney       = "schema/money"           // no amount, or no currency
	NotDerivedYet  = "schema/not-derived-yet" // of the vocabulary, but not proved yet
	ReservedID     = "schema/reserved-id"     // a name that no file can have on some systems
	UnknownSize    = "schema/unknown-size"    // printed figures of a size that there is not
	RemovesNothing = "schema/removes-nothing" // a size's null for what is not there
	BadNumber      = "schema/number"          // no plain number where the schema takes a text, too
	NotAllowed     = "schema/not-allowed"     // two values that cannot stand beside each other
	OutsideFolder  = "schema/outside-folder"  // a path that leads out of the pattern folder
)

// Decode reads a plan that follows the schema: tree is the file's own tree and
// sizes come from Merge. Project may be nil. Lengths become exact, defaults are
// filled in, and what cannot be read or derived becomes a problem that points
// at it; problems are in the order of the file.
//
// It never fails on a tree that does not follow the schema: what is missing or
// of another type is left out without a word, as the schema has told of it.
func Decode(f *source.File, tree *jsontree.Node, sizes []SizeTree, project *Project) (*Plan, []source.Problem) {
	unit, _ := measure.ParseUnit(word(tree.Get("units")))
	r := &reader{unit: unit, defaults: project.DefaultsFor(unit)}
	if project != nil {
		r.currency = project.Currency
	}
	p := &Plan{File: f, Tree: tree, Units: unit, Defaults: r.defaults}
	r.identity(p, tree)
	for _, s := range sizes {
		r.reserved(s.Name)
		r.idleRemovals(s.by(), s.Base, s.Patch)
		size := r.size(s, project)
		if last := len(p.Sizes) - 1; s.Way.Given() && last >= 0 {
			p.Sizes[last].Ways = append(p.Sizes[last].Ways, size)
		} else {
			p.Sizes = append(p.Sizes, size)
		}
	}
	p.Colourways = colourways(tree.Get("colourways"))
	r.unknownSizes(tree)
	return p, sortProblems(r.problems)
}

// reader turns nodes into values and collects what is wrong with them.
type reader struct {
	unit     measure.Unit
	currency measure.Currency
	defaults Defaults
	problems []source.Problem
}

func (r *reader) report(code string, at source.Range, message, hint string) {
	r.problems = append(r.problems, source.Problem{Code: code, Range: at, Message: message, Hint: hint})
}

// later reports a part of the vocabulary that is not derived yet.
func (r *reader) later(at source.Range, what, hint string) {
	r.report(NotDerivedYet, at, what+" not derived yet: the plan is refused rather than passed unproved", hint)
}

// lineFolder is where exports put the tables of the whole line, beside a
// folder for each plan.
const lineFolder = "line"

func (r *reader) identity(p *Plan, tree *jsontree.Node) {
	p.ID = text(tree.Get("id"))
	p.Title = text(tree.Get("title"))
	p.Description = text(tree.Get("description"))
	p.Revision = text(tree.Get("revision"))
	p.Skill = text(tree.Get("skill"))
	p.Cautions = texts(tree.Get("cautions"))
	status := text(tree.Get("status"))
	p.Status, p.StatusAt = pick(status.Text, Draft, Testing, Published), status.At
	if tree != nil {
		p.At = tree.Range
	}
	r.reserved(p.ID)
	if p.ID.Text == lineFolder {
		r.report(ReservedID, p.ID.At, quote(p.ID.Text)+" is the folder of the tables about all plans together", "write "+quote(p.ID.Text+"-quilt"))
	}
}

func (r *reader) size(s SizeTree, project *Project) Size {
	t := s.Tree
	size := Size{
		Name: s.Name, Way: s.Way, Tree: t,
		Description: text(t.Get("description")),
		Use:         text(t.Get("use")),
		Cautions:    texts(t.Get("cautions")),
		Seam:        r.seam(t.Get("seam"), Seam{}),
	}
	size.Fabrics = r.fabrics(t.Get("fabrics"))
	size.Tools = r.tools(t.Get("tools"), project)
	size.Parts = r.parts(t.Get("parts"), size.Seam)
	size.Layout = r.layout(t.Get("layout"), size.Seam)
	size.Finish = r.finish(t.Get("finish"), size.Seam)
	size.Bed = r.bed(t.Get("bed"))
	size.Thread = r.thread(t.Get("thread"), project.threadOr())
	size.Kit = r.kit(t.Get("kit"))
	size.Class = r.class(t.Get("class"))
	size.Printed, size.NotPrinted = r.printed(t.Get("printed").Get(s.Name.Text))
	return size
}

func colourways(n *jsontree.Node) []Colourway {
	var ways []Colourway
	for _, m := range members(n) {
		w := Colourway{Name: Text{m.Key, m.KeyRange}, Title: text(m.Value.Get("title"))}
		for _, f := range members(m.Value.Get("fabrics")) {
			w.Roles = append(w.Roles, Text{f.Key, f.KeyRange})
		}
		ways = append(ways, w)
	}
	return ways
}

// seam reads a seam; what it does not say is as in the outer one.
func (r *reader) seam(n *jsontree.Node, outer Seam) Seam {
	s := outer
	if n == nil {
		return s
	}
	s.At, s.Why = n.Range, text(n.Get("why"))
	if a := n.Get("allowance"); a != nil {
		s.Allowance = r.length("allowance", a, positive)
	}
	if t := text(n.Get("stitch")); t.Given() {
		s.Stitch = t
	}
	if t := text(n.Get("pressing")); t.Given() {
		s.Pressing = t
	}
	return s
}

// ownSeam reads the seam of a join that differs; nil when it does not.
func (r *reader) ownSeam(n *jsontree.Node, outer Seam) *Seam {
	if n == nil {
		return nil
	}
	s := r.seam(n, outer)
	return &s
}

// reserved refuses names that no file or folder can have on Windows, whatever
// their case or ending (Microsoft's documentation of file names).
func (r *reader) reserved(name Text) {
	stem := strings.ToLower(name.Text)
	device := stem == "con" || stem == "prn" || stem == "aux" || stem == "nul"
	if len(stem) == 4 && (stem[:3] == "com" || stem[:3] == "lpt") && '0' <= stem[3] && stem[3] <= '9' {
		device = true
	}
	if device {
		r.report(ReservedID, name.At, quote(name.Text)+" names a device on Windows, where no output file could be called so", "write "+quote(stem+"-quilt"))
	}
}

func (r *reader) unknownSizes(tree *jsontree.Node) {
	sizes := tree.Get("sizes")
	if sizes == nil || sizes.Kind != jsontree.Object {
		return
	}
	for _, m := range members(tree.Get("printed")) {
		if sizes.Member(m.Key) == nil {
			r.report(UnknownSize, m.KeyRange, "figures are printed for "+quote(m.Key)+", and there is no such size",
				orOneOf("add it to \"sizes\"", keysOf(sizes)))
		}
	}
}
