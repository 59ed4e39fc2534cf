package pipeline

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/store"
	"yardproof/schema/source"
)

// Gather reads the results of plans, which are files or folders of them, and
// tells which files were read. What is wrong with one is a finding, and nothing
// should be gathered then.
func Gather(paths []string, version string) (*store.Gathered, []string, []diag.Finding) {
	g := &gatherer{version: version}
	for _, path := range paths {
		g.path(path)
	}
	return &g.results, g.files, diag.Sort(g.findings)
}

type gatherer struct {
	version  string
	results  store.Gathered
	files    []string
	findings []diag.Finding
}

func (g *gatherer) path(path string) {
	info, err := os.Stat(path)
	if err != nil || !info.IsDir() {
		g.file(path)
		return
	}
	entries, err := os.ReadDir(path)
	if err != nil {
		g.refuse(path, "the folder could not be read: "+err.Error())
		return
	}
	before := len(g.files) + len(g.findings)
	for _, e := range entries {
		file := filepath.Join(path, e.Name())
		switch {
		case !strings.HasSuffix(e.Name(), store.ResultSuffix):
		case leadsOut(disk{}, file, []string{store.Identity(path)}):
			g.findings = append(g.findings, outside(file, "the folder"))
		default:
			g.file(file)
		}
	}
	if before == len(g.files)+len(g.findings) {
		g.refuse(path, "the folder holds no result: none of its files has a name that ends in "+store.ResultSuffix)
	}
}

func (g *gatherer) file(path string) {
	text, findings := ReadFile(path, store.MaxResultBytes)
	g.files = append(g.files, path)
	if len(findings) > 0 {
		g.findings = append(g.findings, findings...)
		return
	}
	name := filepath.ToSlash(path)
	err := g.results.Add(name, text, g.version)
	other, isOther := errors.AsType[store.OtherVersion](err)
	different, isDifferent := errors.AsType[store.DifferentError](err)
	switch {
	case err == nil:
	case isOther:
		g.refuse(path, fmt.Sprintf("the result was made by yardproof %s, and this is %s", other.Made, g.version))
	case isDifferent:
		g.refuse(path, different.Error())
	default:
		g.findings = append(g.findings, unusable(name, text, err))
	}
}

func (g *gatherer) refuse(path, message string) {
	g.findings = append(g.findings, check.Trouble("run/no-result", filepath.ToSlash(path), message,
		"export all plans of the line with --results, with one version of yardproof, and gather those"))
}

// unusable is the finding of a file that holds no result, at the place where
// it stops being one where that is known.
func unusable(name string, text []byte, err error) diag.Finding {
	f := check.Trouble("run/no-result", name, "it holds no result of a plan: "+err.Error(), "write it again with `yardproof export --results`")
	if p, ok := errors.AsType[store.PlacedError](err); ok {
		file := source.New(name, text)
		at := p.Problem.Range
		f.Place.Range, f.Place.Start, f.Place.End, f.Place.Excerpt = at, file.Position(at.Start), file.Position(at.End), file.Excerpt(at)
	}
	return f
}
