package pipeline

import (
	"path/filepath"
	"slices"

	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// leaves is what is left out of the folders that are searched.
type leaves struct {
	files   storage
	globs   []plan.Glob // of the run, held against paths as they are shown
	used    bool        // one of them has matched
	project string      // the project file of all folders; empty for the nearest of each

	byFolder map[string]*leftOut // what the project of a folder leaves out, by its absolute path
}

// leftOut is what a project leaves out.
type leftOut struct {
	folder string // of the project file, an absolute path
	globs  []plan.Glob
}

// out reports whether a file or folder that was met in a search is left out. The
// project of the folder around it decides, so that a folder with a project of
// its own can be left out by the one above.
func (l *leaves) out(path string, folder bool) bool {
	matches := func(name string) func(plan.Glob) bool {
		return func(g plan.Glob) bool { return g.Match(filepath.ToSlash(name), folder) }
	}
	if slices.ContainsFunc(l.globs, matches(path)) {
		l.used = true
		return true
	}
	absolute, err := filepath.Abs(path)
	if err != nil {
		return false
	}
	by := l.of(filepath.Dir(absolute))
	relative, err := filepath.Rel(by.folder, absolute)
	return err == nil && slices.ContainsFunc(by.globs, matches(relative))
}

// of is what the project of a folder leaves out.
func (l *leaves) of(folder string) *leftOut {
	if l.project != "" {
		folder = filepath.Dir(l.project)
	}
	if known := l.byFolder[folder]; known != nil {
		return known
	}
	if l.byFolder == nil {
		l.byFolder = map[string]*leftOut{}
	}
	file, above := filepath.Join(folder, projectFile), filepath.Dir(folder)
	_, err := l.files.Lstat(file)
	var by *leftOut
	switch {
	case l.project != "":
		by = leftOutBy(l.files, l.project)
	case err == nil:
		by = leftOutBy(l.files, file)
	case above == folder:
		by = &leftOut{}
	default:
		by = l.of(above)
	}
	l.byFolder[folder] = by
	return by
}

// leftOutBy is what a project file leaves out: nothing when it is not in order,
// which is told when the project is loaded.
func leftOutBy(files storage, path string) *leftOut {
	by := &leftOut{}
	folder, err := filepath.Abs(filepath.Dir(path))
	if err != nil {
		return by
	}
	by.folder = folder
	b, err := read(files, path)
	if err != nil {
		return by
	}
	file := source.New(path, b)
	tree, problems := jsontree.Parse(file, jsontree.DefaultLimits())
	if tree == nil || len(problems)+len(schema.Project(tree)) > 0 {
		return by
	}
	settings, _ := plan.DecodeProject(file, tree)
	by.globs = settings.Exclude
	return by
}
