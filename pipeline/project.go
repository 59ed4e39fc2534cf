package pipeline

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/supply"
	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/sheet"
	"yardproof/schema/source"
)

// projectFile is the name of a project file.
const projectFile = "yardproof.json"

// project is the settings that some of the plans share.
type project struct {
	path     string        // to open
	name     string        // to show
	named    bool          // on the command line
	whole    bool          // the run looks at its whole folder
	settings *plan.Project // nil when they cannot be used
	prices   *plan.PriceList
	stock    *plan.Stock // nil when there is none
	priced   []string    // paths of the price lists, the stock list and the edition
	rules    levels
	edition  *plan.Edition // nil when there is none
	supply   supply.Line   // what the planned kits take; empty until all plans are done
	basis    string        // names the settings that plans follow from
	findings []diag.Finding
}

// findProjects gives every plan its project: the one that the run names, else
// the nearest project file upward. The run may have left out plans that are in
// their folders.
func (l *line) findProjects(walked map[string]bool, leftOut bool) {
	byFolder := map[string]*project{}
	var only *project
	if l.Project != "" {
		only = &project{path: l.Project, name: filepath.ToSlash(l.Project), named: true}
		l.projects = append(l.projects, only)
	}
	for _, p := range l.plans {
		if p.project = only; only == nil {
			p.project = l.projectOf(filepath.Dir(p.path), byFolder)
		}
	}
	slices.SortFunc(l.projects, func(a, b *project) int { return strings.Compare(a.name, b.name) })
	for _, p := range l.projects {
		real, err := l.files.Real(filepath.Dir(p.path))
		p.whole = err == nil && walked[real] && !leftOut
		p.load(l.files, l.Config)
	}
}

// projectOf looks for the project file of a folder, in it and in those around
// it. A folder that was asked about before is known.
func (l *line) projectOf(folder string, byFolder map[string]*project) *project {
	absolute, err := filepath.Abs(folder)
	if err != nil {
		return nil
	}
	var passed []string
	var found *project
	for dir := absolute; ; dir = filepath.Dir(dir) {
		known, seen := byFolder[dir]
		if seen {
			found = known
			break
		}
		passed = append(passed, dir)
		if found = newProject(l.files, folder, filepath.Join(dir, projectFile)); found != nil {
			l.projects = append(l.projects, found)
			break
		}
		if dir == filepath.Dir(dir) {
			break
		}
	}
	for _, dir := range passed {
		byFolder[dir] = found
	}
	return found
}

// newProject is the project of a file, nil when there is no such file. It is
// shown by a relative path when the plan's folder was named by one.
func newProject(files storage, folder, file string) *project {
	if _, err := files.Lstat(file); err != nil {
		return nil
	}
	path := file
	if here, err := os.Getwd(); err == nil && !filepath.IsAbs(folder) {
		if relative, err := filepath.Rel(here, file); err == nil {
			path = relative
		}
	}
	return &project{path: path, name: filepath.ToSlash(path)}
}

// load reads the project file and its price list.
func (p *project) load(files storage, c Config) {
	if dir, err := files.Real(filepath.Dir(p.path)); err == nil && !p.named && leadsOut(files, p.path, []string{dir}) {
		p.findings = append(p.findings, outside(p.path, "its folder"))
		return
	}
	b, err := read(files, p.path)
	if err != nil {
		p.findings = append(p.findings, unread(p.path, err))
		return
	}
	file := source.New(p.name, b)
	tree, problems := jsontree.Parse(file, jsontree.DefaultLimits())
	if tree != nil {
		problems = append(problems, schema.Project(tree)...)
	}
	if tree == nil || len(problems) > 0 {
		p.findings = check.Problems(file, tree, "", problems)
		return
	}
	settings, problems := plan.DecodeProject(file, tree)
	rules, misnamed := newLevels(settings, c.Levels, c.Today)
	problems = append(problems, misnamed...)
	problems = append(problems, p.loadLists(files, settings, c.Today)...)
	p.findings = append(p.findings, check.Problems(file, tree, "", problems)...)
	if diag.Worst(p.findings) < diag.Error {
		p.settings, p.rules, p.basis = settings, rules, settingsBasis(tree)
	}
	p.findings, _ = rules.apply(p.findings, make([]bool, len(rules.exceptions)))
}

// loadLists reads the price lists, the stock list and the edition. They must lie inside the
// project's folder, whatever links say. Problems are those of the project file.
func (p *project) loadLists(files storage, settings *plan.Project, today plan.Date) []source.Problem {
	var problems []source.Problem
	if len(settings.PriceLists) > 0 {
		problems = p.loadPrices(files, settings, today)
	}
	if settings.Stock != nil {
		problems = append(problems, p.loadStock(files, *settings.Stock)...)
	}
	if settings.Edition != nil {
		problems = append(problems, p.loadEdition(files, *settings.Edition, settings)...)
	}
	return problems
}

// loadEdition reads the line as it was last published.
func (p *project) loadEdition(files storage, from plan.ListSource, settings *plan.Project) []source.Problem {
	path := filepath.Join(filepath.Dir(p.path), filepath.FromSlash(from.Path.Text))
	p.priced = append(p.priced, path)
	file, err := list(files, filepath.Dir(p.path), from)
	if err != nil {
		return p.noList(path, "edition", plan.BadEdition, from, err)
	}
	edition, found := plan.ReadEdition(file, settings.Currency)
	p.edition = edition
	p.findings = append(p.findings, check.Problems(file, nil, "", found)...)
	return nil
}

// loadStock reads the stock list, which counts articles as the price list sells
// them.
func (p *project) loadStock(files storage, from plan.ListSource) []source.Problem {
	path := filepath.Join(filepath.Dir(p.path), filepath.FromSlash(from.Path.Text))
	p.priced = append(p.priced, path)
	file, err := list(files, filepath.Dir(p.path), from)
	if err != nil {
		return p.noList(path, "stock list", plan.BadStock, from, err)
	}
	stock, found := plan.ReadStock(file, from, p.prices)
	p.stock = stock
	p.findings = append(p.findings, check.Problems(file, nil, "", found)...)
	return nil
}

func (p *project) loadPrices(files storage, settings *plan.Project, today plan.Date) []source.Problem {
	p.prices = plan.NewPriceList(settings.Currency)
	var problems []source.Problem
	for _, from := range settings.PriceLists {
		path := filepath.Join(filepath.Dir(p.path), filepath.FromSlash(from.Path.Text))
		p.priced = append(p.priced, path)
		file, err := list(files, filepath.Dir(p.path), from)
		if err != nil {
			problems = append(problems, p.noList(path, "price list", plan.BadPriceList, from, err)...)
			continue
		}
		found := p.prices.Read(file, from)
		found = append(found, p.prices.Stale(file, today, settings.PriceAge)...)
		p.findings = append(p.findings, check.Problems(file, nil, "", found)...)
	}
	if len(problems) == 0 {
		problems = p.prices.Unmatched(settings.Landed)
	}
	return problems
}

// list reads a list as text, whatever it is kept in.
func list(files storage, folder string, from plan.ListSource) (*source.File, error) {
	path := filepath.FromSlash(from.Path.Text)
	b, err := files.ReadIn(folder, path, jsontree.DefaultLimits().MaxBytes)
	if err != nil {
		return nil, err
	}
	name := filepath.ToSlash(filepath.Join(folder, path))
	if !sheet.Is(b) {
		return source.New(name, b), nil
	}
	file, err := sheet.Text(name, b, from.Sheet.Text, from.Mark())
	if err != nil {
		return nil, notAList{err}
	}
	return file, nil
}

// notAList is a file that is there and holds no list.
type notAList struct{ error }

// noList tells a list that the project file names wrongly from one that the
// system will not give.
func (p *project) noList(path, what, rule string, from plan.ListSource, err error) []source.Problem {
	problem := source.Problem{Code: rule, Range: from.Path.At, Hint: "name a CSV file or workbook inside this folder"}
	special, isSpecial := errors.AsType[notRegular](err)
	empty, isEmpty := errors.AsType[notAList](err)
	switch {
	case isSpecial:
		problem.Message = "the " + what + " cannot be read: " + special.Error()
	case isEmpty:
		problem.Message = "there is no " + what + " in " + filepath.ToSlash(path) + ": " + empty.Error()
		if sheet.IsForeign(empty.error) {
			problem.Hint = "save it as a workbook (.xlsx) without a password, or as CSV, and name that"
		}
	case errors.Is(err, fs.ErrNotExist):
		problem.Message = "there is no " + what + " " + filepath.ToSlash(path)
	case strings.Contains(err.Error(), "path escapes"): // os.Root has no error value for it
		problem.Code, problem.Message = plan.OutsideFolder, "the "+what+" is a link that leads out of the pattern folder"
	default:
		p.findings = append(p.findings, unread(path, err))
		return nil
	}
	return []source.Problem{problem}
}

// inputs lists every file that the run reads, and that a plan that it was given
// is the text of.
func (l *line) inputs() []string {
	files := slices.Clone(l.Besides)
	for _, p := range l.projects {
		files = append(files, p.path)
		files = append(files, p.priced...)
	}
	for _, p := range l.plans {
		files = append(files, p.path)
	}
	return files
}
