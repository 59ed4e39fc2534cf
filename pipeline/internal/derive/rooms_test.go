package derive_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

const (
	root    = "../../.." // of the module
	recipes = "schema/plan"
	rooms   = "pipeline/internal/derive"
)

// TestOneRoom: outside the plan each operation is named in its room alone, and nothing
// asks an operation for its type, so that whoever adds one is told by the compiler all that
// there is to say of it. A setting is named elsewhere too, as the layout is one.
func TestOneRoom(t *testing.T) {
	all := operations(t)
	opened := map[string][]string{}
	sources(t, func(file string, f *ast.File) {
		own := opens(f)
		for _, op := range own {
			opened[op] = append(opened[op], file)
		}
		for _, op := range planNames(f) {
			if slices.Contains(all, op) && op != "Setting" && !slices.Contains(own, op) {
				t.Errorf("%s names plan.%s: let its room answer", file, op)
			}
		}
		if asksType(f, append(all, "Operation", "Carrier", "Placer")) {
			t.Errorf("%s asks an operation for its type: let its room answer", file)
		}
	})
	for _, op := range all {
		if len(opened[op]) != 1 || !strings.HasPrefix(opened[op][0], rooms) {
			t.Errorf("%s has its room in %q", op, opened[op])
		}
	}
}

// operations are the recipe types: those that plan.Maker has a method for.
func operations(t *testing.T) (all []string) {
	t.Helper()
	f, err := parser.ParseFile(token.NewFileSet(), filepath.Join(root, recipes, "maker.go"), nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	ast.Inspect(f, func(n ast.Node) bool {
		if i, ok := n.(*ast.InterfaceType); ok {
			for _, m := range i.Methods.List {
				all = append(all, m.Names[0].Name)
			}
		}
		return true
	})
	if len(all) < 20 {
		t.Fatalf("only %d operations", len(all))
	}
	return all
}

// sources looks at every file of the program, without tests, that imports the plan.
func sources(t *testing.T, look func(file string, f *ast.File)) {
	t.Helper()
	seen := 0
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") && path != root) {
			return filepath.SkipDir
		}
		if d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return err
		}
		if slices.ContainsFunc(f.Imports, func(i *ast.ImportSpec) bool { return i.Path.Value == `"yardproof/`+recipes+`"` }) {
			rel, err := filepath.Rel(root, path)
			if err != nil {
				return err
			}
			seen++
			look(filepath.ToSlash(rel), f)
		}
		return nil
	})
	if err != nil || seen < 100 {
		t.Fatal(seen, err)
	}
}

// opens are the operations whose rooms a file opens.
func opens(f *ast.File) (all []string) {
	for _, d := range f.Decls {
		if fn, ok := d.(*ast.FuncDecl); ok && fn.Recv != nil {
			if star, ok := fn.Recv.List[0].Type.(*ast.StarExpr); ok {
				if of, ok := star.X.(*ast.Ident); ok && of.Name == "opening" {
					all = append(all, fn.Name.Name)
				}
			}
		}
	}
	return all
}

// planNames are the names of the plan that a file uses, each once, sorted.
func planNames(f *ast.File) []string {
	seen := map[string]bool{}
	ast.Inspect(f, func(n ast.Node) bool {
		if name := ofPlan(n); name != "" {
			seen[name] = true
		}
		return true
	})
	return slices.Sorted(maps.Keys(seen))
}

// ofPlan is the name in plan.Name, "" of anything else.
func ofPlan(n ast.Node) string {
	if s, ok := n.(*ast.SelectorExpr); ok {
		if x, ok := s.X.(*ast.Ident); ok && x.Name == "plan" {
			return s.Sel.Name
		}
	}
	return ""
}

// asksType reports whether a file switches on types, or asserts one, of the plan's.
func asksType(f *ast.File, types []string) (asks bool) {
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.TypeAssertExpr:
			asks = asks || slices.Contains(types, ofPlan(n.Type))
		case *ast.TypeSwitchStmt:
			for _, c := range n.Body.List {
				asks = asks || slices.ContainsFunc(c.(*ast.CaseClause).List, func(e ast.Expr) bool { return slices.Contains(types, ofPlan(e)) })
			}
		}
		return true
	})
	return asks
}

// The test must be able to fail.
func TestOneRoomCanFail(t *testing.T) {
	f, err := parser.ParseFile(token.NewFileSet(), "any.go", `package any
		func (o *opening) Cut(op plan.Cut) {}
		func f(op plan.Operation) int { if _, ok := op.(plan.Tube); ok { return 1 }; return 0 }`, 0)
	if err != nil {
		t.Fatal(err)
	}
	if got := opens(f); !slices.Equal(got, []string{"Cut"}) {
		t.Errorf("opens %q", got)
	}
	if got := planNames(f); !slices.Equal(got, []string{"Cut", "Operation", "Tube"}) {
		t.Errorf("names %q", got)
	}
	if !asksType(f, []string{"Tube"}) || asksType(f, []string{"Loop"}) {
		t.Error("does not see who asks for a type")
	}
}
