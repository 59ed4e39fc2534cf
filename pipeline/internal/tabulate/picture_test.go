package tabulate_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/tabulate"
	"yardproof/pipeline/report"
	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
	"yardproof/scripts/fixtures/fixture"
)

// read takes a plan's text the whole way to what tables are made of; nil where
// the text is not in order.
func read(name string, text []byte) *tabulate.Input {
	file := source.New(name, text)
	tree, problems := jsontree.Parse(file, jsontree.DefaultLimits())
	if tree == nil || len(problems) > 0 {
		return nil
	}
	merged := plan.Merge(tree)
	for _, s := range merged {
		if len(schema.Plan(s.Tree)) > 0 {
			return nil
		}
	}
	p, problems := plan.Decode(file, tree, merged, nil)
	if p == nil || len(problems) > 0 {
		return nil
	}
	in := &tabulate.Input{Plan: p, Project: &plan.Project{}}
	for i := range p.Sizes {
		in.Sizes = append(in.Sizes, derive.Of(p, &p.Sizes[i]))
	}
	in.Kits = kit.All(in.Sizes, in.Project, nil)
	return in
}

// eachPlan calls use for the plans that are in order below testdata.
func eachPlan(t *testing.T, use func(name string, in *tabulate.Input), patterns ...string) {
	t.Helper()
	const data = "../../../testdata/"
	whole := t.TempDir()
	if err := fixture.Write(data+"checks", data+"checks", whole+"/checks"); err != nil {
		t.Fatal(err)
	}
	for _, pattern := range patterns {
		root := data
		if strings.HasPrefix(pattern, "checks/") {
			root = whole + "/"
		}
		files, err := filepath.Glob(root + pattern)
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: %v", pattern, err)
		}
		for _, f := range files {
			text, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			if in := read(f, text); in != nil {
				use(filepath.Base(filepath.Dir(f))+"/"+filepath.Base(f), in)
			}
		}
	}
}

func area(p []report.Point) float64 {
	twice := 0.0
	for i, a := range p {
		b := p[(i+1)%len(p)]
		twice += a.X*b.Y - b.X*a.Y
	}
	return twice / 2
}

// A picture's fabric fills its panels: what shows and what is left over come
// to the whole, and nothing lies outside. In the pictures of tops the same is
// proved exactly by package drafting; strips that are cut are exact in their
// layout, so this is about the drawing, where a float will do.
func TestPicturesFillTheirPanels(t *testing.T) {
	pictures := 0
	eachPlan(t, func(name string, in *tabulate.Input) {
		seen := map[string]bool{}
		for _, s := range tabulate.Plan(*in) {
			for _, p := range s.Pictures {
				pictures++
				if seen[p.ID] || p.Title == "" || p.About == "" || len(p.Panels) == 0 || len(p.Legend) == 0 {
					t.Errorf("%s: picture %q, %q is there twice or not whole", name, p.ID, p.Title)
				}
				seen[p.ID] = true
				for i, panel := range p.Panels {
					fills(t, fmt.Sprintf("%s: %s, panel %d", name, p.ID, i+1), panel, len(p.Legend))
				}
			}
		}
	}, "line/*.plan.json", "checks/*/*/*/*.plan.json")
	if pictures < 300 {
		t.Errorf("only %d pictures", pictures)
	}
}

func fills(t *testing.T, what string, p report.Panel, keys int) {
	t.Helper()
	const close = 1e-6
	total := 0.0
	for _, s := range p.Shapes {
		for _, q := range s.Points {
			if q.X < -close || q.Y < -close || q.X > p.Width+close || q.Y > p.Height+close {
				t.Errorf("%s: (%v, %v) is outside %v x %v", what, q.X, q.Y, p.Width, p.Height)
			}
		}
		if s.Kind != report.Patch && s.Kind != report.LeftOver {
			continue
		}
		if area(s.Points) <= 0 || s.Key < 0 || s.Key >= keys {
			t.Errorf("%s: %+v has no area, or no key", what, s)
		}
		total += area(s.Points)
	}
	whole := p.Width * p.Height
	if strings.HasSuffix(strings.Join(p.Caption, ""), "from end to end") { // a segment cut at an angle
		whole = area(p.Shapes[len(p.Shapes)-1].Points)
	}
	if math.Abs(total-whole) > close*whole {
		t.Errorf("%s: %v of %v covered", what, total, whole)
	}
}

// Recounted: a cutting layout shows every piece, strip and panel that is
// needed of the fabric, no more and no fewer, by its key.
func TestCuttingPicturesShowEveryPiece(t *testing.T) {
	checked := 0
	eachPlan(t, func(name string, in *tabulate.Input) {
		for i, sheet := range cutLists(tabulate.Plan(*in)) {
			s := in.Sizes[i]
			drawn := map[string]map[string]int{} // by picture and the key's name
			for _, p := range sheet.Pictures {
				id, _, _ := strings.Cut(p.ID, "-part-")
				if drawn[id] == nil {
					drawn[id] = map[string]int{}
				}
				count(p, drawn[id])
			}
			for _, f := range s.Fabrics {
				if id := "cutting-" + s.Of.Name.Text + "-" + f.Role.Text; f.Form == plan.Yardage && f.Used() && drawn[id] == nil {
					t.Errorf("%s: no picture %s", name, id)
				}
				for _, which := range []string{"", "-plain", "-packed", "-stacked"} {
					if got, ok := drawn["cutting-"+s.Of.Name.Text+"-"+f.Role.Text+which]; ok && f.Form == plan.Yardage {
						checked++
						recount(t, name+" "+s.Of.Name.Text+" "+f.Role.Text+which, s, f, got)
					}
				}
			}
		}
	}, "line/*.plan.json")
	if checked < 60 {
		t.Errorf("only %d layouts were recounted", checked)
	}
}

func cutLists(sheets []report.Sheet) []report.Sheet {
	var lists []report.Sheet
	for _, s := range sheets {
		if strings.HasPrefix(s.ID, "cut-list-") {
			lists = append(lists, s)
		}
	}
	return lists
}

func count(p report.Picture, by map[string]int) {
	for _, panel := range p.Panels {
		for _, s := range panel.Shapes {
			if s.Kind == report.Patch {
				by[p.Legend[s.Key].Name]++
			}
		}
	}
}

func recount(t *testing.T, what string, s *derive.Size, f *derive.Fabric, drawn map[string]int) {
	t.Helper()
	wanted := 0
	for _, n := range f.Needs {
		wanted += int(n.Count)
	}
	if f.Panels > 0 {
		wanted += int(s.Backing.Panels)
	}
	got := 0
	for _, n := range drawn {
		got += n
	}
	if got != wanted {
		t.Errorf("%s: %d pieces drawn (%v), %d needed", what, got, drawn, wanted)
	}
	for _, n := range f.Needs {
		found := false
		for key := range drawn {
			found = found || strings.HasPrefix(key, n.For.Text+", ")
		}
		if !found && n.Count > 0 {
			t.Errorf("%s: nothing is drawn for %s", what, n.For.Text)
		}
	}
}

// The sizes along the top of a quilt: its borders and what they go round come
// to the whole, which is the finished size. Worked by hand from the demo plan:
// 4 + 41 1/4 + 4 = 49 1/4 in.
func TestQuiltPictureSizes(t *testing.T) {
	found := false
	eachPlan(t, func(_ string, in *tabulate.Input) {
		for _, p := range gallery(tabulate.Plan(*in)) {
			if p.ID != "quilt-throw" {
				continue
			}
			found = true
			var top []string
			for _, d := range p.Panels[0].Dimensions {
				if d.Edge == report.Top {
					top = append(top, fmt.Sprintf("%d: %g to %g %s", d.Tier, d.From, d.To, d.Text))
				}
			}
			want := "0: 0 to 4 4 in | 0: 45.25 to 49.25 4 in | 0: 4 to 45.25 41 1/4 in | 1: 0 to 49.25 49 1/4 in"
			if got := strings.Join(top, " | "); got != want {
				t.Errorf("along the top: %s", got)
			}
		}
	}, "line/weighbridge-steps.plan.json")
	if !found {
		t.Error("no picture of the throw")
	}
}

// A border that is sewn with a wider seam than the binding is shows wider than
// it is said to be by the difference: 2 in + 3/8 in - 1/4 in = 2 1/8 in. Derived
// from geometry.
func TestBorderSewnWithAnotherSeam(t *testing.T) {
	in := read("a.plan.json", []byte(`{
  "format": 1, "id": "a", "title": "A", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
  "fabrics": {"f": {"yardage": {}}}, "parts": {"p": {"cut": {"fabric": "f", "square": "10 1/2"}}},
  "layout": {"grid": {"rows": 2, "columns": 2, "blocks": [["p"]]}, "borders": {"b": {"fabric": "f", "width": 2, "seam": {"allowance": "3/8"}}}},
  "sizes": {"only": {}}
}`))
	if in == nil {
		t.Fatal("the plan is not in order")
	}
	var said []string
	for _, d := range gallery(tabulate.Plan(*in))[0].Panels[0].Dimensions {
		if d.Edge == report.Top {
			said = append(said, d.Text)
		}
	}
	if got := strings.Join(said, ", "); got != "2 1/8 in, 2 1/8 in, 19 3/4 in, 24 in" {
		t.Errorf("along the top: %s", got)
	}
}

// Many sewn parts go on in further pictures, twelve in each, and the last says
// which it is. Invented plan.
func TestManyUnitsGoOn(t *testing.T) {
	var parts, blocks []string
	for i := range 30 {
		parts = append(parts, fmt.Sprintf(`"c%d": {"cut": {"fabric": "f%d", "square": 3}}, "r%d": {"rows": [["c%d", "c%d"]]}`, i, i%9, i, i, i))
		blocks = append(blocks, fmt.Sprintf(`["r%d"]`, i))
	}
	var fabrics []string
	for i := range 9 {
		fabrics = append(fabrics, fmt.Sprintf(`"f%d": {"yardage": {}}`, i))
	}
	in := read("a.plan.json", []byte(`{
  "format": 1, "id": "a", "title": "A", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
  "fabrics": {`+strings.Join(fabrics, ",")+`}, "parts": {`+strings.Join(parts, ",")+`},
  "layout": {"grid": {"rows": 30, "columns": 1, "blocks": [`+strings.Join(blocks, ",")+`]}}, "sizes": {"only": {}}
}`))
	if in == nil {
		t.Fatal("the plan is not in order")
	}
	var ids, titles []string
	for _, p := range gallery(tabulate.Plan(*in)) {
		ids, titles = append(ids, p.ID), append(titles, p.Title)
	}
	if got := strings.Join(ids, " "); got != "quilt-only units-only units-only-part-2 units-only-part-3" {
		t.Errorf("pictures %s", got)
	}
	if !strings.HasSuffix(titles[3], "(3 of 3)") {
		t.Errorf("the last is called %q", titles[3])
	}
}

// gallery is the pictures of tops and units, which stand with the checks.
func gallery(sheets []report.Sheet) []report.Picture {
	for _, s := range sheets {
		if s.ID == "overview" {
			return s.Pictures
		}
	}
	return nil
}
