package derive_test

import (
	"strings"
	"testing"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
)

// vague is a solver that leaves a gap until it is asked one question.
type vague struct {
	first, then cutting.Result
	asked       []measure.Length
}

func (v *vague) Strips(_ cutting.Problem, settle measure.Length) (cutting.Result, error) {
	v.asked = append(v.asked, settle)
	if settle > 0 {
		return v.then, nil
	}
	return v.first, nil
}

func (v *vague) Stop() bool { return false }

func (v *vague) Straight(cutting.Problem) measure.Length { return 0 }

func (v *vague) Lengths(p cutting.LengthProblem) (cutting.LengthResult, error) {
	return cutting.SolveLengths(p, cutting.Limits{})
}

func (v *vague) Stacked(cutting.Problem, cutting.Result, measure.Length, measure.Length) (cutting.Layout, bool) {
	return cutting.Layout{}, false
}

func (v *vague) Sheets(p cutting.SheetProblem) (cutting.SheetResult, error) {
	return cutting.SolveSheets(p, cutting.Limits{})
}

const sixSquares = `{
  "format": 1, "id": "squares", "title": "Squares", "status": "draft", "units": "in",
  "seam": { "allowance": "1/4", "stitch": "301" },
  "fabrics": { "sky": { "yardage": { "usable_width": "40" } } },
  "parts": { "square": { "cut": { "fabric": "sky", "square": "13" } } },
  "layout": { "grid": { "rows": 2, "columns": 3, "blocks": [["square"]] } },
  "sizes": { "small": {} },
  "printed": { "small": { "fabric": { "sky": "26 1/2 in" } } }
}`

// Six squares of 13 in take 26 in of 40-in fabric by the plain method, 27 with
// squaring up. A printed length of 26 1/2 in leaves 25 1/2 in for strips: that
// alone is asked where the search leaves a gap about it. What the solver says
// is invented.
func TestPrintedLengthInAGapIsSettled(t *testing.T) {
	result := func(bound, long string) cutting.Result {
		return cutting.Result{Length: length(t, long), Bound: length(t, bound), Certificate: &cutting.Certificate{}}
	}
	for _, c := range []struct {
		name        string
		first, then cutting.Result
		asks        int
		zone        derive.Zone
	}{
		{"a layout is found", result("20", "26 3/4"), result("20", "25 1/2"), 2, derive.Tight},
		{"no layout can be that short", result("20", "26 3/4"), result("26 3/4", "26 3/4"), 2, derive.OutOfStrips},
		{"it stays open", result("20", "26 3/4"), result("25 1/2", "26 3/4"), 2, derive.Unsettled},
		{"the gap begins above", result("25 9/16", "26 3/4"), cutting.Result{}, 1, derive.Unsettled},
		{"the gap begins there", result("25 1/2", "26 3/4"), result("20", "25 1/2"), 2, derive.Tight},
		{"a layout fits exactly", result("20", "25 1/2"), cutting.Result{}, 1, derive.Tight},
	} {
		solver := &vague{first: c.first, then: c.then}
		p, problems := decode(sixSquares)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		f := derive.With(solver, p, &p.Sizes[0]).Fabric("sky")
		if got := f.Zone(length(t, "26 1/2")); got != c.zone {
			t.Errorf("%s: zone %v, want %v", c.name, got, c.zone)
		}
		if len(solver.asked) != c.asks || c.asks == 2 && solver.asked[1] != length(t, "25 1/2") {
			t.Errorf("%s: asked %v", c.name, solver.asked)
		}
	}
	p, _ := decode(strings.Replace(sixSquares, `"26 1/2 in"`, `"3/4 yd"`, 1))
	solver := &vague{first: result("20", "26 3/4")}
	if derive.With(solver, p, &p.Sizes[0]).Fabric("sky").Zone(27 * inch); len(solver.asked) != 0 {
		t.Errorf("enough for the plain method, and yet asked %v", solver.asked)
	}
}

// Worked by hand. Three squares of 4 1/2 in and three bricks of 6 1/2 x 4 1/2 in, 33 in
// side by side, come from one strip of 4 1/2 in, 5 1/2 in with squaring up; the plain
// method takes a strip of each, 10 in. A backing 16 in square is one panel, 17 in.
func TestALengthCanBeCut(t *testing.T) {
	text := `{
  "format": 1, "id": "bricks", "title": "Bricks", "status": "draft", "units": "in",
  "seam": { "allowance": "1/4", "stitch": "301" },
  "fabrics": { "sky": { "yardage": { "usable_width": "40" } }, "field": { "yardage": { "usable_width": "40" } } },
  "parts": { "square": { "cut": { "fabric": "sky", "square": "4 1/2" } }, "brick": { "cut": { "fabric": "sky", "size": ["6 1/2", "4 1/2"] } } },
  "layout": { "grid": { "rows": 3, "columns": 2, "blocks": [["brick", "square"]] } },
  "finish": { "backing": { "fabric": "field", "overhang": "2" } },
  "sizes": { "small": {} },
  "printed": { "small": "not printed" }
}`
	for _, packed := range []bool{false, true} {
		p, problems := decode(text)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		s := derive.Of(p, &p.Sizes[0])
		for _, c := range []struct {
			fabric string
			least  measure.Length
		}{{"sky", 11 * inch / 2}, {"field", 15 * inch}} {
			f := s.Fabric(c.fabric)
			if packed {
				f.Packed()
			}
			for length, want := range map[measure.Length]bool{c.least - 1: false, c.least: true, f.Gross: true, 0: false, inch: false} {
				if got := f.CanBeCut(length); got != want {
					t.Errorf("%s from %d ticks, packed %v: %v", c.fabric, length, packed, got)
				}
			}
		}
	}
}
