package plan_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

func readProject(t testing.TB, text string) (*plan.Project, []source.Problem) {
	t.Helper()
	f := source.New("yardproof.json", []byte(text))
	tree, problems := jsontree.Parse(f, jsontree.Limits{})
	if problems = append(problems, schema.Project(tree)...); len(problems) > 0 {
		t.Fatal(lines(tree, problems))
	}
	return plan.DecodeProject(f, tree)
}

func TestProject(t *testing.T) {
	p, problems := readProject(t, sample(t, "studio.project.json"))
	if len(problems) > 0 {
		t.Fatal(lines(p.Tree, problems))
	}
	same(t, "studio", p.Studio.Text, "Thimble Row (invented)")
	same(t, "currency", p.Currency.Code(), "EUR")
	same(t, "labour", p.LabourRate.Value.FloatString(2), "21.50")
	same(t, "margin", p.Margin.BasisPoints, 4500)
	same(t, "run", p.Run.N, 15)
	same(t, "prices", p.PriceLists[0].Path.Text, "lists/prices.csv")
	same(t, "square ruler", p.Rulers[0].Width.Length, 19*measure.Inch/2)
	same(t, "metric ruler", p.Rulers[1].Length.Length, 60*measure.Centimetre)
	same(t, "excluded", p.Exclude[1].Match("spring/birch-draft.plan.json", false), true)
	same(t, "rule", p.Rules[0].Rule.Text, "fabric/generous")
	same(t, "level", p.Rules[1].Level.Text, "warning")
	same(t, "freight", p.Landed[0].Freight.Value.RatString(), "45")
	same(t, "shared by length", p.Landed[0].ByLength, true)
	same(t, "a usual order", p.Landed[0].UsualLength.Length, 60*measure.Metre)
	same(t, "in kits", p.Landed[0].InKits(), true)
	same(t, "minutes a strip", p.Rates.Strip.RatString(), "1/2")
	same(t, "minutes a cut", p.Rates.Cut.RatString(), "1/5")
	same(t, "spoiled", p.Spoilage.BasisPoints, 150)
	same(t, "fee", p.Payment.Each.Value.RatString(), "1/4")
	same(t, "shops", p.Wholesale.BasisPoints, 4800)
	same(t, "exception", p.Exceptions[0].Pointer.Text, "/fabrics/sand")
	same(t, "reason", p.File.Slice(p.Exceptions[0].Reason.At), `"the mill's bolt runs wide"`)
}

func TestDefaults(t *testing.T) {
	p, _ := readProject(t, sample(t, "studio.project.json"))
	inches := plan.Defaults{
		UsableWidth: 41 * measure.Inch, SquaringUp: 0, Grid: measure.Yard / 4, Cushion: measure.Yard / 8, CutAllowance: measure.Inch / 2,
		Overhang: 3 * measure.Inch, BackingSeam: 3 * measure.Inch / 8, BindingAllowance: 12 * measure.Inch,
		FinishedRounding: measure.Inch / 2, RulerGrid: measure.Inch / 16, TrimGrid: measure.Inch / 16, UsefulOffcut: 3 * measure.Inch,
	}
	same(t, "inches", p.DefaultsFor(measure.In), inches)
	metric := plan.DefaultsFor(measure.Cm)
	metric.UsableWidth, metric.Grid = 106*measure.Centimetre, 25*measure.Centimetre
	same(t, "centimetres", p.DefaultsFor(measure.Cm), metric)
	same(t, "no project", (*plan.Project)(nil).DefaultsFor(measure.Cm), plan.DefaultsFor(measure.Cm))
}

// TestProjectInPlan: the studio's defaults and rulers serve a plan that says
// nothing of its own.
func TestProjectInPlan(t *testing.T) {
	project, _ := readProject(t, sample(t, "studio.project.json"))
	text := sample(t, "lattice-walk.plan.json")
	start, end := strings.Index(text, `  "tools"`), strings.Index(text, `  "parts"`)
	p, problems := read(t, text[:start]+text[end:], project)
	if len(problems) > 0 {
		t.Fatal(lines(p.Tree, problems))
	}
	s := &p.Sizes[0]
	same(t, "default width", s.Fabric("back").UsableWidth.Length, 41*measure.Inch)
	same(t, "default squaring up", s.Fabric("back").SquaringUp.Length, 0)
	same(t, "default overhang", s.Finish.Backing.Overhang.Length, 3*measure.Inch)
	same(t, "the plan's defaults", p.Defaults, project.DefaultsFor(measure.In))
	same(t, "rulers", len(s.Tools.Rulers), 2)
	same(t, "the plan lists no rulers", s.Tools.At, source.Range{})
	p = right(t)
	same(t, "the plan's own rulers", p.Sizes[0].Tools.Rulers[0].Width.Length, 25*measure.Inch/2)
}

func TestProjectProblems(t *testing.T) {
	tests := []struct{ old, new, want string }{
		{`"EUR"`, `"EUX"`, `schema/money /currency: "EUX" is not a currency in use -> write an ISO 4217 code like EUR or USD`},
		{`"lists/prices.csv"`, `"../prices.csv"`,
			`schema/outside-folder /prices/0: "../prices.csv" is not a file inside the pattern folder -> write a relative path with forward slashes and without dots, like prices.csv`},
		{`"9 1/2"`, `"9 1/7"`,
			`schema/off-tick /rulers/0/square: "square": "9 1/7" is not on a ruler: the nearest are 9 9/64 in and 9.15 in -> write 9 9/64 in or 9.15 in`},
		{`[15, 60]`, `[15, 0]`, `schema/length /rulers/1/size/1: "size" is zero; it must be more -> write a length above zero`},
		{`"grid": "1/4 yd"`, `"grid": "quarter"`,
			`schema/length /defaults/in/grid: "grid": "quarter" is not a length: it has no number -> write it like 2 1/2, 2.5 or 6.5 cm`},
		{`"usable_width": "106"`, `"usable_width": 0`,
			`schema/length /defaults/cm/usable_width: "usable_width" is zero; it must be more -> write a length above zero`},
		{`"45%"`, `"45"`,
			`schema/percent /margin: "margin" is "45"; wanted: a percentage below 100 with at most two decimals -> write "45%"`},
		{`"21.50"`, `"EUR 21"`,
			`schema/money /labour_rate: "labour_rate": "EUR 21" is not a price: write it without thousands marks or spaces and with a point before the decimals, like 1250.50 -> write 21`},
	}
	for _, tt := range tests {
		p, problems := readProject(t, strings.Replace(sample(t, "studio.project.json"), tt.old, tt.new, 1))
		if diff := cmp.Diff([]string{tt.want}, lines(p.Tree, problems)); diff != "" {
			t.Errorf("%s (-want +got)\n%s", tt.new, diff)
		}
	}
}

// TestUnreadableDefault: a default that cannot be read leaves yardproof's own.
func TestUnreadableDefault(t *testing.T) {
	text := sample(t, "studio.project.json")
	for _, change := range []string{`"squaring_up": "some"`, `"squaring_up": "1/7"`} {
		p, problems := readProject(t, strings.Replace(text, `"squaring_up": "0"`, change, 1))
		same(t, change+": problems", len(problems), 1)
		same(t, change, p.DefaultsFor(measure.In).SquaringUp, measure.Inch)
	}
}

func TestPaths(t *testing.T) {
	for path, inside := range map[string]bool{
		"prices.csv": true, "a/b.csv": true, "/etc/prices.csv": false, "a/../../b.csv": false, "./b.csv": false,
		`a\\b.csv`: false, "C:/b.csv": false, ".": false, "a//b.csv": false,
	} {
		p, problems := readProject(t, strings.Replace(sample(t, "studio.project.json"), "lists/prices.csv", path, 1))
		same(t, path, len(problems) == 0, inside)
		same(t, path+" is used", len(p.PriceLists) == 2, inside)
	}
}

// A usual order is money where freight is shared by value, and a length where it
// is shared by that; none at all is no order to share it over.
func TestUsualOrder(t *testing.T) {
	for landed, want := range map[string]string{
		`"usual_order": "450.00"`:                  "",
		`"usual_order": 0.01`:                      "",
		`"usual_order": 0`:                         plan.BadMoney,
		`"usual_order": "60 m"`:                    plan.BadMoney,
		`"usual_order": "60 m", "share": "length"`: "",
		`"usual_order": "0 m", "share": "length"`:  plan.BadLength,
		`"usual_order": "450", "share": "length"`:  plan.BadLength,
	} {
		f := source.New("yardproof.json", []byte(`{ "format": 1, "currency": "EUR", "landed": { "Mill": { "freight": "45", `+landed+` } } }`))
		tree, _ := jsontree.Parse(f, jsontree.Limits{})
		p, problems := plan.DecodeProject(f, tree)
		got := ""
		for _, problem := range problems {
			got += problem.Code
		}
		if got != want || p.Landed[0].InKits() != (want == "") {
			t.Errorf("%s: %v, wanted %q; in kits: %v", landed, problems, want, p.Landed[0].InKits())
		}
	}
}
