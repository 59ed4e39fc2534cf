package plan_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

func TestProblems(t *testing.T) {
	tests := []struct{ old, new, want string }{
		{`"width": "3 1/4"`, `"width": "wide"`,
			`schema/length /parts/band/strip/width: "width": "wide" is not a length: it has no number -> write it like 2 1/2, 2.5 or 6.5 cm`},
		{`"width": "3 1/4"`, `"width": -3`,
			`schema/length /parts/band/strip/width: "width": "-3" is not a length: write it without a sign; a length is never negative -> write it like 2 1/2, 2.5 or 6.5 cm`},
		{`"width": "3 1/4"`, `"width": "3.333"`,
			`schema/off-tick /parts/band/strip/width: "width": "3.333" is not on a ruler: the nearest are 3.33 in and 3.34 in -> write 3.33 in or 3.34 in`},
		{`"width": "3 1/4"`, `"width": "8.25501 cm"`,
			`schema/off-tick /parts/band/strip/width: "width": "8.25501 cm" is not on a ruler: the nearest are 8.255 cm and 8.256 cm -> write 8.255 cm or 8.256 cm`},
		{`"grid": "1/3 yd"`, `"grid": "1/3"`,
			`schema/length /fabrics/sand/yardage/grid: "grid": "1/3" does not say its unit -> write "1/3 yd"`},
		{`"sand": "1 2/3 yd"`, `"sand": "1 2/3"`,
			`schema/length /printed/door/fabric/sand: "sand": "1 2/3" does not say its unit -> write "1 2/3 yd"`},
		{`"length": "3%"`, `"length": "3"`,
			`schema/percent /fabrics/sand/yardage/shrinkage/length: "length" is "3"; wanted: a percentage below 100 with at most two decimals -> write "3%"`},
		{`"length": "3%"`, `"length": "100%"`,
			`schema/percent /fabrics/sand/yardage/shrinkage/length: "length" is "100%"; wanted: a percentage below 100 with at most two decimals -> write it like "3%" or "2.5%"`},
		{`"price": "74.90"`, `"price": "74,90"`,
			`schema/money /kit/price: "price": "74,90" is not a price: write it without thousands marks or spaces and with a point before the decimals, like 1250.50 -> write it like 2.25`},
		{`"id": "lattice-walk"`, `"id": "com7"`,
			`schema/reserved-id /id: "com7" names a device on Windows, where no output file could be called so -> write "com7-quilt"`},
		{`"door": {}`, `"door": {}, "nul": {}`,
			`schema/reserved-id /sizes/nul: "nul" names a device on Windows, where no output file could be called so -> write "nul-quilt"`},
		{`"hall": "not printed"`, `"hal": "not printed"`,
			`schema/unknown-size /printed/hal: figures are printed for "hal", and there is no such size -> add it to "sizes", or name one of door, hall, stair`},
	}
	for _, tt := range tests {
		text := sample(t, "lattice-walk.plan.json")
		if strings.Count(text, tt.old) != 1 {
			t.Fatalf("%s stands %d times in the sample", tt.old, strings.Count(text, tt.old))
		}
		p, problems := read(t, strings.Replace(text, tt.old, tt.new, 1), nil)
		if diff := cmp.Diff([]string{tt.want}, lines(p.Tree, problems)); diff != "" {
			t.Errorf("%s (-want +got)\n%s", tt.new, diff)
		}
	}
}

// TestBareClothLength: a metric shop sells 1.2 of metres and 120 of
// centimetres; a small whole number could be either (common practice, no
// source).
func TestBareClothLength(t *testing.T) {
	for written, want := range map[string]string{
		"1.2": `write "1.2 m"`, "2.5": `write "2.5 m"`, "1": `write "1 m"`, "9.99": `write "9.99 m"`, "3/4": `write "3/4 m"`,
		"2": `write "2 m" or "2 cm"`, "9": `write "9 m" or "9 cm"`, "10": `write "10 cm"`, "120": `write "120 cm"`,
	} {
		text := strings.NewReplacer(`"units": "in"`, `"units": "cm"`, `"sand": "1 2/3 yd"`, `"sand": "`+written+`"`).Replace(sample(t, "lattice-walk.plan.json"))
		_, problems := read(t, text, nil)
		var hints []string
		for _, p := range problems {
			if strings.HasSuffix(p.Message, "does not say its unit") {
				hints = append(hints, p.Hint)
			}
		}
		same(t, written, strings.Join(hints, "; "), want)
	}
}

// TestReserved tries the edges of what Windows reserves (Microsoft, 'Naming
// Files, Paths, and Namespaces').
func TestReserved(t *testing.T) {
	for id, reserved := range map[string]bool{
		"con": true, "prn": true, "aux": true, "nul": true, "com0": true, "com9": true, "lpt1": true,
		"cone": false, "com": false, "com10": false, "con-1": false, "lpta": false, "console": false,
	} {
		_, problems := read(t, strings.Replace(sample(t, "lattice-walk.plan.json"), `"id": "lattice-walk"`, `"id": "`+id+`"`, 1), nil)
		same(t, id, len(problems) == 1, reserved)
	}
}

// TestNotDerivedYet: each thing of the vocabulary that is not derived is
// refused by name, at its key or at the word that chooses it.
func TestNotDerivedYet(t *testing.T) {
	p, problems := read(t, sample(t, "everything-later.plan.json"), nil)
	want := []string{
		"/layout/borders/coping/to coping strips with corners other than butted ones are",
		"/layout/borders/pieced/corners pieced borders with mitred corners are",
	}
	var got []string
	for _, pr := range problems {
		what, _ := strings.CutSuffix(pr.Message, " not derived yet: the plan is refused rather than passed unproved")
		same(t, pr.Message, pr.Code, plan.NotDerivedYet)
		got = append(got, p.Tree.PointerAt(pr.Range.Start)+" "+what)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// FuzzDecode decodes whatever parses, whether or not it follows the schema.
func FuzzDecode(f *testing.F) {
	f.Add(sample(f, "lattice-walk.plan.json"))
	f.Add(sample(f, "everything-later.plan.json"))
	f.Add(sample(f, "unit-drawer.plan.json"))
	f.Add(sample(f, "settings.plan.json"))
	f.Add(sample(f, "studio.project.json"))
	f.Add(`{"sizes": {"a": {"parts": null, "x": {}}, "b": 3}, "printed": [], "parts": {"p": {"rows": [[{"turn": 1e30}]]}, "q": {}}}`)
	f.Fuzz(func(t *testing.T, text string) {
		file := source.New("fuzz.json", []byte(text))
		tree, _ := jsontree.Parse(file, jsontree.Limits{})
		project, problems := plan.DecodeProject(file, tree)
		p, more := plan.Decode(file, tree, plan.Merge(tree), project)
		for _, pr := range append(problems, more...) {
			if !pr.Range.Valid() || pr.Range.End > len(text) || pr.Code == "" || pr.Message == "" {
				t.Fatalf("%+v", pr)
			}
		}
		for _, s := range p.Sizes {
			for _, part := range s.Parts {
				part.Operation.Ingredients()
			}
			for _, fabric := range s.Fabrics {
				if fabric.Form == plan.Yardage && fabric.Grid <= 0 {
					t.Fatal("a grid of nothing")
				}
			}
		}
	})
}

// TestThreeTriangles: two triangles make a square or four, never three.
func TestThreeTriangles(t *testing.T) {
	text := strings.Replace(sample(t, "lattice-walk.plan.json"), `["wedge", "wedge", "wedge", "wedge"]`, `["wedge", "wedge", "wedge"]`, 1)
	_, problems := read(t, text, nil)
	if len(problems) == 0 || problems[0].Code != plan.OutOfRange {
		t.Errorf("three triangles: got %v, want one problem of %s", problems, plan.OutOfRange)
	}
}
