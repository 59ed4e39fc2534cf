package drafting_test

import (
	"os"
	"path/filepath"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/drafting"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
	"yardproof/scripts/fixtures/fixture"
)

// sizes derives every size of a plan; none where the text is not in order.
func sizes(name string, text []byte) []*derive.Size {
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
	var all []*derive.Size
	for i := range p.Sizes {
		all = append(all, derive.Of(p, &p.Sizes[i]))
	}
	return all
}

func plans(t *testing.T, pattern string) []string {
	t.Helper()
	files, err := filepath.Glob(pattern)
	if err != nil || len(files) == 0 {
		t.Fatalf("%s: %v", pattern, err)
	}
	return files
}

// The demo line: the patches of every size's finished top have exactly its
// finished area, none lies outside, no two overlap; and so has every part. The
// areas follow from the derived sizes alone, the patches from the operations.
func TestDemoLineCloses(t *testing.T) {
	for _, path := range plans(t, "../../../testdata/line/*.plan.json") {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		all := sizes(path, text)
		if len(all) == 0 {
			t.Errorf("%s has no sizes", path)
		}
		for _, s := range all {
			closes(t, filepath.Base(path)+" "+s.Of.Name.Text, s)
		}
	}
}

func closes(t *testing.T, what string, s *derive.Size) {
	t.Helper()
	d := drafting.Of(s)
	top, ok := d.Top()
	if !ok {
		t.Errorf("%s: the top is not drafted", what)
		return
	}
	filled(t, what, top, s.Top.Finished)
	for _, p := range s.Parts {
		if cut, is := p.Operation.(plan.Cut); is && cut.Halving != plan.Whole {
			continue // a triangle is drafted where it is sewn
		}
		if _, is := p.Operation.(plan.Shape); is {
			continue // and so are triangles of 60 degrees; others are not
		}
		if p.Set != nil && p.Set.Slant != nil {
			continue // nor are segments cut at an angle
		}
		w, ok := d.Part(p.Name.Text)
		if !ok {
			t.Errorf("%s: %s is not drafted", what, p.Name.Text)
			continue
		}
		filled(t, what+" "+p.Name.Text, w, p.Box)
	}
}

func filled(t *testing.T, what string, w piecing.Patchwork, size piecing.Box) {
	t.Helper()
	var sum measure.Surd
	for _, p := range w.Patches {
		sum = sum.Add(p.Outline.Area())
	}
	if want := measure.Area(size.Width, size.Height); !sum.Equal(want) {
		t.Errorf("%s: patches of %s, the whole is %s", what, measure.FormatArea(sum, measure.In), measure.FormatArea(want, measure.In))
	}
	if !w.Closed() {
		t.Errorf("%s has a gap or an overlap", what)
	}
}

// Every plan under testdata, right or wrong: what is drafted closes and is as
// large as was derived; what does not fit is left out.
func TestFixturesCloseOrAreLeftOut(t *testing.T) {
	drafted := 0
	fixtures := t.TempDir()
	if err := fixture.Write("../../../testdata/checks", "../../../testdata/checks", fixtures); err != nil {
		t.Fatal(err)
	}
	for _, pattern := range []string{"../../../testdata/broken/*.plan.json", fixtures + "/*/*/*/*.plan.json"} {
		for _, path := range plans(t, pattern) {
			text, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range sizes(path, text) {
				if top, ok := drafting.Of(s).Top(); ok {
					drafted++
					filled(t, path+" "+s.Of.Name.Text, top, s.Top.Finished)
				}
			}
		}
	}
	if drafted < 50 {
		t.Errorf("only %d tops were drafted", drafted)
	}
}

// Invented: nine-patches of 3 in squares and plain squares, a border sewn with
// another seam.
const ninePatch = `{
  "format": 1, "id": "a", "title": "A", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
  "fabrics": {"dark": {"yardage": {}}, "light": {"yardage": {}}, "frame": {"yardage": {}}},
  "parts": {
    "d": {"cut": {"fabric": "dark", "square": "3 1/2"}}, "l": {"cut": {"fabric": "light", "square": "3 1/2"}},
    "nine": {"rows": [["d", "l", "d"], ["l", "d", "l"], ["d", "l", "d"]]},
    "plain": {"cut": {"fabric": "light", "square": "9 1/2"}}
  },
  "layout": {
    "grid": {"rows": 3, "columns": 3, "blocks": [["nine", "plain"], ["plain", "nine"]]},
    "borders": {"frame": {"fabric": "frame", "width": "2", "seam": {"allowance": "3/8"}}}
  },
  "sizes": {"only": {}}
}`

// Five nine-patches show 5*9 = 45 sq in of dark each; the light is the rest of
// 27 by 27 in less what the wider seam of the border takes off the edge:
// 1/8 in on every side. Derived from geometry.
func TestFabricAreas(t *testing.T) {
	s := sizes("nine.plan.json", []byte(ninePatch))[0]
	top, ok := drafting.Of(s).Top()
	if !ok {
		t.Fatal("not drafted")
	}
	filled(t, "nine", top, s.Top.Finished)
	sq := func(eighths int64) measure.Surd {
		side := measure.Rational(eighths*int64(measure.Inch), 8)
		return measure.Area(side, side)
	}
	inner := sq(27*8 - 2)
	if got := top.AreaOf(0).Add(top.AreaOf(1)); !got.Equal(inner) {
		t.Errorf("blocks show %s", measure.FormatArea(got, measure.In))
	}
	// Of dark, the corner squares of the four corner blocks lose 1/8 in on two
	// sides, and of the dark squares along the edges four more on one.
	lost := measure.Area(measure.Rational(int64(measure.Inch), 8), measure.Rational(3*int64(measure.Inch), 1))
	want := sq(24).MulInt(25).Sub(lost.MulInt(16)).Add(sq(1).MulInt(4))
	if got := top.AreaOf(0); !got.Equal(want) {
		t.Errorf("dark shows %s, want %s", measure.FormatArea(got, measure.In), measure.FormatArea(want, measure.In))
	}
}

// Sewing many cells at once comes to what piecing comes to seam by seam.
func TestAgreesWithSeamBySeam(t *testing.T) {
	s := sizes("nine.plan.json", []byte(ninePatch))[0]
	d := drafting.Of(s)
	part := func(name string) piecing.Patchwork {
		w, ok := d.Part(name)
		if !ok {
			t.Fatalf("%s is not drafted", name)
		}
		return w
	}
	dark, light := part("d"), part("l")
	row := func(a, b, c piecing.Patchwork) piecing.Patchwork {
		return a.Beside(b, measure.Inch/4).Beside(c, measure.Inch/4)
	}
	outer := row(dark, light, dark)
	sewn := outer.Below(row(light, dark, light), measure.Inch/4).Below(outer, measure.Inch/4)
	nine := part("nine")
	if len(nine.Patches) != len(sewn.Patches) {
		t.Fatalf("%d patches, %d sewn", len(nine.Patches), len(sewn.Patches))
	}
	for i, p := range sewn.Patches {
		if q := nine.Patches[i]; q.Fabric != p.Fabric || !q.Outline.Overlap(p.Outline).Area().Equal(p.Outline.Area()) || !q.Outline.Area().Equal(p.Outline.Area()) {
			t.Errorf("patch %d is %v, sewn %v", i, q, p)
		}
	}
}

// A part that is not as large as was derived is left out, with all that is
// made of it: nothing is drawn that was not proved.
func TestWrongSizeIsLeftOut(t *testing.T) {
	for _, name := range []string{"d", "nine"} {
		s := sizes("nine.plan.json", []byte(ninePatch))[0]
		s.Part(name).Width = s.Part(name).Width.Add(measure.Tick.Surd())
		d := drafting.Of(s)
		if name == "nine" {
			if _, ok := d.Part(name); ok {
				t.Error("a part of another size was drafted")
			}
		}
		if _, ok := d.Top(); ok {
			t.Errorf("the top was drafted though %q has another size", name)
		}
	}
}

// Blocks nested in blocks come to more patches than can be drawn in four
// steps.
func TestTooManyPatchesAreNotDrafted(t *testing.T) {
	text := `{
  "format": 1, "id": "a", "title": "A", "units": "in", "seam": {"allowance": "1/16", "stitch": "301"},
  "fabrics": {"f": {"yardage": {}}},
  "parts": {
    "p0": {"cut": {"fabric": "f", "square": "1"}},
    "p1": {"rows": [["p0", "p0", "p0", "p0", "p0", "p0", "p0", "p0", "p0", "p0", "p0", "p0", "p0"]]},
    "p2": {"rows": [["p1"], ["p1"], ["p1"], ["p1"], ["p1"], ["p1"], ["p1"], ["p1"], ["p1"], ["p1"], ["p1"], ["p1"], ["p1"]]},
    "p3": {"rows": [["p2", "p2", "p2", "p2", "p2", "p2", "p2", "p2", "p2", "p2", "p2", "p2", "p2"]]}
  },
  "layout": {"grid": {"rows": 13, "columns": 1, "blocks": [["p3"]]}},
  "sizes": {"only": {}}
}`
	s := sizes("many.plan.json", []byte(text))[0]
	d := drafting.Of(s)
	if w, ok := d.Part("p3"); !ok || len(w.Patches) != 13*13*13 {
		t.Errorf("%d patches are few enough", len(w.Patches))
	}
	if _, ok := d.Top(); ok {
		t.Errorf("%d patches were drafted, and %d are the most", 13*13*13*13, drafting.Most)
	}
}

// Which fabric lies where: what is said first is at the top or the left, turns
// go clockwise, and the near strip set of a tube lies above the diagonal from
// the bottom left. Invented plan; a, b and c are the fabrics 0, 1 and 2.
func TestWhereFabricsLie(t *testing.T) {
	text := `{
  "format": 1, "id": "a", "title": "A", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
  "fabrics": {"a": {"yardage": {}}, "b": {"yardage": {}}, "c": {"yardage": {}}},
  "parts": {
    "a": {"cut": {"fabric": "a", "square": 3}}, "b": {"cut": {"fabric": "b", "square": 3}},
    "ta": {"cut": {"fabric": "a", "square": 4, "halved": "twice"}}, "tb": {"cut": {"fabric": "b", "square": 4, "halved": "twice"}},
    "pair": {"rows": [["a", "b"]]},
    "down": {"rows": [[{"part": "pair", "turn": 90}]]},
    "left": {"rows": [[{"part": "pair", "turn": 180}]]},
    "up": {"rows": [[{"part": "pair", "turn": 270}]]},
    "segment": {"strip_set": {"strips": [{"fabric": "a", "width": 2}, {"fabric": "b", "width": 3}], "segment": 4}},
    "half": {"half_squares": {"fabrics": ["b", "a"], "square": 4, "at_a_time": 2}},
    "cross": {"triangle_square": {"of": ["ta", "tb", "tb", "ta"]}},
    "one": {"strip_set": {"strips": [{"fabric": "a", "width": 2}, {"fabric": "b", "width": 2}]}},
    "two": {"strip_set": {"strips": [{"fabric": "c", "width": 2}, {"fabric": "b", "width": 2}]}},
    "step": {"tube": {"sets": ["one", "two"]}}
  },
  "layout": {"grid": {"rows": 1, "columns": 1, "blocks": [["a"]]}},
  "sizes": {"only": {}}
}`
	all := sizes("where.plan.json", []byte(text))
	if len(all) == 0 {
		t.Fatal("the plan is not in order")
	}
	d := drafting.Of(all[0])
	for _, c := range []struct {
		part string
		x, y int64 // in tenths of the part's size
		want int
	}{
		{"pair", 2, 5, 0}, {"pair", 8, 5, 1}, {"down", 5, 2, 0}, {"down", 5, 8, 1},
		{"left", 2, 5, 1}, {"left", 8, 5, 0}, {"up", 5, 2, 1}, {"up", 5, 8, 0},
		{"segment", 5, 1, 0}, {"segment", 5, 9, 1}, {"half", 2, 2, 1}, {"half", 8, 8, 0},
		{"cross", 5, 2, 0}, {"cross", 8, 5, 1}, {"cross", 5, 8, 1}, {"cross", 2, 5, 0},
		{"step", 1, 1, 1}, {"step", 4, 5, 0}, {"step", 6, 5, 2}, {"step", 9, 9, 1},
	} {
		w, ok := d.Part(c.part)
		if !ok {
			t.Errorf("%s is not drafted", c.part)
			continue
		}
		size := w.Size()
		at := piecing.Point{X: size.Width.MulInt(c.x).DivInt(10), Y: size.Height.MulInt(c.y).DivInt(10)}
		shows(t, c.part, w, at, c.want)
	}
}

// shows checks which fabric shows just right of and below a point.
func shows(t *testing.T, part string, w piecing.Patchwork, at piecing.Point, want int) {
	t.Helper()
	dot := piecing.Rectangle(at, piecing.Box{Width: measure.Tick.Surd(), Height: measure.Tick.Surd()})
	for _, p := range w.Patches {
		if p.Outline.Overlap(dot) != nil && p.Fabric != want {
			t.Errorf("%s at %s, %s: fabric %d, want %d", part, at.X.Format(measure.In), at.Y.Format(measure.In), p.Fabric, want)
		}
	}
}
