package pipeline

import (
	"context"
	"errors"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"syscall"

	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
)

// planSuffix ends the name of every plan file.
const planSuffix = ".plan.json"

// finder looks for plans. It follows links within the line, each folder once.
type finder struct {
	ctx      context.Context
	files    storage
	wanted   func(path string) bool // files to find; no other is a plan by its name
	within   func() []string        // real paths that links may lead into, worked out for the first link
	plans    []*planFile
	hits     int             // plans and folders met, those met before included
	walked   map[string]bool // folders, by their real path
	found    map[string]bool // plans, by their real path
	leaves   *leaves
	left     int // files and folders left out
	findings []diag.Finding
}

// find fills in the plans of the line and the project of each. It gives the
// folders that were searched.
func (l *line) find(ctx context.Context) []string {
	f := findAll(ctx, l.files, isPlan, l.Paths, &leaves{files: l.files, globs: l.Exclude, project: l.Project})
	l.plans, l.findings = f.plans, f.findings
	if l.Given != nil {
		l.plans = append(l.plans, l.Given.plan())
	}
	l.findProjects(f.walked, f.leaves.used)
	return slices.Sorted(maps.Keys(f.walked))
}

// findAll looks for files below the paths of a command line, in file order.
func findAll(ctx context.Context, files storage, wanted func(string) bool, paths []string, leaves *leaves) finder {
	f := finder{
		ctx: ctx, files: files, wanted: wanted, leaves: leaves, within: sync.OnceValue(func() []string { return lineOf(files, paths, leaves.project) }),
		walked: map[string]bool{}, found: map[string]bool{},
	}
	for _, path := range paths {
		if ctx.Err() != nil {
			break
		}
		f.path(path)
	}
	slices.SortFunc(f.plans, func(a, b *planFile) int { return strings.Compare(a.name, b.name) })
	return f
}

// lineOf are the real paths of what is named, and of the folder of its project
// file, which may be named, too.
func lineOf(files storage, paths []string, project string) []string {
	within, looked := map[string]bool{}, map[string]bool{}
	if real, err := files.Real(filepath.Dir(project)); project != "" && err == nil {
		within[real] = true
	}
	for _, path := range paths {
		if real, err := files.Real(path); err == nil {
			within[real] = true
		}
		dir, err := filepath.Abs(path)
		for above := ""; err == nil && !looked[dir] && dir != above; dir, above = filepath.Dir(dir), dir {
			looked[dir] = true
			if _, err := files.Lstat(filepath.Join(dir, projectFile)); err != nil || project != "" {
				continue
			}
			if real, err := files.Real(dir); err == nil {
				within[real] = true
			}
			break
		}
	}
	return slices.Sorted(maps.Keys(within))
}

// path takes a path of the command line.
func (f *finder) path(path string) {
	hits, left, findings := f.hits, f.left, len(f.findings)
	info, err := f.files.Stat(path)
	switch {
	case err != nil:
		f.trouble(path, err)
	case info.IsDir():
		f.folder(path, nil)
	case !f.wanted(path):
		f.report("run/no-plan", path, "the file is not a plan by its name, which should end in "+planSuffix,
			"rename it, or name a plan or a folder of plans")
	default:
		f.file(path)
	}
	if hits != f.hits || findings != len(f.findings) || f.ctx.Err() != nil {
		return
	}
	why, hint := "none of its files has a name that ends in "+planSuffix, "name a plan or a folder of plans"
	if left != f.left {
		why, hint = `what there may be is left out by "exclude" or --exclude`, "leave out less, or name what is meant"
	}
	f.report("run/no-plan", path, "no plan was found in the folder: "+why, hint)
}

func isPlan(path string) bool {
	base := filepath.Base(path)
	return strings.HasSuffix(base, planSuffix) && base != planSuffix
}

// folder walks a folder. Above are the real paths of the folders around it.
func (f *finder) folder(path string, above []string) {
	real, err := f.files.Real(path)
	if err != nil {
		f.trouble(path, err)
		return
	}
	if slices.Contains(above, real) {
		f.report("run/link-loop", path, "the folder is a link to a folder around it", "remove the link")
		return
	}
	if f.walked[real] {
		f.hits++
		return
	}
	if f.ctx.Err() != nil {
		return
	}
	f.walked[real] = true
	entries, err := f.files.ReadDir(path)
	if err != nil {
		f.trouble(path, err)
		return
	}
	above = append(slices.Clip(above), real)
	// What really lies here comes first, so that a link beside it adds no
	// second name for it.
	for _, links := range []bool{false, true} {
		for _, e := range entries {
			if hidden := strings.HasPrefix(e.Name(), "."); f.ctx.Err() == nil && !hidden && links == (e.Type()&fs.ModeSymlink != 0) {
				f.entry(filepath.Join(path, e.Name()), e.Type(), above)
			}
		}
	}
}

func (f *finder) entry(path string, kind fs.FileMode, above []string) {
	link := kind&fs.ModeSymlink != 0
	if info, err := f.files.Stat(path); link && err == nil {
		kind = info.Mode().Type()
	}
	if !kind.IsDir() && !f.wanted(path) {
		return
	}
	if f.leaves.out(path, kind.IsDir()) {
		f.left++
		return
	}
	leadsAway := link && leadsOut(f.files, path, f.within())
	switch {
	case leadsAway:
		f.findings = append(f.findings, outside(path, "the line"))
	case kind.IsDir():
		f.folder(path, above)
	default:
		f.file(path)
	}
}

// file takes a plan, unless it was found already by another name.
func (f *finder) file(path string) {
	f.hits++
	if real, err := f.files.Real(path); err == nil {
		if f.found[real] {
			return
		}
		f.found[real] = true
	}
	p := &planFile{path: path, name: filepath.ToSlash(path)}
	p.outcome.File = p.name
	f.plans = append(f.plans, p)
}

func (f *finder) report(rule, path, message, hint string) {
	f.findings = append(f.findings, check.Trouble(rule, filepath.ToSlash(path), message, hint))
}

func (f *finder) trouble(path string, err error) {
	f.findings = append(f.findings, unread(path, err))
}

// leadsOut reports whether a link leads to what lies in none of some folders, which
// are given by their real paths. One that leads nowhere does not.
func leadsOut(files storage, link string, within []string) bool {
	real, err := files.Real(link)
	return err == nil && !slices.ContainsFunc(within, func(dir string) bool {
		relative, err := filepath.Rel(dir, real)
		return err == nil && filepath.IsLocal(relative)
	})
}

// outside is the finding of a link that was not followed, because it leads out
// of what is named.
func outside(link, what string) diag.Finding {
	to := "it is a link"
	if target, err := os.Readlink(link); err == nil {
		to += " to " + filepath.ToSlash(target)
	}
	return check.Trouble("run/link-outside", filepath.ToSlash(link), to+", which lies outside "+what+", and was not followed",
		"put a copy of what is meant in its place, name it on the command line, or leave it out with \"exclude\" in the project file")
}

// unread says why a file or folder could not be read.
func unread(path string, err error) diag.Finding {
	rule, message, hint := "run/unreadable", "it could not be read: "+cause(err), "mend what the system complains of, or leave it out"
	special, isSpecial := errors.AsType[notRegular](err)
	switch {
	case isSpecial:
		rule, message, hint = "run/not-regular", special.Error()+", and was not opened", "name a file that can be read from start to end"
	case errors.Is(err, fs.ErrNotExist) && isLink(path):
		rule, message, hint = "run/missing", "the link leads to a file that is not there", "remove the link, or put the file back"
	case errors.Is(err, fs.ErrNotExist):
		rule, message, hint = "run/missing", "there is no such file or folder", "check the spelling of the path"
	case errors.Is(err, syscall.ELOOP):
		rule, message, hint = "run/link-loop", "the link leads to itself", "remove it, or link to the file that is meant"
	case errors.Is(err, fs.ErrPermission):
		message, hint = "reading it is not permitted", "change its permissions, or leave it out"
	}
	return check.Trouble(rule, filepath.ToSlash(path), message, hint)
}

func isLink(path string) bool {
	info, err := os.Lstat(path)
	return err == nil && info.Mode()&fs.ModeSymlink != 0
}

// cause is the system's word for an error, without the path that the finding
// names anyway.
func cause(err error) string {
	if p, ok := errors.AsType[*fs.PathError](err); ok {
		return p.Err.Error()
	}
	return err.Error()
}
