package plan_test

import (
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// read takes a plan the whole way in: tree, schema, sizes, decoder.
func read(t testing.TB, text string, project *plan.Project) (*plan.Plan, []source.Problem) {
	t.Helper()
	f := source.New("test.plan.json", []byte(text))
	tree, problems := jsontree.Parse(f, jsontree.Limits{})
	if problems = append(problems, schema.Plan(tree)...); len(problems) > 0 {
		return &plan.Plan{File: f, Tree: tree}, problems
	}
	sizes := plan.Merge(tree)
	for _, s := range sizes {
		if !s.Same {
			problems = append(problems, schema.Plan(s.Tree)...)
		}
	}
	if len(problems) > 0 {
		return &plan.Plan{File: f, Tree: tree}, problems
	}
	return plan.Decode(f, tree, sizes, project)
}

// right reads a sample that has nothing wrong with it.
func right(t testing.TB) *plan.Plan {
	t.Helper()
	p, problems := read(t, sample(t, "lattice-walk.plan.json"), nil)
	if len(problems) > 0 {
		t.Fatal(lines(p.Tree, problems))
	}
	return p
}

func sample(t testing.TB, name string) string {
	t.Helper()
	b, err := os.ReadFile("../testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// lines are problems as "code pointer: message -> hint".
func lines(tree *jsontree.Node, problems []source.Problem) []string {
	var out []string
	for _, p := range problems {
		s := p.Code + " " + tree.PointerAt(p.Range.Start) + ": " + p.Message
		if p.Hint != "" {
			s += " -> " + p.Hint
		}
		out = append(out, s)
	}
	return out
}

// same compares, and tells both.
func same[T comparable](t testing.TB, what string, got, want T) {
	t.Helper()
	if got != want {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

// written compares a length with its figure and with the text it points at.
func written(t testing.TB, p *plan.Plan, what string, l plan.Length, want measure.Length, text string) {
	t.Helper()
	same(t, what, l.Length, want)
	same(t, what+" stands at", p.File.Slice(l.At), text)
}

const quarter = measure.Inch / 4

func TestIdentity(t *testing.T) {
	p := right(t)
	same(t, "id", p.ID.Text, "lattice-walk")
	same(t, "title", p.File.Slice(p.Title.At), `"Lattice Walk"`)
	same(t, "revision", p.Revision.Text, "0.3")
	same(t, "status", p.Status, plan.Testing)
	same(t, "status stands at", p.File.Slice(p.StatusAt), `"testing"`)
	same(t, "skill", p.Skill.Text, "intermediate")
	same(t, "units", p.Units, measure.In)
	same(t, "cautions", len(p.Cautions), 3)
	same(t, "caution 3", p.Cautions[2].Text, "bias-edges")
	same(t, "sizes", len(p.Sizes), 3)
	same(t, "size 2", p.Sizes[1].Name.Text, "hall")
}

func TestFabrics(t *testing.T) {
	p := right(t)
	s := &p.Sizes[0]
	same(t, "fabrics", len(s.Fabrics), 3)
	dusk, sand, back := s.Fabric("dusk"), s.Fabric("sand"), s.Fabric("back")
	same(t, "dusk's form", dusk.Form, plan.Precut)
	same(t, "dusk's print", dusk.Print, plan.Plain)
	written(t, p, "piece width", dusk.Piece[0], 10*quarter, `"2 1/2"`)
	written(t, p, "usable length", dusk.Usable[1], 169*quarter, `42.25`)
	same(t, "pack", dusk.Pack.N, 36)
	same(t, "assorted", dusk.Assorted, true)

	same(t, "sand's form", sand.Form, plan.Yardage)
	same(t, "sand's print", sand.Print, plan.TwoWay)
	same(t, "colour", sand.Colour.Text, "#e3d5b8")
	same(t, "sku", p.File.Slice(sand.SKU.At), `"W-207"`)
	written(t, p, "usable width", sand.UsableWidth, 41*measure.Inch, `"41"`)
	written(t, p, "squaring up", sand.SquaringUp, 6*quarter, `"1 1/2"`)
	same(t, "grid", sand.Grid, 12*measure.Inch)
	same(t, "cushion", sand.Cushion, 2*measure.Inch)
	same(t, "shrinks along", sand.ShrinkLength.BasisPoints, 300)
	same(t, "shrinks across", sand.ShrinkWidth.BasisPoints, 125)

	written(t, p, "default width", back.UsableWidth, 40*measure.Inch, `{`)
	written(t, p, "default squaring up", back.SquaringUp, measure.Inch, `{`)
	same(t, "default grid", back.Grid, measure.Yard/8)
}

func TestTools(t *testing.T) {
	p := right(t)
	tools := p.Sizes[0].Tools
	same(t, "rulers", len(tools.Rulers), 2)
	same(t, "first is square", tools.Rulers[0].Square(), true)
	written(t, p, "shorter side", tools.Rulers[1].Width, 26*quarter, `"6 1/2"`)
	written(t, p, "longer side", tools.Rulers[1].Length, 98*quarter, `"24 1/2"`)
	same(t, "angle 60", tools.Rulers[1].Angle(60), true)
	same(t, "angle 60 of the first", tools.Rulers[0].Angle(60), false)
	written(t, p, "mat", tools.Mat[1], 36*measure.Inch, `"36"`)
	same(t, "rulers stand at", strings.HasPrefix(p.File.Slice(tools.At), `[{ "square"`), true)
}

// The pattern says which cutting instructions it prints.
func TestCuttingInstructions(t *testing.T) {
	s := &right(t).Sizes[0]
	same(t, "sand", s.Fabric("sand").Cuts, plan.PackedCuts)
	same(t, "back", s.Fabric("back").Cuts, plan.Unsaid)
}

func TestOperations(t *testing.T) {
	p := right(t)
	s := &p.Sizes[0]
	var names []string
	for _, part := range s.Parts {
		names = append(names, part.Name.Text)
	}
	want := []string{"pair", "bar", "turned", "inset", "plain", "brick", "wedge", "turned-down", "glass-down", "glass", "band", "split", "quad", "even", "level"}
	if diff := cmp.Diff(want, names); diff != "" {
		t.Errorf("the order of parts (-want +got)\n%s", diff)
	}
	bar := s.Part("bar").Operation.(plan.StripSet)
	written(t, p, "segment", bar.Segment, 10*quarter, `"2 1/2"`)
	written(t, p, "strip 2", bar.Strips[1].Width, 10*quarter, `"2 1/2"`)
	same(t, "strip 3 has its own width", bar.Strips[2].Width.Given(), false)
	same(t, "press", s.Part("bar").Press.Text, "towards the dark strips")

	turned := s.Part("turned").Operation.(plan.Tube)
	same(t, "set", p.File.Slice(turned.Sets[1].At), `"pair"`)
	same(t, "tip", turned.Tip.RawEdge, true)
	same(t, "ends", turned.Ends, plan.EarsKept)
	written(t, p, "trim", turned.Trim, 47*measure.Inch/8, `"5 7/8"`)
	inset := s.Part("inset").Operation.(plan.Tube)
	written(t, p, "beyond", inset.Tip.Beyond, measure.Inch/8, `"1/8"`)
	same(t, "default ends", inset.Ends, plan.CornersOnly)
	same(t, "no trim", inset.Trim.Given(), false)

	brick := s.Part("brick").Operation.(plan.Cut)
	written(t, p, "brick's height", brick.Height, 47*measure.Inch/8, `"5 7/8"`)
	wedge := s.Part("wedge").Operation.(plan.Cut)
	same(t, "wedge", wedge.Halving, plan.CutTwice)
	same(t, "used of a wedge's square", wedge.Used.N, 3)
	down := s.Part("turned-down").Operation.(plan.Tube)
	written(t, p, "trimmed down to", down.DownTo, measure.Inch/8, `"1/8"`)
	same(t, "joined", p.File.Slice(down.Joined.At), "2")
	same(t, "sets a side", down.SetsASide(), 2)
	same(t, "sets a side where none are joined", inset.SetsASide(), 1)
	glass := s.Part("glass").Operation.(plan.TriangleSquare)
	same(t, "glass", len(glass.Of), 4)
	same(t, "glass's trim", glass.Trim.Length, 11*measure.Inch/2)
	written(t, p, "wedge's height", wedge.Height, 7*measure.Inch, `7`)
	band := s.Part("band").Operation.(plan.WholeStrip)
	written(t, p, "band", band.Width, 13*quarter, `"3 1/4"`)
}

func TestUnitOperations(t *testing.T) {
	p := right(t)
	s := &p.Sizes[0]
	split := s.Part("split")
	half := split.Operation.(plan.HalfSquares)
	same(t, "at a time", half.AtATime, 8)
	written(t, p, "square", half.Square, 10*quarter, `"2 1/2"`)
	written(t, p, "trim", half.Trim, measure.Inch, `"1"`)
	written(t, p, "own seam", split.Seam.Allowance, 3*measure.Inch/10, `"0.3"`)
	same(t, "own seam's stitch is the plan's", split.Seam.Stitch.Text, "504")
	same(t, "why", split.Seam.Why.Text, "small units hold better")

	quad := s.Part("quad").Operation.(plan.Rows)
	same(t, "turn", quad.Rows[0][1].Turn, 270)
	same(t, "cell stands at", p.File.Slice(quad.Rows[0][1].At), `{ "part": "split", "turn": 270 }`)
	same(t, "ingredients", len(quad.Ingredients()), 4)
	even := s.Part("even").Operation.(plan.Trim)
	written(t, p, "trimmed height", even.Height, 7*quarter, `"1 3/4"`)
	level := s.Part("level").Operation.(plan.Trim)
	written(t, p, "trimmed square", level.Height, 6*quarter, `"1 1/2"`)
}

func TestLayoutAndFinish(t *testing.T) {
	p := right(t)
	s := &p.Sizes[0]
	same(t, "rows", s.Layout.Grid.Rows.N, 5)
	same(t, "columns", p.File.Slice(s.Layout.Grid.Columns.At), "7")
	same(t, "cell 3, 6", s.Layout.Grid.Cell(3, 6).Part.Text, "plain")
	same(t, "cell 3, 5", s.Layout.Grid.Cell(3, 5).Turn, 180)
	stop, rim := s.Layout.Borders[0], s.Layout.Borders[1]
	same(t, "inner border", stop.Name.Text, "stop")
	same(t, "default joins", stop.Joins, plan.Diagonal)
	same(t, "sides first", stop.EndsOn, false)
	same(t, "ends first", rim.EndsOn, true)
	same(t, "joins", rim.Joins, plan.Straight)
	same(t, "border's stitch", rim.Seam.Overlocked(), false)
	written(t, p, "border's allowance is the plan's", rim.Seam.Allowance, quarter, `"1/4"`)

	f := s.Finish
	same(t, "panels", f.Backing.Panels, plan.Crosswise)
	written(t, p, "backing seam", f.Backing.Seam, 5*measure.Inch/8, `"5/8"`)
	written(t, p, "default overhang", f.Backing.Overhang, 4*measure.Inch, `{`)
	written(t, p, "batting overhang", f.Batting.Overhang, 3*measure.Inch, `"3"`)
	written(t, p, "package", f.Batting.Package[1], 60*measure.Inch, `"60"`)
	written(t, p, "binding", f.Binding.Cut, 9*quarter, `"2 1/4"`)
	written(t, p, "binding allowance", f.Binding.Allowance, 12*measure.Inch, `"12"`)
}

func TestKitAndPrinted(t *testing.T) {
	p := right(t)
	k := p.Sizes[0].Kit
	same(t, "kit fabrics", len(k.Fabrics), 2)
	same(t, "minutes", k.Minutes.N, 35)
	same(t, "packaging", k.Packaging.Value.FloatString(2), "1.40")
	same(t, "pattern", k.Pattern.Value.RatString(), "31/10")
	same(t, "price stands at", p.File.Slice(k.Price.At), `"74.90"`)
	same(t, "run", k.Run.N, 12)
	same(t, "margin", k.Margin.BasisPoints, 4550)
	written(t, p, "allowance", k.Allowance, measure.Inch, `"1"`)
	same(t, "cut", k.Cut, plan.Pieces)
	same(t, "things", len(k.Things), 2)
	same(t, "one of them", k.Things[0].Count.N, 1)
	same(t, "two of them", k.Things[1].Count.N, 2)
	written(t, p, "label", k.Label[0].Length, 63*measure.Inch, `"1 3/4 yd"`)
	same(t, "packs on the label", k.Label[1].Packs.N, 1)

	c := p.Sizes[0].Class
	same(t, "students", c.Students.N, 9)
	same(t, "kits", c.Kits, plan.KitsSold)
	same(t, "one for three", c.Lend[0].For, 3)
	same(t, "samples", c.Samples, 2)
	same(t, "before", c.Before[0].Text, "cut all strips")

	pr := p.Sizes[0].Printed
	written(t, p, "finished width", pr.Finished[0], 301*measure.Inch/8, `"37 5/8"`)
	written(t, p, "rounding", pr.Rounding, measure.Inch/8, `"1/8"`)
	same(t, "measures", len(pr.Measures), 2)
	written(t, p, "square measure", pr.Measures[0].Height, 47*measure.Inch/8, `"5 7/8"`)
	same(t, "all strips", pr.Strips[0].Whole(), true)
	same(t, "strips", pr.Strips[1].Of.Text, "binding")
	written(t, p, "their width", pr.Strips[1].Width, 10*quarter, `"2 1/2"`)
	same(t, "a list of two", pr.Strips[2].Of, pr.Strips[3].Of)
	same(t, "of one fabric", pr.Strips[2].Fabric.Text+" "+pr.Strips[3].Fabric.Text, "dusk sand")
	same(t, "of each", pr.Strips[3].Each, true)
	same(t, "not of each", pr.Strips[4].Each, false)
	same(t, "a count stands at", p.File.Slice(pr.Strips[3].Count.At), "2")
	same(t, "printed part", pr.Parts[0].N, 18)
	same(t, "per tube", pr.PerTube[0].N, 8)
	same(t, "nothing left is still printed", pr.Left[0].Given(), true)
	written(t, p, "printed fabric", pr.Fabric[0].Length, 60*measure.Inch, `"1 2/3 yd"`)
	written(t, p, "printed backing", pr.Backing.Height, 35*measure.Inch, `"35"`)
	same(t, "printed batting", pr.Batting.Given(), true)
}

func TestNothingPrinted(t *testing.T) {
	p := right(t)
	hall, stair := p.Sizes[1], p.Sizes[2]
	same(t, "not printed stands at", p.File.Slice(hall.NotPrinted), `"not printed"`)
	if hall.Printed != nil || stair.Printed != nil || stair.NotPrinted != (source.Range{}) {
		t.Errorf("a size that prints nothing has %+v, %+v, %v", hall.Printed, stair.Printed, stair.NotPrinted)
	}
}

// BenchmarkDecode merges and decodes a plan of 4 KB in three sizes.
func BenchmarkDecode(b *testing.B) {
	f := source.New("test.plan.json", []byte(sample(b, "lattice-walk.plan.json")))
	tree, _ := jsontree.Parse(f, jsontree.Limits{})
	for b.Loop() {
		if _, problems := plan.Decode(f, tree, plan.Merge(tree), nil); len(problems) > 0 {
			b.Fatal(problems)
		}
	}
}
