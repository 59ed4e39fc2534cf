package main

import (
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

const module = "yardproof"

// mayImport is the one way in which data flows: from files by way of the
// schema, the plan and what is derived of it to checks, reports and formats.
// Every package of ours is listed with those it may import; a name with /...
// stands for all packages below it.
func mayImport() map[string]string {
	return map[string]string{
		"schema/source":              "",
		"schema/measure":             "",
		"schema/jsontree":            "schema/source",
		"schema":                     "schema/source schema/jsontree",
		"schema/plan":                "schema/source schema/measure schema/jsontree",
		"schema/sheet":               "schema/source",
		"schema/style":               "schema/source schema/jsontree",
		"schema/starter":             "schema schema/source schema/jsontree schema/plan schema/style",
		"schema/amend":               "schema/source schema/jsontree schema/measure",
		"schema/topics":              "",
		"pipeline/diag":              "schema/source",
		"pipeline/report":            "schema/source schema/measure schema/plan pipeline/diag",
		"pipeline/internal/piecing":  "schema/plan schema/measure",
		"pipeline/internal/cutting":  "schema/measure",
		"pipeline/internal/bolts":    "schema/measure pipeline/internal/cutting",
		"pipeline/internal/costing":  "schema/plan schema/measure pipeline/report",
		"pipeline/internal/say":      "schema/measure",
		"pipeline/internal/caution":  "",
		"pipeline/internal/figure":   "schema/measure schema/source",
		"pipeline/internal/derive":   "pipeline/internal/say pipeline/internal/figure schema/source schema/plan schema/measure pipeline/internal/piecing pipeline/internal/cutting",
		"pipeline/internal/buyer":    "schema/source schema/plan schema/measure pipeline/internal/derive pipeline/internal/piecing",
		"pipeline/internal/drafting": "schema/plan schema/measure pipeline/internal/derive pipeline/internal/piecing",
		"pipeline/internal/supply":   "schema/plan schema/measure pipeline/internal/bolts",
		"pipeline/internal/kit":      "schema/plan schema/measure pipeline/internal/derive pipeline/internal/costing pipeline/internal/cutting",
		"pipeline/internal/line":     "schema/plan schema/measure pipeline/diag pipeline/report pipeline/internal/derive pipeline/internal/costing pipeline/internal/bolts pipeline/internal/supply pipeline/internal/kit",
		"pipeline/internal/tabulate": "pipeline/internal/caution pipeline/internal/say pipeline/internal/figure schema/source schema/plan schema/measure pipeline/diag pipeline/report pipeline/internal/supply pipeline/internal/bolts pipeline/internal/derive pipeline/internal/costing pipeline/internal/cutting pipeline/internal/drafting pipeline/internal/piecing pipeline/internal/kit pipeline/internal/line",
		"pipeline/check":             "schema schema/... pipeline/diag pipeline/report pipeline/slip pipeline/internal/...",
		"pipeline/slip":              "schema schema/... pipeline/diag pipeline/internal/derive pipeline/internal/piecing",
		"pipeline/baseline":          "schema schema/source schema/jsontree pipeline/diag pipeline/report pipeline/check",
		"pipeline/store":             "schema/source schema/jsontree pipeline/diag pipeline/report pipeline/internal/line",
		"pipeline/store/handed":      "pipeline/report pipeline/store",
		"pipeline/revision":          "",
		"pipeline/watch":             "",
		"pipeline/why":               "schema/source schema/measure schema/jsontree pipeline/report",
		"pipeline/words":             "schema/source schema/plan schema/measure pipeline/report pipeline/internal/derive pipeline/internal/cutting pipeline/internal/say",
		"pipeline":                   "schema schema/... pipeline/...",
		"exporters/internal/...":     "schema/source schema/measure schema/plan pipeline/diag pipeline/report exporters/internal/sample",
		"exporters/internal/drawing": "pipeline/report",
		"exporters/internal/raster":  "exporters/internal/drawing",
		"exporters/svg":              "pipeline/report exporters/internal/drawing exporters/internal/figure",
		"exporters/xlsx":             "schema/source schema/measure schema/plan pipeline/diag pipeline/report exporters/internal/drawing exporters/internal/figure exporters/internal/raster",
		"exporters/...":              "schema/source schema/measure schema/plan pipeline/diag pipeline/report exporters/internal/figure exporters/internal/words",
		"exporters":                  "pipeline/diag pipeline/report exporters/...",
		"cmd/yardproof":              "schema schema/plan schema/starter schema/topics pipeline pipeline/baseline pipeline/check pipeline/report pipeline/diag pipeline/store pipeline/revision pipeline/watch pipeline/words pipeline/why exporters scripts",
		"scripts":                    "",
		"scripts/...":                "schema schema/source schema/jsontree schema/plan",
		"scripts/crossing":           "scripts/crossing/crossed",
		"scripts/fixtures":           "scripts/fixtures/fixture",
		"scripts/fixtures/fixture":   "schema/source schema/jsontree schema/amend",
		"scripts/hostile/worst":      "scripts/hostile pipeline pipeline/report pipeline/store/... exporters",
		"scripts/slips":              "schema schema/... pipeline pipeline/diag",
	}
}

// mayTestWith is what a package's tests may import beside the package itself
// and what it may import: how a plan comes to be from text, and the run that
// judges the fixtures of the rules.
func mayTestWith() map[string]string {
	return map[string]string{
		"pipeline":                   "scripts/hostile scripts/fixtures/fixture",
		"schema/plan":                "schema",
		"pipeline/internal/...":      "schema schema/... pipeline/report",
		"pipeline/internal/derive":   "schema schema/... pipeline/report pipeline/internal/drafting scripts/crossing/crossed scripts/fixtures/fixture",
		"pipeline/internal/drafting": "schema schema/... pipeline/report scripts/crossing/crossed scripts/fixtures/fixture",
		"pipeline/internal/tabulate": "schema schema/... pipeline/report scripts/fixtures/fixture",
		"pipeline/check":             "pipeline scripts/fixtures/fixture",
		"pipeline/store":             "pipeline/internal/costing",
		"pipeline/words":             "schema/jsontree pipeline/internal/tabulate",
		"exporters":                  "schema/measure pipeline/store exporters/internal/...",
		"exporters/...":              "exporters/internal/...",
		"scripts/...":                "scripts/hostile pipeline pipeline/diag pipeline/report pipeline/store pipeline/store/... exporters exporters/...",
		"cmd/yardproof":              "scripts/hostile schema/source schema/jsontree",
	}
}

// behind is which package of ours each module of others stays behind, so that
// it can be exchanged in one place. Those that only tests use are in testedBy.
func behind() map[string]string {
	return map[string]string{
		"github.com/agnivade/levenshtein":    "schema",
		"github.com/xeipuuv/gojsonschema":    "schema",
		"github.com/go-json-experiment/json": "schema/jsontree",
		"github.com/bmatcuk/doublestar":      "schema/plan",
		"golang.org/x/sync":                  "pipeline",
		"github.com/fsnotify/fsnotify":       "pipeline/watch",
		"github.com/google/renameio":         "pipeline/store",
		"github.com/xuri/excelize":           "exporters/xlsx schema/sheet", // to write workbooks, and to read them
		"github.com/xuri/nfp":                "schema/sheet",                // number formats, to tell dates from prices
		"github.com/google/go-cmp":           "exporters/internal/golden",   // which only tests import
		"github.com/fatih/color":             "exporters/text",
		"golang.org/x/image":                 "exporters/internal/raster",
		"github.com/klauspost/compress":      "exporters/xlsx", // twice as fast as the standard library's
		// How many columns a character takes: of a terminal, and of a sheet.
		"golang.org/x/text/width":                "exporters/text exporters/xlsx",
		"github.com/google/go-containerregistry": "scripts/container",
		"github.com/spf13/pflag":                 "cmd/yardproof",
		"github.com/schollz/progressbar":         "cmd/yardproof",
		"github.com/mattn/go-isatty":             "cmd/yardproof",
		"golang.org/x/term":                      "cmd/yardproof",
		"golang.org/x/sys":                       "pipeline/store", // for locks
	}
}

// testedBy is what tests of any package may use: other people's work to check
// ours by.
func testedBy() []string {
	return []string{
		"github.com/google/go-cmp",
		"github.com/owenrumney/go-sarif",
		"github.com/peterstace/simplefeatures",
		"github.com/rogpeppe/go-internal",
		"github.com/santhosh-tekuri/jsonschema",
		"github.com/xeipuuv/gojsonschema", // the baseline of the benchmarks
		"github.com/xuri/excelize",
		"github.com/yuin/goldmark",
		"golang.org/x/net/html",
		"golang.org/x/sys/unix",
		"golang.org/x/text/currency",
	}
}

// listed is what the go command tells of one package.
type listed struct {
	ImportPath                         string
	Imports, TestImports, XTestImports []string
}

func (l listed) name() string { return ours(l.ImportPath) }

// ours is the path of a package within the module, "" for any other.
func ours(path string) string {
	name, _ := strings.CutPrefix(path, module+"/")
	if name == path {
		return ""
	}
	return name
}

// TestImports holds every package to the directions in which data may flow,
// and other people's modules behind one package each. Files for other systems
// count too.
func TestImports(t *testing.T) {
	for _, system := range []string{"linux", "darwin", "windows"} {
		for _, p := range list(t, system) {
			allowed, known := entry(mayImport(), p.name())
			if !known {
				t.Errorf("%s is in no row of the table: say what it may import", p.name())
				continue
			}
			for _, path := range p.Imports {
				if !fine(p.name(), path, allowed) {
					t.Errorf("%s must not import %s", p.name(), path)
				}
			}
			more, _ := entry(mayTestWith(), p.name())
			for _, path := range slices.Concat(p.TestImports, p.XTestImports) {
				if !fine(p.name(), path, allowed+" "+more+" "+p.name()) && !under(path, testedBy()) {
					t.Errorf("the tests of %s must not import %s", p.name(), path)
				}
			}
		}
	}
}

// fine reports whether a package may import what stands at path.
func fine(importer, path, allowed string) bool {
	if name := ours(path); name != "" {
		return matches(name, allowed)
	}
	if first, _, _ := strings.Cut(path, "/"); !strings.Contains(first, ".") {
		return true // the standard library
	}
	for module, owners := range behind() {
		if under(path, []string{module}) {
			return matches(importer, owners)
		}
	}
	return false
}

// entry is the row for a package: its own, or the longest with /... above it.
func entry(table map[string]string, name string) (row string, ok bool) {
	if row, ok = table[name]; ok {
		return row, true
	}
	for dir := name; strings.Contains(dir, "/"); {
		dir = dir[:strings.LastIndex(dir, "/")]
		if row, ok = table[dir+"/..."]; ok {
			return row, true
		}
	}
	return "", false
}

func matches(name, patterns string) bool {
	return slices.ContainsFunc(strings.Fields(patterns), func(p string) bool {
		tree, isTree := strings.CutSuffix(p, "/...")
		return name == p || isTree && strings.HasPrefix(name, tree+"/")
	})
}

func under(path string, roots []string) bool {
	return slices.ContainsFunc(roots, func(root string) bool {
		return path == root || strings.HasPrefix(path, root+"/")
	})
}

// list asks the go command for all packages as a system would build them.
func list(t *testing.T, system string) []listed {
	t.Helper()
	cmd := exec.Command("go", "list", "-json=ImportPath,Imports,TestImports,XTestImports", "./...")
	cmd.Dir = "../.."
	cmd.Env = append(os.Environ(), "GOOS="+system, "CGO_ENABLED=0")
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	var packages []listed
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p listed
		err := d.Decode(&p)
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		packages = append(packages, p)
	}
	if len(packages) < 10 {
		t.Fatalf("only %d packages", len(packages))
	}
	return packages
}

// The table must be able to fail: edges that turn the flow round, and a
// module that leaves its package.
func TestImportTable(t *testing.T) {
	for _, edge := range [][2]string{
		{"pipeline/internal/piecing", "yardproof/pipeline/report"},
		{"schema/measure", "yardproof/schema/plan"},
		{"exporters/text", "yardproof/pipeline"},
		{"exporters/text", "yardproof/pipeline/internal/derive"},
		{"exporters/text", "yardproof/exporters/xlsx"},
		{"pipeline", "yardproof/exporters"},
		{"pipeline/store", "yardproof/exporters"},
		{"exporters", "github.com/google/renameio/v2"},
		{"pipeline/check", "github.com/xuri/excelize/v2"},
		{"pipeline/check", "example.org/unheard/of"},
		{"exporters/json", "golang.org/x/text/width"},
	} {
		allowed, known := entry(mayImport(), edge[0])
		if !known || fine(edge[0], edge[1], allowed) {
			t.Errorf("%s may import %s", edge[0], edge[1])
		}
	}
	if _, known := entry(mayImport(), "util"); known {
		t.Error("a package that nobody listed is in the table")
	}
}
