package main

import (
	"context"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"time"
)

// kernel is the package that is changed, and the packages whose tests are to
// notice, the nearest first.
const kernel = "pipeline/internal/piecing"

func noticing() []string {
	return []string{"./pipeline/internal/piecing", "./pipeline/internal/derive", "./pipeline/check"}
}

// drawing only leads to places on a page, which no verdict rests on.
func drawing(name string) bool { return name == "draft_float.go" }

func main() {
	mutants, err := find(os.Args[1:])
	if err != nil {
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(1)
	}
	fmt.Printf("%d mutants\n", len(mutants))
	verdicts := judge(mutants)
	var tally [3]int
	for i, v := range verdicts {
		tally[v]++
		if v == survived {
			fmt.Printf("%s:%d: survived: %s\n", mutants[i].file, mutants[i].line, mutants[i].says)
		}
	}
	fmt.Printf("%d noticed of %d, %d survived; %d do not compile\n", tally[noticed], tally[noticed]+tally[survived], tally[survived], tally[broken])
}

// find lists the mutants of the files named, or of all.
func find(only []string) ([]mutant, error) {
	fset := token.NewFileSet()
	names, err := filepath.Glob(filepath.Join(kernel, "*.go"))
	if err != nil || len(names) == 0 {
		return nil, fmt.Errorf("no package %s below the working directory: %w", kernel, err)
	}
	var files []*ast.File
	var chosen []string
	for _, name := range names {
		base := filepath.Base(name)
		if strings.HasSuffix(base, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(fset, name, nil, 0)
		if err != nil {
			return nil, err
		}
		files, chosen = append(files, file), append(chosen, name)
	}
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{}, Defs: map[*ast.Ident]types.Object{}}
	config := types.Config{Importer: importer.ForCompiler(fset, "source", nil)}
	if _, err := config.Check("yardproof/"+kernel, fset, files, info); err != nil {
		return nil, err
	}
	var all []mutant
	for i, file := range files {
		base := filepath.Base(chosen[i])
		if drawing(base) || len(only) > 0 && !slices.Contains(only, base) {
			continue
		}
		text, err := os.ReadFile(chosen[i])
		if err != nil {
			return nil, err
		}
		f := &finder{fset: fset, info: info, name: chosen[i], text: text}
		ast.Walk(f, file)
		all = append(all, f.all...)
	}
	return all, nil
}

// verdict is what became of a mutant.
type verdict int

const (
	noticed verdict = iota // a test failed, or did not come to an end
	survived
	broken // it does not compile
)

// judge runs the tests on every mutant, several at a time.
func judge(mutants []mutant) []verdict {
	verdicts := make([]verdict, len(mutants))
	work := make(chan int)
	var wg sync.WaitGroup
	for range runtime.NumCPU() {
		wg.Go(func() {
			for i := range work {
				verdicts[i] = mutants[i].judge()
			}
		})
	}
	for i := range mutants {
		work <- i
	}
	close(work)
	wg.Wait()
	return verdicts
}

func (m mutant) judge() verdict {
	folder, err := os.MkdirTemp("", "mutate")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(folder)
	overlay, err := m.overlay(folder)
	if err != nil {
		panic(err)
	}
	for _, pkg := range noticing() {
		ctx, cancel := context.WithTimeout(context.Background(), 3*time.Minute)
		out, err := exec.CommandContext(ctx, "go", "test", "-count=1", "-failfast", "-timeout=2m", "-vet=off", "-overlay", overlay, pkg).CombinedOutput()
		cancel()
		switch {
		case strings.Contains(string(out), "[build failed]"):
			return broken
		case err != nil:
			return noticed
		}
	}
	return survived
}

// overlay writes the changed file and what tells the go command of it.
func (m mutant) overlay(folder string) (string, error) {
	text, err := os.ReadFile(m.file)
	if err != nil {
		return "", err
	}
	real, err := filepath.Abs(m.file)
	if err != nil {
		return "", err
	}
	changed := filepath.Join(folder, filepath.Base(m.file))
	if err := os.WriteFile(changed, slices.Concat(text[:m.start], []byte(m.with), text[m.end:]), 0o666); err != nil {
		return "", err
	}
	list, err := json.Marshal(map[string]map[string]string{"Replace": {real: changed}})
	if err != nil {
		return "", err
	}
	path := filepath.Join(folder, "overlay.json")
	return path, os.WriteFile(path, list, 0o666)
}
